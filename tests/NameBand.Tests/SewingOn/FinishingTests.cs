using NameBand.Estimating;
using NameBand.Job;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>From the last name to the last stitch at the hem: each step can be said, and what is ahead counts down.</summary>
public class FinishingTests
{
    private const string TwoRounds = "{ \"length\": \"700 mm\", \"turn\": 0.25 }, \"strip\": { \"rounds\": 2 }";

    [Fact]
    public void What_is_done_counts_no_longer_in_what_is_ahead()
    {
        using var job = new NamedJob(NamedJob.Keyed, TwoRounds);
        var whole = job.Make().Estimate!;
        job.Say(1, 6);
        Assert.Equal(whole.WorkLeft.FinishingMinutes, job.Make().Estimate!.WorkLeft.FinishingMinutes, 9);

        // Of all rounds: the step and those before it, that is the backing too.
        Assert.NotNull(job.Finish(FinishingStep.Press).Said);
        Assert.Equal(Sum(whole, s => s > FinishingStep.Press), Ahead(job), 6);

        // Of one round by its length, which is not half of both.
        double[] lengths = [.. job.Plan().GetProperty("rounds").EnumerateArray().Select(r => r.GetProperty("lengthMm").GetDouble())];
        Assert.NotEqual(lengths[0], lengths[1]);
        double first = lengths[0] / lengths.Sum();
        job.Finish(FinishingStep.Pin, round: 1);
        double expected = ((1 - first) * Sum(whole, s => s is > FinishingStep.Press and <= FinishingStep.Pin))
            + Sum(whole, s => s > FinishingStep.Pin);
        Assert.Equal(expected, Ahead(job), 4);
        var rounds = job.Finish(FinishingStep.Pin, round: 1).Rounds;
        Assert.Equal([FinishingStep.Pin, FinishingStep.Press], rounds.Select(r => r.Last!.Value));

        // Taken back, with all that comes after it; the other round stays as it was.
        job.Finish(FinishingStep.Cut, round: 1, undone: true);
        Assert.Equal(Sum(whole, s => s > FinishingStep.Press), Ahead(job), 4);
        job.Finish(FinishingStep.Upper);
        Assert.Equal(0, Ahead(job), 9);
    }

    /// <summary>What is not sewn cannot be finished, and holds no other round up.</summary>
    [Fact]
    public void A_round_is_finished_once_its_own_names_are_sewn()
    {
        using var job = new NamedJob(NamedJob.Keyed, TwoRounds);
        job.Make();
        var numbers = job.Plan().GetProperty("rounds").EnumerateArray().Select(r => r.GetProperty("segments").EnumerateArray()
            .SelectMany(s => s.GetProperty("names").EnumerateArray()).Select(n => n.GetProperty("order").GetInt32()).Order().ToList()).ToList();
        numbers[1].ForEach(n => job.Say(n, n));

        Assert.NotNull(job.Finish(FinishingStep.Cut, round: 2).Said);
        var early = job.Finish(FinishingStep.Cut, round: 1);
        Assert.Null(early.Said);
        Assert.Equal(
            $"Not all of it is logged as sewn: {numbers[0].Count} to go, the first is n{numbers[0][0]}.", Assert.Single(early.Problems).Found.English);
    }

