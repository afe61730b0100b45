using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Layout.Planning;
using Xunit;
using Xunit.Abstractions;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>What is chosen by the program, held against what comes of chance.</summary>
public sealed class RandomChoiceTests(ITestOutputHelper output)
{
    private const double EachSegmentMin = 0.2;

    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    /// <summary>Fields with the minutes that one hooping takes in them.</summary>
    private static readonly (double AlongMm, double AcrossMm, double Min)[] Frames = [(160, 100, 7), (260, 160, 9), (360, 200, 11)];

    /// <summary>
    /// Which strips lie beside each other, how far they are shifted, and the frame, all drawn; each draw is cut into its best hoopings.
    /// With NAMEBAND_RANDOM_CHOICES as many are drawn as that says, and where chance wins it fails: docs/layout.md has the figures of 5000.
    /// </summary>
    [Theory]
    [InlineData(2, 1, 24)]
    [InlineData(3, 2, 400)]
    [InlineData(4, 3, 24)]
    public void No_draw_of_what_is_free_costs_over_a_hundredth_less_than_what_is_chosen(int rounds, int seed, int usual)
    {
        int draws = int.TryParse(Environment.GetEnvironmentVariable("NAMEBAND_RANDOM_CHOICES"), CultureInfo.InvariantCulture, out int asked)
            ? asked : usual;
        var names = Sample.Lettered(Sample.RandomWidths(seed, 22 * rounds));
        var plans = Frames.Select(f => (Frame: f, Plan: Lay(rounds, names, f, new LaneChoice(null, p => CostMin(p, f.Min))))).ToList();
        double chosen = plans.Min(p => CostMin(p.Plan, p.Frame.Min));
        var random = new Random(seed);
        double least = double.PositiveInfinity;
        for (int draw = 0; draw < draws; draw++)
        {
            var (frame, plan) = plans[random.Next(plans.Count)];
            double field = frame.AlongMm - (2 * plan.SpareMm);
            double outside = Math.Max(plan.Hem.Strip.SewingZoneMm / 2, -plan.MarkYMm + 3);
            int most = 1 + (int)Math.Floor(Math.Max(0, frame.AcrossMm - (2 * outside)) / plan.Hem.Strip.CutWidthMm);
            double cost = plan.Rounds.OrderBy(_ => random.Next()).Chunk(1 + random.Next(most)).Sum(beside =>
            {
                var lanes = beside.Select(r => Lane(plan, r, field).MovedTo(random.NextDouble() * field)).ToList();
                return new LaneCover(lanes, field).Cut().Sum(h => frame.Min + (h.Length * EachSegmentMin));
            });
            least = Math.Min(least, cost);
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{rounds} rounds: chosen {chosen:0.0} min, the best of {draws} draws {least:0.0} min"));
        Assert.True(least >= 0.99 * chosen, $"{least} {chosen}");
    }

    private static StripPlan Lay(
        int rounds, NameBand.Lettering.LetteredList names, (double AlongMm, double AcrossMm, double Min) frame, LaneChoice choice)
    {
        var job = Sample.Job.WithRounds(rounds).WithHeight(8) with
        {
            Hoop = new HoopSettings(Length.FromMm(frame.AlongMm), Length.FromMm(frame.AcrossMm), Length.FromMm(5)),
            Hem = Sample.Job.Hem with { Turn = 0.75 },
            Layout = Sample.Job.Layout with { AreLanesFree = true },
        };
        return LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton, choice).Value!;
    }

    private static double CostMin(StripPlan plan, double hoopingMin) =>
        plan.Hoopings.Sum(h => hoopingMin + (h.Segments.Length * EachSegmentMin));

    private static HoopingLane Lane(StripPlan plan, Round round, double fieldMm)
    {
        PlacedName[] names = [.. round.Names.OrderBy(n => n.StartMm)];
        return new HoopingLane(
            [.. names.Select(n => plan.OnClothMm(n.StartMm))], [.. names.Select(n => plan.OnClothMm(n.EndMm))], fieldMm, (_, _) => true);
    }
}
