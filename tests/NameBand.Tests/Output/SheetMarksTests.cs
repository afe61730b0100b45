using System.Text.Json;
using NameBand.Layout;
using NameBand.Output;
using NameBand.PlanFile;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>The four signs by which a sheet is told from an older one, and the one ruler that all sheets count on.</summary>
public sealed class SheetMarksTests
{
    private static StripPlan Moved(StripPlan plan, int hooping, Func<PlacedName, PlacedName> change)
    {
        var was = plan.Hoopings[hooping];
        var hooped = was.Segments[0];
        var segment = hooped.Segment with { Names = hooped.Segment.Names.SetItem(0, change(hooped.Segment.Names[0])) };
        return plan with { Hoopings = plan.Hoopings.SetItem(hooping, was with { Segments = [hooped with { Segment = segment }] }) };
    }

    [Theory]
    [InlineData(" 5slu ", true)]
    [InlineData("5SL", false)]
    [InlineData("5SLUX", false)]
    [InlineData("5SL0", false)]
    [InlineData("1234", false)]
    [InlineData("largest", false)]
    public void What_is_typed_is_a_mark_only_as_one_is_written(string typed, bool isMark) =>
        Assert.Equal(isMark, SheetMarks.IsMark(SheetMarks.AsWritten(typed)));

    [Fact]
    public void A_mark_is_four_signs_that_are_not_taken_for_others()
    {
        var plan = OutSample.Plan();
        string[] marks = [SheetMarks.Of(plan), .. plan.Hoopings.Select(h => SheetMarks.Of(plan, h))];
        Assert.All(marks, m => Assert.Matches("^[2-9A-HJ-NP-Z]{4}$", m));
        Assert.Equal(marks.Length, marks.Distinct().Count());
    }

    [Fact]
    public void A_hooping_has_another_mark_when_a_name_of_it_moves_or_is_spelt_otherwise_and_keeps_it_when_another_hooping_changes()
    {
        var plan = OutSample.Plan();
        foreach (var changed in new[]
        {
            Moved(plan, 1, n => n with { StartMm = n.StartMm + 0.1 }),
            Moved(plan, 1,
                n => n with { Lettered = n.Lettered with { Name = new Names.Name(n.Lettered.Name.Text + "x", n.Lettered.Name.Row) } }),
        })
        {
            Assert.NotEqual(SheetMarks.Of(plan, plan.Hoopings[1]), SheetMarks.Of(changed, changed.Hoopings[1]));
            Assert.Equal(SheetMarks.Of(plan, plan.Hoopings[0]), SheetMarks.Of(changed, changed.Hoopings[0]));
            Assert.NotEqual(SheetMarks.Of(plan), SheetMarks.Of(changed));
        }

        var again = Moved(plan, 1, n => n with { StartMm = n.StartMm + 0.0001 });
        Assert.Equal(SheetMarks.Of(plan, plan.Hoopings[1]), SheetMarks.Of(again, again.Hoopings[1]));
    }

    [Fact]
    public void The_proof_of_a_round_stays_to_the_last_byte_when_a_latecomer_comes_to_another()
    {
        const string Job =
            """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "50 cm", "turn": 0 }, "strip": { "rounds": "asNeeded" }, "lettering": { "height": 10 } }""";
        string names = "name\n" + string.Join('\n', Enumerable.Range(0, 20).Select(i => $"{(char)('A' + i)}nna Quill")) + "\n";
        using var folder = new TemporaryFolder().With("names.csv", names).With("job.json", Job);
        var plan = Bander.Make(folder.FullPath).Plan!;
        string[] proofs = [.. plan.Rounds.Select(r => OutPaths.RoundProof(r.Number))];
        Assert.True(proofs.Length > 2);
        var before = proofs.Select(p => File.ReadAllBytes(Path.Combine(folder["out"], p))).ToList();

        folder.With("names.csv", names + "Zeno Late\n");
        var after = Bander.Make(folder.FullPath).Plan!;
        Assert.NotEqual(SheetMarks.Of(plan), SheetMarks.Of(after));
        Assert.Equal(before[0], File.ReadAllBytes(Path.Combine(folder["out"], proofs[0])));
        Assert.Equal(SheetMarks.Of(plan, plan.Rounds[0]), SheetMarks.Of(after, after.Rounds[0]));
        Assert.NotEqual(SheetMarks.Of(plan, plan.Rounds[^1]), SheetMarks.Of(after, after.Rounds[^1]));
    }

