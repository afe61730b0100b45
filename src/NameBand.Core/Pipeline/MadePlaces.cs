using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Output;
using NameBand.Output.Packet;
using NameBand.PlanFile;

namespace NameBand.Pipeline;

/// <summary>Where the names lie in the plan that she sews from.</summary>
internal sealed record MadePlaces(ImmutableDictionary<RowRef, (string Text, int Round, double StartMm)> At, ImmutableHashSet<RowRef> Held)
{
    public static Result<MadePlaces> Read(string outFolder) => EarlierPlanFile.Read(outFolder, OutPaths.Plan, plan => new MadePlaces(
        plan.Rounds.SelectMany(r => r.Segments.SelectMany(s => s.Names.Select(n => (n, r.Number))))
            .ToImmutableDictionary(p => new RowRef(p.n.List, p.n.Line), p => (p.n.Text, p.Number, (double)p.n.StartMm)),
        [.. plan.Rows.Where(r => r.Outcome == "held").Select(r => new RowRef(r.List, r.Line))]));

    /// <summary>What the last gate held back is in no plan.</summary>
    public bool IsHeld(FoundName found) => Held.Contains(found.Placed.Lettered.Name.Row) && !At.ContainsKey(found.Placed.Lettered.Name.Row);

    public bool Has(FoundName found) => At.TryGetValue(found.Placed.Lettered.Name.Row, out var at)
        && at.Text == found.Text && at.Round == found.Round && Math.Abs(at.StartMm - found.Placed.StartMm) < Tolerance.UnseenMm;

    /// <param name="verb">The command that cannot go on.</param>
    public static Problem Moved(FoundName found, string verb) => Problem.CannotUse(
        new Where(OutFolder.Name + "/" + OutPaths.Plan, Name: PlainText.Short(found.Text, 80)),
        "In the job as it is now this name lies elsewhere than in the plan of out/, so the place would be wrong.",
        $"Run make first, then {verb} again.");
}
