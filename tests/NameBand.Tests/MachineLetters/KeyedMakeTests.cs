using System.Globalization;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Spelling;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>The whole line for names that are keyed into a machine's own letters.</summary>
public class KeyedMakeTests
{
    private const string Crew =
        "Name\nHesper Quayle\nTobin Marsh\nAda Willowby\nRufus Penhale\nBartholomew Underhill-Vane\nKit Farthing\n";

    [Theory]
    [InlineData("1 m", 9)]
    [InlineData("560 mm", 7)]
    [InlineData("430 mm", 5)]
    public void The_largest_setting_that_fits_is_taken(string hem, double heightMm)
    {
        using var folder = Folder(hem);
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(heightMm, report.Plan!.LetterHeightMm);
        Assert.True(report.Plan.MatchesHem);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
    }

    [Fact]
    public void A_strip_too_short_for_the_smallest_letters_is_laid_out_all_the_same_and_told()
    {
        using var folder = Folder("250 mm");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(5, report.Plan!.LetterHeightMm);
        Assert.False(report.Plan.MatchesHem);
        Assert.Contains(report.Problems, p => p.Mend.English.Contains("smallest setting in letters.sizes"));
    }

    [Fact]
    public void The_sheet_says_where_each_piece_starts_and_how_long_it_must_be()
    {
        using var folder = Folder("1 m", "\"holds\": 12");
        Bander.Make(folder.FullPath);
        var rows = Rows(folder["out/key-in.csv"]);
        Assert.Equal("Hesper␣", rows[0]["key_in"]);
        Assert.Equal("1 of 2", rows[0]["part"]);

        // By hand: all letters of 9 mm are 5 mm wide to half a millimetre, a blank 4 mm, gaps 1 mm. No face has such letters, so the
        // widths are believed not quite.
        Assert.Equal(35, Number(rows[0], "expected_mm"), 0.7);
        Assert.Equal("4.0", rows[0]["start_from_end_mm"]);
        Assert.Equal(4 + (6 * 6) + 5, Number(rows[1], "start_from_end_mm"), 1.0);
        Assert.Equal(6, Number(rows[1], "start_from_last_mm"), 0.7);
        Assert.Equal(35, Number(rows[1], "expected_mm"), 0.7);
        Assert.Equal("Underhill-", rows.Single(r => r["part"] == "2 of 3")["key_in"][..10]);
        Assert.All(rows, r => Assert.True(r["key_in"].Length <= 12 && !r["key_in"].StartsWith('␣')));
        var last = rows[^1];
        double end = Number(last, "start_from_end_mm") + Number(last, "expected_mm");
        Assert.InRange(end, 1000, 1000 / 0.99);
    }

    [Fact]
    public void Sewn_from_the_other_end_the_names_come_backwards_letter_by_letter()
    {
        using var folder = Folder("1 m", "\"tops\": \"left\"");
        Bander.Make(folder.FullPath);
        var rows = Rows(folder["out/key-in.csv"]);
        Assert.Equal("gnihtraF␣tiK", rows[0]["key_in"]);
        Assert.Equal("4.0", rows[0]["start_from_end_mm"]);
        Assert.Equal("elyauQ␣repseH", rows[^1]["key_in"]);
    }

