using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Output;
using NameBand.Output.Changes;

namespace NameBand.Cli.Reports;

/// <summary>What changed since the plan before: each kind with its names, the unchanged ones only counted.</summary>
internal sealed class ChangesSummary(Page page, PlanChanges? changes)
{
    private const int MostNamed = 8;

    public void Print()
    {
        if (changes is null)
        {
            return;
        }

        page.Gap();
        if (changes.IsNothing)
        {
            page.Line($"Since the plan before nothing changed: {Words.Count(changes.Names.Length, "name stands", "names stand")} where {(changes.Names.Length == 1 ? "it" : "they")} stood.");
            return;
        }

        page.Line("Since the plan before", tone: Tone.Heading);
        List<(string, string, Tone)> facts = [];
        Add(NameFate.New, "New", n => $"{n.Text} (hooping {Number(n.Hooping)})");
        Add(NameFate.TextChanged, "Text changed", n => $"{n.TextBefore} is now {n.Text} (hooping {Number(n.Hooping)})");
        Add(NameFate.MovedHooping, "Other hooping", n => $"{n.Text} ({Number(n.HoopingBefore)} to {Number(n.Hooping)})");
        Add(NameFate.MovedAlong, "Moved along", n => n.Text);
        Add(NameFate.Withdrawn, "Withdrawn", n => n.Text);
        Add(NameFate.NoLongerSewn, "No longer sewn", n => $"{n.Text} ({n.Why})");
        Add(NameFate.SewnThenChanged, "Sewn, changed", n => $"{n.Text} ({n.Why})", Tone.Attention);
        Add(NameFate.SewnThenWithdrawn, "Sewn, withdrawn", n => n.Text, Tone.Attention);
        facts.Add(("Unchanged", Words.Count(changes.Of(NameFate.Unchanged).Count(), "name"), Tone.Plain));
        page.Facts([.. facts]);
        page.Line($"All of it, name by name, is in {OutPaths.Changes}.", 2, Tone.Quiet);

        void Add(NameFate fate, string label, Func<NameChange, string> inWords, Tone tone = Tone.Plain)
        {
            var names = changes.Of(fate).ToList();
            if (names.Count > 0)
            {
                string more = names.Count > MostNamed ? FormattableString.Invariant($" and {names.Count - MostNamed} more") : "";
                string named = string.Join("; ", names.Take(MostNamed).Select(n => PlainText.Short(inWords(n), 160)));
                facts.Add((label, $"{Words.Count(names.Count, "name")}: {named}{more}", tone));
            }
        }
    }

    private static string Number(int? hooping) => hooping?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "";
}
