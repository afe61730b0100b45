using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Names;

namespace NameBand.Tests;

/// <summary>Small made-up inputs for the rooms, so that a test states only what it is about.</summary>
internal static class Sample
{
    public static BandJob Job { get; } = new(
        Folder: "", Title: "Lantern walk", Ways: [Way.NeedlePath], Lists: ["names.csv"], Columns: new ColumnChoice(),
        Hem: new HemSettings([Length.FromMm(3660)], null, 0, Closed: true, Length.FromInches(1), Length.FromMm(6)),
        Strip: new StripSettings(
            Length.FromInches(2), Length.FromInches(0.5), Length.FromMm(4), SewnBeforeCutting: true, Shortening: 0.01, Rounds: 1,
            Length.FromMm(3), null, GarmentSide.Outside, Reader.Viewer),
        Lettering: new LetteringSettings("Nunito Bold", null, Length.FromMm(6), null, Spread: true, NameOrder.Listed, "und"),
        Hoop: new HoopSettings(Length.FromMm(160), Length.FromMm(100), Length.FromMm(5)),
        Fabric: "quilting cotton",
        Machine: new MachineSettings(600, 1, 7, 40, 60),
        Hands: new HandSettings(6.5, 1.5, 1, 2, 2, 3, 5, 1.5, 3, 6, 0.1));

    public static BandJob WithRounds(this BandJob job, int? rounds) => job with { Strip = job.Strip with { Rounds = rounds } };

    public static BandJob WithHem(this BandJob job, double lengthMm, bool closed = true) =>
        job with { Hem = job.Hem with { Lengths = [Length.FromMm(lengthMm)], Closed = closed } };

    public static BandJob WithHeight(this BandJob job, double? heightMm) =>
        job with { Lettering = job.Lettering with { Height = heightMm is { } mm ? Length.FromMm(mm) : null } };

    public static HemPlan Hem(BandJob job) => HemPlanner.Plan(job).Value!;

    /// <summary>A name whose ink is a box of the given size at a letter height of 1 mm.</summary>
    public static LetteredName Boxed(string text, double width, double top = 1, double bottom = -0.3, int line = 2) =>
        new(new Name(text, new RowRef("names.csv", line)), [], new Box(0, bottom, width, top));

    public static LetteredList Lettered(params IEnumerable<double> widths) =>
        new("boxes", [.. widths.Select((w, i) => Boxed("name " + i, w, line: i + 2))], []);

    public static ImmutableArray<double> RandomWidths(int seed, int count, double least = 3, double most = 11)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => least + (random.NextDouble() * (most - least)))];
    }
}
