using System.Text.Json;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output.Packet;
using NameBand.Reports;
using NameBand.Reports.Answers;
using NameBand.Tests.SewingOn;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>The list of all acts: counted once, added up everywhere.</summary>
public class WorkListTests
{
    private static readonly string[] Times = ["before", "each hooping", "each name", "each piece", "each round", "after"];

    private const string Letters = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\", \"7 mm\"] }";
    private const string Hooped = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"], \"hooped\": true }";
    private const string Traced = "\"way\": \"traced\"";
    private const string ByHand = "\"way\": \"traced\", \"traced\": { \"sewn\": \"byHand\" }";

    private static TemporaryFolder Job(string more) => new TemporaryFolder()
        .With("job.json", "{ \"format\": 1, \"lists\": [\"names.csv\"], \"hem\": { \"length\": \"900 mm\", \"turn\": 0 }, " + more + " }")
        .With("names.csv", "Name\nOrla Penhale\nBram Sedgewick\nTuva Lind\nIlse Quill\nNoor Haddad\nJo Weir\n");

    /// <summary>A heading is sewn, clipped and freed of its backing as a name is.</summary>
    [Fact]
    public void A_heading_takes_its_minutes_by_hand()
    {
        using var folder = Job("""
            "columns": { "group": "Gift" }, "groups": [ { "name": "lamp bearers", "from": 25, "place": "first", "heading": "Lamp bearers" } ]
            """).With("names.csv", "Name,Gift\nOrla Penhale,30\nBram Sedgewick,5\nTuva Lind,5\n");
        var plan = Bander.Make(folder.FullPath);
        Assert.Equal(4, plan.Plan!.Hoopings.SelectMany(h => h.Segments).Sum(s => s.Segment.Names.Length));
        Assert.All(plan.Estimate!.HandWork.Where(w =>
            w.Act.English.StartsWith("clipping", StringComparison.Ordinal) || w.Act.English.StartsWith("tearing", StringComparison.Ordinal)),
            w => Assert.Equal(4, w.Count));
        Assert.Contains(plan.Estimate!.HandWork, w => w.Act.English.StartsWith("clipping", StringComparison.Ordinal));
    }

