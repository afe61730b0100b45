using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>make</c> says when it has made something: what it is, what needs a person, what to do next.</summary>
internal sealed class MakeSummary(Page page, MakeAnswer answer, string jobAsGiven)
{
    public void Print()
    {
        page.Line(Said.Plain(answer.Title), tone: Tone.Heading);
        page.Gap();
        page.Line(Sentence());
        page.Gap();
        page.Facts([.. Rounds(), .. Work(), .. Left()]);
        new ChangesSummary(page, answer.Changes, answer.Unhooped).Print();
        PrintPerson();
        PrintLimits();
        PrintNotes();
        new AssumedLines(page, answer.Assumed).Print();
        PrintNext();
    }

    private Said Sentence()
    {
        Said rounds = answer.Rounds.Count == 1 ? "one round" : Words.Count(answer.Rounds.Count, "round");
        Said count = answer.Names == 0 ? "No name could be placed" : Words.Count(answer.Names, "name");
        Said height = answer.LetterHeights ?? Words.Both(answer.LetterHeightMm);
        return $"{count} on {rounds}{WayWords.Face(answer)}, letters {height} high.";
    }

    private IEnumerable<(Said, Said, Tone)> Rounds()
    {
        foreach (var round in answer.Rounds)
        {
            Said label = answer.Rounds.Count == 1 ? "Strip" : (Said)$"Round {round.Number}{(round.Number == 1 ? (Said)", lowest" : "")}";
            double overMm = round.LengthMm - round.HemMm;
            if (round.Blank)
            {
                yield return (label, $"{Words.Both(round.LengthMm)}: nothing lies on it.", Tone.Attention);
                continue;
            }

            Said strip = $"{Words.Both(round.LengthMm)} with {Words.Count(round.Names, "name")}";
            yield return round.Meets
                ? (label, (Said)$"{strip}: fits its hem.", Tone.Good)
                : (label, (Said)$"{strip}: {Off(overMm, "long", "short")} for its hem of {Words.Both(round.HemMm)}.", Tone.Attention);
        }

        if (answer.Names > 0)
        {
            yield return ("In all", InAll(), answer.MatchesHem ? Tone.Good : Tone.Attention);
        }

        yield return ("Names run", $"{answer.Runs}.", Tone.Plain);
        yield return ("Cut", $"{Words.Both(answer.CutWidthMm)} wide, {Words.Both(answer.FinishedWidthMm)} once turned in", Tone.Plain);
    }

    /// <summary>The compare of all strips with all hems; the tolerance is for each round, so it is named once.</summary>
    private Said InAll()
    {
        Said strips = $"{Words.Both(answer.StripLengthMm)} of strip for {Words.Both(answer.HemLengthMm)} of hem";
        Said allowed = Words.Tied(answer.Allowed);
        double over = answer.DifferenceMm;
        return Math.Abs(over) < 0.05
            ? (Said)$"{strips}: they match, within {allowed} a round."
            : $"{strips}: {Off(over, "much", "little")} ({allowed} a round is allowed).";
    }

    private static Said Off(double overMm, Said more, Said less) =>
        $"{Words.Both(Math.Abs(overMm))} too {(overMm > 0 ? more : less)}";