    /// <summary>A name of the strip beside it changes the mark of a hooping that is written on a round's proof.</summary>
    [Fact]
    public void The_proof_of_a_round_bears_the_marks_its_hoopings_have_now()
    {
        const string Job =
            """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "50 cm", "turn": 0 }, "strip": { "rounds": 2, "stripsSideBySide": 2 }, "lettering": { "height": 8 } }""";
        string[] names = ["name", .. Enumerable.Range(0, 8).Select(i => $"{(char)('A' + i)}nna Quill"), ""];
        using var folder = new TemporaryFolder().With("names.csv", string.Join('\n', names)).With("job.json", Job);
        var plan = Bander.Make(folder.FullPath).Plan!;
        string last = plan.Rounds[1].Names.Last().Lettered.Name.Text;
        folder.With("names.csv", string.Join('\n', names).Replace(last, "Zeno Quill", StringComparison.Ordinal));
        var after = Bander.Make(folder.FullPath).Plan!;
        Assert.NotEqual(SheetMarks.Of(plan, plan.Rounds[0]), SheetMarks.Of(after, after.Rounds[0]));
        Bander.Make(folder.FullPath, folder["afresh"]);
        Assert.Equal(
            File.ReadAllBytes(Path.Combine(folder["afresh"], OutPaths.RoundProof(1))),
            File.ReadAllBytes(Path.Combine(folder["out"], OutPaths.RoundProof(1))));
    }

    /// <summary>Two strips side by side, cloth that gets 3 % shorter: worksheet, packet and plan.json say the same places and
    /// marks.</summary>
    [Fact]
    public void Every_sheet_counts_from_the_cut_left_end_and_bears_the_marks()
    {
        using var folder = new TemporaryFolder()
            .With("job.json",
                """{ "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "500 mm", "turn": 0 }, "strip": { "rounds": 2, "lanes": 2, "shortening": 0.03 }, "lettering": { "height": "9 mm" } }""")
            .With("names.csv", "Name\nWenna Tregear\nJo Marsh\nIlse Varga\nBo Reed\nOttilie Marsh\nBram Sedgewick\nUna Pell\nAda\n");
        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes());
        using var plan = JsonDocument.Parse(File.ReadAllText(Path.Combine(report.OutFolder!, "plan.json")));
        string mark = plan.RootElement.GetProperty("made").GetProperty("mark").GetString()!;
        Assert.Equal(SheetMarks.Of(report.Plan!), mark);
        var places = plan.RootElement.GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .ToDictionary(s => s.GetProperty("number").GetInt32(), s => s.GetProperty("onClothMm").GetDouble());
        var marks = plan.RootElement.GetProperty("hoopings").EnumerateArray()
            .ToDictionary(h => h.GetProperty("number").GetInt32(), h => h.GetProperty("mark").GetString());
        using var pdf = PdfDocument.Open(File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.WorkPacket("a4"))));
        string text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        Assert.All(
            pdf.GetPages(),
            page => Assert.Contains("plan " + mark, string.Join(' ', page.GetWords().Select(w => w.Text)), StringComparison.Ordinal));
        Assert.Contains("Plan " + mark, File.ReadAllText(Path.Combine(report.OutFolder!, OutPaths.ReadMeFirst)), StringComparison.Ordinal);

        string[][] rows =
            [.. File.ReadAllLines(Path.Combine(report.OutFolder!, OutPaths.Worksheet)).Select(l => l.TrimStart('\ufeff').Split(','))];
        string Cell(string[] row, string column) => row[Array.IndexOf(rows[0], column)];
        Assert.Equal(places.Count, rows.Length - 1);
        foreach (string[] row in rows.Skip(1))
        {
            double at = places[int.Parse(Cell(row, "segment"), System.Globalization.CultureInfo.InvariantCulture)];
            string start = at.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
            Assert.Equal(start, Cell(row, "on_cloth_mm"));
            Assert.Equal(start, Cell(row, "cloth_start_mm"));
            Assert.Contains(
                $"left mark {Cell(row, "left_mark_mm")} mm, right mark {Cell(row, "right_mark_mm")} mm", text, StringComparison.Ordinal);
            string hoopingMark = marks[int.Parse(Cell(row, "hooping"), System.Globalization.CultureInfo.InvariantCulture)]!;
            Assert.Equal(hoopingMark, Cell(row, "mark"));
            Assert.Contains("mark " + hoopingMark, text, StringComparison.Ordinal);
        }

        // The upper strip of a hooping stands first.
        foreach (var hooping in rows.Skip(1).GroupBy(r => Cell(r, "hooping")).Where(g => g.Count() == 2))
        {
            Assert.Equal(["upper strip", "lower strip"], hooping.Select(r => Cell(r, "strip")));
        }
    }
}
