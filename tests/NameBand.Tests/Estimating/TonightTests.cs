using System.Text.Json;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Pipeline;
using NameBand.Reports;
using NameBand.Reports.Answers;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>What the next evening holds: one record that the command, the packet and the page print.</summary>
public sealed class TonightTests
{
    private const string Hooped =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "90 cm", "turn": 0 }, "evening": "90 min" }""";
    private const string Typed = """
        { "format": 1, "way": "machineLetters", "lists": ["names.csv"], "hem": { "length": "90 cm", "turn": 0 }, "letters": { "sizes": ["6 mm"] }, "evening": "33 min" }
        """;

    private static TemporaryFolder Folder(string job) => new TemporaryFolder().With("job.json", job)
        .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\nEmlyn Sedge\nFenna Weir\n");

    [Fact]
    public void Hoopings_of_the_first_evening_with_their_names_and_bobbins()
    {
        using var folder = Folder(Hooped);
        var report = Bander.Hours(folder.FullPath);
        var (tonight, first) = (report.Tonight!, report.Evenings!.Sittings.Where(s => s.Evening == 1).ToList());
        Assert.True(report.Evenings.Evenings > 1);
        Assert.Equal(first.SelectMany(s => s.Hoopings), tonight.Hoopings);
        Assert.Equal(first.Max(s => s.Minutes), tonight.Minutes);
        int[] names =
            [.. tonight.Hoopings.SelectMany(h => report.Plan!.Hoopings.First(p => p.Number == h).Segments).SelectMany(s => s.Segment.Names)
            .Select(n => n.Order)];
        Assert.NotEmpty(names);
        Assert.Equal((names.Length, names[^1]), (tonight.Names, tonight.LastNumber));
        Assert.Equal(
            1 + report.Estimate!.BobbinChanges.Where(c => tonight.Hoopings.Contains(c.Hooping)).Sum(c => c.Bobbins), tonight.Bobbins);
        Assert.Equal(first.SelectMany(s => s.Before).Select(t => t.Act), tonight.Before);

        var told = JsonDocument.Parse(AnswerJson.Of(report.Answer)).RootElement.GetProperty("tonight");
        Assert.Equal(tonight.InWords, told.GetProperty("text").GetString());
        Assert.Contains(
            $"{names.Length} names, as far as hooping {tonight.Hoopings[^1]}; wind ", tonight.InWords.English, StringComparison.Ordinal);
        Assert.Null(Bander.Hours(Without(folder).FullPath).Tonight);
    }

    [Fact]
    public void Typed_names_as_many_as_the_evening_is_long_enough_for_and_on_from_those_that_are_sewn()
    {
        using var folder = Folder(Typed);
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Print(folder.FullPath).Status);
        var report = Bander.Hours(folder.FullPath);
        var before = report.Tonight!;
        Assert.Equal(AsManyAsFit(report), (before.Names, before.LastNumber ?? 0));
        Assert.InRange(before.Names, 1, 5);
        Assert.Equal(1, before.Bobbins);
        using (var packet = PdfDocument.Open(folder["out/sheets/work-packet-a4.pdf"]))
        {
            string page = string.Concat(packet.GetPage(1).GetWords().Select(w => w.Text));
            Assert.Contains(
                string.Concat(before.InWords.English.Split(' ')), page.Replace("\u00a0", "", StringComparison.Ordinal), StringComparison.Ordinal);
        }

        Assert.True(Same(before, new LayoutSession(folder.FullPath).Lay().Laid!.Calculate().Tonight));
        Bander.Sewn(folder.FullPath, null, new SewingWord(0, SewingDeed.Sewn) { Names = (1, 2) }, () => { });
        report = Bander.Hours(folder.FullPath);
        Assert.Equal(AsManyAsFit(report), (report.Tonight!.Names, report.Tonight.LastNumber ?? 0));
        Assert.True(report.Tonight.LastNumber > before.LastNumber);
        Assert.Equal(0, report.Tonight.Bobbins);
        Assert.Contains(
            $"{report.Tonight.Names} names, as far as number {report.Tonight.LastNumber}", report.Tonight.InWords.English,
            StringComparison.Ordinal);
    }

    /// <summary>Counted anew from the rows of work: the evening's own minutes less what comes before the names, name after name.</summary>
    private static (int Names, int Last) AsManyAsFit(HoursReport report)
    {
        var left = report.Estimate!.Names.Where(n => !n.IsSewn).ToList();
        double all = left.Sum(n => n.MachineMinutes + n.TimedHandMinutes);
        double rows =
            report.Estimate.Left.Rows.Where(r => r.When is WorkTime.EachHooping or WorkTime.EachName && r.Cause != WorkCause.Spoiling)
            .Sum(r => r.Minutes.Likely);
        double before = report.Estimate.Left.Rows.Where(r => r.When == WorkTime.Before).Sum(r => r.Minutes.Likely);
        double room = Math.Min(rows, Math.Max(0, 33 - before)) / rows * all;
        int names = 0;
        while (names < left.Count && room >= left[names].MachineMinutes + left[names].TimedHandMinutes - 1e-6)
        {
            room -= left[names].MachineMinutes + left[names].TimedHandMinutes;
            names++;
        }

        return (names, names == 0 ? 0 : left[names - 1].Order);
    }

    private static TemporaryFolder Without(TemporaryFolder folder) =>
        folder.With("job.json", Hooped.Replace(", \"evening\": \"90 min\"", "", StringComparison.Ordinal));

    private static bool Same(Tonight? a, Tonight? b) => a!.InWords == b!.InWords && Math.Abs(a.Minutes - b.Minutes) < 1e-9;
}
