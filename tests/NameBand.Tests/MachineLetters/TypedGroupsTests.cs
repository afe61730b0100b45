using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Tests.CommandLine;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>Typed names in groups, each in a height that the machine has, with a motif of the machine's between them.</summary>
public class TypedGroupsTests : IClassFixture<TypedGroupsTests.Made>
{
    private const string Crew =
        "Name,Gift\nHesper Quayle,250\nTobin Marsh,10\nAda Willowby,20\nRufus Penhale,300\nMaren Lovdal,5\nKit Farthing,15\n";

    private const string Groups =
        "\"columns\": { \"group\": \"Gift\" }, \"groups\": [{ \"name\": \"patrons\", \"from\": 100, \"heightFactor\": 1.25, \"place\": \"first\", \"heading\": \"Patrons\" }]";

    private const string Motif = "\"lettering\": { \"motif\": { \"letter\": \"M12\", \"width\": \"6 mm\" } }";

    private static readonly string[] Patrons = ["Hesper Quayle", "Rufus Penhale"];

    private readonly Made _made;

    public TypedGroupsTests(Made made) => _made = made;

    public sealed class Made : IDisposable
    {
        public Made()
        {
            Folder = JobIn($"{Groups}, {Motif}");
            Report = Bander.Make(Folder.FullPath);
        }

        internal TemporaryFolder Folder { get; }

        public MakeReport Report { get; }

        public StripPlan Plan => Report.Plan!;

        public void Dispose() => Folder.Dispose();
    }

    [Fact]
    public void Each_group_has_a_height_that_the_machine_has()
    {
        Assert.Equal(ExitStatus.AllPlaced, _made.Report.Status);

        // By hand: 1.25 × 7 mm is 8.75 mm, and the machine has 9 mm; beside 9 mm it has no 11.25 mm.
        Assert.Equal(7, _made.Plan.LetterHeightMm);
        Assert.Equal("7.0 to 9.0 mm", _made.Plan.LetterHeightsInWords);
        var names = PlanJson.Read(File.ReadAllBytes(_made.Folder["out/plan.json"])).Rounds.SelectMany(r => r.Segments)
            .SelectMany(s => s.Names).ToList();
        Assert.Equal(Patrons, names.Where(n => n.LetterHeightMm == 9).Select(n => n.Text));
        Assert.Contains(
            _made.Report.Problems,
            p => p.Where.Key == "groups" && p.Severity == Severity.Note
            && p.Found.English.Contains("gets letters 9 mm high", StringComparison.Ordinal));
        Assert.Single(_made.Plan.Rounds[0].Names.Select(n => n.BaselineYMm).Distinct());
        var sheet = Sheet(_made.Folder).Where(r => r["part"] != "motif").ToList();
        Assert.Equal(["Patrons", "Hesper Quayle", "Rufus Penhale"], sheet.Where(r => r["size_mm"] == "9.0").Select(r => r["name"]));
        Assert.All(sheet.Skip(3), r => Assert.Equal("7.0", r["size_mm"]));

        // By hand: 12 letters of 5 mm, a blank of 4 mm and twelve gaps of 1 mm at 9 mm; seven ninths of that at 7 mm.
        Assert.Equal(76, Number(sheet[1], "expected_mm"), 1.5);
        Assert.Equal((10 * 5 * 7 / 9.0) + (4 * 7 / 9.0) + (10 * 7 / 9.0), Number(sheet[3], "expected_mm"), 1.5);
        var round = _made.Plan.Rounds[0];
        Assert.Equal(round.HemMm, round.LengthMm, 1e-6);
        Assert.True(round.Names.First().IsHeading);
    }

