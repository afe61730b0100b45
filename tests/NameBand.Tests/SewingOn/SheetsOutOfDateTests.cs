using System.Text;
using System.Text.Json;
using NameBand.Common;
using NameBand.Output;
using NameBand.Reports;
using NameBand.Tests.CommandLine;
using NameBand.Web.Machine;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>What was sewn from a sheet that the plan has gone past since is not written down as what the plan has now.</summary>
public sealed class SheetsOutOfDateTests
{
    private static string MarkOf(SewnJob job, int hooping) => job.Plan().GetProperty("hoopings").EnumerateArray()
        .Single(h => h.GetProperty("number").GetInt32() == hooping).GetProperty("mark").GetString()!;

    private static int HoopingOf(SewnJob job, string name)
    {
        int segment = job.Plan().GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .Single(s => s.GetProperty("names").EnumerateArray().Any(n => n.GetProperty("text").GetString() == name)).GetProperty("number")
                .GetInt32();
        return job.Plan().GetProperty("hoopings").EnumerateArray()
            .Single(h => h.GetProperty("segments").EnumerateArray().Any(s => s.GetProperty("number").GetInt32() == segment))
                .GetProperty("number").GetInt32();
    }

    private static bool IsLogged(SewnJob job) => File.Exists(job["sewing-log.csv"]);

    /// <summary>A job made, then one letter of a name changed and the job made again.</summary>
    private static (SewnJob Job, int Hooping, string Old, string Now) Changed()
    {
        var job = new SewnJob("Bo Reed", "Ilse Varga", "Jo Marsh", "Nia Yeo");

        // Slack stays at the end of the strip, so that what lies before a changed name stays where it is.
        job.Settings("", lettering: """, "height": "9 mm", "spread": false""");
        job.Make();
        int hooping = HoopingOf(job, "Jo Marsh");
        string old = MarkOf(job, hooping);
        job.Names[2] = "Jo Narsh";
        job.Make();
        Assert.Equal(hooping, HoopingOf(job, "Jo Narsh"));
        return (job, hooping, old, MarkOf(job, hooping));
    }

    [Fact]
    public void A_hooping_that_has_changed_since_a_sheet_was_made_asks_for_the_mark()
    {
        var (job, hooping, old, now) = Changed();
        using (job)
        {
            Assert.NotEqual(old, now);
            var asked = CliRun.Of("sewn", job.Folder, $"{hooping}");
            Assert.Equal(2, asked.Status);
            Assert.Contains($"Hooping {hooping} has changed since a sheet of it was made with the mark {old}", asked.ErrorsOnOneLine);
            Assert.Contains($"sewn JOB {hooping} --mark SIGNS", asked.ErrorsOnOneLine);
            Assert.DoesNotContain(now, asked.Errors);
            Assert.False(IsLogged(job));
            Assert.False(Directory.Exists(job["sewn"]));

            var stale = CliRun.Of("sewn", job.Folder, $"{hooping}", "--mark", old.ToLowerInvariant());
            Assert.Equal(2, stale.Status);
            Assert.Contains(
                $"The sheet with mark {old} is an old one: names or places of hooping {hooping} have changed since; it has {now} now.",
                stale.ErrorsOnOneLine);
            Assert.Contains(OutPaths.HoopingProof(hooping), stale.ErrorsOnOneLine);
            Assert.False(IsLogged(job));

            var right = CliRun.Of("sewn", job.Folder, $"{hooping}", "--mark", now);
            Assert.Equal(0, right.Status);
            Assert.Contains($"Hooping {hooping}, “Jo Narsh”", right.OutOnOneLine);
            Assert.True(IsLogged(job));
        }
    }

    [Fact]
    public void What_has_not_changed_is_not_asked_about_and_a_mark_is_held_against_the_hooping_all_the_same()
    {
        var (job, hooping, _, _) = Changed();
        using (job)
        {
            int other = HoopingOf(job, "Bo Reed");
            Assert.NotEqual(hooping, other);
            string its = MarkOf(job, other);
            Assert.Contains(
                $"{its} is the mark of hooping {other}, “Bo Reed”",
                CliRun.Of("sewn", job.Folder, $"{hooping}", "--mark", its).ErrorsOnOneLine);
            string plan = job.Plan().GetProperty("made").GetProperty("mark").GetString()!;
            Assert.Contains(
                $"{plan} is the mark of the whole plan", CliRun.Of("sewn", job.Folder, $"{other}", "--mark", plan).ErrorsOnOneLine);
            foreach (var round in job.Plan().GetProperty("rounds").EnumerateArray())
            {
                string ofRound = round.GetProperty("mark").GetString()!;
                Assert.Contains(
                    $"{ofRound} is the mark of round {round.GetProperty("number").GetInt32()}, on its proof, and not of hooping {other}.",
                    CliRun.Of("sewn", job.Folder, $"{other}", "--mark", ofRound).ErrorsOnOneLine);
            }

            string unknown = its == "2222" ? "3333" : "2222";
            Assert.Contains(
                $"No plan that is known of gave hooping {other} the mark {unknown}",
                CliRun.Of("sewn", job.Folder, $"{other}", "--mark", unknown).ErrorsOnOneLine);
            Assert.Equal(64, CliRun.Of("sewn", job.Folder, $"{other}", "--mark", "K0Q4").Status);
            Assert.Equal(64, CliRun.Of("sewn", job.Folder, $"{other}", "--again", "--mark", its).Status);
            Assert.False(IsLogged(job));
            Assert.Equal(0, CliRun.Of("sewn", job.Folder, $"{other}", "--mark", its).Status);
            Assert.Equal(0, CliRun.Of("sewn", job.Folder, $"{other}").Status);
        }
    }

