using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>What <c>make</c> says when it has made something: what it is, what needs a person, what to do next.</summary>
internal sealed class MakeSummary(Page page, MakeReport report, string jobAsGiven)
{
    private const int MostShown = 12;

    public void Print()
    {
        if (report.Plan is not { } plan || report.Estimate is not { } estimate)
        {
            throw new InvalidOperationException("A report that is not refused has a plan and an estimate.");
        }

        if (report.Job is { } job)
        {
            page.Line(job.Title, tone: Tone.Heading);
            page.Gap();
        }

        page.Line(Sentence(plan));
        page.Gap();
        page.Facts([.. Rounds(plan), .. Work(plan, estimate), .. Left(estimate)]);
        new ChangesSummary(page, report.Changes).Print();
        PrintPerson();
        PrintLimits(plan);
        PrintNotes();
        AssumedLines.Print(page, report.Job);
        PrintNext(plan);
    }

    private string Sentence(StripPlan plan)
    {
        string face = report.Job is { } job ? WayWords.Face(job, plan) : "";
        string rounds = plan.Rounds.Length == 1 ? "one round" : Words.Count(plan.Rounds.Length, "round");
        string count = plan.NameCount == 0 ? "No name could be placed" : Words.Count(plan.NameCount, "name");
        return $"{count} on {rounds}{face}, letters {(plan.HasSizes ? plan.LetterHeightsInWords : Words.Both(plan.LetterHeightMm))} high.";
    }

    private static IEnumerable<(string, string, Tone)> Rounds(StripPlan plan)
    {
        foreach (var round in plan.Rounds)
        {
            string number = round.Number.ToString(CultureInfo.InvariantCulture);
            string label = plan.Rounds.Length == 1 ? "Strip" : $"Round {number}{(round.Number == 1 ? ", lowest" : "")}";
            double overMm = round.LengthMm - round.HemMm;
            if (!round.Names.Any())
            {
                yield return (label, $"{Words.Both(round.LengthMm)}: nothing lies on it.", Tone.Attention);
                continue;
            }

            string names = Words.Count(round.Names.Count(n => n.IsOfList), "name");
            yield return plan.FitOf(round).Meets
                ? (label, $"{Words.Both(round.LengthMm)} with {names}: fits its hem.", Tone.Good)
                : (label, $"{Words.Both(round.LengthMm)} with {names}: {Words.Both(Math.Abs(overMm))} too {(overMm > 0 ? "long" : "short")} for its hem of {Words.Both(round.HemMm)}.", Tone.Attention);
        }

        if (plan.NameCount > 0)
        {
            yield return ("In all", InAll(plan), plan.MatchesHem ? Tone.Good : Tone.Attention);
        }

        yield return ("Names run", plan.Hem.RunsInWords + ".", Tone.Plain);
        yield return ("Cut", $"{Words.Both(plan.Hem.Strip.CutWidthMm)} wide, {Words.Both(plan.Hem.Strip.FinishedWidthMm)} once turned in", Tone.Plain);
    }

    /// <summary>The compare of all strips with all hems; the tolerance is for each round, so it is named once.</summary>
    private static string InAll(StripPlan plan)
    {
        string strips = $"{Words.Both(plan.TotalLengthMm)} of strip for {Words.Both(plan.Rounds.Sum(r => r.HemMm))} of hem";
        string allowed = Words.Tied(plan.AllowedInWords);
        return Math.Abs(plan.DifferenceMm) < 0.05
            ? $"{strips}: they agree ({allowed} a round is allowed)."
            : $"{strips}: {Words.Both(Math.Abs(plan.DifferenceMm))} too {(plan.DifferenceMm > 0 ? "much" : "little")} ({allowed} a round is allowed).";
    }

    private static IEnumerable<(string, string, Tone)> Work(StripPlan plan, Estimate estimate)
    {
        string field = string.Create(CultureInfo.InvariantCulture, $"{plan.FieldAlongMm:0.#} × {plan.FieldAcrossMm:0.#} mm");
        int stitches = estimate.Hoopings.Sum(h => h.Stitches);
        yield return plan.HasNeedlePaths
            ? ("Hoopings", $"{Words.Count(plan.Hoopings.Length, "hooping")} in a field of {field}, {Words.Count(stitches, "stitch", "stitches")}", Tone.Plain)
            : ("Sittings", WayWords.Sittings(plan), Tone.Plain);
        yield return ("At the machine", Total(estimate.MachineMinutes, estimate.OwnPace?.AtSetPace.MachineMinutes), Tone.Plain);
        yield return ("By hand", Total(estimate.HandsOnMinutes, estimate.OwnPace?.AtSetPace.HandsOnMinutes), Tone.Plain);
        yield return ("Thread", $"{Words.Metres(estimate.NeedleThreadM)} on top, {Words.Metres(estimate.BobbinThreadM)} in the bobbin", Tone.Plain);
    }

    private static string Total(Figure minutes, Figure? atSetPace) => Words.Duration(minutes)
        + (atSetPace is { } set && set != minutes ? $" by your own pace, what is sewn included; as reckoned without your log {Words.Duration(set)}" : "");