    [Fact]
    public void The_plan_keeps_its_form_without_needle_paths()
    {
        using var folder = Folder("1 m");
        var report = Bander.Make(folder.FullPath);
        using var plan = JsonDocument.Parse(File.ReadAllText(folder["out/plan.json"]));
        var hooping = plan.RootElement.GetProperty("hoopings")[0];
        Assert.Equal(JsonValueKind.Null, hooping.GetProperty("needlePath").ValueKind);
        Assert.True(File.Exists(folder["out/" + hooping.GetProperty("proof").GetString()]));
        Assert.False(Directory.Exists(folder["out/needle-paths"]));
        Assert.Equal(6, plan.RootElement.GetProperty("totals").GetProperty("names").GetInt32());

        // By hand: 83 letters of 6 s each, the blanks none, and 2 s to start each name.
        double letters = "HesperQuayleTobinMarshAdaWillowbyRufusPenhaleBartholomewUnderhill-VaneKitFarthing".Length;
        double minutes = ((letters * 6) + (6 * 2)) / 60;
        Assert.Equal(minutes, report.Estimate!.MachineWork.Single(w => w.Act == "stitching").Minutes.Likely, 6);
        Assert.DoesNotContain(report.Estimate.HandWork, w => w.CountedFrom == "hoopings");
        Assert.Contains(report.Estimate.HandWork, w => w.Act == "keying in");
        Assert.Equal(report.Estimate.MachineMinutes.Likely, Bander.Hours(folder.FullPath).Estimate!.MachineMinutes.Likely, 6);
    }

