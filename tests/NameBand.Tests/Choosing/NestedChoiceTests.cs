using NameBand.Choosing;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Output;
using NameBand.Pipeline;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Stitching;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>Curved strips beside each other: chosen where they cost less, seen nowhere, and sewn where they lie.</summary>
public sealed class NestedChoiceTests : IDisposable
{
    private const string Frames =
        """
        { "format": 1,
            "machines": [{ "name": "m", "takes": ["coordinates"], "frames": [{ "name": "large", "along": 240, "across": 160 }] }] }
        """;

    private readonly TemporaryFolder _folder = new TemporaryFolder().With("workshop.json", Frames)
        .With("names.csv", Names)
        .With("job.json", """
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "1000 mm", "turn": 0.4, "closed": false },
              "strip": { "shape": "curved", "piece": "50 cm" }, "lettering": { "height": "8 mm" } }
            """);

    private static string Names => "Name\n"
        + string.Concat(Enumerable.Range(0, 10).Select(i => $"{"Tamsin Bo Orla Wenna Kit".Split(' ')[i % 5]} {(char)('A' + i)}\n"));

    public void Dispose() => _folder.Dispose();

    /// <summary>Every number of lanes looks the same, none costs less than the bound or than what is chosen.</summary>
    [Fact]
    public void Nested_strips_look_the_same_and_no_choice_costs_less_than_the_chosen_one_or_the_bound()
    {
        var all = Enumerable.Range(1, 3).Select(l => Costs(new KeptChoices(l, "large"))).ToList();
        var chosen = Costs(KeptChoices.None);
        Assert.InRange(chosen.Plan.FreeLanes!.Value, 2, 3);
        Assert.Contains(chosen.Plan.Hoopings, h => h.Segments.Length > 1);
        Assert.True(chosen.Cost < 0.95 * all[0].Cost, $"{chosen.Cost} {all[0].Cost}");
        Assert.All(all, a => Assert.True(FrameChoice.LooksTheSame(chosen.Plan, a.Plan)));
        Assert.All(all, a => Assert.InRange(a.Bound, 0, chosen.Cost));
        Assert.Equal(chosen.Cost, all.Min(a => a.Cost), 6);
        Assert.InRange(chosen.Cost, chosen.Bound, 1.06 * chosen.Bound);
    }

    /// <summary>
    /// Few pieces, of which all ways are looked at, and more of them: which lie on one cloth is drawn, and each draw is cut into its
    /// best hoopings. What is bought is what the plan lays its cloths on.
    /// </summary>
    [Theory]
    [InlineData(2, "50 cm", 2, 5)]
    [InlineData(3, "25 cm", 6, 20)]
    public void No_draw_of_cloths_costs_over_a_hundredth_less_than_what_is_chosen_and_the_cloth_bought_is_that_of_the_plan(
        int rounds, string piece, int fewest, int most)
    {
        const double HoopingMin = 7;
        const double EachSegmentMin = 0.2;
        var texts = Enumerable.Range(0, 12 * rounds)
            .Select(i => $"{"Tamsin Bo Orla Wenna Kit".Split(' ')[i % 5]} {(char)('A' + (i % 26))}{(i < 26 ? "" : "a")}\n");
        _folder.With("names.csv", "Name\n" + string.Concat(texts)).With("job.json", $$"""
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "1000 mm", "turn": 0.4, "closed": false },
              "strip": { "shape": "curved", "piece": "{{piece}}", "rounds": {{rounds}} }, "lettering": { "height": "8 mm" } }
            """);
        var laid = Planning.Run(_folder.FullPath, new FaceShelf(), default, () => KeptChoices.None).Value!;
        var plan = laid.Plan;
        var pieces = plan.Cloths.SelectMany(c => c.Pieces).ToArray();
        Assert.InRange(pieces.Length, fewest, most);
        var sizing = new Sizing("", plan.Hem, plan.FieldAlongMm, plan.FieldAcrossMm, plan.SpareMm, 0, plan.Shortening, null)
        {
            MarkReachMm = -plan.MarkYMm + SegmentCutter.MarkArmMm,
        };
        double chosen = plan.Hoopings.Sum(h => HoopingMin + (h.Segments.Length * EachSegmentMin));
        Assert.Equal(chosen, plan.Cloths.Sum(c => Least(c.Pieces)), 0.02 * chosen);
        var random = new Random(19);
        double least = Enumerable.Range(0, 24).Min(_ =>
        {
            random.Shuffle(pieces);
            return pieces.Chunk(2 + random.Next(2)).Sum(Least);
        });
        Assert.True(least >= 0.99 * chosen, $"{least} {chosen}");

        var cut = CutPlan.Of(plan, laid.Job.Shop, isBias: false);
        Assert.Equal(plan.Cloths.Select(c => c.Number).Order(), cut.Cuts.Select(c => c.Cloth.Number).Order());
        Assert.All(cut.Cuts, c => Assert.InRange(c.AlongMm + c.Cloth.LengthMm, 0, cut.LengthMm + 0.001));
        Assert.All(cut.Cuts, c => Assert.InRange(c.AcrossMm + c.Cloth.WidthMm, 0, cut.ClothWidthMm + 0.001));
        var estimate = Counting.Of(laid, laid.Way.Sew(laid), StandInFigures.Of(plan));
        double amount = Shopping.For(laid.Job, plan, estimate).Lines.Single(l => l.What == "cloth").Amount;
        Assert.InRange(amount, cut.LengthMm / 1000, (cut.LengthMm / 1000 * (1 + laid.Job.Shop.ClothWastePart)) + 0.1);

        double Least(IReadOnlyCollection<StripPiece> on)
        {
            var above = NestedArcs.FromAbove(on, p => StripCurve.Of(plan.Hem, p.Round)!)
                .Select((p, l) => p with { Lane = l + 1 }).ToArray();
            var nest = PieceEnds.Nest(sizing, above);
            double[][] Angles(Func<PlacedName, double> at) => [.. above.Select((p, l) => plan.Rounds[p.Round - 1].Names
                .Where(n => n.StartMm >= p.StartMm - 1e-6 && n.StartMm < p.EndMm - 1e-6).OrderBy(n => n.StartMm)
                .Select(n => nest.AngleRad(l, plan.OnClothMm(at(n) - p.StartMm))).ToArray())];
            var field = ArcField.Of(sizing, HoopingMin);
            return new BentCover(nest, Angles(n => n.StartMm), Angles(n => n.EndMm), [field], EachSegmentMin).LeastWork();
        }
    }

