using MathNet.Numerics.Distributions;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Measuring;

/// <summary>Estimates letters that were never measured from those that were, by the widths of a similar face.</summary>
internal sealed class FaceProportions(Priors priors)
{
    /// <summary>A built-in letter beside the same letter of a printed face, before any is measured: our assumption.</summary>
    private const double UnlikeFace = 0.25;

    /// <summary>A letter that no face shows, as a part of the letter height: our assumption.</summary>
    private const double PlainWidth = 0.7;

    private double _shift;
    private double _factor = 1;
    private double _scatterMm = double.NaN;
    private double _meanFace;
    private double _squares;
    private int _count;

    private double _gapRangeMm;

    /// <summary>Fits measured widths to the face's: width = shift + factor · face width.</summary>
    /// <param name="gapRangeMm">Half the gap's range: an error in the gap shifts all measured widths alike, and so all estimates.</param>
    public void Learn(IEnumerable<MachineLetter> measured, double gapRangeMm)
    {
        _gapRangeMm = gapRangeMm;
        (double Face, double Width)[] pairs = [.. measured
            .Where(l => l.Letter != Letters.Blank && priors.FaceWidthMm(l.Letter) is > 0)
            .Select(l => (priors.FaceWidthMm(l.Letter)!.Value * priors.HeightMm, l.WidthMm))];
        _count = pairs.Length;
        if (_count == 0)
        {
            return;
        }

        _meanFace = pairs.Average(p => p.Face);
        double meanWidth = pairs.Average(p => p.Width);
        _squares = pairs.Sum(p => (p.Face - _meanFace) * (p.Face - _meanFace));
        if (_count < 4 || _squares < 1e-9)
        {
            _factor = pairs.Sum(p => p.Width) / pairs.Sum(p => p.Face);
            return;
        }

        _factor = pairs.Sum(p => (p.Face - _meanFace) * (p.Width - meanWidth)) / _squares;
        _shift = meanWidth - (_factor * _meanFace);
        _scatterMm = Math.Sqrt(pairs.Sum(p => Math.Pow(p.Width - _shift - (_factor * p.Face), 2)) / (_count - 2));
    }

    /// <summary>Width and standard deviation in mm before anything is learnt.</summary>
    public (double WidthMm, double ErrorMm) FirstGuess(string letter)
    {
        double width = (priors.FaceWidthMm(letter) ?? (letter == Letters.Blank ? 0.4 : PlainWidth)) * priors.HeightMm;
        return (width, UnlikeFace * Math.Max(width, 0.3 * priors.HeightMm));
    }

    public MachineLetter Estimate(string letter)
    {
        double width;
        double half;
        if (priors.FaceWidthMm(letter) is { } face && letter != Letters.Blank && !double.IsNaN(_scatterMm))
        {
            double faceMm = face * priors.HeightMm;
            width = _shift + (_factor * faceMm);
            double spread = 1 + (1.0 / _count) + ((faceMm - _meanFace) * (faceMm - _meanFace) / _squares);
            half = StudentT.InvCDF(0, 1, _count - 2, 1 - ((1 - WidthSolver.Confidence) / 2)) * _scatterMm * Math.Sqrt(spread);
        }
        else
        {
            (width, double error) = FirstGuess(letter);
            width = letter == Letters.Blank ? width : width * _factor;
            half = 2 * error;
        }

        half = Math.Sqrt((half * half) + (_gapRangeMm * _gapRangeMm));
        double least = 0.02 * priors.HeightMm;
        width = Math.Max(width, least);
        return new MachineLetter(letter, width, Math.Max(least, width - half), width + half, null, WidthOrigin.Estimated);
    }
}