    /// <summary>What is still to do once something is sewn: by the person's own pace, where the log shows it.</summary>
    private static IEnumerable<(string, string, Tone)> Left(Estimate estimate)
    {
        var left = estimate.WorkLeft;
        if (left.Hoopings == estimate.Hoopings.Length)
        {
            yield break;
        }

        var set = estimate.OwnPace?.AtSetPace.WorkLeft;
        string sew = left.Hoopings == 0 ? "nothing: all is sewn" : Part(left.MachineMinutes, set?.MachineMinutes);
        string finish = $"; of it {Words.Duration(left.FinishingMinutes)} from pressing to sewing down";
        yield return ("Left to sew", sew, Tone.Plain);
        yield return ("Left by hand", Part(left.HandsOnMinutes, set?.HandsOnMinutes) + finish, Tone.Plain);
    }

    private static string Part(Figure now, Figure? atSetPace) => Words.Duration(now)
        + (atSetPace is { } set && set != now ? $" by your own pace; as reckoned without your log {Words.Duration(set)}" : "");

    private void PrintPerson()
    {
        var needs = Needs.Of(report.Names, report.Problems);
        page.Gap();
        if (needs.Count == 0)
        {
            page.Line("Nothing needs a decision: every name is placed.", tone: Tone.GoodHeading);
            return;
        }

        page.Line($"{Words.Count(needs.Count, "thing needs", "things need")} you before you sew", tone: Tone.AttentionHeading);
        page.Problems(needs.OfJob.Concat(needs.OfRows.Take(MostShown)), Tone.Attention);
        int more = needs.OfRows.Length - MostShown;
        if (more > 0)
        {
            page.Line($"and {Words.Count(more, "more row is", "more rows are")} held; plan.json has them all, under problems.", 2, Tone.Quiet);
        }

        if (needs.OfRows.Any(p => p.Mend.Length == 0))
        {
            page.Hanging("→ ", "Settle held rows in corrections.csv (keep, change or leave out), or change the job so that they fit; the command names prints lines to start from.", 1);
        }
    }

    private void PrintLimits(StripPlan plan)
    {
        if (plan.Limits.IsEmpty)
        {
            return;
        }

        page.Gap();
        page.Line("What keeps the letters from being taller", tone: Tone.Heading);
        string without = "Without it";
        foreach (var limit in plan.Limits.Take(MostShown))
        {
            string height = Words.Tied(Length.FromMm(limit.HeightWithoutMm).InMillimetres());
            page.Note($"“{limit.Name.Name.Text}” ({limit.Name.Name.Row}): {limit.Because}."
                + (limit.IsGain ? $" {without} letters could be {height} high." : ""));
            without = "Without this one too";
        }
    }

    private void PrintNotes()
    {
        var rows = report.Names?.Rows ?? [];
        int merged = rows.Count(r => r.Outcome == RowOutcome.Merged);
        int leftOut = rows.Count(r => r.Outcome == RowOutcome.LeftOut);
        var notes = report.Problems.Where(p => p.Severity == Severity.Note).ToList();
        if (merged + leftOut + notes.Count == 0)
        {
            return;
        }

        page.Gap();
        page.Line("Good to know", tone: Tone.Heading);
        if (merged + leftOut > 0)
        {
            page.Note(
                $"Of {Words.Count(rows.Length, "row")}, {merged} {(merged == 1 ? "is a repeat" : "are repeats")} and {leftOut} {(leftOut == 1 ? "is" : "are")} left out; the command names says which and why.");
        }

        page.Notes(notes.Take(MostShown));
        if (notes.Count > MostShown)
        {
            page.Line($"and {Words.Count(notes.Count - MostShown, "more", "more")}; --json shows them all.", 2, Tone.Quiet);
        }
    }

    private void PrintNext(StripPlan plan)
    {
        string folder = Shown(report.OutFolder ?? "out");
        page.Gap();
        page.Line("Next", tone: Tone.Heading);
        int number = 0;
        if (Needs.Of(report.Names, report.Problems).Count > 0)
        {
            Step("Settle what is listed above, and run make again.");
        }

        if (plan.NameCount > 0)
        {
            Step($"Look at the proofs in {folder}/proofs and check how each name is spelt.");
            if (!plan.HasNeedlePaths)
            {
                foreach (string step in WayWords.Steps(report.Job!, folder))
                {
                    Step(step);
                }

                page.Line($"All figures are in {folder}/plan.json.", 2, Tone.Quiet);
                return;
            }

            int[] left = [.. report.Estimate?.Hoopings.Where(h => !h.IsSewn).Select(h => h.Number) ?? []];
            if (left.Length < plan.Hoopings.Length)
            {
                Step(left.Length == 0 ? "Every hooping is sewn: go on with the work by hand, which the command hours lists."
                    : $"Sew the {(left.Length == 1 ? "needle path" : Words.Count(left.Length, "needle path"))} still to be sewn in {folder}/needle-paths: {SewnSummary.Numbers(left)}.");
                page.Line($"All figures are in {folder}/plan.json.", 2, Tone.Quiet);
                return;
            }

            Step("Sew the swatch that the command swatch makes, on a scrap of the same cloth; press it and measure it before you cut into the real cloth.");
            string paths = plan.Hoopings.Length == 1 ? "the one needle path" : $"the {Words.Count(plan.Hoopings.Length, "needle path")}";
            Step($"Sew {paths} in {folder}/needle-paths{(plan.Hoopings.Length == 1 ? "" : ", in the order of their numbers")}.");
        }

        page.Line($"All figures are in {folder}/plan.json.", 2, Tone.Quiet);

        void Step(string text)
        {
            number++;
            page.Hanging(FormattableString.Invariant($"{number}. "), text, 2);
        }
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
