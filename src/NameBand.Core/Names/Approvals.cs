using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>Says of each name how it stands with its owner.</summary>
public static class Approvals
{
    /// <returns>Null when the job has no approvals.csv: then nobody is asked.</returns>
    public static ApprovalReport? Of(string jobFolder, NameList list, Corrections corrections)
    {
        if (!ApprovalsFile.Exists(jobFolder))
        {
            return null;
        }

        var (lines, separator, faults) = ApprovalsFile.Read(jobFolder);
        var problems = faults.ToBuilder();
        var rows = list.Rows.Where(r => r.Outcome is RowOutcome.Placed or RowOutcome.Held).ToList();
        var lineOf = Match(lines, list.Rows, problems);
        ImmutableArray<NameApproval> names = [.. rows.Select(r => Stand(r, lineOf.GetValueOrDefault(r.Row)))];
        var add = names.Where(n => n.Line is null)
            .Select(n => CsvText.Row([n.Row.Row.List, Whole(n.Row.Row.Line), n.Row.Text, "", "", "", n.Row.DetailsPrint], separator));
        ImmutableArray<RowDecision> wishes = [.. names.Select(n => Wish(n, problems)).OfType<RowDecision>()];
        return new ApprovalReport(
            names, [.. lines.IsEmpty ? (string[])[CsvText.Row(ApprovalsFile.Columns, separator)] : [], .. add],
            [.. wishes.Select(w => CorrectionLines.Line(w, corrections))], problems.ToImmutable())
        {
            Wishes = wishes,
        };
    }

    /// <summary>The names in their order, those not agreed to after the others.</summary>
    public static NameList AgreedFirst(NameList list, ApprovalReport report)
    {
        var agreed = report.In(ApprovalState.Agreed).Select(n => n.Row.Row).ToHashSet();
        return list with
        {
            Names =
            [.. list.Names.Select(n => n with { IsPlannedLast = !agreed.Contains(n.Row) }).OrderBy(n => n.IsPlannedLast)]
        };
    }

    internal static Dictionary<RowRef, ApprovalLine> Match(
        ImmutableArray<ApprovalLine> lines, ImmutableArray<ListedRow> rows, ImmutableArray<Problem>.Builder problems)
    {
        var standing = rows.Select(r => new StandingRow(r.Row, r.Text, r.DetailsPrint)).ToList();
        var found = new RowFollower(standing).Find(
            [.. lines.Select(l => new SaidOfRow(l.Row, l.Name, l.Details, $"{l.State} {l.Text}"))]);
        var known = rows.ToDictionary(r => r.Row);
        var lineOf = new Dictionary<RowRef, ApprovalLine>();
        for (int i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            var where = new Where(ApprovalsFile.FileName, line.FileLine);
            if (found[i].Row is { } row)
            {
                lineOf.TryAdd(row, line);
            }
            else if (found[i].Candidates.Length > 0)
            {
                problems.Add(Problem.NeedsPerson(
                    where, $"“{PlainText.Short(line.Name, 80)}” stands in {Said.Join(" and in ", found[i].Candidates.Take(4).Select(c => c.InWords))}; "
                        + $"it is not clear whose answer this is.",
                    "Mend “list” and “line”."));
            }
            else if (known.TryGetValue(line.Row, out var at)
                && (IsWish(line, at) || SewnMatching.AreAlike(NameText.Clean(line.Name).Text, at.Text)))
            {
                if (!lineOf.TryAdd(line.Row, line) && (lineOf[line.Row] is var first)
                    && (first.State != line.State || first.Text != line.Text))
                {
                    problems.Add(Problem.NeedsPerson(
                        where with { Name = PlainText.Short(at.Text, 80) }, $"Answered twice: “{ApprovalsFile.Word(line.State)}” here, "
                            + $"“{ApprovalsFile.Word(first.State)}” in line {Whole(first.FileLine)}, which counts.",
                        "Ask its owner, and keep the line that is right."));
                }
            }
            else
            {
                problems.Add(
                    Problem.Note(
                    where, $"“{PlainText.Short(line.Name, 80)}” is in no list any longer, or its answer stands in an earlier line; "
                    + $"this line was skipped."));
            }
        }

        return lineOf;
    }

    private static bool IsWish(ApprovalLine line, ListedRow row) =>
        line.State == ApprovalState.ChangeWished && line.Text.Length > 0 && line.Text == row.Text;

    private static NameApproval Stand(ListedRow row, ApprovalLine? line)
    {
        if (line is null)
        {
            return new NameApproval(row, ApprovalState.NotAsked, null, false);
        }

        // What its owner wished is what will be sewn: that is as good as agreed.
        if (IsWish(line, row))
        {
            return new NameApproval(row, ApprovalState.Agreed, line, false);
        }

        bool isOutdated = NameText.Clean(line.Name).Text != row.Text;
        return new NameApproval(
            row, isOutdated && line.State is not (ApprovalState.ChangeWished or ApprovalState.Unclear)
            ? ApprovalState.NotAsked : line.State, line, isOutdated);
    }

    /// <summary>The decision that would do what was wished.</summary>
    private static RowDecision? Wish(NameApproval name, ImmutableArray<Problem>.Builder problems)
    {
        if (name is not { State: ApprovalState.ChangeWished, Line: { } line })
        {
            return null;
        }

        var where = new Where(ApprovalsFile.FileName, line.FileLine, Name: PlainText.Short(name.Row.Text, 80));
        if (line.Text.Length == 0)
        {
            problems.Add(
                Problem.NeedsPerson(
                where, "The owner wishes a change, but the line does not say which.", "Ask, and write it in the column “text”."));
            return null;
        }

        if (name.Row.Was != name.Row.Text)
        {
            problems.Add(Problem.NeedsPerson(
                where, $"“{PlainText.Short(line.Text, 80)}” is wished, and {Corrections.FileName} already makes “{PlainText.Short(name.Row.Text, 80)}” of this row.",
                $"Change the column “text” of its line in {Corrections.FileName}."));
            return null;
        }

        string why = line.Date.Length > 0 ? $"wished {line.Date}" : "wished";
        return new RowDecision(
            name.Row.Row, name.Row.Was, Decision.Change, line.Text, why)
        { Details = name.Row.DetailsPrint, Show = name.Row.Show };
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
