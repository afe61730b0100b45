using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Stitching;

namespace NameBand.Tests.OutputRoom;

/// <summary>A small plan made by hand, with needle paths of plain zigzag columns.</summary>
internal static class OutSample
{
    public const double LetterHeightMm = 10.4;
    public const double Shortening = 0.01;

    /// <summary>From the cut left end of a piece of cloth to the start of its strip.</summary>
    public const double ClothEndMm = 80;

    private static readonly string[][] Texts =
    [
        ["Ottilie Marsh", "Bram Sedgewick"], ["Zdeněk Holub", "今井 さくら"], ["=Pell & <Sons>", "Ngozi O'Farrow"],
    ];

    public static StripPlan Plan()
    {
        var hem = new HemPlan(
            400, 0, true, 25.4, new HemTolerance(6, 0), 3, 38.1, 2, [], new StripWidths(50.8, 12.7, 4), RunDirection.CounterClockwise);
        int order = 0;
        var segments = Texts.Select((texts, i) => Segment(i + 1, 8 + (i % 2 * 180), texts, ref order)).ToImmutableArray();
        var first = new Round(1, 400, 400, 21.25, [segments[0], segments[1]]);
        var second = new Round(2, 390.1234, 380.5678, 21.25, [segments[2]]);
        return new StripPlan(
            hem, LetterHeightMm, default, 0.2, Shortening, 160, 100, 5, -LetterHeightMm / 2, -16.5,
            [first, second],
            [
                new Hooping(1, [new HoopedSegment(first, segments[0], 0, 0)]) { OnClothMm = ClothEndMm + segments[0].ClothStartMm },
                new Hooping(2, [new HoopedSegment(first, segments[1], 0, 0)]) { OnClothMm = ClothEndMm + segments[1].ClothStartMm },
                new Hooping(
                    3, [new HoopedSegment(second, segments[2], 0, 0)]) { Cloth = 2, OnClothMm = ClothEndMm + segments[2].ClothStartMm },
            ],
            [],
            []);
    }

    public static Estimate Estimate(StripPlan plan) => new(
        [.. plan.Hoopings.Select(h => new HoopingFigures(h.Number, 1000 + h.Number, 3, 2, 1, 7.25, 4.5, 4.26))],
        new Work(
        [
            new WorkRow("stitching", Doer.Machine, WorkTime.EachHooping, "stitches", 3006, 12.78 / 3006, WorkCause.MachinePace),
            new WorkRow("hooping", Doer.Hands, WorkTime.EachHooping, "hoopings", 3, 6.5, WorkCause.HerPace),
        ]),
        21.75, 13.5);

    public static ImmutableArray<ListedRow> Rows(StripPlan plan) =>
    [
        .. plan.Rounds.SelectMany(r => r.Names).Select(n =>
            new ListedRow(n.Lettered.Name.Row, RowOutcome.Placed, n.Lettered.Name.Text, "", [])),
        new ListedRow(new RowRef("names.csv", 40), RowOutcome.Merged, "Ottilie Marsh", "the same as names.csv, line 2", []),
        new ListedRow(new RowRef("names.csv", 41), RowOutcome.Held, "Pia ★ Tarn", "no face has the sign ★", []),
        new ListedRow(new RowRef("names.csv", 42), RowOutcome.LeftOut, "", "the row is empty", []),
    ];

    /// <summary>A hooping's path: marks, then each name as a row of upright columns.</summary>
    public static NeedlePath Path(StripPlan plan, Hooping hooping)
    {
        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        foreach (var hooped in hooping.Segments)
        {
            foreach (double x in new[] { 0, hooped.Segment.LengthMm })
            {
                Cross(steps, new Point(hooped.XMm + x, hooped.YMm + plan.MarkYMm), x == 0 ? 1 : -1);
            }

            foreach (var name in hooped.Segment.Names)
            {
                var at = new Point(
                    hooped.XMm + ((name.StartMm - hooped.Segment.StartMm) / (1 - plan.Shortening)),
                    hooped.YMm + name.BaselineYMm);
                AddMoved(steps, Sewn(name), at);
            }
        }

        steps.Add(new NeedleStep(NeedleAction.End, StitchKind.None, steps[^1].At));
        return new NeedlePath(steps.ToImmutable());
    }

    /// <summary>A name: upright satin columns 1.8 mm wide, one for each 6 mm of width.</summary>
    public static NeedlePath Sewn(PlacedName name)
    {
        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        steps.Add(new NeedleStep(NeedleAction.Jump, StitchKind.None, new Point(0.3, 0)));
        for (double left = 0.3; left + 1.8 < name.WidthMm; left += 6)
        {
            for (int i = 0; i < 52; i++)
            {
                double x = left + (i % 2 * 1.8);
                double y = i % 52 * (LetterHeightMm / 52);
                steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(x, y)));
            }
        }

        steps.Add(new NeedleStep(NeedleAction.Trim, StitchKind.None, steps[^1].At));
        return new NeedlePath(steps.ToImmutable());
    }

    private static void Cross(ImmutableArray<NeedleStep>.Builder steps, Point at, int inward)
    {
        steps.Add(new NeedleStep(NeedleAction.Jump, StitchKind.None, at));
        steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Mark, at));
        steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Mark, at + new Point(inward * 4, 0)));
        steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Mark, at));
        steps.Add(new NeedleStep(NeedleAction.Trim, StitchKind.None, at));
    }

    private static void AddMoved(ImmutableArray<NeedleStep>.Builder steps, NeedlePath path, Point by)
    {
        foreach (var step in path.Steps)
        {
            steps.Add(step with { At = step.At + by });
        }
    }

    private static Segment Segment(int number, double startMm, string[] texts, ref int order)
    {
        var names = ImmutableArray.CreateBuilder<PlacedName>();
        double at = startMm;
        foreach (string text in texts)
        {
            double width = 5.1 * text.Length;
            order++;
            var lettered =
                new LetteredName(new Name(text, new RowRef("names.csv", order + 1)), [], new Box(0, -0.2, width / LetterHeightMm, 1.1));
            names.Add(new PlacedName(lettered, at, width, -LetterHeightMm / 2, order));
            at += width + 8;
        }

        return new Segment(number, startMm, at - 8 - startMm, startMm / (1 - Shortening), names.ToImmutable());
    }
}