    [Fact]
    public void A_motif_of_the_machine_stands_in_the_middle_of_each_gap_and_is_keyed_before_the_next_name()
    {
        var rows = Sheet(_made.Folder);
        var names = _made.Plan.Rounds[0].Names.ToList();

        // None stands between a heading and its names.
        var gaps = names.Zip(names.Skip(1)).Where(p => !p.First.IsHeading).ToList();
        var motifs = _made.Plan.Rounds[0].Segments.SelectMany(s => s.Motifs).ToList();
        Assert.Equal(gaps.Count, motifs.Count);
        Assert.All(
            gaps.Zip(motifs),
            p => Assert.Equal((p.First.First.EndMm + p.First.Second.StartMm) / 2, (p.Second.StartMm + p.Second.EndMm) / 2, 0.002));
        Assert.All(motifs, m => Assert.Equal(6, m.WidthMm, 0.001));
        var keyed = rows.Where(r => r["part"] == "motif").ToList();
        Assert.Equal(motifs.Count, keyed.Count);
        Assert.All(keyed, r => Assert.Equal(("M12", "", "6.0"), (r["key_in"], r["order"], r["expected_mm"])));
        Assert.All(
            keyed.Zip(motifs), p => Assert.Equal(_made.Plan.OnClothMm(p.Second.StartMm), Number(p.First, "start_from_end_mm"), 0.06));
        double[] starts = [.. rows.Select(r => Number(r, "start_from_end_mm"))];
        Assert.Equal(starts.Order(), starts);

        // The hours count them: three keys and a start mark each.
        var work = _made.Report.Estimate!.Work.Rows;
        Assert.Equal(rows.Count, work.Single(r => r.Act == "bringing the start mark under the needle").Count);
        Assert.Equal(rows.Sum(r => r["key_in"].Length), work.Single(r => r.Act == "keying in").Count);
    }