    /// <summary>
    /// Adds up what stands in plan.json with nothing of ours: the totals of the plan, of the command hours, of fit and of the page
    /// are those sums.
    /// </summary>
    [Theory]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }", true)]
    [InlineData("\"strip\": { \"lanes\": 2, \"rounds\": 2 }", true)]
    [InlineData(Letters, false)]
    [InlineData(Hooped, true)]
    [InlineData(Traced, false)]
    [InlineData(ByHand, false)]
    public void Whoever_adds_the_rows_arrives_at_every_total(string more, bool isHooped)
    {
        using var folder = Job(more);
        var made = Bander.Make(folder.FullPath);
        using var plan = JsonDocument.Parse(File.ReadAllText(folder["out/plan.json"]));
        var rows = plan.RootElement.GetProperty("work").EnumerateArray().ToList();
        double machine = Added(rows, "machine");
        double hands = Added(rows, "hands");
        var totals = plan.RootElement.GetProperty("totals");
        Assert.Equal(machine, totals.GetProperty("machineMinutes").GetDouble(), 0.05);
        Assert.Equal(hands, totals.GetProperty("handsOnMinutes").GetDouble(), 0.05);
        Assert.All(rows, r => Assert.Equal(
            Number(r, "count") * Number(r, "minutesEach"), Number(r, "minutes"), 0.01 + (Number(r, "count") * 1e-6)));
        Assert.All(rows, r => Assert.Contains(r.GetProperty("when").GetString(), Times));
        Assert.All(rows, r => Assert.InRange(Number(r, "minutes"), Number(r, "lowMinutes"), Number(r, "highMinutes")));
        Assert.All(rows, r => Assert.NotEqual("", r.GetProperty("source").GetString()! + r.GetProperty("cause").GetString()));
        Assert.Equal(isHooped, rows.Any(r => r.GetProperty("act").GetString()!.StartsWith("hooping and", StringComparison.Ordinal)));

        // The machine's work in the hoopings is what stands with each of them, to a tenth.
        double inHoopings = Added([.. rows.Where(r => r.GetProperty("when").GetString() == "each hooping")], "machine");
        var hoopings = plan.RootElement.GetProperty("hoopings").EnumerateArray().ToList();
        Assert.Equal(inHoopings, hoopings.Sum(h => Number(h, "minutes")), 0.05 * hoopings.Count + 0.01);

        var estimated = Bander.Hours(folder.FullPath);
        var hours = estimated.Estimate!;
        var page = new LayoutSession(folder.FullPath).Lay().Laid!.Calculate().Estimate;
        foreach (var estimate in new[] { made.Estimate!, hours, page })
        {
            Assert.Equal(machine, estimate.MachineMinutes.Likely, 0.05);
            Assert.Equal(hands, estimate.HandsOnMinutes.Likely, 0.05);
            Assert.Equal(machine + hands, estimate.Work.All.Likely, 0.1);
        }

        // What the commands answer is to the last digit what stands in the plan; prose and paper print that.
        var told = Assert.IsType<MakeAnswer>(made.Answer);
        var toldHours = Assert.IsType<HoursAnswer>(estimated.Answer);
        double planned = Number(totals, "handsOnMinutes");
        Assert.Equal((planned, planned), (told.HandsOnMinutes.Likely, toldHours.HandsOnMinutes.Likely));
        Assert.Equal(Number(totals, "machineMinutes"), told.MachineMinutes.Likely);
        string byHand = Cli.Terminal.Words.Duration(planned).English.Replace(Cli.Terminal.Words.Tie, ' ');
        string makeSays = Said(page => new Cli.Reports.MakeSummary(page, told, "JOB").Print());
        string hoursSays = Said(page => new Cli.Reports.HoursSummary(page, toldHours).Print());
        Assert.Contains($"By hand {byHand}", makeSays, StringComparison.Ordinal);
        Assert.Contains($"By hand: {byHand}", hoursSays, StringComparison.Ordinal);
        Assert.Contains(
            $"{JobInWords.Time(planned)} (", JobInWords.Sentence(made.Plan!, made.Estimate!).English.Split(" and ")[^1], StringComparison.Ordinal);

        if (!more.Contains("lanes", StringComparison.Ordinal))
        {
            var asSet = Bander.Plans(folder.FullPath).AsSet!.Estimate;
            Assert.Equal((machine, hands), (asSet.MachineMinutes.Likely, asSet.HandsOnMinutes.Likely), Near);
        }
    }

    /// <summary>From washing the cloth to the last stitch at the hem.</summary>
    [Fact]
    public void Every_act_of_a_job_with_needle_paths_has_a_row_of_its_own()
    {
        using var folder = Job("\"hoop\": { \"along\": \"140 mm\" }, \"marks\": \"sewn\"");
        var rows = Bander.Hours(folder.FullPath).Estimate!.Work.Rows;
        string[] acts = [.. rows.Select(r => r.Act.English)];
        Assert.Equal(acts.Distinct(), acts);
        foreach (string word in new[]
        {
            "washing", "cutting the cloth", "cutting the backing", "ruling", "spelling round", "swatch", "thread of the marks", "hooping",
            "stitching", "jumps", "cutting the thread", "changing the thread", "breaks", "marks out", "clipping", "tearing",
            "unpicking", "once more", "pressing", "trimming", "joining", "turning", "pinning", "lower edge", "upper edge",
        })
        {
            Assert.Contains(acts, a => a.Contains(word, StringComparison.Ordinal));
        }

        Assert.Equal("washing the cloth", acts[0]);
        Assert.EndsWith("upper edge down", acts[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_hoopings_take_longer_unless_she_says_what_one_takes()
    {
        var names = Sample.Lettered(Sample.RandomWidths(1, 30));
        var plan = LayoutPlanner.Plan(Sample.Job, Sample.Hem(Sample.Job), names, FabricTable.All[0]).Value!;
        int others = plan.Hoopings.Length - 5;
        Assert.True(others > 0);
        var job = Sample.Job with { Hands = JobDefaults.Hands };
        Assert.Equal([(5.0, 7.7), (others, 4.95)], Hooping(job));

        var read = JobRoom.JobReaderTests.ReadAll("""
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m" },
              "hands": { "hoopingMinutes": 6, "clippingMinutesPerName": 2, "cuttingMinutesPerMetre": 1, "tearAwayMinutesPerName": 1 } }
            """).Value!;
        Assert.Equal([(plan.Hoopings.Length, 6.6)], Hooping(Sample.Job with { Hands = read.Hands }));

        // What older keys took in stays in them: no snips on top of clipping, no ruling on top of cutting, no backing by the metre.
        Assert.Equal((0, 0, null), (read.Hands.SecondsPerSnip, read.Hands.RulingMinutesPerMetre, read.Hands.TearAwayMinutesPerMetre));

        (double, double)[] Hooping(BandJob with) =>
        [
            .. Estimator.Make(with, plan, []).HandWork.Where(r => r.Act.English.StartsWith("hooping and", StringComparison.Ordinal))
                .Select(r => (r.Count, Math.Round(r.EachMinutes, 9))),
        ];
    }

    /// <summary>
    /// 200,000 jobs drawn at random, each cause with one deviate for all its rows: half of a normal curve on each side of the
    /// likely time, with a tenth of the cases outside the range at either end.
    /// </summary>
    [Theory]
    [InlineData(0.8, 1.2, 0.004)]
    [InlineData(0.75, 1.35, 0.03)]
    public void The_range_of_a_sum_is_that_of_jobs_drawn_at_random(double low, double high, double tolerance)
    {
        WorkCause[] causes = [.. Enumerable.Range(0, 4).Select(i => new WorkCause($"cause {i}", low, high, "drawn"))];
        WorkRow[] rows =
        [
            .. new[] { (0, 40.0), (0, 60.0), (1, 90.0), (2, 70.0), (2, 20.0), (3, 80.0) }
                .Select((r, i) => new WorkRow(
                    $"act {i}", i % 2 == 0 ? Doer.Machine : Doer.Hands, WorkTime.After, "m", 2, r.Item2 / 2, causes[r.Item1])),
        ];
        var sum = new Work([.. rows]).All;
        var random = new Random(20261);
        const double Tenth = 1.2815515655446004;
        const int Jobs = 200_000;
        double[] totals = new double[Jobs];
        for (int job = 0; job < Jobs; job++)
        {
            double[] strays = [.. causes.Select(_ =>
                Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()))];
            totals[job] = rows.Sum(r =>
            {
                double stray = strays[Array.IndexOf(causes, r.Cause)] / Tenth;
                return r.Minutes.Likely * (1 + (stray * (stray < 0 ? 1 - low : high - 1)));
            });
        }

        double within = totals.Count(t => t >= sum.Low && t <= sum.High) / (double)Jobs;
        Assert.Equal(0.8, within, tolerance);
        double straight = rows.Sum(r => r.Minutes.High);
        Assert.True(sum.High < straight - 10, "ranges of four causes are not simply added");
    }

    [Fact]
    public void Rows_of_one_cause_add_up_and_those_of_two_do_not_know_of_each_other()
    {
        var one = new WorkCause("one", 0.9, 1.3, "");
        var other = new WorkCause("other", 0.6, 1.4, "");
        WorkRow Row(double minutes, WorkCause cause) => new("act", Doer.Hands, WorkTime.After, "m", 1, minutes, cause);
        Assert.Equal(new Figure(90, 100, 130), Rounded(Work.Sum([Row(30, one), Row(70, one)])));

        // 10 and 40 under the likely time make √(100 + 1600), 30 and 40 over it make 50.
        Assert.Equal(new Figure(158.769, 200, 250), Rounded(Work.Sum([Row(100, one), Row(100, other)])));
        Assert.Equal(default, Work.Sum([]));

        static Figure Rounded(Figure f) => new(Math.Round(f.Low, 3), Math.Round(f.Likely, 3), Math.Round(f.High, 3));
    }

    /// <summary>10 hoopings: the machine sews 100 minutes unwatched, 60 of clipping can go on meanwhile but for the last tenth.</summary>
    [Fact]
    public void By_the_clock_hand_work_goes_on_while_an_unwatched_machine_sews_the_next_piece()
    {
        WorkRow machine = new("stitching", Doer.Machine, WorkTime.EachHooping, "stitches", 1, 100, WorkCause.MachinePace);
        WorkRow hands = new("clipping", Doer.Hands, WorkTime.EachName, "names", 1, 60, WorkCause.HerPace) { IsMeanwhile = true };
        WorkRow pressing = new("pressing", Doer.Hands, WorkTime.After, "m", 1, 30, WorkCause.HerPace);
        Assert.Equal(190, new Work([machine, hands, pressing]).ElapsedMinutes(10), 9);
        Assert.Equal(190 - 54, new Work([machine with { IsAttended = false }, hands, pressing]).ElapsedMinutes(10), 9);
        Assert.Equal(190, new Work([machine with { IsAttended = false }, hands, pressing]).ElapsedMinutes(1), 9);

        using var folder = Job("\"hoop\": { \"along\": \"140 mm\" }, \"machine\": { \"watched\": false }");
        var estimate = Bander.Hours(folder.FullPath).Estimate!;
        Assert.True(estimate.ElapsedMinutes < estimate.Work.All.Likely - 1);
        Assert.All(estimate.MachineWork.Where(r => r.Act.English.StartsWith("changing", StringComparison.Ordinal)), r => Assert.True(r.IsAttended));
    }

    /// <summary>Not a minute of what is left is forgotten, and hoopings stand in the order in which they lie on the cloth.</summary>
    [Theory]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }")]
    [InlineData(Hooped)]
    [InlineData(Letters)]
    [InlineData(ByHand)]
    public void Evenings_hold_all_the_work_in_its_order(string more)
    {
        using var folder = Job(more);
        var report = Bander.Hours(folder.FullPath, 45);
        var sittings = report.Evenings!.Sittings;
        Assert.Equal(report.Estimate!.Left.All.Likely, sittings.Sum(s => s.Minutes), 6);
        Assert.All(sittings, s => Assert.True(s.Minutes <= 45 + 1e-6));
        var places = report.Plan!.Hoopings.ToDictionary(h => h.Number, h => h.OnClothMm);
        double[] along = [.. sittings.SelectMany(s => s.Hoopings).Select(h => places[h])];
        Assert.Equal(along.Order(), along);
        Assert.Contains(sittings[^1].After, t => t.Act.English.Contains("upper edge", StringComparison.Ordinal));
    }

    [Fact]
    public void All_is_sewn_and_the_finishing_is_still_ahead()
    {
        using var job = new SewnJob("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        var whole = job.Make().Estimate!;
        foreach (var hooping in whole.Hoopings)
        {
            job.Say(hooping.Number, minutes: hooping.MachineMinutes);
        }

        var estimate = job.Make().Estimate!;
        var left = estimate.WorkLeft;
        Assert.Equal((0, 0.0), (left.Hoopings, left.MachineMinutes.High));
        double finishing = whole.HandWork
            .Where(r => r.When is WorkTime.EachPiece or WorkTime.EachRound or WorkTime.After).Sum(r => r.Minutes.Likely);
        Assert.True(finishing > 10);
        Assert.Equal(finishing, left.FinishingMinutes, 6);
        Assert.Equal(finishing, left.HandsOnMinutes.Likely, 6);

        string made = CommandLine.CliRun.Of("make", job.Folder).OutOnOneLine;
        Assert.Contains("Left to sew nothing: all is sewn", made, StringComparison.Ordinal);
        Assert.Matches("Left by hand about [0-9]", made);
        string sewn = CommandLine.CliRun.Of("sewn", job.Folder).OutOnOneLine;
        Assert.Matches("Time left none at the machine; about [0-9]+.* by hand is still ahead, from pressing to sewing down", sewn);
        string hours = CommandLine.CliRun.Of("hours", job.Folder, "--evening", "1h").OutOnOneLine;
        string evening = hours[hours.IndexOf("Evening 1", StringComparison.Ordinal)..];
        Assert.Contains("sewing the lower edge down", evening, StringComparison.Ordinal);
    }

    [Fact]
    public void As_long_as_nothing_is_sewn_what_is_left_is_the_whole_to_the_last_digit()
    {
        using var job = new SewnJob([.. SewnJob.TenNames, "Orla Penhale", "Bram Sedgewick", "Tuva Lind"]);
        job.Make();
        using var hours = System.Text.Json.JsonDocument.Parse(CommandLine.CliRun.Of("hours", job.Folder, "--json").Out);
        foreach (string figure in new[] { "machineMinutes", "handsOnMinutes" })
        {
            Assert.Equal(hours.RootElement.GetProperty(figure).GetRawText(), hours.RootElement.GetProperty(figure + "Left").GetRawText());
        }
    }

    /// <summary>A plan of version 0.1 has no list of work: what is ahead is said without minutes.</summary>
    [Fact]
    public void A_plan_without_a_list_of_work_still_says_that_finishing_is_ahead()
    {
        using var job = new SewnJob("Orla Penhale");
        job.Make();
        string path = job["out/plan.json"];
        var plan = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(path))!.AsObject();
        Assert.True(plan.Remove("work"));
        File.WriteAllText(path, plan.ToJsonString());
        job.Say(1);
        string sewn = CommandLine.CliRun.Of("sewn", job.Folder).OutOnOneLine;
        Assert.Contains("the work by hand is still ahead", sewn, StringComparison.Ordinal);
    }

    private static bool Near((double, double) a, (double, double) b) =>
        Math.Abs(a.Item1 - b.Item1) < 0.05 && Math.Abs(a.Item2 - b.Item2) < 0.05;

    /// <summary>Prose on one line, without the word that a range begins with.</summary>
    private static string Said(Action<Cli.Terminal.Page> print)
    {
        using var writer = new StringWriter();
        using var outlet = new Cli.Terminal.Outlet(writer);
        print(new Cli.Terminal.Page(outlet));
        string line = string.Join(' ', writer.ToString().Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
        return line.Replace("about ", "", StringComparison.Ordinal);
    }

    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();

    private static double Added(List<JsonElement> rows, string by)
    {
        double sum = 0;
        foreach (var row in rows)
        {
            sum += row.GetProperty("by").GetString() == by ? row.GetProperty("minutes").GetDouble() : 0;
        }

        return sum;
    }

    /// <summary>A name that is sewn once more takes the machine as long as a name does, cloth and frame aside.</summary>
    [Theory]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }")]
    [InlineData(Letters)]
    [InlineData(Traced)]
    public void Sewing_spoiled_names_once_more_takes_what_a_name_takes(string more)
    {
        using var folder = Job($"{more}, \"hands\": {{ \"spoiledPer100Names\": 50 }}");
        var rows = Bander.Hours(folder.FullPath).Estimate!.Work.Rows;
        var again = Assert.Single(rows, r => r.By == Doer.Machine && r.Cause == WorkCause.Spoiling);
        double ofMachine = rows.Where(r => r.By == Doer.Machine && r != again && r.When != WorkTime.Before).Sum(r => r.Minutes.Likely);
        Assert.True(ofMachine > 0);
        Assert.Equal(3, again.Count, 9);
        Assert.Equal(ofMachine / 6 * 3, again.Minutes.Likely, 6);
    }

    /// <summary>The whole of the work has all names in it, what is left those that are not sewn.</summary>
    [Theory]
    [InlineData(Letters)]
    [InlineData(Hooped)]
    public void Sewn_names_stay_in_the_whole_and_leave_what_is_left(string more)
    {
        using var folder = Job(more);
        Bander.Make(folder.FullPath);
        var word = new SewingWord(0, SewingDeed.Sewn, When: "2026-11-25T20:00") { Names = (1, 2) };
        Assert.Empty(Bander.Sewn(folder.FullPath, null, word, () => { }).Problems.Where(p => p.Severity == Severity.CannotUse));
        var estimate = Bander.Hours(folder.FullPath).Estimate!;
        Assert.Equal((6, 4), (Clipped(estimate.Work), Clipped(estimate.Left)));

        static double Clipped(Work work) => work.Rows.Single(r => r.Act.English == "clipping threads").Count;
    }

    [Fact]
    public void Where_no_name_can_be_placed_hours_says_so_and_what_is_in_the_way()
    {
        using var folder = Job("\"lettering\": { \"height\": \"60 mm\" }");
        var told = Assert.IsType<HoursAnswer>(Bander.Hours(folder.FullPath).Answer);
        string said = Said(page => new Cli.Reports.HoursSummary(page, told).Print());
        Assert.Contains("No name could be placed, so there is nothing to sew or to buy yet.", said, StringComparison.Ordinal);
        Assert.Contains("too large for 6 of 6 names", said, StringComparison.Ordinal);
        Assert.DoesNotContain("0 hoopings", said, StringComparison.Ordinal);
    }
}
