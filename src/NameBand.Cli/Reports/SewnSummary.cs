using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>sewn</c> says: what was written down, what is done, what is to do.</summary>
internal sealed class SewnSummary(Page page, SewnAnswer answer)
{
    public void Print()
    {
        page.Line(Said.Plain(answer.Title), tone: Tone.Heading);
        page.Gap();
        if (answer.Said is { } said)
        {
            page.Line(Confirmation(said), tone: Tone.Good);
            page.Gap();
        }

        if (answer.Length is { } length)
        {
            page.Line(OfLength(length), tone: Tone.Good);
            page.Gap();
        }

        page.Facts([.. Facts()]);
        PrintAgain();
        PrintWho();
        PrintNext();
        if (answer.Problems.Count > 0)
        {
            page.Gap();
            page.Line("Good to know", tone: Tone.Heading);
            page.Problems(answer.Problems, Tone.Attention);
        }
    }

    private List<ToldHooping> Open => [.. answer.Hoopings.Where(h => h.State != "sewn")];

    private List<ToldName> OpenNames => [.. answer.Names?.Where(n => n.State != "sewn") ?? []];

    private IEnumerable<(Said, Said, Tone)> Facts()
    {
        var done = answer.Hoopings.Where(h => h.State == "sewn").ToList();
        var names = answer.Names?.Where(n => n.State == "sewn").ToList() ?? [];
        bool isAny = done.Count > 0 || names.Count > 0;
        yield return ("Done", isAny ? Listed(done, names, answer.Names?.Count) : "nothing yet", isAny ? Tone.Good : Tone.Plain);
        bool isOpen = Open.Count > 0 || OpenNames.Count > 0;
        yield return ("To do", isOpen ? Listed(Open, OpenNames, null) : "nothing: all is sewn", Tone.Plain);
        if (answer.Finished is { } finished)
        {
            yield return ("Finishing",
                Said.Join("; ", finished.Select(f => (Said)$"round {f.Round}: {f.Text}")), Tone.Plain);
        }

        yield return ("Time left", TimeLeft(isOpen), Tone.Plain);
    }

    private void PrintAgain()
    {
        var again = answer.Hoopings.Where(h => h.State == "again").ToList();
        var names = answer.Names?.Where(n => n.State == "again").ToList() ?? [];
        if (again.Count == 0 && names.Count == 0)
        {
            return;
        }

        page.Gap();
        page.Line("To be sewn again", tone: Tone.AttentionHeading);
        foreach (var hooping in again)
        {
            page.Line($"{hooping.Number}: {Wording.List([.. hooping.Names])}{(hooping.OnItsOwn ? (Said)", on a piece of its own" : "")}", 2);
        }

        foreach (var name in names)
        {
            page.Line($"{Signed([name.Number])}: {name.Text}", 2);
        }
    }

    /// <summary>Who has sewn how much, where it was said.</summary>
    private void PrintWho()
    {
        var who = answer.Hoopings.Where(h => h.By is not null).GroupBy(h => h.By!, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal).ToList();
        if (who.Count > 0)
        {
            page.Gap();
            page.Line($"Sewn by: {Said.Join("; ", who.Select(g => (Said)$"{PlainText.Short(g.Key, 60)}, {Words.Count(g.Count(), "hooping")}"))}");
        }
    }

    private void PrintNext()
    {
        if (Open.Count == 0 && OpenNames.Count == 0)
        {
            return;
        }

        page.Gap();
        page.Line("Next", tone: Tone.Heading);
        foreach (var hooping in Open.Take(ShortList.MostOfSeveral))
        {
            Said names = Wording.List([.. hooping.Names]);
            page.Line($"{hooping.Number}: {names}, {hooping.Minutes:0.0} min{Marked(hooping)}", 2);
        }

        foreach (var name in OpenNames.Take(ShortList.MostOfSeveral))
        {
            Said minutes = name.Minutes > 0 ? (Said)$", {name.Minutes:0.0} min" : "";
            page.Line($"{Signed([name.Number])}: {name.Text}{minutes}", 2);
        }
    }

    private Said TimeLeft(bool isOpen)
    {
        double machine = Open.Sum(h => h.Minutes) + OpenNames.Sum(n => n.Minutes);
        Said finishing = answer.FinishingMinutes switch
        {
            null => "the work by hand is still ahead, from pressing to sewing down; run make to calculate it",
            < 0.05 => "nothing is left of the work by hand",
            { } minutes => (Said)$"about {Words.Duration(minutes)} by hand is still ahead, from pressing to sewing down",
        };
        if (!isOpen && answer.FinishingMinutes < 0.05)
        {
            return "none: all is sewn, and sewn down";
        }

        return !isOpen ? (Said)$"none at the machine; {finishing}"
            : machine == 0 ? (Said)$"the names that are left are sewn by hand, which hours calculates. After it {finishing}"
            : $"{Words.Duration(machine)} at the machine, as the plan has it; "
                + $"make calculates it again with your own pace. After it {finishing}";
    }

