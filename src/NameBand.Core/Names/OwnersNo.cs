using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Takes out names whose owners answered no to being sewn: such a no outweighs every decision.</summary>
public static class OwnersNo
{
    public static Result<NameList> Heeded(string jobFolder, NameList list)
    {
        if (!ApprovalsFile.Exists(jobFolder))
        {
            return Result.Of(list);
        }

        var (lines, _, faults) = ApprovalsFile.Read(jobFolder);
        ImmutableArray<ApprovalLine> nos = [.. lines.Where(l => l.State == ApprovalState.No)];
        if (nos.IsEmpty)
        {
            // A file that cannot be read at all may hold a no; slips in single lines are told by the command names.
            return Result.Of(list, lines.IsEmpty ? faults : []);
        }

        var problems = ImmutableArray.CreateBuilder<Problem>();
        var lineOf = Approvals.Match(nos, list.Rows, problems);
        ImmutableArray<ListedRow> rows = [.. list.Rows.Select(r => lineOf.TryGetValue(r.Row, out var no) && r.Outcome != RowOutcome.LeftOut
            ? r with
            {
                Outcome = RowOutcome.LeftOut,
                AsksNotToBeShown = true,
                Reason = FormattableString.Invariant($"its owner said no: {ApprovalsFile.FileName}, line {no.FileLine}"),
            }
            : r)];
        var placed = rows.Where(r => r.Outcome == RowOutcome.Placed).Select(r => r.Row).ToHashSet();
        return Result.Of(new NameList(rows, list.Names.RemoveAll(n => !placed.Contains(n.Row))), problems);
    }
}
