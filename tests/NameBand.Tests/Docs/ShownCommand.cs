using System.Text.RegularExpressions;
using NameBand.Tests.House;

namespace NameBand.Tests.Docs;

/// <summary>A command as it is shown on a page: in a block, in a line by itself, or between backticks in the text.</summary>
/// <param name="Args">What comes after the program's name; quotes are taken off.</param>
internal sealed partial record ShownCommand(string Page, string Text, string[] Args)
{
    private const string Ours = "dotnet run --project src/NameBand.Cli -c Release -- ";

    public static readonly string[] Verbs =
        ["make", "names", "sewn", "hours", "plans", "print", "page", "measure", "faces", "swatch", "check", "public", "invite"];

    public static IEnumerable<string> Pages() =>
        Directory.GetFiles(Path.Combine(Repository.Root, "docs"), "*.md").Select(f => "docs/" + Path.GetFileName(f))
            .Concat(["README.md", "DEVELOPERS.md"]).Order(StringComparer.Ordinal);

    /// <summary>Every command of ours on a page, in its order.</summary>
    public static IEnumerable<ShownCommand> On(string page)
    {
        foreach (string span in Spans(Repository.Read(page)))
        {
            string text = TwoBlanks().Split(span.Trim(), 2)[0];
            string? rest = text.StartsWith(Ours, StringComparison.Ordinal) ? text[Ours.Length..]
                : text.StartsWith("nameband ", StringComparison.Ordinal) ? text["nameband ".Length..]
                : Bare().IsMatch(text) ? text : null;
            if (rest is not null)
            {
                yield return new ShownCommand(page, text, [.. Word().Matches(rest).Select(m => m.Value.Trim('"'))]);
            }
        }
    }

    /// <summary>Lines of blocks that start another program, to be known by name.</summary>
    public static IEnumerable<string> Others(string page) =>
        Spans(Repository.Read(page)).Select(s => s.Trim())
            .Where(s => s.StartsWith("dotnet ", StringComparison.Ordinal) && !(s + " ").StartsWith(Ours, StringComparison.Ordinal));

    /// <summary>Lines of fenced and indented blocks, and what stands between backticks; in their order.</summary>
    private static IEnumerable<string> Spans(string page)
    {
        bool isFenced = false;
        foreach (string line in page.Split('\n'))
        {
            if (line.TrimStart().StartsWith("```", StringComparison.Ordinal))
            {
                isFenced = !isFenced;
                continue;
            }

            if (isFenced || line.StartsWith("    ", StringComparison.Ordinal))
            {
                yield return line;
            }

            foreach (Match span in Backticks().Matches(isFenced ? "" : line))
            {
                yield return span.Groups[1].Value;
            }
        }
    }

    /// <summary>A verb and a job, without the program before it.</summary>
    [GeneratedRegex("^(make|names|sewn|hours|fit|print|page|measure|faces|swatch) (JOB|FOLDER)\\b")]
    private static partial Regex Bare();

    [GeneratedRegex("\\s{2,}")]
    private static partial Regex TwoBlanks();

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Backticks();
}
