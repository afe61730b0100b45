using System.Text.Json;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>Letters too small for thread and needle: what <c>make</c> and <c>fit</c> say of them.</summary>
public class SmallnessTests
{
    private static TemporaryFolder Folder(string face, string height, string way = "needlePath") => new TemporaryFolder()
        .With("job.json", $$"""
            { "format": 1, "way": "{{way}}", "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 },
              "strip": { "cutWidth": "2 in" }, "lettering": { "face": "{{face}}", "height": "{{height}}", "least": "4 mm" } }
            """)
        .With("names.csv", "Name\nAda Marsh\nBo Reed\n");

    [Theory]
    [InlineData("Nunito Bold", "8 mm", 0, null)]
    [InlineData("Nunito Bold", "6 mm", 0, "Nunito Bold works from 6.5 mm")]
    [InlineData("Pacifico", "8 mm", 0, "Pacifico works from 14.8 mm; at 8.0 mm ")]
    [InlineData("Pacifico", "5 mm", 1, "no other face here has its letters and works at 5.0 mm")]
    public void Make_says_what_is_too_small_and_what_works(string face, string height, int status, string? offer)
    {
        using var folder = Folder(face, height);
        var run = CliRun.Of("make", folder.FullPath, "--json");
        using var json = JsonDocument.Parse(run.Out);
        var mends = json.RootElement.GetProperty("problems").EnumerateArray()
            .Select(p => p.GetProperty("mend").GetString()!).Where(m => m.Contains(" works from ", StringComparison.Ordinal)).ToList();

        Assert.Equal(status, run.Status);
        if (offer is null)
        {
            Assert.Empty(mends);
        }
        else
        {
            Assert.Contains(offer, Assert.Single(mends), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Traced_names_have_no_satin_to_be_too_small()
    {
        using var folder = Folder("Pacifico", "5 mm", "traced");
        Assert.DoesNotContain("works from", CliRun.Of("make", folder.FullPath).Out, StringComparison.Ordinal);
    }

    /// <summary>That letters under 6 mm are too small is said of 40-weight thread, and of what is sewn with it.</summary>
    [Theory]
    [InlineData("needlePath", null, true)]
    [InlineData("needlePath", "60 wt", false)]
    [InlineData("traced", null, false)]
    public void Forty_weight_thread_is_spoken_of_only_where_it_is_sewn_with(string way, string? thread, bool isTold)
    {
        using var folder = Folder("Nunito Bold", "5 mm", way);
        if (thread is not null)
        {
            folder.With(
                "job.json", File.ReadAllText(folder["job.json"])
                .Replace("\"strip\"", $"\"thread\": \"{thread}\", \"strip\"", StringComparison.Ordinal));
        }

        var run = CliRun.Of("make", folder.FullPath);

        Assert.True(run.Status <= 1, run.Errors);
        Assert.Equal(isTold, run.OutOnOneLine.Contains("too small for 40-weight thread", StringComparison.Ordinal));
    }

    /// <summary>At 8 mm a face is much too fine that can be sewn as it is drawn from 14.8 mm on: no plan is in it, though it
    /// would be the quickest.</summary>
    [Fact]
    public void No_plan_is_offered_in_a_face_that_is_much_finer_than_her_own()
    {
        using var folder = Folder("Nunito Bold", "8 mm");
        var plans = Bander.Plans(folder.FullPath).Plans;
        Assert.NotEmpty(plans);
        Assert.All(plans, p => Assert.DoesNotContain(p.Job.Lettering.Face, new[] { "Pacifico", "Grand Hotel" }));
    }
}
