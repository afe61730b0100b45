using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Output;
using NameBand.Output.Changes;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline;

/// <summary>Says what changed since the plan that lies in the out folder still.</summary>
internal static class PlanDiff
{
    /// <summary>
    /// The changes; null when there was no plan before. Writes changes.csv; where nothing changed, the earlier one is
    /// kept as it is, so that making the same plan twice gives the same files.
    /// </summary>
    public static PlanChanges? Run(LaidOut made, PreviousOutput earlier, OutFolder folder)
    {
        if (earlier.Names is not { } before)
        {
            return null;
        }

        var changes = PlanComparison.Of(
            before, NamePlace.Of(made.Plan), made.Rows.Rows, made.SewnThenChanged ?? ImmutableDictionary<RowRef, string>.Empty);
        if (!IsNews(changes, before, made))
        {
            if (InnerFile.IsPlain(folder.FullPath, OutPaths.Changes))
            {
                byte[] bytes = folder.Earlier(OutPaths.Changes);
                Sewing.Write(folder, OutPaths.Changes, stream => stream.Write(bytes));
            }

            return changes;
        }

        Sewing.Write(folder, OutPaths.Changes, stream => ChangesCsv.Write(stream, changes));
        return changes;
    }

    /// <summary>What was told of a sewn name last time is no news when it still stands so.</summary>
    private static bool IsNews(PlanChanges changes, ImmutableArray<NamePlace> before, LaidOut made)
    {
        var gone = before.Where(b => b.IsGone).Select(b => b.Text).ToHashSet(StringComparer.Ordinal);
        var told = before.Where(b => !b.IsGone).Select(b => (b.Text, b.Reason)).ToHashSet();
        var reasons = made.Rows.Rows.ToDictionary(r => r.Row, r => r.Reason);
        return changes.Names.Any(n => n.Fate switch
        {
            NameFate.Unchanged => false,
            NameFate.SewnThenChanged => !told.Contains((n.Text, reasons[n.Row].English)),
            NameFate.SewnThenWithdrawn => !gone.Contains(n.Text),
            _ => true,
        });
    }
}
