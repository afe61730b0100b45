using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.PlanFile;
using NameBand.Reports;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>One strip with names keyed into a machine's letters, and between them those that its letters lack, from needle paths.</summary>
public class SeveralWaysTests : IClassFixture<SeveralWaysTests.Made>
{
    private const string Keyed = "machineLetters";
    private const string Followed = "needlePath";
    private const string Crew = "Name\nHesper Quayle\nTobin Márquez\nAda Willowby\nKit Farthing\nRufus Peñhale\nBo Underhill\n";
    private static readonly string[] Lacking = ["Tobin Márquez", "Rufus Peñhale"];
    private readonly Made _made;

    public SeveralWaysTests(Made made) => _made = made;

    public sealed class Made : IDisposable
    {
        public Made() => Report = Bander.Print(Folder.FullPath);

        internal TemporaryFolder Folder { get; } = JobIn(Crew);

        public MakeReport Report { get; }

        public StripPlan Plan => Report.Plan!;

        internal WrittenPlan Written => PlanJson.Read(File.ReadAllBytes(Folder["out/plan.json"]));

        public void Dispose() => Folder.Dispose();
    }

    [Fact]
    public void Each_name_goes_the_first_way_that_can_do_it()
    {
        Assert.Equal(ExitStatus.AllPlaced, _made.Report.Status);
        var names = _made.Written.Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names).ToList();
        Assert.Equal(6, names.Count);
        Assert.All(names, n => Assert.Equal(Lacking.Contains(n.Text) ? Followed : Keyed, n.Way));
        Assert.All(_made.Written.Rounds.SelectMany(r => r.Segments), s => Assert.Single(s.Names.Select(n => n.Way).Distinct()));
    }

    [Fact]
    public void The_strip_meets_its_hem_and_no_two_names_overlap()
    {
        var round = Assert.Single(_made.Plan.Rounds);
        Assert.Equal(round.HemMm, round.LengthMm, 1e-6);
        var names = round.Names.ToList();
        Assert.Equal(names.OrderBy(n => n.StartMm), names);
        Assert.All(names.Zip(names.Skip(1)), p => Assert.Equal(round.GapMm, p.Second.StartMm - p.First.EndMm, 0.01));
        Assert.Single(names.Select(n => n.BaselineYMm).Distinct());
        Assert.Equal(9, _made.Plan.LetterHeightMm);
    }

    [Fact]
    public void Hoopings_hold_only_what_is_sewn_by_coordinates_and_runs_the_rest()
    {
        var hoopings = _made.Written.Hoopings;
        var segments = _made.Written.Rounds.SelectMany(r => r.Segments).ToDictionary(s => s.Number);
        foreach (var hooping in hoopings)
        {
            string[] texts = [.. hooping.Segments.SelectMany(s => segments[s.Number].Names).Select(n => n.Text)];
            bool isFollowed = texts.All(Lacking.Contains);
            Assert.Equal(isFollowed, hooping.NeedlePath is not null);
            Assert.Equal(isFollowed, File.Exists(_made.Folder[$"out/needle-paths/hooping-{hooping.Number:000}.csv"]));
            Assert.True(isFollowed || !texts.Any(Lacking.Contains), "A hooping holds names of two ways.");
        }

        Assert.Equal(2, hoopings.Count(h => h.NeedlePath is not null));
        Assert.Equal([Sorted(_made.Plan, isRun: false), Sorted(_made.Plan, isRun: true)], [2, 3]);

        static int Sorted(StripPlan plan, bool isRun) => plan.Hoopings.Count(h => h.IsRun == isRun);
    }

    [Fact]
    public void The_sheets_of_each_way_have_its_own_names_in_their_places()
    {
        string[] keyIn = [.. File.ReadLines(_made.Folder["out/key-in.csv"]).Skip(1)];
        string[] worksheet = [.. File.ReadLines(_made.Folder["out/worksheet.csv"]).Skip(1)];
        Assert.Equal(["Hesper Quayle", "Ada Willowby", "Kit Farthing", "Bo Underhill"], keyIn.Select(l => l.Split(',')[4]));
        Assert.Equal(Lacking, worksheet.Select(l => l.Split(',')[3]));
        var starts = _made.Plan.Rounds[0].Names.ToDictionary(n => n.Lettered.Name.Text, n => _made.Plan.OnClothMm(n.StartMm));
        Assert.All(keyIn.Select(l => l.Split(',')), c => Assert.Equal(starts[c[4]], double.Parse(c[9], CultureInfo.InvariantCulture), 0.06));

        string[] head = File.ReadLines(_made.Folder["out/key-in.csv"]).First().Split(',');
        Assert.All(keyIn.Select(l => l.Split(',')), c => Assert.Equal(_made.Written.Made!.Mark, c[Array.IndexOf(head, "plan")]));
        string first = File.ReadAllText(_made.Folder["out/read-me-first.txt"]);
        Assert.Contains("The 4 names keyed in\n", first);
        Assert.Contains("The 2 names from needle paths\n", first);
        Assert.DoesNotContain("drift.csv", first);
        Assert.True(File.Exists(_made.Folder["out/sheets/work-packet-a4.pdf"]) && File.Exists(_made.Folder["out/key-in-a4.pdf"]));
    }

    [Fact]
    public void Hours_are_the_sums_of_the_rows_and_each_way_has_its_own()
    {
        var rows = _made.Written.Work!;
        Assert.Equal((double)_made.Written.Totals.MachineMinutes, rows.Where(r => r.By == "machine").Sum(r => (double)r.Minutes), 0.05);
        Assert.Equal((double)_made.Written.Totals.HandsOnMinutes, rows.Where(r => r.By == "hands").Sum(r => (double)r.Minutes), 0.05);
        int letters = _made.Plan.Rounds[0].Names.Select(n => n.Lettered.Name.Text).Where(t => !Lacking.Contains(t)).Sum(t => t.Length);
        Assert.Equal(letters, Count("keying in"));
        Assert.Equal(2, Count("starting a hooping, from needle paths"));
        Assert.Equal(2, rows.Where(r => r.Act.StartsWith("hooping and setting straight", StringComparison.Ordinal)).Sum(r => (double)r.Count));
        Assert.True(Count("stitching, keyed in") > 0 && Count("stitching, from needle paths") > 0);
        Assert.DoesNotContain(rows, r => r.Act == "starting a hooping, keyed in");

        var reckoned = Bander.Reckon(_made.Folder.FullPath);
        Assert.Equal(_made.Report.Estimate!.MachineMinutes.Likely, reckoned.Estimate!.MachineMinutes.Likely, 0.01);
        Assert.Equal(_made.Report.Estimate.HandsOnMinutes.Likely, reckoned.Estimate.HandsOnMinutes.Likely, 0.01);
        Assert.Contains(reckoned.Shopping!.Lines, l => l.What == "backing" && l.Needed.StartsWith("2 pieces", StringComparison.Ordinal));

        double Count(string act) => (double)rows.Single(r => r.Act == act).Count;
    }

    [Fact]
    public void What_is_sewn_from_a_needle_path_is_logged_by_hooping_and_what_is_typed_by_name()
    {
        using var folder = JobIn(Crew);
        var plan = Bander.Make(folder.FullPath).Plan!;
        int hooping = plan.Hoopings.First(h => h.HasNeedlePath).Number;
        int run = plan.Hoopings.First(h => !h.HasNeedlePath).Number;
        byte[] path = File.ReadAllBytes(folder[$"out/needle-paths/hooping-{hooping:000}.csv"]);

        var refused = Say(run);
        Assert.Equal(ExitStatus.CannotUse, refused.Status);
        Assert.Contains(refused.Problems, p => p.Found.Contains("keyed in", StringComparison.Ordinal));
        Assert.False(File.Exists(folder[SewingLogFile.FileName]));

        var said = Say(hooping);
        Assert.Equal(ExitStatus.AllPlaced, said.Status);
        Assert.Equal(plan.Hoopings.Count(h => h.HasNeedlePath), said.Hoopings.Length);

        File.AppendAllText(folder["crew.csv"], "Ro Ash\n");
        var again = Bander.Make(folder.FullPath);
        var before = plan.Rounds[0].Names.ToDictionary(n => n.Lettered.Name.Text);
        var sewn = again.Plan!.Hoopings.Single(h => h.Number == hooping);
        Assert.All(sewn.Segments.SelectMany(s => s.Segment.Names), n => Assert.Equal(before[n.Lettered.Name.Text].StartMm, n.StartMm, 1e-6));
        Assert.Equal(path, File.ReadAllBytes(folder[$"out/needle-paths/hooping-{hooping:000}.csv"]));
        Assert.Equal(7, again.Plan.NameCount);
        Assert.False(Assert.Single(again.Plan.Hoopings, h => Texts(h).Contains("Ro Ash")).HasNeedlePath);
        Assert.Equal(5, File.ReadLines(folder["out/key-in.csv"]).Count() - 1);
        Assert.All(again.Plan.Hoopings, h => Assert.Single(h.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Lettered.Way).Distinct()));
        var names = again.Plan.Rounds[0].Names.OrderBy(n => n.StartMm).ToList();
        Assert.All(names.Zip(names.Skip(1)), p => Assert.True(p.Second.StartMm >= p.First.EndMm - 0.01));

        var keyed = again.Plan.Hoopings.First(h => !h.HasNeedlePath).Segments[0].Segment.Names[0];
        Assert.Contains("is sewn from a needle path", Assert.Single(Say(0, sewn.Segments[0].Segment.Names[0].Order).Problems).Found, StringComparison.Ordinal);
        Assert.Equal(ExitStatus.AllPlaced, Say(0, keyed.Order).Status);
        File.AppendAllText(folder["crew.csv"], "Pia Ash\n");
        var third = Bander.Make(folder.FullPath);
        var stays = third.Plan!.Rounds[0].Names.Single(n => n.Order == keyed.Order);
        Assert.Equal((keyed.Lettered.Name.Text, keyed.StartMm), (stays.Lettered.Name.Text, stays.StartMm));
        Assert.Equal(path, File.ReadAllBytes(folder[$"out/needle-paths/hooping-{hooping:000}.csv"]));
        var left = third.Estimate!.WorkLeft;
        Assert.Equal((1, 1), (left.HoopingsInAll - left.Hoopings, left.NamesInAll - left.Names));
        Assert.Equal(third.Plan.Rounds[0].Names.Count(n => n.Lettered.Way != Way.NeedlePath), left.NamesInAll);

        SewingReport Say(int number, int name = 0) => Bander.Sewn(
            folder.FullPath, null, new SewingWord(number, SewingDeed.Sewn, 5, When: "2026-11-29T20:00") { Names = name > 0 ? (name, name) : null },
            () => Thread.Sleep(20));

        static IEnumerable<string> Texts(Hooping hooping) => hooping.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Lettered.Name.Text);
    }

    [Fact]
    public void What_was_not_measured_is_never_keyed_in_beside_another_way()
    {
        using var folder = JobIn(Crew);
        File.Delete(folder["letters.csv"]);
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Contains(report.Problems, p => p.Severity == Severity.NeedsPerson && p.Found.Contains("not measured", StringComparison.Ordinal));
        Assert.All(report.Plan!.Hoopings, h => Assert.True(h.HasNeedlePath));
        Assert.Equal(6, report.Plan.NameCount);
    }

    [Fact]
    public void On_the_screen_it_stands_as_it_is_made_and_so_does_its_plan()
    {
        var laid = new Pipeline.Bench(_made.Folder.FullPath).Lay().Laid!;
        Assert.Equal(4, laid.KeyIns.Length);
        Assert.Equal(_made.Report.Estimate!.MachineMinutes.Likely, laid.Reckon().Estimate.MachineMinutes.Likely, 0.01);
        Assert.Equal(_made.Plan.SittingsInWords, laid.Plan.SittingsInWords);
        Assert.Equal("2 hoopings and 3 runs without a hoop", laid.Plan.SittingsInWords);

        var plan = Bander.Plans(_made.Folder.FullPath).AsSet!;
        Assert.Equal((9, 2), (plan.Plan.LetterHeightMm, plan.Plan.Hoopings.Count(h => !h.IsRun)));
        Assert.Equal(_made.Report.Estimate.HandsOnMinutes.Likely, plan.Estimate.HandsOnMinutes.Likely, 0.01);
    }

    [Theory]
    [InlineData("[\"needlePath\", \"machineletters\"]", "ways[2]", "Did you mean \"machineLetters\"?")]
    [InlineData("[\"needlePath\", 3]", "ways[2]", "Write \"needlePath\"")]
    [InlineData("[\"traced\", \"traced\"]", "ways[2]", "Name each way once")]
    [InlineData("[]", "ways", "Write the ways into it")]
    [InlineData("\"traced\"", "ways", "Put them in brackets")]
    [InlineData("[\"needlePath\"], \"way\": \"traced\"", "ways", "Keep the one that is meant")]
    [InlineData("[\"needlePath\", \"traced\"], \"lettering\": { \"motif\": \"dot\" }", "lettering.motif", "keep one way")]
    public void Ways_that_cannot_be_meant_are_told_where_and_what_to_do(string ways, string key, string mend)
    {
        using var folder = new TemporaryFolder().With("names.csv", Crew)
            .With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m" }, "ways": {{ways}} }""");
        var problem = Assert.Single(JobReader.Read(folder.FullPath).Problems, p => p.Severity == Severity.CannotUse);
        Assert.Equal(key, problem.Where.Key);
        Assert.Contains(mend, problem.Mend);
    }

    [Fact]
    public void Names_traced_beside_others_have_their_template()
    {
        using var folder = JobIn(Crew, "\"ways\": [\"machineLetters\", \"traced\"]");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.All(report.Plan!.Hoopings, h => Assert.False(h.HasNeedlePath));
        Assert.Equal(["machineLetters 4", "traced 2"], report.Plan.Ways.Select(w => $"{char.ToLowerInvariant(w.Way.ToString()[0])}{w.Way.ToString()[1..]} {w.Names}"));
        Assert.True(File.Exists(folder["out/template-a4.pdf"]) && File.Exists(folder["out/key-in-a4.pdf"]));
        Assert.Empty(report.Estimate!.Work.Rows.Where(r => r.Act.Contains("hooping", StringComparison.Ordinal)));
    }

    private static TemporaryFolder JobIn(string list, string ways = "\"ways\": [\"machineLetters\", \"needlePath\"]")
    {
        const string latin = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
        string letters = string.Concat(latin.Select(c => $"{c},5,6\n")) + "blank,4,0\ngap,1,\nstart,,2\n";
        return new TemporaryFolder()
            .With("job.json",
                $$"""
                { "format": 1, "title": "Crew", "lists": ["crew.csv"], "hem": { "length": "1.2 m", "closed": false }, {{ways}},
                  "letters": { "sizes": ["9 mm", "7 mm"], "holds": "any" } }
                """)
            .With("crew.csv", list).With("letters.csv", "letter,width_mm,seconds\n" + letters);
    }
}
