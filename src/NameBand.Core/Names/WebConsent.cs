using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>What a line of approvals.csv says of the web.</summary>
/// <param name="Row">Its line is 0 where the file does not give one.</param>
internal sealed record WebLine(RowRef Row, string Name, string Details, WebAnswer Answer, int FileLine);

internal sealed record WebLines(ImmutableArray<WebLine> All);

/// <summary>
/// Which names may be shown on the web: a question of its own, apart from the wish not to be sewn. Only a yes is a yes, and a no in any
/// place outweighs it.
/// </summary>
/// <param name="Shown">Rows whose owners said yes, and nobody for them no.</param>
/// <param name="Refused">Rows to be sewn for which there is a no, or what may be one.</param>
/// <param name="Unanswered">Rows to be sewn for which there is no answer.</param>
internal sealed record WebConsent(ImmutableHashSet<RowRef> Shown, int Refused, int Unanswered, ImmutableArray<Problem> Problems)
{
    /// <returns>No consent of anybody where approvals.csv cannot be read.</returns>
    public static Result<WebConsent> Of(string jobFolder, NameList list)
    {
        var read = ApprovalsFile.ReadWeb(jobFolder);
        if (read.Value is not { } lines)
        {
            return Result.Fail<WebConsent>([.. read.Problems]);
        }

        var answers = new RowAnswers(list.Rows, lines.All);
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var shown = ImmutableHashSet.CreateBuilder<RowRef>();
        int refused = 0;
        int unanswered = 0;
        foreach (var row in list.Rows.Where(r => r.Outcome == RowOutcome.Placed))
        {
            var said = answers.Of(row);
            problems.AddRange(Doubts(row, said));
            switch (said.Select(s => s.Answer).DefaultIfEmpty(WebAnswer.None).Max())
            {
                case WebAnswer.Yes:
                    shown.Add(row.Row);
                    break;
                case WebAnswer.None:
                    unanswered++;
                    break;
                default:
                    refused++;
                    break;
            }
        }

        return Result.Of(new WebConsent(shown.ToImmutable(), refused, unanswered, problems.ToImmutable()));
    }

    private static IEnumerable<Problem> Doubts(ListedRow row, IReadOnlyList<Said> said)
    {
        string name = PlainText.Short(row.Text, 80);
        foreach (var unclear in said.Where(s => s.Answer == WebAnswer.Unclear))
        {
            yield return Problem.NeedsPerson(
                unclear.Where with { Name = name },
                "Whether it may be shown on the web is answered with neither yes nor no, so it is not shown.",
                $"Ask its owner, and write yes or no in the column “{ApprovalsFile.WebColumn}” of {ApprovalsFile.FileName}, or in the list.");
        }

        var no = said.FirstOrDefault(s => s.Answer == WebAnswer.No);
        var yes = said.FirstOrDefault(s => s.Answer == WebAnswer.Yes);
        if (no is not null && yes is not null)
        {
            yield return Problem.NeedsPerson(
                no.Where with { Name = name }, $"This says no to the web, and {yes.Where} says yes; the no counts.",
                "Ask its owner, and let both say the same.");
        }
    }

    private sealed record Said(WebAnswer Answer, Where Where);

    /// <summary>All that is said of a row: in it, in lines that are about it, and in what may be about it too.</summary>
    private sealed class RowAnswers
    {
        private readonly ILookup<RowRef, WebLine> _certain;
        private readonly ILookup<string, WebLine> _loose;
        private readonly ILookup<string, ListedRow> _byName;

        public RowAnswers(ImmutableArray<ListedRow> rows, ImmutableArray<WebLine> lines)
        {
            var known = rows.ToDictionary(r => r.Row);
            var follower = new RowFollower([.. rows.Select(r => new StandingRow(r.Row, r.Text, r.DetailsPrint))]);
            var found = follower.Find([.. lines.Select(l => new SaidOfRow(l.Row, l.Name, l.Details, l.Answer.ToString()))]);
            RowRef? RowOf(int i) => found[i].Row
                ?? (known.TryGetValue(lines[i].Row, out var at) && IsNamed(at, lines[i].Name) ? at.Row : null);
            var placed = Enumerable.Range(0, lines.Length).Select(i => (Line: lines[i], Row: RowOf(i))).ToList();
            _certain = placed.Where(p => p.Row is not null).ToLookup(p => p.Row!.Value, p => p.Line);
            _loose = placed.Where(p => p.Row is null).ToLookup(p => Key(p.Line.Name), p => p.Line, StringComparer.Ordinal);
            _byName = rows.ToLookup(r => Key(r.Was), StringComparer.Ordinal);
        }

        public IReadOnlyList<Said> Of(ListedRow row)
        {
            var said = new List<Said> { new(row.Web, new Where(row.Row.List, row.Row.Line)) };

            // A yes was said to the words that were shown then.
            said.AddRange(_certain[row.Row].Where(l => l.Answer != WebAnswer.Yes || IsNamed(row, l.Name)).Select(Told));

            // Whose line it is cannot be told: no yes follows from it, and no no is lost.
            said.AddRange(new[] { row.Text, row.Was }.Select(Key).Distinct(StringComparer.Ordinal)
                .SelectMany(k => _loose[k]).Where(l => l.Answer != WebAnswer.Yes).Select(Told));

            // A second row of the name that is not sewn may well be of the same person.
            said.AddRange(_byName[Key(row.Was)]
                .Where(r => r.Row != row.Row && r.Outcome != RowOutcome.Placed
                    && (r.Web is WebAnswer.No or WebAnswer.Unclear || r.AsksNotToBeShown))
                .Select(r => new Said(r.AsksNotToBeShown ? WebAnswer.No : r.Web, new Where(r.Row.List, r.Row.Line))));
            return said;
        }

        private static Said Told(WebLine line) => new(line.Answer, new Where(ApprovalsFile.FileName, line.FileLine));

        private static bool IsNamed(ListedRow row, string name) => Key(name) == Key(row.Text) || Key(name) == Key(row.Was);

        private static string Key(string name) => Resemblance.Fold(NameText.Clean(name).Text);
    }
}
