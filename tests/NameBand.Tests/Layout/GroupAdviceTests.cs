using System.Globalization;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>What is advised where a group's higher letters are too much for the strip.</summary>
public class GroupAdviceTests
{
    /// <summary>A group without names is no help, and a factor that is advised does what is promised of it.</summary>
    [Fact]
    public void Where_names_run_over_a_factor_of_a_group_that_has_names_is_advised_and_does()
    {
        using var folder = Job(1.6);

        var over = Bander.Make(folder.FullPath);

        var advice = Assert.Single(over.Problems, p => p.Mend.English.Contains("all names would fit", StringComparison.Ordinal));
        Assert.Contains("“lamp bearers”", advice.Found.English, StringComparison.Ordinal);
        string factor = advice.Mend.English.Split("\"heightFactor\": ")[1].Split(' ')[0];
        double advised = double.Parse(factor, CultureInfo.InvariantCulture);
        Assert.InRange(advised, 0.5, 1.55);

        using var mended = Job(advised);
        Assert.All(Bander.Make(mended.FullPath).Plan!.Fits, f => Assert.False(f.RunsOver));
        using var above = Job(advised + 0.05);
        Assert.Contains(Bander.Make(above.FullPath).Plan!.Fits, f => f.RunsOver);
    }

    private static TemporaryFolder Job(double factor) => new TemporaryFolder()
        .With("job.json", $$"""
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "400 mm", "turn": 0 }, "strip": { "rounds": 1 },
              "lettering": { "height": "8 mm" }, "columns": { "group": "Gift" },
              "groups": [ { "name": "nobody", "from": 1000, "heightFactor": 2 },
                { "name": "lamp bearers", "from": 25, "below": 1000, "heightFactor": {{factor.ToString(CultureInfo.InvariantCulture)}} } ] }
            """)
        .With("names.csv", "Name,Gift\nOrla Penhale,30\nBram Sedgewick,30\nTuva Lind,30\nIlse Quill,30\nNoor Haddad,30\n");
}
