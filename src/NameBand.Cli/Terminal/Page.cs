using NameBand.Common;

namespace NameBand.Cli.Terminal;

/// <summary>
/// Writes wrapped, indented text. Everything handed to it is plain text: control characters in a person's name or
/// file never reach the terminal.
/// </summary>
internal sealed class Page(Outlet outlet)
{
    private const int LeastTextCells = 20; // Cells: in a narrower window text runs over its edge rather than into a column of single words.
    private bool _isEmpty = true;

    public void Gap()
    {
        if (!_isEmpty)
        {
            outlet.WriteLine("");
        }
    }

    public void Line(Said text, int indent = 0, Tone tone = Tone.Plain) => Hanging(Said.Nothing, text, indent, tone);

    /// <summary>A label, and beside it text whose further lines stand under its first.</summary>
    public void Hanging(Said label, Said text, int indent = 0, Tone tone = Tone.Plain)
    {
        _isEmpty = false;
        string lead = new string(' ', indent) + label.ToString();
        int leadCells = Wrapping.Cells(lead);
        int width = Math.Max(LeastTextCells, outlet.TextWidth - leadCells);
        foreach (string line in Wrapping.Wrap(PlainText.OneLine(WithoutIsolates(text.ToString())), width))
        {
            outlet.WriteLine((lead + line).TrimEnd(), tone);
            lead = new string(' ', leadCells);
        }
    }

    /// <summary>A line that is to be copied: never wrapped, only cleaned.</summary>
    public void Verbatim(string text)
    {
        _isEmpty = false;
        outlet.WriteLine(PlainText.OneLine(text));
    }

    /// <summary>Most terminals show every character from left to right, and a sign they do not know as a box.</summary>
    private static string WithoutIsolates(string text) =>
        text.Replace("\u2066", "", StringComparison.Ordinal).Replace("\u2069", "", StringComparison.Ordinal);

    /// <summary>A command that is to be copied: alike in every language.</summary>
    public void Command(int indent, params IEnumerable<string> words) =>
        Verbatim($"{new string(' ', indent)}nameband {string.Join(' ', words)}");

    /// <summary>Labels in one column, and beside each what belongs to it.</summary>
    public void Facts(IReadOnlyList<(Said Label, Said Text, Tone Tone)> facts)
    {
        int cells = facts.Select(f => Wrapping.Cells(f.Label.ToString())).DefaultIfEmpty(0).Max() + 2;
        foreach (var (label, text, tone) in facts)
        {
            Hanging(Said.Plain(Wrapping.PadTo(label.ToString(), cells)), text, 2, tone);
        }
    }

    /// <summary>Problems as a numbered list: where, what was found, what to do.</summary>
    public void Problems(IEnumerable<Problem> problems, Tone tone)
    {
        int number = 0;
        foreach (var problem in problems)
        {
            number++;
            var place = problem.Where.InWords;
            string label = FormattableString.Invariant($"{number,2}. ");
            Hanging(Said.Plain(label), place.IsEmpty ? "The job" : place, 1, tone);
            Line(problem.Found, label.Length + 1);
            if (!problem.Mend.IsEmpty)
            {
                Hanging("→ ", problem.Mend, label.Length + 1);
            }
        }
    }

    /// <summary>Things worth knowing, one beside each dot; a place that the sentence itself names is not said twice.</summary>
    public void Notes(IEnumerable<Problem> notes)
    {
        foreach (var note in notes)
        {
            string place = note.Where.InWords.English;
            bool isSaid = note.Found.English.StartsWith(place, StringComparison.OrdinalIgnoreCase);
            Note(isSaid ? (Said)$"{note.Found} {note.Mend}" : $"{note.Where.InWords}: {note.Found} {note.Mend}");
        }
    }

    /// <summary>What needs a person, with their number, and after it what is worth knowing.</summary>
    /// <param name="forWhat">What the heading says after the number of things.</param>
    public void NeedsAndNotes(IReadOnlyCollection<Problem> problems, Said forWhat)
    {
        var needs = problems.Where(p => p.Severity == Severity.NeedsPerson).ToList();
        if (needs.Count > 0)
        {
            Gap();
            Line($"{Words.Count(needs.Count, "thing")} {forWhat}:", tone: Tone.Attention);
            Problems(needs, Tone.Attention);
        }

        if (problems.Count > needs.Count)
        {
            Gap();
            Notes(problems.Where(p => p.Severity != Severity.NeedsPerson));
        }
    }

    public void Note(Said text) => Hanging("· ", text, 2);
}