    /// <summary>Read as a stranger would: each name's stitches lie on its own strip, in its own place, and the last gate lets all
    /// out; what is sewn stays.</summary>
    [Fact]
    public void Needle_paths_of_nested_strips_keep_clear_of_one_another_and_what_is_sewn_stays()
    {
        var run = CliRun.Of("make", _folder.FullPath);
        Assert.Equal((0, ""), (run.Status, run.Errors));
        var made = PlanJson.Read(File.ReadAllBytes(_folder["out/plan.json"]));
        Assert.All(made.Hoopings, h => Assert.NotNull(h.NeedlePath));
        var plan = Planning.Run(_folder.FullPath, new FaceShelf(), default).Value!.Plan;
        var nested = plan.Hoopings.Where(h => h.Segments.Length > 1).ToList();
        Assert.NotEmpty(nested);
        foreach (var hooping in nested)
        {
            var path = NeedlePathReading.Read(File.ReadAllBytes(_folder[$"out/needle-paths/hooping-{hooping.Number:000}.csv"]))!;
            var left = hooping.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Order).ToHashSet();
            foreach (var step in path.Steps.Where(s => s.Action == NeedleAction.Stitch))
            {
                var places = hooping.Segments.Select(s => (Of: s, On: plan.FrameOf(s)!.Value.Unbent(step.At - new Point(s.XMm, s.YMm))))
                    .ToList();
                var (own, (along, y)) = places.MinBy(p => Math.Abs(p.On.YMm));
                Assert.InRange(y, -plan.Hem.Strip.SewingZoneMm / 2, plan.Hem.Strip.SewingZoneMm / 2);
                Assert.All(places.Where(p => p.Of != own), p => Assert.True(Math.Abs(p.On.YMm) > plan.Hem.Strip.CutWidthMm / 2));
                var name = own.Segment.Names.Single(n => plan.OnClothMm(n.StartMm - own.Segment.StartMm) is var from && along >= from - 1
                    && along <= from + n.WidthMm + 1);
                left.Remove(name.Order);
            }

            Assert.Empty(left);
        }

        int sewn = nested[0].Number;
        Assert.InRange(CliRun.Of("sewn", _folder.FullPath, $"{sewn}").Status, 0, 1);
        File.AppendAllText(_folder["names.csv"], "Jo Z\n");
        CliRun.Of("make", _folder.FullPath);
        var again = PlanJson.Read(File.ReadAllBytes(_folder["out/plan.json"]));
        Assert.Equal(
            made.Hoopings.Select(h => (h.Number, h.Mark, string.Join(' ', h.Segments))),
                again.Hoopings.Take(made.Hoopings.Count).Select(h => (h.Number, h.Mark, string.Join(' ', h.Segments))));
        Assert.All(again.Hoopings, h => Assert.NotNull(h.NeedlePath));
        Assert.Equal(
            made.Cloths.SelectMany(c => c.Pieces).Select(p => (p.Number, p.Lane, p.LaneYMm, p.OnClothMm)),
            again.Cloths.SelectMany(c => c.Pieces).Select(p => (p.Number, p.Lane, p.LaneYMm, p.OnClothMm)));
    }

    private (StripPlan Plan, double Cost, double Bound) Costs(KeptChoices kept)
    {
        var laid = Planning.Run(_folder.FullPath, new FaceShelf(), default, () => kept).Value!;
        var estimate = Counting.Of(laid, laid.Way.Sew(laid), StandInFigures.Of(laid.Plan));
        return (laid.Plan, estimate.Work.CostMinutes, FreeBound.CostMinutes(laid.Job, laid.Plan, estimate));
    }
}
