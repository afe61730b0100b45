using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Cli.Reports;

/// <summary>
/// What a person has to decide: held rows first, then the rest, each once. A held row whose mend is empty is settled
/// in corrections.csv.
/// </summary>
internal static class PersonList
{
    public static List<Problem> Of(NameList? names, IEnumerable<Problem> problems)
    {
        var needing = problems.Where(p => p.Severity == Severity.NeedsPerson).ToList();
        var held = (names?.Rows ?? []).Where(r => r.Outcome == RowOutcome.Held).ToList();
        var all = new List<Problem>();
        foreach (var row in held)
        {
            var said = needing.FirstOrDefault(p => p.Where.File == row.Row.List && p.Where.Line == row.Row.Line);
            all.Add(said is null
                ? Problem.NeedsPerson(
                    new Where(row.Row.List, row.Row.Line, Name: Shown(row.Text)), Words.AsSentence(row.Reason), "")
                : said with { Where = said.Where with { Name = said.Where.Name ?? Shown(row.Text) } });
            needing.Remove(said!);
        }

        return [.. all, .. needing];
    }

    private static string? Shown(string text) => text.Length > 0 ? PlainText.Short(text, 80) : null;
}
