using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Tests.CommandLine;
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
    public void The_way_each_name_went_is_gone_on_from()
    {
        var names = EarlierPlanFile.Read(_made.Folder.FullPath, "out/plan.json").Value!.Rounds.SelectMany(r => r.Segments)
            .SelectMany(s => s.Names).ToList();
        Assert.Equal(6, names.Count);
        Assert.All(names, n => Assert.Equal(Lacking.Contains(n.Text) ? Followed : Keyed, JobKeys.WordOf(n.Way)));
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
        Assert.All(
            keyIn.Select(l => l.Split(',')), c => Assert.Equal(starts[c[4]], double.Parse(c[9], CultureInfo.InvariantCulture), 0.06));

        // A name has one number, whichever way it goes: on its sheet, in the plan and in the log.
        var numbers =
            _made.Plan.Rounds[0].Names.ToDictionary(n => n.Lettered.Name.Text, n => n.Order.ToString(CultureInfo.InvariantCulture));
        Assert.All(keyIn.Select(l => l.Split(',')), c => Assert.Equal(numbers[c[4]], c[1]));
        string[] titles = File.ReadLines(_made.Folder["out/worksheet.csv"]).First().Split(',');
        Assert.All(worksheet.Select(l => l.Split(',')), c => Assert.Equal(numbers[c[3]], c[Array.IndexOf(titles, "last_number")]));
        string[] head = File.ReadLines(_made.Folder["out/key-in.csv"]).First().Split(',');
        Assert.All(keyIn.Select(l => l.Split(',')), c => Assert.Equal(_made.Written.Made!.Mark, c[Array.IndexOf(head, "plan")]));

        // The one ruler: from the cut left end of the flat cloth, the turned-in end with it.
        var onCloth = _made.Written.Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names.Select(n => (
            n.Text, AtMm: (double)s.OnClothMm!.Value + ((double)(n.StartMm - s.StartMm) / (1 - _made.Plan.Shortening)))))
            .ToDictionary(n => n.Text, n => n.AtMm);
        Assert.True(onCloth["Hesper Quayle"] > 10);
        Assert.All(
            keyIn.Select(l => l.Split(',')),
            c => Assert.Equal(
                onCloth[c[4]], double.Parse(c[Array.IndexOf(head, "start_on_cloth_mm")], CultureInfo.InvariantCulture), 0.06));
        Assert.All(
            worksheet.Select(l => l.Split(',')),
            c => Assert.True(double.Parse(c[Array.IndexOf(titles, "cloth_start_mm")], CultureInfo.InvariantCulture) <= onCloth[c[3]]
            + 0.06));
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
        Assert.Equal(
            2, rows.Where(r => r.Act.English.StartsWith("hooping and setting straight", StringComparison.Ordinal)).Sum(r => (double)r.Count));
        Assert.True(Count("stitching, keyed in") > 0 && Count("stitching, from needle paths") > 0);
        Assert.DoesNotContain(rows, r => r.Act == "starting a hooping, keyed in");

        var estimated = Bander.Hours(_made.Folder.FullPath);
        Assert.Equal(_made.Report.Estimate!.MachineMinutes.Likely, estimated.Estimate!.MachineMinutes.Likely, 0.01);
        Assert.Equal(_made.Report.Estimate.HandsOnMinutes.Likely, estimated.Estimate.HandsOnMinutes.Likely, 0.01);
        Assert.Contains(estimated.Shopping!.Lines, l => l.What == "backing" && l.Needed.English.StartsWith("2 pieces", StringComparison.Ordinal));

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
        Assert.Contains(refused.Problems, p => p.Found.English.Contains("keyed in", StringComparison.Ordinal));
        Assert.False(File.Exists(folder[SewingLogFile.FileName]));

        var said = Say(hooping);
        Assert.Equal(ExitStatus.AllPlaced, said.Status);
        Assert.Equal(plan.Hoopings.Count(h => h.HasNeedlePath), said.Hoopings.Length);

        File.AppendAllText(folder["crew.csv"], "Ro Ash\n");
        var again = Bander.Make(folder.FullPath);
        var before = plan.Rounds[0].Names.ToDictionary(n => n.Lettered.Name.Text);
        var sewn = again.Plan!.Hoopings.Single(h => h.Number == hooping);
        Assert.All(
            sewn.Segments.SelectMany(s => s.Segment.Names), n => Assert.Equal(before[n.Lettered.Name.Text].StartMm, n.StartMm, 1e-6));
        Assert.Equal(path, File.ReadAllBytes(folder[$"out/needle-paths/hooping-{hooping:000}.csv"]));
        Assert.Equal(7, again.Plan.NameCount);
        Assert.False(Assert.Single(again.Plan.Hoopings, h => Texts(h).Contains("Ro Ash")).HasNeedlePath);
        Assert.Equal(5, File.ReadLines(folder["out/key-in.csv"]).Count() - 1);
        Assert.All(
            again.Plan.Hoopings, h => Assert.Single(h.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Lettered.Way).Distinct()));
        var names = again.Plan.Rounds[0].Names.OrderBy(n => n.StartMm).ToList();
        Assert.All(names.Zip(names.Skip(1)), p => Assert.True(p.Second.StartMm >= p.First.EndMm - 0.01));

        var keyed = again.Plan.Hoopings.First(h => !h.HasNeedlePath).Segments[0].Segment.Names[0];
        Assert.Contains(
            "is sewn from a needle path", Assert.Single(Say(0, sewn.Segments[0].Segment.Names[0].Order).Problems).Found.English,
            StringComparison.Ordinal);
        Assert.Equal(ExitStatus.AllPlaced, Say(0, keyed.Order).Status);
        File.AppendAllText(folder["crew.csv"], "Pia Ash\n");
        var third = Bander.Make(folder.FullPath);
        var stays = third.Plan!.Rounds[0].Names.Single(n => n.Order == keyed.Order);
        Assert.Equal((keyed.Lettered.Name.Text, keyed.StartMm), (stays.Lettered.Name.Text, stays.StartMm));
        Assert.Equal(path, File.ReadAllBytes(folder[$"out/needle-paths/hooping-{hooping:000}.csv"]));
        var left = third.Estimate!.WorkLeft;
        Assert.Equal((1, 1), (left.HoopingsInAll - left.Hoopings, left.NamesInAll - left.Names));
        Assert.Equal(third.Plan.Rounds[0].Names.Count(n => n.Lettered.Way != Way.NeedlePath), left.NamesInAll);

        // Wider letters: what is not sewn is set out anew, but for the run that is begun and the hooping that is sewn.
        folder.With("letters.csv", File.ReadAllText(folder["letters.csv"]).Replace(",5,6", ",5.6,6", StringComparison.Ordinal));
        var wider = Bander.Make(folder.FullPath).Plan!;
        var run3 = third.Plan.Hoopings.First(h => h.Segments.SelectMany(s => s.Segment.Names).Any(n => n.Order == keyed.Order));
        var was = third.Plan.Rounds[0].Names.ToDictionary(n => n.Order);
        var now = wider.Rounds[0].Names.ToDictionary(n => n.Order);
        Assert.All(
            run3.Segments.Concat(sewn.Segments).SelectMany(s => s.Segment.Names),
            n => Assert.Equal((was[n.Order].StartMm, was[n.Order].WidthMm), (now[n.Order].StartMm, now[n.Order].WidthMm)));
        Assert.Contains(now.Values, n => n.WidthMm > was[n.Order].WidthMm + 1);

        SewingReport Say(int number, int name = 0) => Bander.Sewn(
            folder.FullPath, null,
            new SewingWord(number, SewingDeed.Sewn, 5, When: "2026-11-29T20:00") { Names = name > 0 ? (name, name) : null },
            () => Thread.Sleep(20));

        static IEnumerable<string> Texts(Hooping hooping) =>
            hooping.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Lettered.Name.Text);
    }

    [Fact]
    public void What_was_not_measured_is_never_keyed_in_beside_another_way()
    {
        using var folder = JobIn(Crew);
        File.Delete(folder["letters.csv"]);
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Contains(
            report.Problems, p => p.Severity == Severity.NeedsPerson && p.Found.English.Contains("not measured", StringComparison.Ordinal));
        Assert.All(report.Plan!.Hoopings, h => Assert.True(h.HasNeedlePath));
        Assert.Equal(6, report.Plan.NameCount);
    }

    [Fact]
    public void On_the_screen_it_stands_as_it_is_made_and_so_does_its_plan()
    {
        var laid = new Pipeline.LayoutSession(_made.Folder.FullPath).Lay().Laid!;
        Assert.Equal(4, laid.KeyIns.Length);
        Assert.Equal(_made.Report.Estimate!.MachineMinutes.Likely, laid.Calculate().Estimate.MachineMinutes.Likely, 0.01);
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
    [InlineData(
        "[\"machineLetters\", \"traced\"], \"letters\": { \"sizes\": [\"9 mm\"] }, \"lettering\": { \"motif\": \"dot\" }",
        "lettering.motif", "or \"none\"")]
    public void Ways_that_cannot_be_meant_are_told_where_and_what_to_do(string ways, string key, string mend)
    {
        using var folder = new TemporaryFolder().With("names.csv", Crew)
            .With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m" }, "ways": {{ways}} }""");
        var problem = Assert.Single(JobReader.Read(folder.FullPath).Problems, p => p.Severity == Severity.CannotUse);
        Assert.Equal(key, problem.Where.Key);
        Assert.Contains(mend, problem.Mend.English);
    }

    [Fact]
    public void Names_traced_beside_others_have_their_template()
    {
        using var folder = JobIn(Crew, "\"ways\": [\"machineLetters\", \"traced\"]");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.All(report.Plan!.Hoopings, h => Assert.False(h.HasNeedlePath));
        Assert.Equal(
            ["machineLetters 4", "traced 2"],
            report.Plan.Ways.Select(w => $"{char.ToLowerInvariant(w.Way.ToString()[0])}{w.Way.ToString()[1..]} {w.Names}"));
        Assert.True(File.Exists(folder["out/template-a4.pdf"]) && File.Exists(folder["out/key-in-a4.pdf"]));
        Assert.Empty(report.Estimate!.Work.Rows.Where(r => r.Act.English.Contains("hooping", StringComparison.Ordinal)));
        Assert.Single(report.Estimate.Work.Rows, r => r.Act.English == "printing and pinning the template");
    }

    [Fact]
    public void Groups_headings_and_motifs_stand_in_every_way_and_all_of_a_group_are_as_high_as_the_machine_has_it()
    {
        const string gifts =
            "Name,Gift\nHesper Quayle,250\nTobin Márquez,300\nAda Willowby,20\nKit Farthing,10\nRufus Peñhale,5\nBo Underhill,1\n";
        using var folder = JobIn(gifts,
            "\"ways\": [\"machineLetters\", \"needlePath\"], \"columns\": { \"group\": \"Gift\" }, "
            + "\"groups\": [{ \"name\": \"patrons\", \"from\": 100, \"heightFactor\": 1.3, \"place\": \"first\", \"heading\": \"Patrons\" }], "
            + "\"lettering\": { \"motif\": { \"letter\": \"x\" } }", "1.4 m");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        var names = report.Plan!.Rounds[0].Names.ToList();
        Assert.Equal(
            ["Patrons", "Hesper Quayle", "Tobin Márquez", "Ada Willowby", "Kit Farthing", "Rufus Peñhale", "Bo Underhill"],
            names.Select(n => n.Lettered.Name.Text));
        Assert.Equal(7, report.Plan.LetterHeightMm);
        Assert.All(
            names, n => Assert.Equal(names.IndexOf(n) < 3 ? 9 : 7, report.Plan.LetterHeightMm * n.Lettered.Standing.HeightFactor, 6));
        Assert.All(names.Where(n => Lacking.Contains(n.Lettered.Name.Text)), n => Assert.Equal(Way.NeedlePath, n.Lettered.Way));
        Assert.Equal(Way.MachineLetters, names[0].Lettered.Way);
        Assert.Equal(6, report.Plan.NameCount);

        // The drawn name of the group is as high as the typed ones beside it.
        var capital = names[2].Lettered.Pieces[0].Piece.Ink;
        Assert.Equal(9, (capital.TopMm - capital.BottomMm) * 7, 0.5);

        // Motifs stand between neighbours that go the same way, in the middle, and over no name.
        var motifs = report.Plan.Rounds[0].Segments.SelectMany(s => s.Motifs).ToList();
        var alike = names.Zip(names.Skip(1)).Where(p => p.First.Lettered.Way == p.Second.Lettered.Way && !p.First.IsHeading).ToList();
        Assert.Equal(
            alike.Select(p => Math.Round((p.First.EndMm + p.Second.StartMm) / 2, 2)),
            motifs.Select(m => Math.Round((m.StartMm + m.EndMm) / 2, 2)));
        Assert.NotEmpty(motifs);

        // What is sewn keeps its place and height.
        var hooping = report.Plan.Hoopings.First(h => h.HasNeedlePath);
        byte[] path = File.ReadAllBytes(folder[$"out/needle-paths/hooping-{hooping.Number:000}.csv"]);
        Assert.NotNull(Bander.Sewn(
            folder.FullPath, null, new SewingWord(hooping.Number, SewingDeed.Sewn, 5, When: "2026-11-29T20:00"),
            () => Thread.Sleep(20)).Said);
        var again = Bander.Make(folder.FullPath).Plan!;
        Assert.Equal(
            names.Select(n => (n.Order, Math.Round(n.StartMm, 3))), again.Rounds[0].Names.Select(n => (n.Order, Math.Round(n.StartMm, 3))));
        Assert.Equal(path, File.ReadAllBytes(folder[$"out/needle-paths/hooping-{hooping.Number:000}.csv"]));
    }

    [Fact]
    public void Two_lines_hold_pairs_that_go_the_same_way()
    {
        using var folder = JobIn(
            Crew, "\"ways\": [\"machineLetters\", \"needlePath\"], \"strip\": { \"lines\": 2, \"cutWidth\": \"80 mm\" }", "600 mm");
        var report = Bander.Make(folder.FullPath);
        Assert.NotEqual(ExitStatus.CannotUse, report.Status);
        var round = Assert.Single(report.Plan!.Rounds);
        Assert.Equal(6, report.Plan.NameCount);
        Assert.Equal(3, round.Places.Length);
        Assert.All(round.Segments, s => Assert.Single(s.Names.Select(n => n.Lettered.Way).Distinct()));
        Assert.Equal(2, round.Names.Count(n => n.Lettered.Way == Way.NeedlePath));
        Assert.Equal(4, File.ReadLines(folder["out/key-in.csv"]).Count() - 1);
    }

    [Fact]
    public void Names_drawn_beside_typed_ones_have_the_face_that_is_nearest_to_the_machines_letters_unless_one_is_named()
    {
        // Widths of another face's letters at a capital height of 9 mm: the machine has letters like those.
        var shelf = new FaceShelf();
        var like = shelf.Open(shelf.Cards.Where(c => c.Look == LetterLook.Serif).OrderBy(c => c.Name, StringComparer.Ordinal)
            .First()).Value!;
        using var folder = JobIn(Crew, more: ", \"look\": \"serif\"");
        string[] latin = [.. "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ".Select(c => c.ToString())];
        var shapes = LetterShapes.Of(latin, like, shelf);
        folder.With(
            "letters.csv",
            "letter,width_mm,seconds\n"
            + string.Concat(latin.Select(l => string.Create(CultureInfo.InvariantCulture, $"{l},{shapes[l].Ink.WidthMm * 9:0.00},6\n")))
            + "blank,3,0\ngap,0.8,\n");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(like.Name, report.Plan!.Rounds[0].Names.First(n => n.Lettered.Way == Way.NeedlePath).Lettered.Pieces[0].Piece.Face);
        Assert.Contains(report.Problems, p => p.Where.Key == "lettering.face" && p.Found.English.Contains(like.Name, StringComparison.Ordinal));
        Assert.Equal(like.Name, PlanJson.Read(File.ReadAllBytes(folder["out/plan.json"])).Face);

        // Once something is sewn the face is settled, and nothing of it is asked.
        int hooping = report.Plan.Hoopings.First(h => h.HasNeedlePath).Number;
        Assert.NotNull(Bander.Sewn(
            folder.FullPath, null, new SewingWord(hooping, SewingDeed.Sewn, 5, When: "2026-11-29T20:00"), () => Thread.Sleep(20)).Said);
        var again = Bander.Make(folder.FullPath);
        Assert.DoesNotContain(again.Problems, p => p.Severity == Severity.NeedsPerson);
        Assert.Equal(like.Name, PlanJson.Read(File.ReadAllBytes(folder["out/plan.json"])).Face);
    }

    [Fact]
    public void Plans_say_who_goes_which_way()
    {
        var answer = Assert.IsType<Reports.Answers.PlansAnswer>(Bander.Plans(_made.Folder.FullPath).Answer);
        var plan = answer.Plans.Single(p => p.Wish == "asSet");
        Assert.Equal(
            [("machineLetters", "keyed in", 4), ("needlePath", "from needle paths", 2)],
            plan.Who!.Select(w => (w.Way, w.How, w.Names.Count)));
        Assert.Equal(Lacking, plan.Who![1].Names);
        string said = CliRun.Of("plans", _made.Folder.FullPath).OutOnOneLine.Replace('\u00a0', ' ');
        Assert.Contains("2 names from needle paths: Tobin Márquez, Rufus Peñhale", said, StringComparison.Ordinal);
    }

    private static TemporaryFolder JobIn(
        string list, string ways = "\"ways\": [\"machineLetters\", \"needlePath\"]", string hem = "1.2 m", string more = "")
    {
        const string latin = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
        string letters = string.Concat(latin.Select(c => $"{c},5,6\n")) + "blank,4,0\ngap,1,\nstart,,2\n";
        return new TemporaryFolder()
            .With("job.json",
                $$"""
                { "format": 1, "title": "Crew", "lists": ["crew.csv"], "hem": { "length": "{{hem}}", "closed": false }, {{ways}},
                  "letters": { "sizes": ["9 mm", "7 mm"], "holds": "any"{{more}} } }
                """)
            .With("crew.csv", list).With("letters.csv", "letter,width_mm,seconds\n" + letters);
    }
}
