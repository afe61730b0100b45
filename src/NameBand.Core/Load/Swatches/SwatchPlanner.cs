using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;

namespace NameBand.Load.Swatches;

/// <summary>Chooses a swatch's word and steps and finds room for them in the job's hoop.</summary>
internal static class SwatchPlanner
{
    public const double LabelHeightMm = 4; // Figures of running stitch, which needs no width, can be read at that height: our assumption.
    public const double WishedApartMm = 100; // So that a tenth of a millimetre read on a ruler is a thousandth of shortening.

    // Crosses that are seen, room for a finger between words, a label clear of the tails above it, and rows that can be told apart. Our
    // choice.
    internal const double ArmMm = 3;
    private const double GapMm = 5;
    private const double BelowMm = 1.8;
    private const double BetweenRowsMm = 4.5;
    // Nearer crosses turn half a millimetre misread into more than a hundredth of shortening: no use.
    private const double LeastApartMm = 40;

    /// <summary>One label: two figures.</summary>
    private const double LabelWidthMm = 7;

    private sealed record Try(int Letters, bool Least, int MostHoopings, bool HasColumns = true);

    private readonly record struct Room(double WidthMm, double HeightMm, double ApartMm);

    /// <summary>
    /// What is given up, in this order, as the field gets smaller: letters, a second hooping is taken, steps, more letters, the columns.
    /// </summary>
    private static readonly Try[] Tries =
    [
        new(4, false, 1), new(3, false, 1), new(3, false, 2), new(3, true, 1), new(3, true, 2), new(2, true, 2),
        new(3, true, 1, false), new(3, true, 2, false), new(2, true, 2, false), new(1, true, 2, false),
    ];

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
                    new Where(job.Lists[0]), "No name on the lists has a letter that could be sewn on a swatch.",
                    "Run names on the job to see why."));
            }

            var rows = SwatchLadder.Rows(fabric, letterHeightMm, job.Lettering.Least.Mm, attempt.Least);
            if (Lay(rows, lettered[0].Ink, new Room(width, height, apart), attempt) is { } hoopings)
            {
                return Result.Of(new SwatchPlan(word, apart, new Box(0, -height / 2, width, height / 2), hoopings)
                {
                    IsShort = attempt.Letters < 3 || attempt.Least || !attempt.HasColumns || hoopings.Length > 1 || apart < WishedApartMm,
                });
            }
        }

        return Result.Fail<SwatchPlan>(TooSmall(width, height));
    }

    /// <summary>Lines of samples from the top down, the crosses in the middle of what is sewn.</summary>
    private static ImmutableArray<SwatchHooping>? Lay(
        ImmutableArray<ImmutableArray<SwatchSample>> rows, Box ink, Room room, Try attempt)
    {
        double width = room.WidthMm;
        if (attempt.HasColumns && ColumnsWidthMm > width)
        {
            return null;
        }

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

        for (int hoopings = 1; hoopings <= attempt.MostHoopings; hoopings++)
        {
            int each = (lines.Count + hoopings - 1) / hoopings;
            var parts = lines.Chunk(each).ToList();
            bool HasColumns(int part) => attempt.HasColumns && part == parts.Count - 1;
            if (Enumerable.Range(0, parts.Count).All(i => HeightMm(parts[i], ink, HasColumns(i)) <= room.HeightMm))
            {
                return [.. parts.Select((p, i) => Place(i + 1, p, ink, room, HasColumns(i)))];
            }
        }

        return null;
    }

    private static double MarkRoomMm => (2 * ArmMm) + (2 * BetweenRowsMm);

    private static double ColumnsRoomMm => SwatchColumn.TallestMm + BelowMm + LabelHeightMm + BetweenRowsMm;

    private static double ColumnsWidthMm => SwatchColumn.All.Sum(ColumnWidthMm) + ((SwatchColumn.All.Length - 1) * GapMm);

    private static double ColumnWidthMm(SwatchColumn column) => Math.Max(LabelWidthMm, column.AlongMm);

    private static double HeightMm(List<SwatchSample>[] lines, Box ink, bool hasColumns) =>
        lines.Sum(l => LineMm(l, ink)) + ((lines.Length - 1) * BetweenRowsMm) + MarkRoomMm + (hasColumns ? ColumnsRoomMm : 0);

    private static SwatchHooping Place(int number, List<SwatchSample>[] lines, Box ink, Room room, bool hasColumns)
    {
        double width = room.WidthMm;
        double total = HeightMm(lines, ink, hasColumns) - BetweenRowsMm;
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

        return new SwatchHooping(number, placed.ToImmutable(), (width - room.ApartMm) / 2, markY)
        {
            Columns = hasColumns ? Columns(width, top) : [],
        };
    }

    /// <summary>A line of columns that stand on one line, with their labels below.</summary>
    private static ImmutableArray<PlacedColumn> Columns(double widthMm, double topMm)
    {
        double x = (widthMm - ColumnsWidthMm) / 2;
        double foot = topMm - SwatchColumn.TallestMm;
        var placed = ImmutableArray.CreateBuilder<PlacedColumn>();
        foreach (var column in SwatchColumn.All)
        {
            double wide = ColumnWidthMm(column);
            placed.Add(new PlacedColumn(
                column, new Point(x + ((wide - column.AlongMm) / 2), foot),
                new Point(x + ((wide - LabelWidthMm) / 2), foot - BelowMm - LabelHeightMm)));
            x += wide + GapMm;
        }

        return placed.ToImmutable();
    }

    private static double WidthMm(SwatchSample sample, Box ink) =>
        Math.Max(LabelWidthMm, (ink.WidthMm * sample.LetterHeightMm) + (2 * sample.PullCompensationMm));

    private static double LineMm(List<SwatchSample> line, Box ink) =>
        line.Max(s => (ink.TopMm * s.LetterHeightMm) + s.PullCompensationMm)
        + line.Max(s => Math.Max(0, -ink.BottomMm * s.LetterHeightMm) + s.PullCompensationMm) + BelowMm + LabelHeightMm;

    private static Problem TooSmall(double widthMm, double heightMm) => Problem.CannotUse(
        new Where(JobReader.FileName, Key: "hoop"),
        $"The field of {Wording.Size($"{widthMm:0.#}", $"{heightMm:0.#}")}, its spare taken off, is too small for a swatch of these letters.",
        "Give a larger hoop for the swatch, or set lettering.height to smaller letters while it is made.");
}
