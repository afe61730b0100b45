using NameBand.Common;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>The whole way from a list of names to an alphabet, through the sheet.</summary>
public class MeasureTests
{
    private const string Job =
        """{ "format": 1, "lists": ["crew.csv"], "hem": { "length": "2 m" }, "way": "machineLetters", "letters": { "sizes": ["8 mm", "6 mm"] } }""";

    private const string Crew = "Name\nHesper Quayle\nTobin Marsh\nAda Willowby\nRufus Penhale\nZoë Tidewell\n";

    [Fact]
    public void From_names_to_a_sheet_and_from_the_measured_sheet_to_an_alphabet()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("crew.csv", Crew);
        var asked = Bander.Measure(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, asked.Status);
        Assert.Equal("measure-8mm.csv", asked.Sheet);
        Assert.All(asked.Printed, name => Assert.True(File.ReadAllBytes(folder[name]).AsSpan().StartsWith("%PDF"u8)));

        Assert.Equal(ExitStatus.NeedsPerson, Bander.Measure(folder.FullPath).Status);
        Assert.False(File.Exists(folder["letters.csv"]));

        var widths = Fill(folder["measure-8mm.csv"], seed: 3);
        var measured = Bander.Measure(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, measured.Status);
        Assert.All(measured.Alphabet!.Letters.Values, l => Assert.InRange(widths[l.Letter], l.LowMm - 0.4, l.HighMm + 0.4));
        Assert.Equal("letters.csv", measured.AlphabetFile);
        Assert.DoesNotContain("ë", measured.Alphabet.Letters.Keys);

        var smaller = Bander.Measure(folder.FullPath, Length.FromMm(6));
        Assert.Equal("measure-6mm.csv", smaller.Sheet);
        Fill(folder["measure-6mm.csv"], seed: 4);
        Assert.Equal(ExitStatus.AllPlaced, Bander.Measure(folder.FullPath, Length.FromMm(6)).Status);
        Assert.Contains("8.00", File.ReadAllText(folder["letters.csv"]));
        Assert.Contains("6.00", File.ReadAllText(folder["letters.csv"]));
    }

    [Fact]
    public void An_alphabet_made_by_hand_is_left_alone()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("crew.csv", Crew)
            .With("letters.csv", "letter,width_mm,seconds\na,5,7\n");
        Bander.Measure(folder.FullPath);
        Fill(folder["measure-8mm.csv"], seed: 5);
        var report = Bander.Measure(folder.FullPath);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Null(report.AlphabetFile);
        Assert.Equal("letter,width_mm,seconds\na,5,7\n", File.ReadAllText(folder["letters.csv"]));
    }

    [Fact]
    public void A_size_the_machine_lacks_is_refused()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("crew.csv", Crew);
        var report = Bander.Measure(folder.FullPath, Length.FromMm(7));
        Assert.Equal(ExitStatus.CannotUse, report.Status);
        Assert.Contains("8 mm, 6 mm", report.Problems.Single().Mend.English);
    }

    [SkippableFact]
    public void The_printed_sheet_has_every_line_on_paper_of_its_size()
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        using var folder = new TemporaryFolder().With("job.json", Job).With("crew.csv", Crew);
        var asked = Bander.Measure(folder.FullPath);
        var lines = LineSheet.Read(folder.FullPath, asked.Sheet!).Value!.Lines;
        Assert.Equal(asked.Lines, lines.Length);

        // ISO 216 and ANSI/ASME Y14.1, in units of 1/72 in; pdfinfo rounds to a hundredth.
        foreach (var (name, size) in asked.Printed.Zip([@"595\.[0-9]+ x 841\.[0-9]+ pts", "612 x 792 pts"]))
        {
            string text = Plain(OutsideTool.Run("pdftotext", ["-layout", folder[name], "-"]));
            Assert.All(lines, line => Assert.Contains(Plain(string.Concat(line.Letters)), text, StringComparison.Ordinal));
            Assert.Matches(size, OutsideTool.Run("pdfinfo", [folder[name]]));
        }
    }

    private static string Plain(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '␣'));

    /// <summary>Fills a sheet in as a made-up machine sews it, read with a standard deviation of 0.3 mm.</summary>
    private static Dictionary<string, double> Fill(string path, int seed)
    {
        var set = LineSheet.Read(Path.GetDirectoryName(path)!, Path.GetFileName(path)).Value!;
        var machine = new FakeMachine(seed, set.Lines.SelectMany(l => l.Letters).Distinct().Order(StringComparer.Ordinal), errorMm: 0.3);
        File.WriteAllText(path, LineSheet.Write(machine.Measured(set.Lines)));
        return machine.WidthMm;
    }
}