    /// <summary>What was only made counts until sheets are printed; what was printed counts for good, through every later make.</summary>
    [Fact]
    public void Proofs_that_were_only_looked_at_are_forgotten_when_sheets_are_printed_and_printed_sheets_never()
    {
        var (job, hooping, old, printed) = Changed();
        using (job)
        {
            Assert.Contains($"{hooping},{old},made", File.ReadAllText(job["out/earlier-marks.csv"]));
            Bander.Print(job.Folder);
            Assert.False(File.Exists(job["out/earlier-marks.csv"]));
            Assert.False(State(job, hooping).AsksForMark);

            job.Make();
            Assert.Equal(
                $"{hooping},{printed},printed",
                File.ReadAllLines(job["out/earlier-marks.csv"]).Single(l => l.StartsWith($"{hooping},", StringComparison.Ordinal)));
            Assert.False(State(job, hooping).AsksForMark);
            job.Names[2] = "Jo Harsh";
            job.Make();
            job.Make();
            Bander.Print(job.Folder);
            Assert.True(State(job, hooping).AsksForMark);
            Assert.Contains(printed, CliRun.Of("sewn", job.Folder, $"{hooping}").Errors);

            // The list put back as it was: the same plan, and so the sheets in her hand are right again.
            job.Names[2] = "Jo Narsh";
            job.Make();
            Assert.Equal(printed, MarkOf(job, hooping));
            Assert.Equal(0, CliRun.Of("sewn", job.Folder, $"{hooping}", "--mark", printed).Status);
        }
    }

    [Fact]
    public void The_same_plan_made_twice_keeps_no_marks_and_every_byte()
    {
        using var job = new SewnJob("Bo Reed", "Ilse Varga");
        job.Make();
        var first = WholeLine.MadeFolder.Bytes(job["out"]);
        job.Make();
        Assert.Equal(first, WholeLine.MadeFolder.Bytes(job["out"]));
        Assert.False(State(job, 1).AsksForMark);
    }

    [Fact]
    public void A_plan_of_the_first_version_bears_no_marks_and_is_sewn_from_without_one()
    {
        using var job = new SewnJob("Bo Reed", "Ilse Varga");
        job.Make();
        var plan = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllBytes(job["out/plan.json"]))!;
        plan.AsObject().Remove("made");
        foreach (var hooping in plan["hoopings"]!.AsArray())
        {
            hooping!.AsObject().Remove("mark");
        }

        File.WriteAllText(job["out/plan.json"], plan.ToJsonString());
        File.Delete(job["out/.made-by-nameband.json"]);
        Assert.Contains("its sheets bear no marks", CliRun.Of("sewn", job.Folder, "1", "--mark", "K7Q4").ErrorsOnOneLine);
        Assert.Equal(0, CliRun.Of("sewn", job.Folder, "1").Status);
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("hooping,mark,what\r\n1,K0Q4,printed\r\n,,\r\nx,7RT2,made\r\n")]
    public void A_file_of_marks_that_was_spoiled_tells_nothing_and_stops_nothing(string text)
    {
        using var job = new SewnJob("Bo Reed", "Ilse Varga");
        job.Make();
        File.WriteAllText(job["out/earlier-marks.csv"], text);
        Assert.Empty(EarlierMarks.Read(job["out"]));
        Assert.Equal(0, CliRun.Of("sewn", job.Folder, "1").Status);
    }

    /// <summary>At the machine the same is said by the same door.</summary>
    [Fact]
    public void The_page_says_the_mark_as_the_command_does()
    {
        var (job, hooping, old, now) = Changed();
        using (job)
        {
            SewingReport Say(string mark) => Bander.Sewn(job.Folder, null, SaidWord.Read(JsonDocument.Parse(Encoding.UTF8.GetBytes(
                $$"""{ "hooping": {{hooping}}, "deed": "sewn", "mark": "{{mark}}" }""")).RootElement), () => { });
            Assert.Null(Say("").Said);
            Assert.Null(Say(old).Said);
            Assert.Contains("is an old one", Assert.Single(Say(old).Problems).Found.English);
            Assert.NotNull(Say($" {now.ToLowerInvariant()} ").Said);
        }
    }

    private static HoopingState State(SewnJob job, int hooping) =>
        Bander.Sewn(job.Folder, null, null, () => { }).Hoopings.Single(h => h.Number == hooping);
}
