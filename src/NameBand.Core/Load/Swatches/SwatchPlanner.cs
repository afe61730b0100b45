using System.Collections.Immutable;
using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Load.Swatches;

/// <summary>Chooses a swatch's word and steps and finds room for them in the job's hoop.</summary>
public static class SwatchPlanner
{
    public const double LabelHeightMm = 4;
    public const double WishedApartMm = 100;

    private const double ArmMm = 3;
    private const double GapMm = 5;
    private const double BelowMm = 1.8;
    private const double BetweenRowsMm = 4.5;
    private const double LeastApartMm = 40;

    /// <summary>One label: two figures.</summary>
    private const double LabelWidthMm = 7;

    private sealed record Try(int Letters, bool Least, int MostHoopings);

    /// <summary>What is given up, in this order, as the field gets smaller: letters, a second hooping is taken, steps, more letters.</summary>
    private static readonly Try[] Tries =
        [new(4, false, 1), new(3, false, 1), new(3, false, 2), new(3, true, 1), new(3, true, 2), new(2, true, 2), new(1, true, 2)];

    /// <param name="names">The names that will be sewn.</param>
    public static Result<SwatchPlan> Plan(
        BandJob job, Fabric fabric, double letterHeightMm, ImmutableArray<LetteredName> names, Face face, FaceShelf shelf)
    {
        double width = job.Hoop.Along.Mm - (2 * job.Hoop.Spare.Mm);
        double height = job.Hoop.Across.Mm - (2 * Math.Min(job.Hoop.Spare.Mm, job.Hoop.Across.Mm / 4));
        double apart = Math.Min(WishedApartMm, Math.Floor((width - (2 * ArmMm)) / 10) * 10);
        if (apart < LeastApartMm)
        {
            return Result.Fail<SwatchPlan>(TooSmall(width, height));
        }

        foreach (var attempt in Tries)
        {
            string word = SwatchWord.Choose(names, face, shelf, attempt.Letters);
            var lettered = word.Length == 0 ? [] : SwatchWord.Lettered([word], face, shelf);
            if (lettered.IsEmpty)
            {
                return Result.Fail<SwatchPlan>(Problem.CannotUse(
                    new Where(job.Lists[0]), "No name on the lists has a letter that could be sewn on a swatch.", "Run names on the job to see why."));
            }

            var rows = SwatchLadder.Rows(fabric, letterHeightMm, job.Lettering.Least.Mm, attempt.Least);
            if (Lay(rows, lettered[0].Ink, width, height, apart, attempt.MostHoopings) is { } hoopings)
            {
                return Result.Of(new SwatchPlan(word, apart, new Box(0, -height / 2, width, height / 2), hoopings)
                {
                    IsShort = attempt.Letters < 3 || attempt.Least || hoopings.Length > 1 || apart < WishedApartMm,
                });
            }
        }

        return Result.Fail<SwatchPlan>(TooSmall(width, height));
    }

    /// <summary>Lines of samples from the top down, the crosses in the middle of what is sewn.</summary>
    private static ImmutableArray<SwatchHooping>? Lay(
        ImmutableArray<ImmutableArray<SwatchSample>> rows, Box ink, double width, double height, double apart, int mostHoopings)
    {
        var lines = new List<List<SwatchSample>>();
        foreach (var row in rows)
        {
            double used = double.MaxValue;
            foreach (var sample in row)
            {
                double wide = WidthMm(sample, ink);
                if (wide > width)
                {
                    return null;
                }

                if (used + GapMm + wide > width)
                {
                    lines.Add([]);
                    used = -GapMm;
                }

                lines[^1].Add(sample);
                used += GapMm + wide;
            }
        }

        for (int hoopings = 1; hoopings <= mostHoopings; hoopings++)
        {
            int each = (lines.Count + hoopings - 1) / hoopings;
            var parts = lines.Chunk(each).ToList();
            if (parts.All(p => p.Sum(l => LineMm(l, ink)) + ((p.Length - 1) * BetweenRowsMm) + MarkRoomMm <= height))
            {
                return [.. parts.Select((p, i) => Place(i + 1, p, ink, width, apart))];
            }
        }

        return null;
    }

    private static double MarkRoomMm => (2 * ArmMm) + (2 * BetweenRowsMm);

    private static SwatchHooping Place(int number, List<SwatchSample>[] lines, Box ink, double width, double apart)
    {
        double total = lines.Sum(l => LineMm(l, ink)) + ((lines.Length - 1) * BetweenRowsMm) + MarkRoomMm - BetweenRowsMm;
        int above = (lines.Length + 1) / 2;
        double top = total / 2;
        double markY = 0;
        var placed = ImmutableArray.CreateBuilder<PlacedSample>();
        for (int i = 0; i < lines.Length; i++)
        {
            double ascent = lines[i].Max(s => (ink.TopMm * s.LetterHeightMm) + s.PullCompensationMm);
            double descent = lines[i].Max(s => Math.Max(0, -ink.BottomMm * s.LetterHeightMm) + s.PullCompensationMm);
            double used = lines[i].Sum(s => WidthMm(s, ink)) + ((lines[i].Count - 1) * GapMm);
            double x = (width - used) / 2;
            foreach (var sample in lines[i])
            {
                double wide = WidthMm(sample, ink);
                double own = (ink.WidthMm * sample.LetterHeightMm) + (2 * sample.PullCompensationMm);
                placed.Add(new PlacedSample(
                    sample, new Point(x + ((wide - own) / 2), top - ascent), own,
                    new Point(x + ((wide - LabelWidthMm) / 2), top - ascent - descent - BelowMm - LabelHeightMm)));
                x += wide + GapMm;
            }

            top -= LineMm(lines[i], ink) + BetweenRowsMm;
            if (i + 1 == above)
            {
                markY = top - ArmMm;
                top -= (2 * ArmMm) + BetweenRowsMm;
            }
        }

        return new SwatchHooping(number, placed.ToImmutable(), (width - apart) / 2, markY);
    }

    private static double WidthMm(SwatchSample sample, Box ink) =>
        Math.Max(LabelWidthMm, (ink.WidthMm * sample.LetterHeightMm) + (2 * sample.PullCompensationMm));

    private static double LineMm(List<SwatchSample> line, Box ink) =>
        line.Max(s => (ink.TopMm * s.LetterHeightMm) + s.PullCompensationMm)
        + line.Max(s => Math.Max(0, -ink.BottomMm * s.LetterHeightMm) + s.PullCompensationMm) + BelowMm + LabelHeightMm;

    private static Problem TooSmall(double widthMm, double heightMm) => Problem.CannotUse(
        new Where(JobReader.FileName, Key: "hoop"),
        string.Create(CultureInfo.InvariantCulture, $"The field of {widthMm:0.#} × {heightMm:0.#} mm, its spare taken off, is too small for a swatch of these letters."),
        "Give a larger hoop for the swatch, or set lettering.height to smaller letters while it is made.");
}
