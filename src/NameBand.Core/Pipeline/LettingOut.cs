using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Output;
using NameBand.Output.LastGate;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;

namespace NameBand.Pipeline;

/// <summary>Holds every needle path that was made against the last gate, and withdraws those that do not pass.</summary>
internal static class LettingOut
{
    /// <param name="Made">With the names of what was withdrawn held, and in no segment.</param>
    public sealed record Passed(LaidOut Made, ImmutableHashSet<int> Withdrawn, ImmutableArray<Problem> Problems);

    /// <param name="estimate">Of all hoopings.</param>
    public static Passed Run(LaidOut made, Estimate estimate, OutFolder folder)
    {
        if (!made.Plan.HasNeedlePaths)
        {
            return new Passed(made, [], []);
        }

        using var plan = new MemoryStream();
        PlanJson.Write(plan, made.Job.Title, made.Plan, estimate, new PlanFound(made.Rows.Rows));
        var rules = new GateRules(
            made.Job.Hoop.Along.Mm, made.Job.Hoop.Across.Mm, made.Job.Hoop.Spare.Mm, made.Plan.Hem.Strip.SewingZoneMm,
            made.Plan.Hem.ReadBy == Reader.Viewer);
        var faults = Gate.Check(plan.ToArray(), rules, n => SewnPath(made, n) ?? Built(folder, n), made.IsSewn);
        if (faults.IsEmpty)
        {
            return new Passed(made, [], []);
        }

        foreach (var fault in faults)
        {
            folder.Withdraw(OutPaths.OfHooping(fault.Hooping));
        }

        var names = made.Plan.Hoopings.ToDictionary(
            h => h.Number, h => h.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Lettered.Name.Text).ToList());
        var (rest, held) = Withheld.From(made.Plan, faults.ToDictionary(
            f => f.Hooping, f => (Said)$"hooping {f.Hooping} {f.Found}, so it was not written. {f.Mend}"));
        return new Passed(
            made with { Plan = rest, Rows = HeldRows.Merge(made.Rows, held) },
            [.. faults.Select(f => f.Hooping)],
            [.. faults.Select(f => Told(f, names[f.Hooping]))]);
    }

    private static Problem Told(GateFault fault, List<string> names) => Problem.NeedsPerson(
        new Where(OutPaths.NeedlePath(fault.Hooping)),
        $"Hooping {fault.Hooping} {fault.Found}; its needle path was not written, and its {Names(names.Count)} held: "
            + $"{PlainText.Short(string.Join(", ", names), 200)}.",
        $"{fault.Mend}, then run make again.");

    private static Said Names(int count) => count == 1 ? "name is" : (Said)$"{count} names are";

    private static byte[]? SewnPath(LaidOut made, int hooping) => made.IsSewn(hooping) ? made.Begun!.Kept(hooping).Path : null;

    private static byte[]? Built(OutFolder folder, int hooping)
    {
        string path = OutPaths.NeedlePath(hooping);
        return File.Exists(Path.Combine(folder.BuildFolder, path)) ? InnerFile.Bytes(folder.BuildFolder, path) : null;
    }
}
