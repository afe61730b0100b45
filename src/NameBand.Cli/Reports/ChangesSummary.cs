using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What changed since the plan before: each kind with its names, the unchanged ones only counted.</summary>
/// <param name="isUnhooped">Names are sewn in runs, without a hoop.</param>
internal sealed class ChangesSummary(Page page, ToldChanges? changes, bool isUnhooped)
{
    public void Print()
    {
        if (changes is null)
        {
            return;
        }

        page.Gap();
        if (changes.Names.Count == 0)
        {
            Said stand = Words.Count(changes.Unchanged, "name stands", "names stand");
            page.Line($"Since the plan before nothing changed: {stand} where {(changes.Unchanged == 1 ? (Said)"it" : "they")} stood.");
            return;
        }

        page.Line("Since the plan before", tone: Tone.Heading);
        List<(Said, Said, Tone)> facts = [];
        Add("new", "New", n => $"{n.Text} ({In(n)})");
        Add(ToldChange.TextChanged, "Text changed", n => $"{n.TextBefore} is now {n.Text} ({In(n)})");
        Add(
            ToldChange.MovedHooping, isUnhooped ? "Other run" : "Other hooping",
            n => $"{n.Text} ({Number(n.HoopingBefore)} to {Number(n.Hooping)})");
        Add(ToldChange.MovedAlong, "Moved along", n => Said.Plain(n.Text));
        Add("withdrawn", "Withdrawn", n => Said.Plain(n.Text));
        Add(ToldChange.NoLongerSewn, "No longer sewn", n => $"{n.Text} ({n.Why})");
        Add(ToldChange.SewnThenChanged, "Sewn, changed", n => $"{n.Text} ({n.Why})", Tone.Attention);
        Add(ToldChange.SewnThenWithdrawn, "Sewn, withdrawn", n => Said.Plain(n.Text), Tone.Attention);
        facts.Add(("Unchanged", Words.Count(changes.Unchanged, "name"), Tone.Plain));
        page.Facts([.. facts]);
        page.Line("All of it, name by name, is in changes.csv.", 2, Tone.Quiet);

        void Add(string change, Said label, Func<ToldChange, Said> inWords, Tone tone = Tone.Plain)
        {
            var names = changes.Names.Where(n => n.Change == change).ToList();
            if (names.Count > 0)
            {
                Said more = names.Count > ShortList.MostOfKind ? (Said)$" and {names.Count - ShortList.MostOfKind} more" : "";
                var named = Said.Join("; ", names.Take(ShortList.MostOfKind).Select(
                    n => inWords(n).Changed((text, _) => PlainText.Short(text, 160))));
                facts.Add((label, $"{Words.Count(names.Count, "name")}: {named}{more}", tone));
            }
        }
    }

    private Said In(ToldChange name) => isUnhooped ? (Said)$"run {Number(name.Hooping)}" : $"hooping {Number(name.Hooping)}";

    private static string Number(int? hooping) => hooping?.ToString(CultureInfo.InvariantCulture) ?? "";
}