    [SkippableFact]
    public void The_sheet_says_when_to_set_the_machine_anew()
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        string text = OutsideTool.Run("pdftotext", ["-layout", _made.Folder["out/key-in-a4.pdf"], "-"]);
        Assert.Contains("letters 9 and 7 mm", text);
        int large = text.IndexOf("Set the machine to letters 9 mm", StringComparison.Ordinal),
        small = text.IndexOf("Set the machine to letters 7 mm", StringComparison.Ordinal);
        Assert.True(large >= 0 && large < text.IndexOf("Rufus", StringComparison.Ordinal)
            && text.LastIndexOf("Rufus", StringComparison.Ordinal) < small && small < text.IndexOf("Tobin", StringComparison.Ordinal));
        Assert.Contains("between the names", text);
    }

    [Fact]
    public void What_is_sewn_stays_and_motifs_stand_in_the_middle_of_the_gaps_that_are_left()
    {
        using var folder = JobIn($"{Groups}, {Motif}");
        var before = Bander.Make(folder.FullPath).Plan!;
        Say(folder, 1, 3);
        var again = Bander.Make(folder.FullPath).Plan!;
        Assert.Equal(Places(before), Places(again));
        Assert.Equal(Motifs(before), Motifs(again));

        // The third comes out longer: what is not sewn moves, and so do the motifs before it.
        double longer = before.Rounds[0].Names.Single(n => n.Order == 3).WidthMm + 4;
        File.AppendAllText(
            folder["lengths.csv"],
            string.Create(CultureInfo.InvariantCulture, $"name,order,measured_mm,size_mm\nRufus Penhale,3,{longer:0.0},9\n"));
        var moved = Bander.Make(folder.FullPath).Plan!;
        var names = moved.Rounds[0].Names.ToList();
        Assert.Equal(before.Rounds[0].Names.Take(3).Select(n => n.StartMm), names.Take(3).Select(n => n.StartMm));
        Assert.NotEqual(Places(before), Places(moved));
        Assert.All(
            names.Zip(names.Skip(1)).Where(p => !p.First.IsHeading).Zip(moved.Rounds[0].Segments.SelectMany(s => s.Motifs)),
            p => Assert.Equal((p.First.First.EndMm + p.First.Second.StartMm) / 2, (p.Second.StartMm + p.Second.EndMm) / 2, 0.002));
        Assert.Equal(9, moved.LetterHeightMm * names[2].Lettered.Standing.HeightFactor, 6);

        static List<(int, double)> Places(StripPlan of) => [.. of.Rounds[0].Names.Select(n => (n.Order, Math.Round(n.StartMm, 3)))];
        static List<double> Motifs(StripPlan of) =>
            [.. of.Rounds[0].Segments.SelectMany(s => s.Motifs).Select(m => Math.Round(m.StartMm, 3))];
    }

    [Theory]
    [InlineData("\"heightFactor\": 2.5", "groups", "9 mm", "\"heightFactor\": 1.8 (9 mm beside 5 mm)")]
    [InlineData("\"heightFactor\": 1.25, \"face\": \"Lato Bold\"", "groups[1].face", "a face of its own", "Take face out")]
    public void A_group_that_the_machine_cannot_sew_is_refused_with_what_would_do(string group, string key, string found, string mend)
    {
        using var folder =
            JobIn("\"columns\": { \"group\": \"Gift\" }, \"groups\": [{ \"name\": \"patrons\", \"from\": 100, " + group + " }]");
        var report = Bander.Make(folder.FullPath);
        var problem = Assert.Single(report.Problems, p => p.Severity == Severity.CannotUse);
        Assert.Equal(key, problem.Where.Key);
        Assert.Contains(found, problem.Found.English, StringComparison.Ordinal);
        Assert.Contains(mend, problem.Mend.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("machineLetters", "\"dot\"", "lettering.motif", "only what the machine has")]
    [InlineData("machineLetters", "{ \"letter\": \"*\", \"face\": \"Lato Bold\" }", "lettering.motif.face", "only what the machine has")]
    [InlineData("machineLetters", "{ \"letter\": \"M12\", \"width\": \"0 mm\" }", "lettering.motif.width", "cannot be")]
    [InlineData("machineLetters", "{ \"letter\": \"M12\", \"width\": true }", "lettering.motif.width", "must be a length")]
    [InlineData("needlePath", "{ \"letter\": \"*\", \"width\": \"6 mm\" }", "lettering.motif.width", "a face brings its own")]
    public void A_motif_that_cannot_be_meant_is_refused(string way, string motif, string key, string found)
    {
        using var folder = new TemporaryFolder().With("names.csv", Crew).With(
            "job.json",
            $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m" }, "way": "{{way}}", "letters": { "sizes": ["9 mm"] }, "lettering": { "motif": {{motif}} } }""");
        var problem = Assert.Single(JobReader.Read(folder.FullPath).Problems, p => p.Severity == Severity.CannotUse);
        Assert.Equal(key, problem.Where.Key);
        Assert.Contains(found, problem.Found.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ \"letter\": \"x\" }", 5)]
    [InlineData("{ \"letter\": \"❦\" }", 0)]
    public void A_sign_of_the_machines_letters_is_a_motif_too_and_one_it_lacks_is_told(string motif, int motifs)
    {
        using var folder = JobIn($"\"lettering\": {{ \"motif\": {motif} }}");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(motifs, Sheet(folder).Count(r => r["part"] == "motif"));
        Assert.Equal(
            motifs == 0, report.Problems.Any(p =>
                p.Where.Key == "lettering.motif" && p.Severity == Severity.NeedsPerson
                && p.Mend.English.Contains("\"width\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void Letters_measured_at_a_height_the_machine_does_not_have_are_refused()
    {
        using var folder = JobIn("\"title\": \"Crew\"");
        File.WriteAllText(folder["letters.csv"], "letter,width_mm,height_mm\na,5,9\nb,5,9\na,7,12\nb,7,12\n");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.CannotUse, report.Status);
        var problem = Assert.Single(report.Problems, p => p.Severity == Severity.CannotUse);
        Assert.Equal(("letters.csv", 4), (problem.Where.File, problem.Where.Line));
        Assert.Contains("12 mm", problem.Found.English, StringComparison.Ordinal);
        Assert.Contains("letters.sizes", problem.Mend.English, StringComparison.Ordinal);
    }

    [Fact]
    public void On_a_curved_strip_a_long_name_is_keyed_word_by_word_and_its_marks_lie_on_the_lower_edge()
    {
        using var folder = JobIn("\"strip\": { \"shape\": \"curved\" }", "\"length\": \"1.6 m\", \"turn\": 0.3");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        var plan = report.Plan!;
        var curve = StripCurve.Of(plan.Hem, 1)!;

        // By hand: a name of width w on a base line of radius r leaves its arc by r − √(r² − w²/4) in the middle.
        double r = curve.RadiusAtMm(plan.BaselineYMm);
        var rows = Sheet(folder);
        int parts = 0;
        foreach (var name in plan.Rounds[0].Names)
        {
            double width = name.Lettered.WidthMm(plan.LetterHeightMm, 0);
            double off = r - Math.Sqrt((r * r) - (width * width / 4));
            var own = rows.Where(row => row["name"] == name.Lettered.Name.Text).ToList();
            Assert.Equal(off > 0.5 ? 2 : 1, own.Count);
            parts += own.Count - 1;

            // The middle of what is keyed is the middle of its place, and lengths are those on the base line.
            var (first, last) = (own[0], own[^1]);
            double along = curve.RadiusMm / r;
            double left = Number(first, "start_from_end_mm") * (1 - plan.Shortening);
            double right = (Number(last, "start_from_end_mm") * (1 - plan.Shortening)) + (along * Number(last, "expected_mm"));
            Assert.Equal(name.StartMm + (name.WidthMm / 2), (left + right) / 2, 0.3);
            Assert.Equal(width * along, right - left, 0.5);
            Assert.All(own, o => Assert.True(Number(o, "expected_mm") is var w && r - Math.Sqrt((r * r) - (w * w / 4)) <= 0.5));
        }

        Assert.True(parts > 0);
        Assert.True(plan.Hoopings.Length > 1 && plan.Hoopings.All(h => h.Segments.All(s => s.Segment.LengthMm < 900)));
        Assert.DoesNotContain(report.Estimate!.Work.Rows, w => w.Act.English.Contains("hooping", StringComparison.Ordinal));

        // What is sewn stays, and a measured end sets nothing out anew.
        Say(folder, 1, 2);
        var again = Bander.Make(folder.FullPath).Plan!;
        Assert.Equal(
            plan.Rounds[0].Names.Select(n => (n.Order, Math.Round(n.StartMm, 3))),
            again.Rounds[0].Names.Select(n => (n.Order, Math.Round(n.StartMm, 3))));
        folder.With("drift.csv", "number,name,end_mm\n1,,80\n");
        Assert.Contains(
            Bander.Make(folder.FullPath).Problems,
            p => p.Where.File == "drift.csv" && p.Found.English.Contains("cut to the curve", StringComparison.Ordinal));
    }

    [Fact]
    public void A_word_that_cannot_follow_the_curve_is_told()
    {
        using var folder = JobIn("\"strip\": { \"shape\": \"curved\" }", "\"length\": \"2 m\", \"turn\": 1");
        folder.With("crew.csv", "Name,Gift\nBartholomewunderhill Vane,1\nKit Farthing,1\n");
        var report = Bander.Make(folder.FullPath);
        var told = Assert.Single(report.Problems, p => p.Where.Key == "strip.shape");
        Assert.Equal(Severity.NeedsPerson, told.Severity);
        Assert.Contains("“Bartholomewunderhill”", told.Found.English, StringComparison.Ordinal);
        Assert.Contains("straight", told.Mend.English, StringComparison.Ordinal);
    }

    [Fact]
    public void What_lies_beside_the_stitches_is_not_counted_as_shortened()
    {
        using var folder = JobIn("\"title\": \"Crew\"");
        var refused = CliRun.Of("swatch", folder.FullPath, "--measured", "99.2");
        Assert.Equal(2, refused.Status);
        Assert.Contains("--measured 99.2 --under 62", refused.ErrorsOnOneLine, StringComparison.Ordinal);

        // By hand: 0.8 mm lost of the 62.8 mm that are under stitches now 62 mm long; over all 100 mm it would be 0.008.
        var said = CliRun.Of("swatch", folder.FullPath, "--measured", "99.2", "--under", "62", "--set", "--json");
        Assert.Equal(
            (0, 0.0127), (said.Status, System.Text.Json.JsonDocument.Parse(said.Out).RootElement.GetProperty("shortening").GetDouble()));
        Assert.Equal(0.0127, JobReader.Read(folder.FullPath).Value!.Strip.Shortening, 6);
        Assert.Equal(2, CliRun.Of("swatch", folder.FullPath, "--measured", "99.2", "--under", "120").Status);

        // The strip comes out as long as its hem: letters by that part shorter, the gaps not.
        var plan = Bander.Make(folder.FullPath).Plan!;
        double sewn = plan.Rounds[0].Names.Sum(n => n.WidthMm), hem = plan.Rounds[0].LengthMm;
        Assert.Equal(0.0127 * sewn / hem, plan.Shortening, 1e-5);
    }

    [Fact]
    public void A_spelling_that_its_owner_agreed_to_is_settled_by_the_command()
    {
        using var folder = JobIn("\"title\": \"Crew\"");
        folder.With("crew.csv", "Name,Gift\nZoë Tide,1\nKit Farthing,1\nMåns Ek,1\n");
        folder.With("approvals.csv", "list,line,name,state,date,text\ncrew.csv,2,Zoë Tide,change wished,2026-11-20,Zoe Tide\n");
        var said = CliRun.Of("names", folder.FullPath, "--settle");
        Assert.Contains(
            "1 wish of approvals.csv written into corrections.csv", said.OutOnOneLine.Replace('\u00a0', ' '), StringComparison.Ordinal);
        string[] lines = File.ReadAllLines(folder["corrections.csv"]);
        Assert.Contains(lines, l => l.StartsWith("crew.csv,2,Zoë Tide,change,Zoe Tide,wished 2026-11-20", StringComparison.Ordinal));

        // Nobody answered for the other one: that decision stays hers.
        Assert.Contains(lines, l => l.StartsWith("crew.csv,4,Måns Ek,,,", StringComparison.Ordinal));
        var plan = Bander.Make(folder.FullPath).Plan!;
        Assert.Equal(["Zoe Tide", "Kit Farthing"], plan.Rounds[0].Names.Select(n => n.Lettered.Name.Text));
    }

    private static void Say(TemporaryFolder folder, int first, int last) => Assert.NotNull(Bander.Sewn(
        folder.FullPath, null, new SewingWord(0, SewingDeed.Sewn, 5, When: "2026-11-29T20:00") { Names = (first, last) },
        () => Thread.Sleep(20)).Said);

    private static TemporaryFolder JobIn(string more, string hem = "\"length\": \"1.2 m\"")
    {
        string letters = string.Concat("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ".Select(c => $"{c},5,6\n"))
            + "blank,4,0\ngap,1,\nstart,,2\n";
        return new TemporaryFolder()
            .With("job.json",
                $$"""
                { "format": 1, "lists": ["crew.csv"], "hem": { {{hem}}, "closed": false }, "way": "machineLetters",
                  "letters": { "sizes": ["9 mm", "7 mm", "5 mm"] }, {{more}} }
                """)
            .With("crew.csv", Crew).With("letters.csv", "letter,width_mm,seconds\n" + letters);
    }

    private static List<Dictionary<string, string>> Sheet(TemporaryFolder folder)
    {
        var table = CsvFile.Read(folder["out"], "key-in.csv").Value!;
        return [.. table.Rows.Skip(1).Select(r => table.Rows[0].Fields.Zip(r.Fields).ToDictionary(p => p.First, p => p.Second))];
    }

    private static double Number(Dictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);
}