    private IEnumerable<(Said, Said, Tone)> Work()
    {
        var field = Wording.Size($"{answer.FieldAlongMm:0.#}", $"{answer.FieldAcrossMm:0.#}");
        field += Said.Join("", (answer.OtherFrames ?? []).Select(f =>
            (Said)$", {f.Hoopings} of them in the frame “{f.Name}”, {Wording.Size($"{f.AlongMm:0.#}", $"{f.AcrossMm:0.#}")}"));
        Said stitches = Words.Count(answer.Stitches, "stitch", "stitches");
        Said beside = answer.SideBySide > 1 ? (Said)$", {answer.SideBySide} strips side by side" : "";
        yield return answer.Ways is { } ways
            ? ("Sewn", $"{Said.Join("; ", ways.Select(w => w.Text))}; the field is {field}{beside}, {stitches}", Tone.Plain)
            : answer.NeedlePaths
            ? ("Hoopings", $"{Words.Count(answer.Hoopings, "hooping")} in a field of {field}{beside}, {stitches}", Tone.Plain)
            : ("Sittings", WayWords.Sittings(answer), Tone.Plain);
        yield return ("At the machine", Total(answer.MachineMinutes, answer.MachineMinutesAtSetPace), Tone.Plain);
        yield return ("By hand", Total(answer.HandsOnMinutes, answer.HandsOnMinutesAtSetPace), Tone.Plain);
        Said thread = $"{Words.Metres(answer.NeedleThreadM)} on top, {Words.Metres(answer.BobbinThreadM)} in the bobbin";
        yield return ("Thread", thread, Tone.Plain);
    }

    private static Said Total(ToldFigure minutes, ToldFigure? atSetPace) => Words.Duration(minutes)
        + (atSetPace is { } set && set != minutes
            ? (Said)$" by your own pace, what is sewn included; without your log {Words.Duration(set)}" : "");

    /// <summary>What is still to do once something is sewn: by the person's own pace, where the log shows it.</summary>
    private IEnumerable<(Said, Said, Tone)> Left()
    {
        if (answer.Left is not { } left)
        {
            yield break;
        }

        bool isAllSewn = left.ToSew.Count == 0 && left.NamesToSew is not { Count: > 0 };
        Said sew = isAllSewn ? "nothing: all is sewn" : Part(left.MachineMinutes, left.MachineMinutesAtSetPace);
        if (left is { NamesToSew: { } names, NamesByName: { } all })
        {
            yield return ("Names sewn", $"{all - names.Count} of {all}", Tone.Plain);
        }

        Said finish = $"; of it {Words.Duration(left.FinishingMinutes)} from pressing to sewing down";
        yield return ("Left to sew", sew, Tone.Plain);
        yield return ("Left by hand", Part(left.HandsOnMinutes, left.HandsOnMinutesAtSetPace) + finish, Tone.Plain);
    }

    private static Said Part(ToldFigure now, ToldFigure? atSetPace) => Words.Duration(now)
        + (atSetPace is { } set && set != now ? (Said)$" by your own pace; without your log {Words.Duration(set)}" : "");

    private void PrintPerson()
    {
        int count = answer.Needs.Count;
        page.Gap();
        if (count == 0)
        {
            page.Line("Nothing needs a decision: every name is placed.", tone: Tone.GoodHeading);
            return;
        }

        var ofRows = answer.Problems.Skip(answer.Needs.OfJob).Take(answer.Needs.OfRows).ToList();
        page.Line($"{Words.Count(count, "thing needs", "things need")} a decision before you sew", tone: Tone.AttentionHeading);
        page.Problems(answer.Problems.Take(answer.Needs.OfJob).Concat(ofRows.Take(ShortList.Most)), Tone.Attention);
        int more = ofRows.Count - ShortList.Most;
        if (more > 0)
        {
            Said held = Words.Count(more, "more row is", "more rows are");
            page.Line($"and {held} held; plan.json has them all, under problems.", 2, Tone.Quiet);
        }

        if (ofRows.Exists(p => p.Mend.IsEmpty))
        {
            page.Hanging(
                "→ ",
                "Settle held rows in corrections.csv (keep, change or leave out), or change the job so that they fit; "
                + "the command names prints lines to start from.",
                1);
        }
    }

    private void PrintLimits()
    {
        if (answer.HeightLimits.Count == 0)
        {
            return;
        }

        page.Gap();
        page.Line("What keeps the letters from being taller", tone: Tone.Heading);
        Said without = "Without it";
        foreach (var limit in answer.HeightLimits.Take(ShortList.Most))
        {
            Said height = Words.Tied(Length.FromMm(limit.HeightWithoutMm).InMillimetres());
            Said where = limit.Heading == true ? (Said)$"{limit.List}, a heading" : new RowRef(limit.List, limit.Line).InWords;
            page.Note($"“{limit.Text}” ({where}): {limit.Because}."
                + $"{(limit.Gain ? (Said)$" {without} letters could be {height} high." : "")}");
            without = "Without this one too";
        }
    }

    private void PrintNotes()
    {
        var rows = answer.Rows;
        var notes = answer.Problems.Where(p => p.Severity == Severity.Note).ToList();
        if (rows.Merged + rows.LeftOut + notes.Count == 0)
        {
            return;
        }

        page.Gap();
        page.Line("Good to know", tone: Tone.Heading);
        if (rows.Merged + rows.LeftOut > 0)
        {
            Said repeats = $"{rows.Merged} {Said.Plural(rows.Merged, "is a repeat", "are repeats")}";
            Said leftOut = $"{rows.LeftOut} {(rows.LeftOut == 1 ? (Said)"is" : "are")} left out";
            page.Note($"Of {Words.Count(rows.All, "row")}, {repeats} and {leftOut}; the command names says which and why.");
        }

        page.Notes(notes.Take(ShortList.Most));
        if (notes.Count > ShortList.Most)
        {
            page.Line($"and {Words.Count(notes.Count - ShortList.Most, "more", "more")}; --json shows them all.", 2, Tone.Quiet);
        }
    }

    private void PrintNext()
    {
        string folder = Shown(answer.OutFolder);
        page.Gap();
        page.Line("Next", tone: Tone.Heading);
        int number = 0;
        foreach (var step in Steps(folder))
        {
            number++;
            page.Hanging($"{number}. ", step, 2);
        }

        page.Line($"All figures are in {folder}/plan.json. The mark of this plan, on all its sheets, is {answer.Mark}.", 2, Tone.Quiet);
    }

    private IEnumerable<Said> Steps(string folder)
    {
        if (answer.Needs.Count > 0)
        {
            yield return "Settle what is listed above, and run make again.";
        }

        if (answer.Names == 0)
        {
            yield break;
        }

        yield return $"Look at the proofs in {folder}/proofs and check how each name is spelt.";
        IEnumerable<Said> toSew =
        [
            .. answer.Ways is null && answer.NeedlePaths ? [] : WayWords.Steps(answer, folder), .. answer.NeedlePaths ? ToSew(folder) : [],
            .. NamesToSew(),
        ];
        foreach (var step in toSew)
        {
            yield return step;
        }
    }

    /// <summary>Where names are logged one by one: how, and what is left of them.</summary>
    private IEnumerable<Said> NamesToSew()
    {
        if (answer.Left is { NamesToSew: { Count: > 0 } left })
        {
            yield return $"Go on with {Said.Plural(left.Count, "name", "names")} {SewnSummary.Signed(left)}, and say what you sew: sewn {jobAsGiven} n{left[0]}.";
        }
        else if (answer.Left is null && !answer.NeedlePaths)
        {
            yield return $"Say what you sew, name by name: sewn {jobAsGiven} n1 --minutes 6.";
        }
    }

    private IEnumerable<Said> ToSew(string folder)
    {
        if (answer.Left is { ToSew: var left, NamesToSew: var names } && (left.Count > 0 || names is not { Count: > 0 }))
        {
            Said paths = left.Count == 1 ? "needle path" : Words.Count(left.Count, "needle path");
            yield return left.Count == 0
                ? (Said)$"Every {(answer.Ways is null ? (Said)"hooping" : "needle path")} is sewn: go on with the work by hand, which the command hours lists."
                : $"Sew the {paths} still to be sewn in {folder}/needle-paths: {SewnSummary.Numbers(left)}.";
            yield break;
        }

        yield return "Sew the swatch that the command swatch makes, on a scrap of the same cloth; press it and measure it "
            + "before you cut into the real cloth.";
        int count = answer.Ways?.Where(w => w.IsFollowed).Sum(w => w.Hoopings) ?? answer.Hoopings;
        yield return count == 1
            ? (Said)$"Sew the one needle path in {folder}/needle-paths."
            : $"Sew the {Words.Count(count, "needle path")} in {folder}/needle-paths, in the order of their numbers.";
    }

    /// <summary>The folder as the person would write it: under the job as given, if it lies there.</summary>
    private string Shown(string folder)
    {
        string job = Path.GetFullPath(jobAsGiven);
        string full = Path.GetFullPath(folder);
        string shown = full.StartsWith(job + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? Path.Combine(jobAsGiven, Path.GetRelativePath(job, full))
            : folder;
        return shown.Replace('\\', '/').TrimEnd('/');
    }
}