    [Fact]
    public void Every_command_says_the_same_of_what_is_ahead()
    {
        using var job = new NamedJob(NamedJob.Keyed, TwoRounds);
        job.Make();
        job.Say(1, 6);
        var done = CliRun.Of("sewn", job.Folder, "--done", "turn", "--round", "2", "--note", "late");
        Assert.Equal((0, ""), (done.Status, done.Errors));
        Assert.Contains(
            "The step “turn” of round 2 is logged as done, and with it those before it.", done.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("Finishing round 1: nothing yet; round 2: turned in", done.OutOnOneLine, StringComparison.Ordinal);
        string log = File.ReadAllText(job["sewing-log.csv"]);
        Assert.Contains("\r\nr2,done,,,,,", log, StringComparison.Ordinal);
        job.Make();
        double told = Figure(CliRun.Of("sewn", job.Folder, "--json"), "finishingMinutes");
        Assert.Equal(told, Figure(CliRun.Of("hours", job.Folder, "--json"), "finishingMinutesLeft"), 0.01);
        Assert.Equal(told, Bander.Make(job.Folder).Estimate!.WorkLeft.FinishingMinutes, 0.01);
        var evenings = Bander.Hours(job.Folder, 60).Evenings!;
        Assert.Equal(told, evenings.Sittings.SelectMany(s => s.After).Sum(t => t.Minutes), 0.01);

        // All sewn, and not yet sewn down, is never nothing; sewn down, it is.
        Assert.Contains("Time left none at the machine; about", CliRun.Of("sewn", job.Folder).OutOnOneLine, StringComparison.Ordinal);
        CliRun.Of("sewn", job.Folder, "--done", "upper");
        Assert.Contains("Time left none: all is sewn, and sewn down", CliRun.Of("sewn", job.Folder).OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(0, CliRun.Of("sewn", job.Folder, "--undone", "lower", "--round", "1").Status);
        Assert.Contains(
            "round 1: pinned to the hem; round 2: sewn down at both edges", CliRun.Of("sewn", job.Folder).OutOnOneLine,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Hoopings_are_finished_by_the_same_words()
    {
        using var job = new SewnJob("Orla Penhale", "Bram Sedgewick");
        var whole = job.Make().Estimate!;
        foreach (var hooping in whole.Hoopings)
        {
            job.Say(hooping.Number);
        }

        Assert.Equal(0, CliRun.Of("sewn", job.Folder, "--done", "lower").Status);
        var left = job.Make().Estimate!;
        Assert.Equal(Sum(whole, s => s == FinishingStep.Upper), left.WorkLeft.HandsOnMinutes.Likely, 6);
        Assert.Equal(whole.Work.All.Likely, left.Work.All.Likely, 6);
    }

    [Fact]
    public void Traced_names_are_finished_by_the_same_words()
    {
        using var job = new NamedJob(NamedJob.Traced);
        var whole = job.Make().Estimate!;
        Assert.Contains(
            "6 to go, the first is n1", CliRun.Of("sewn", job.Folder, "--done", "tear").ErrorsOnOneLine, StringComparison.Ordinal);
        job.Say(1, 6);
        var done = CliRun.Of("sewn", job.Folder, "--done", "pin");
        Assert.Equal((0, ""), (done.Status, done.Errors));
        Assert.Contains("pinned to the hem", done.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(Sum(whole, s => s > FinishingStep.Pin), Ahead(job), 6);
        var lower = CliRun.Of("sewn", job.Folder, "--done", "lower", "--round", "1", "--json");
        using (var told = System.Text.Json.JsonDocument.Parse(lower.Out))
        {
            // A step is told of its round; a hooping has none.
            var said = told.RootElement.GetProperty("said");
            Assert.Equal((1, "lower"), (said.GetProperty("round").GetInt32(), said.GetProperty("step").GetString()));
            Assert.False(said.TryGetProperty("hooping", out _));
        }

        Assert.Equal(0, CliRun.Of("sewn", job.Folder, "--done", "upper").Status);
        Assert.Contains("Time left none: all is sewn, and sewn down", CliRun.Of("sewn", job.Folder).OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(0, CliRun.Of("sewn", job.Folder, "--undone", "pin").Status);
        Assert.Equal(Sum(whole, s => s >= FinishingStep.Pin), Ahead(job), 6);
    }

    [Fact]
    public void What_is_no_step_of_this_job_is_refused()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        Refused(CliRun.Of("sewn", job.Folder, "--done", "tuck"), 2, "Its steps are: tear, press, cut, turn, pin, lower, upper.");
        Refused(CliRun.Of("sewn", job.Folder, "--done", "pin", "--round", "2"), 2, "There is no round 2 in the plan; it has 1.");
        Refused(CliRun.Of("sewn", job.Folder, "--done", "iron"), 64, "A step of finishing is one of tear, press, cut");
        Refused(CliRun.Of("sewn", job.Folder, "n1", "--done", "pin"), 64, "A step of finishing is said by itself");
        Refused(CliRun.Of("sewn", job.Folder, "--done", "pin", "--undone", "press"), 64, "one thing at a time");
        Refused(CliRun.Of("sewn", job.Folder, "--round", "1"), 64, "--round goes with a step");
        Refused(CliRun.Of("sewn", job.Folder, "--done", "press"), 2, "Not all of it is logged as sewn: 6 to go, the first is n1.");
        Assert.False(File.Exists(job["sewing-log.csv"]));
        job.Say(1, 5);
        Refused(CliRun.Of("sewn", job.Folder, "--done", "press", "--round", "1"), 2, "1 to go, the first is n6.");

        static void Refused(CliRun run, int status, string why)
        {
            Assert.Equal(status, run.Status);
            Assert.Contains(why, run.ErrorsOnOneLine, StringComparison.Ordinal);
        }
    }

    private static double Sum(Estimate estimate, Func<FinishingStep, bool> isAsked) =>
        estimate.HandWork.Where(r => r.Step is { } step && isAsked(step)).Sum(r => r.Minutes.Likely);

    private static double Ahead(NamedJob job) => Bander.Hours(job.Folder).Estimate!.WorkLeft.FinishingMinutes;

    private static double Figure(CliRun run, string key) =>
        System.Text.Json.JsonDocument.Parse(run.Out).RootElement.GetProperty(key).GetDouble();
}
