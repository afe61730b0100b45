using System.Collections.Immutable;
using NameBand.Common;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters;

/// <summary>What is known of a machine's letters, size by size, tallest first.</summary>
internal sealed record MeasuredAlphabets(ImmutableArray<Alphabet> BySize)
{
    /// <summary>Heights that the file's lines state, each with the first of those lines.</summary>
    public ImmutableArray<(double HeightMm, int Line)> StatedHeightsMm { get; init; } = [];

    /// <summary>A size that was never measured is taken from the nearest one; each width may then be out by this part of it: our
    /// assumption.</summary>
    private const double UnmeasuredSizePart = 0.05;

    /// <summary>The alphabet at a height: as measured, or in proportion from the nearest measured height.</summary>
    public Alphabet At(double heightMm)
    {
        var nearest = BySize.MinBy(a => Math.Abs(Math.Log(a.HeightMm / heightMm)))!;
        if (Math.Abs(nearest.HeightMm - heightMm) < Tolerance.HeightMm)
        {
            return nearest;
        }

        double factor = heightMm / nearest.HeightMm;
        return nearest with
        {
            HeightMm = heightMm,
            Gap = Scaled(nearest.Gap, factor),
            Letters = nearest.Letters.ToImmutableSortedDictionary(p => p.Key, p => Scaled(p.Value, factor), StringComparer.Ordinal),
        };
    }

    /// <summary>These alphabets with one of them renewed, or one more.</summary>
    public MeasuredAlphabets With(Alphabet alphabet) => new(
        [.. BySize.Where(a => Math.Abs(a.HeightMm - alphabet.HeightMm) >= Tolerance.HeightMm).Append(alphabet)
        .OrderByDescending(a => a.HeightMm)]);

    private static MachineLetter Scaled(MachineLetter letter, double factor)
    {
        double width = letter.WidthMm * factor;
        double half = (letter.HalfRangeMm * factor) + (UnmeasuredSizePart * width);
        return letter with
        {
            WidthMm = width,
            LowMm = Math.Max(0, width - half),
            HighMm = width + half,
            Seconds = letter.Seconds * factor,
            Origin = WidthOrigin.Estimated,
        };
    }
}
