using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>
/// Takes out names whose owners answered no to being sewn: such a no outweighs every decision. What is not clear may be one, and
/// holds its name.
/// </summary>
internal static class OwnersNo
{
    public static Result<NameList> Heeded(string jobFolder, NameList list)
    {
        if (!ApprovalsFile.Exists(jobFolder))
        {
            return Result.Of(list);
        }

        var (lines, _, faults) = ApprovalsFile.Read(jobFolder);
        ImmutableArray<ApprovalLine> nos =
            [.. lines.Where(l => l.State is ApprovalState.No or ApprovalState.Unclear).OrderBy(l => l.State)];
        if (nos.IsEmpty)
        {
            // A file that cannot be read at all may hold a no; slips in single lines are told by the command names.
            return Result.Of(list, lines.IsEmpty ? faults : []);
        }

        var problems = ImmutableArray.CreateBuilder<Problem>();
        var lineOf = Approvals.Match(nos, list.Rows, problems);
        ImmutableArray<ListedRow> rows = [.. list.Rows
            .Select(r => lineOf.TryGetValue(r.Row, out var line)
            && (r.Outcome != RowOutcome.LeftOut || (r.Decided == Job.Decision.Elsewhere && line.State == ApprovalState.No))
            ? Heeded(r, line) : r)];
        var placed = rows.Where(r => r.Outcome == RowOutcome.Placed).Select(r => r.Row).ToHashSet();
        return Result.Of(new NameList(rows, list.Names.RemoveAll(n => !placed.Contains(n.Row))), problems);
    }

    private static ListedRow Heeded(ListedRow row, ApprovalLine line) => line.State == ApprovalState.No
        ? row with
        {
            Outcome = RowOutcome.LeftOut,
            AsksNotToBeShown = true,
            Reason = $"its owner said no: {ApprovalsFile.FileName}, line {line.FileLine}",
        }
        : row.Outcome != RowOutcome.Placed ? row
        : row.HeldBecause(
            HeldFor.Answer,
            $"what its owner answered is not clear: ask, and write agreed, change wished or no under “state” in {ApprovalsFile.FileName}, line {line.FileLine}");
}