    private Said Confirmation(ToldDeed said)
    {
        string number = said.Hooping.GetValueOrDefault().ToString(CultureInfo.InvariantCulture);
        Said minutes = said.Minutes is { } m ? (Said)$", {m:0.#} minutes at the machine" : "";
        Said hands = said.HandMinutes is { } h ? (Said)$", {h:0.#} by hand" : "";
        if (said.Names is { } names)
        {
            return OfNames(said, names, minutes + hands);
        }

        Said step = said.Step is { } word ? (Said)$"The step “{word}” {(said.Round > 0 ? (Said)$"of round {said.Round}" : "of all rounds")}" : "";
        return said.Deed switch
        {
            "done" => (Said)$"{step} is logged as done, and with it those before it.",
            "left" => $"{Words.Both(said.MeasuredMm ?? 0)} of round {said.Round} is logged as left bare. "
                + $"Run make: the names that are not sewn are spread into it.",
            "undone" => $"{step} counts as still to be done, and so do those after it.",
            "sewn" => $"Hooping {number}{Names(said.Hooping.GetValueOrDefault())} is logged as sewn{minutes}{hands}. "
                + $"Its files are kept in the folder sewn and stay as they are.",
            "again" => $"Hooping {number}{Names(said.Hooping.GetValueOrDefault())} is to be sewn again. "
                + $"Run make: names that were changed in the list come out with their new words.",
            "patch" => $"Hooping {number} is to be sewn again on a piece of its own: "
                + $"cut cloth {Words.Both(said.PatchOnClothMm ?? 0)} long, a seam at each end included, and let it into the strip.",
            "mistake" => $"Hooping {number}{Names(said.Hooping.GetValueOrDefault())} counts as not sewn.",
            _ => $"The piece of hooping {number} is logged as {Words.Both(said.MeasuredMm ?? 0)} long; "
                + $"{Words.Both(said.ExpectedMm ?? 0)} was expected. Run make: the rest is set out by what was measured.",
        };
    }

    private Said OfNames(ToldDeed said, IReadOnlyList<int> numbers, Said minutes)
    {
        var texts = answer.Names?.Where(n => numbers.Contains(n.Number)).Select(n => $"“{n.Text}”").ToList() ?? [];
        Said names =
            $"{Said.Plural(numbers.Count, "Name", "Names")} {Signed(numbers)}, {Wording.List([.. texts.Take(ShortList.MostOfSeveral)])}{(texts.Count > ShortList.MostOfSeveral ? (Said)" and more" : "")},";
        bool isOne = numbers.Count == 1;
        return said.Deed switch
        {
            "sewn" => (Said)($"{names} {(isOne ? (Said)"is" : "are")} logged as sewn{minutes}. {(isOne ? (Said)"It stays" : "They stay")} where the plan "
                + $"has {(isOne ? (Said)"it" : "them")}."),
            "again" => $"{names} {(isOne ? (Said)"is" : "are")} to be sewn again. Run make: a name that was changed in the list comes out with its new words.",
            _ => $"{names} {(isOne ? (Said)"counts" : "count")} as not sewn.",
        };
    }

    private Said OfLength(ToldLength length)
    {
        Said name = $"{Signed([length.Name])}, “{answer.Names?.FirstOrDefault(n => n.Number == length.Name)?.Text}”";
        Said where = length.OnScrap ? " on a scrap" : "";
        return length.TakenBack
            ? (Said)$"The length of {name}{where}, {length.Millimetres} mm, counts no longer. Its line in lengths.csv stays and says so."
            : $"{name} came out {length.Millimetres} mm long{where}: that is "
                + $"logged{(length.OnScrap ? (Said)", and the name is still to sew" : "")}. "
                + $"Run make: the start marks follow.";
    }

    /// <summary>Whose hooping it is, to be seen at once where the number was mistyped.</summary>
    private Said Names(int hooping)
    {
        var names = answer.Hoopings.FirstOrDefault(h => h.Number == hooping)?.Names ?? [];
        return names.Count == 0 ? "" : (Said)$", {Wording.List([.. names.Select(n => $"“{n}”")])},";
    }

    private static Said Marked(ToldHooping hooping) => hooping.Mark is not { } mark ? ""
        : (Said)$", mark {mark}{(hooping.AsksForMark ? (Said)" (there are older sheets: say it with --mark)" : "")}";

    private static Said Listed(List<ToldHooping> hoopings, List<ToldName> names, int? of)
    {
        Said?[] parts =
        [
            hoopings.Count > 0 ? (Said)$"{Words.Count(hoopings.Count, "hooping")}: {Numbers([.. hoopings.Select(h => h.Number)])}" : null,
            names.Count > 0
            ? (Said)$"{(of is { } all ? (Said)$"{names.Count} of {all} names" : Words.Count(names.Count, "name"))}: {Signed([.. names.Select(n => n.Number)])}" : null,
        ];
        return Said.Join("; ", parts.OfType<Said>());
    }

    public static string Numbers(IReadOnlyList<int> hoopings) => EveningSummary.Numbers(hoopings).Split(' ', 2)[1];

    /// <summary>Numbers of names, such as <c>n3–n8</c>.</summary>
    public static string Signed(IReadOnlyList<int> names) => string.Join(
        ", ", Numbers(names).Split(", ").Select(r => string.Join("–", r.Split('–').Select(n => "n" + n))));
}