    [Fact]
    public void A_name_with_a_letter_the_machine_lacks_waits_for_its_owner_and_is_sewn_once_agreed()
    {
        using var folder = Folder("1 m").With("crew.csv", Crew + "Zoë Tide\n");
        var waiting = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.NeedsPerson, waiting.Status);
        Assert.Equal(6, waiting.Plan!.NameCount);
        string mend = waiting.Problems.Single(p => p.Found.English.Contains("“ë”")).Mend.English;
        string line = mend[mend.LastIndexOf("crew.csv,8", StringComparison.Ordinal)..];
        folder.With("corrections.csv", "list,line,was,decision,text,why\n" + line + "\n");
        var agreed = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, agreed.Status);
        Assert.Contains(agreed.Plan!.Rounds[0].Names, n => n.Lettered.Name.Text == "Zoe Tide");
    }

    [Fact]
    public void Marks_are_added_by_hand_and_the_spelling_stays()
    {
        using var folder = Folder("1 m", "\"lacking\": \"byHand\"").With("crew.csv", Crew + "Zoë Tide\nSøren Ek\n");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Contains(report.Plan!.Rounds[0].Names, n => n.Lettered.Name.Text == "Zoë Tide");
        var rows = Rows(folder["out/key-in.csv"]);
        var zoe = rows.Single(r => r["name"] == "Zoë Tide");
        Assert.Equal(("Zoe␣Tide", "ë: two dots on e"), (zoe["key_in"], zoe["by_hand"]));
        Assert.Equal(
            ("Soren␣Ek", "ø: stroke on o"), rows.Where(r => r["name"] == "Søren Ek").Select(r => (r["key_in"], r["by_hand"])).Single());
        Assert.All(rows.Take(6), r => Assert.Equal("", r["by_hand"]));

        // By hand: seven letters of 5 mm, a blank of 4 mm and seven gaps of 1 mm; a mark takes one and a half minutes, a tenth is rest.
        Assert.Equal((7 * 5) + 4 + 7, Number(zoe, "expected_mm"), 0.8);
        Assert.Equal(2 * 1.5 * 1.1, report.Estimate!.HandWork.Single(w => w.Act == "adding marks to letters by hand").Minutes.Likely, 6);

        // The marks are drawn: above the plain letters, and through the o.
        var known = LetterKnowledge.Of(LettersSettings.Usual, null, [], SewnLengths.None, new SizeStep(9, 1)).Value!;
        var shelf = new FaceShelf();
        var shapes = LetterShapes.Of(Letters.Of("Zoëe"), shelf.Open("Nunito Bold", "").Value!, shelf);
        var word = new NameComposer(new SizeStep(9, 1), known, shapes).Marked(Letters.Of("Zoë"));
        Assert.Equal(["ë: two dots on e"], word.Letters.Select(l => l.InWords));
        var (plain, whole) = (word.Plain[^1].Bounds(), Assert.Single(word.Whole).Bounds());
        Assert.Equal(word.LengthMm, plain.RightMm, 0.01);
        Assert.Equal(plain.BottomMm, whole.BottomMm, 0.1);
        Assert.InRange(whole.TopMm - plain.TopMm, 1, 4);
        Assert.InRange(whole.LeftMm + whole.RightMm - plain.LeftMm - plain.RightMm, -1, 1);
    }

    [Fact]
    public void Hooped_cloth_is_dealt_out_to_hoopings_and_the_best_fit_needs_them()
    {
        using var hooped = Folder("1 m", "\"hooped\": true");
        var report = Bander.Make(hooped.FullPath);
        Assert.True(report.Plan!.Hoopings.Length > 3);
        Assert.All(report.Plan.Rounds.SelectMany(r => r.Segments), s => Assert.True(s.LengthMm <= 150 + 1e-6));
        Assert.Equal(report.Plan.Hoopings.Length.ToString(CultureInfo.InvariantCulture), Rows(hooped["out/key-in.csv"])[^1]["sitting"]);
        Assert.Contains(report.Estimate!.HandWork, w => w.CountedFrom == "hoopings");

        using var fed = Folder("1 m");
        fed.With("job.json", File.ReadAllText(fed["job.json"]).Replace("\"way\"", "\"lettering\": { \"order\": \"bestFit\" }, \"way\""));
        Assert.Equal("Hesper Quayle", Bander.Make(fed.FullPath).Plan!.Rounds[0].Names.First().Lettered.Name.Text);
    }

    [Fact]
    public void The_log_shows_its_names_one_by_one()
    {
        using var folder = Folder("1 m");
        Bander.Make(folder.FullPath);
        var report = Bander.Sewn(folder.FullPath, null, null, () => { });
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Empty(report.Hoopings);
        Assert.Equal([1, 2, 3, 4, 5, 6], report.Names.Select(n => n.Number));
    }

    [Fact]
    public void Without_measured_letters_the_plan_is_made_and_the_person_told()
    {
        using var folder = Folder("1 m");
        File.Delete(folder["letters.csv"]);
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        var asked = report.Problems.Single(p => p.Found.English.Contains("not measured yet"));
        var first = Rows(folder["out/key-in.csv"]).Take(3).ToList();
        Assert.All(first, r => Assert.Contains($"“{r["name"]}”", asked.Mend.English));
        Assert.Equal(["1", "2", "3"], first.Select(r => r["turn"]));
        Assert.All(Rows(folder["out/key-in.csv"]), r => Assert.Equal("~", r["estimated"]));
    }

    [Fact]
    public void A_measured_end_moves_what_is_still_to_be_sewn()
    {
        using var folder = Folder("1 m");
        Bander.Make(folder.FullPath);
        var before = Rows(folder["out/key-in.csv"]);
        double planned = (Number(before[2], "start_from_end_mm") * 0.99) + Number(before[2], "expected_mm");
        folder.With("drift.csv", FormattableString.Invariant($"number,name,end_mm\n3,Ada Willowby,{planned + 8:0.0}\n"));
        var report = Bander.Make(folder.FullPath);
        Assert.True(report.Plan!.MatchesHem);
        var after = Rows(folder["out/key-in.csv"]);
        Assert.Equal(["sewn", "sewn", "sewn", "", "", ""], after.Select(r => r["done"]));
        Assert.True(Number(after[3], "start_from_last_mm") < Number(before[3], "start_from_last_mm"));
        Assert.Equal(1000 - 4, report.Plan.Rounds[0].Names.Last().EndMm, 6);
        Assert.Contains(report.Problems, p => p.Where.File == "drift.csv" && p.Found.English.Contains("3 names are sewn"));
    }

    [Fact]
    public void A_name_that_comes_to_lie_on_a_place_kept_clear_is_told_of()
    {
        int told = 0;
        foreach (int at in new[] { 500, 560, 620, 680, 740, 800 })
        {
            using var folder = Folder("1 m");
            folder.With(
                "job.json", File.ReadAllText(folder["job.json"])
                .Replace("\"length\": \"1 m\"", $"\"length\": \"1 m\", \"keepClear\": [\"60 mm at {at} mm\"]", StringComparison.Ordinal));
            Bander.Make(folder.FullPath);
            var before = Rows(folder["out/key-in.csv"]);
            double planned = (Number(before[2], "start_from_end_mm") * 0.99) + Number(before[2], "expected_mm");
            folder.With("drift.csv", FormattableString.Invariant($"number,name,end_mm\n3,,{planned + 8:0.0}\n"));
            var report = Bander.Make(folder.FullPath);
            bool lies = report.Plan!.Rounds[0].Names.Any(n => n.EndMm > at - 29 && n.StartMm < at + 29);
            Assert.Equal(
                lies, report.Problems.Any(p =>
                    p.Severity == Severity.NeedsPerson
                    && p.Found.English.Contains("lies on a place that is kept clear", StringComparison.Ordinal)));
            told += lies ? 1 : 0;
        }

        Assert.InRange(told, 1, 6);
    }

    [Fact]
    public void The_same_job_gives_the_same_bytes()
    {
        using var folder = Folder("1 m");
        Bander.Make(folder.FullPath, folder["a"]);
        Bander.Make(folder.FullPath, folder["b"]);
        foreach (string name in new[] { "key-in-a4.pdf", "key-in-letter.pdf", "key-in.csv", "plan.json" })
        {
            Assert.Equal(File.ReadAllBytes(folder["a/" + name]), File.ReadAllBytes(folder["b/" + name]));
        }
    }

    [SkippableFact]
    public void The_printed_sheet_has_every_name_and_mark()
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        using var folder = Folder("2.6 m");
        folder.With("crew.csv", Crew + string.Concat("ABCDEFGHIJKLMN".Select(c => $"Nell {c}arrow\n")));
        Bander.Make(folder.FullPath);

        // The first page is not left blank below its heading: the strip goes on over the page.
        string first = OutsideTool.Run("pdftotext", ["-layout", "-l", "1", folder["out/key-in-letter.pdf"], "-"]);
        Assert.Contains("Kit", first);
        Assert.DoesNotContain("Narrow", first);
        string text = OutsideTool.Run("pdftotext", ["-layout", folder["out/key-in-letter.pdf"], "-"]);
        foreach (string word in new[] { "Hesper", "Willowby", "Underhill-", "Vane", "Begin at its left end", "must come out at",
            "first letter first", "measured", "Narrow", "±", "struck through" })
        {
            Assert.Contains(word, text);
        }
    }

    /// <summary>A banner's edge and an alphabet by hand: every letter 5 mm wide at 9 mm and sewn in 6 s.</summary>
    private static TemporaryFolder Folder(string hem, string more = "\"holds\": \"any\"")
    {
        string letters = string.Concat("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ".Select(c => $"{c},5,6\n"))
            + "'-,5,6\nblank,4,0\ngap,1,\nstart,,2\n";
        return new TemporaryFolder()
            .With("job.json",
                $$"""
                { "format": 1, "title": "Crew", "lists": ["crew.csv"], "hem": { "length": "{{hem}}", "closed": false }, "way": "machineLetters",
                  "letters": { "sizes": ["9 mm", "7 mm", "5 mm"], {{more}} } }
                """)
            .With("crew.csv", Crew).With("letters.csv", "letter,width_mm,seconds\n" + letters);
    }

    private static List<Dictionary<string, string>> Rows(string path)
    {
        var table = CsvFile.Read(Path.GetDirectoryName(path)!, Path.GetFileName(path)).Value!;
        return [.. table.Rows.Skip(1).Select(r => table.Rows[0].Fields.Zip(r.Fields).ToDictionary(p => p.First, p => p.Second))];
    }

    private static double Number(Dictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);
}
