using NameBand.Common;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>The second sample: from the measured sheet through the alphabet and the key-in sheet to a drift correction.</summary>
public class BoatBannerTests
{
    [Fact]
    public void The_sample_goes_from_its_sheet_to_a_strip_that_still_ends_at_the_edge_after_drift()
    {
        using var folder = Copy();
        string stored = File.ReadAllText(folder["letters.csv"]);
        var measured = Bander.Measure(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, measured.Status);
        Assert.Equal(stored, File.ReadAllText(folder["letters.csv"]));

        var made = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, made.Status);
        Assert.Equal((9, 1), (made.Plan!.LetterHeightMm, made.Plan.SpacingMm));
        Assert.True(made.Plan.MatchesHem);
        Assert.Equal(25, made.Plan.NameCount);
        Assert.Equal(7, made.Plan.Rounds[0].Sewn!.SewnNames);
        Assert.Equal(1240 - 4, made.Plan.Rounds[0].Names.Last().EndMm, 6);

        // Common practice, no source: built-in letters on a two-inch cotton strip over tear-away take some hours in all.
        double hours = (made.Estimate!.MachineMinutes.Likely + made.Estimate.HandsOnMinutes.Likely) / 60;
        Assert.InRange(hours, 2, 8);
    }

    [Fact]
    public void Before_anything_is_measured_it_writes_the_sheet_that_the_sample_holds()
    {
        using var folder = Copy();
        string filled = File.ReadAllText(folder["measure-9mm.csv"]);
        File.Delete(folder["measure-9mm.csv"]);
        File.Delete(folder["letters.csv"]);
        Assert.Equal(ExitStatus.AllPlaced, Bander.Measure(folder.FullPath).Status);
        Assert.Equal(KeyIns(filled), KeyIns(File.ReadAllText(folder["measure-9mm.csv"])));

        static IEnumerable<string> KeyIns(string sheet) =>
            CsvFile.Parse(sheet, new Where("sheet")).Value!.Rows.Select(r => r.Fields[0] + " " + r.Fields[1]);
    }

    private static TemporaryFolder Copy()
    {
        var folder = new TemporaryFolder();
        foreach (string path in Directory.GetFiles(Path.Combine(Repository(), "samples", "boat-banner"))
            .Where(p => !p.EndsWith(".pdf", StringComparison.Ordinal)))
        {
            folder.With(Path.GetFileName(path), File.ReadAllBytes(path));
        }

        return folder;
    }

    private static string Repository()
    {
        string at = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(at, "NameBand.sln")))
        {
            at = Path.GetDirectoryName(at) ?? throw new InvalidOperationException("The tests run inside the repository.");
        }

        return at;
    }
}
