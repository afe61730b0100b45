using System.Text.Json;
using NameBand.Common;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Tests.CommandLine;
using NameBand.Tests.House;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>One verdict for each fact: the same words in make, on the page, in the packet and in plan.json, and the exit status
/// after it.</summary>
public sealed class VerdictTests
{
    /// <summary>Too long for its hem, far too round, sewn small and close on thin ribbon, with a sign that no face has in the
    /// last row.</summary>
    private static TemporaryFolder Worst() => new TemporaryFolder()
        .With("job.json", """
            { "format": 1, "title": "Each verdict", "lists": ["names.csv"], "hem": { "length": "300 mm", "turn": 0.75 },
              "lettering": { "height": "5.5 mm" }, "fabric": "satin ribbon" }
            """)
        .With("names.csv",
            "Name\nOttilie Marsh\nBram Sedgewick\nAnselm Brightwater\nCorwen Applegarth\nIsolde Fennimore\nEbba Ash\nPiran ⛵\n");

    [Fact]
    public void What_needs_a_person_is_told_of_every_fact_in_the_same_words_everywhere()
    {
        using var folder = Worst();
        var report = Bander.Print(folder.FullPath);
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        var needing = report.Verdicts.Where(v => v.Kind == VerdictKind.NeedsAPerson).ToList();
        Assert.Equal(Enum.GetValues<Fact>(), needing.Select(v => v.About).Distinct().Order());
        AssertWritten(report);

        string packet = Bare(PacketOf(report));
        Assert.All(needing, v => Assert.Contains(Bare(v.Text.English), packet, StringComparison.Ordinal));

        // What waits is told thing by thing where there is room for it.
        var told = needing.Where(v => v.About != Fact.Waiting).ToList();
        var made = CliRun.Of("make", folder.FullPath);
        Assert.Equal(1, made.Status);
        Assert.All(told, v => Assert.Contains(Bare(v.Text.English), Bare(made.Out), StringComparison.Ordinal));

        var lay = new LayoutSession(folder.FullPath).Lay();
        string[] page =
            [.. lay.Problems.Concat(lay.Laid!.Calculate().Problems).Where(p => p.Severity == Severity.NeedsPerson)
                .Select(p => p.Found.English)];
        Assert.All(told, v => Assert.Contains(v.Text.English, page));
    }

    [Fact]
    public void A_command_that_only_calculates_ends_as_make_does()
    {
        using var folder = Worst();
        var run = CliRun.Of("hours", folder.FullPath);
        Assert.Equal(1, run.Status);
        Assert.Contains("this needs a decision before you sew", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("upper edge", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(1, CliRun.Of("hours", folder.FullPath, "--json").Status);
    }

    [Theory]
    [InlineData("lantern-walk")]
    [InlineData("quay-banner")]
    [InlineData("boat-banner")]
    [InlineData("lantern-cape")]
    public void Of_the_samples_nothing_needs_a_person(string sample)
    {
        using var folder = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", sample)))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.DoesNotContain(report.Verdicts, v => v.Kind == VerdictKind.NeedsAPerson);
        int[] rounds = [.. report.Plan!.Rounds.Select(r => r.Number)];
        Assert.All(
            [Fact.Hem, Fact.Easing], fact => Assert.Equal(rounds, report.Verdicts.Where(v => v.About == fact).Select(v => v.Round!.Value)));
        Assert.Equal(report.Plan.HasNeedlePaths, report.Verdicts.Any(v => v.About == Fact.Load));
        Assert.Single(report.Verdicts, v => v.About == Fact.Waiting);
        Assert.Equal(
            report.Plan.HasNeedlePaths ? 1 : 0,
            report.Verdicts.Count(v => v.Text.English.StartsWith("At its worst spot", StringComparison.Ordinal)));
        Assert.All(
            report.Verdicts.Where(v => v.Kind == VerdictKind.Note),
            v => Assert.Contains(report.Problems, p => p.Severity == Severity.Note && p.Found == v.Text));
        AssertWritten(report);
    }

    [Fact]
    public void A_plain_job_is_good_in_every_fact()
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nBo Reed\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "600 mm", "turn": 0 } }""");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Equal(Enum.GetValues<Fact>(), report.Verdicts.Select(v => v.About).Distinct());
        Assert.Equal(Enum.GetValues<Fact>().Length + 1, report.Verdicts.Length);
        Assert.All(
            report.Verdicts,
            v => Assert.True(v.Kind == VerdictKind.Good || v.Text.English.StartsWith("At its worst spot", StringComparison.Ordinal), v.Text.English));
        AssertWritten(report);
    }

    /// <summary>The same names on the same hem, which is 7 mm too short for them: more than 6 mm, and less than 0.5 %.</summary>
    [Theory]
    [InlineData("", ExitStatus.AllPlaced)]
    [InlineData(""", "tolerance": "6 mm" """, ExitStatus.NeedsPerson)]
    public void A_strip_may_be_off_a_long_hem_by_half_a_percent_unless_the_job_says_a_length(string tolerance, ExitStatus status)
    {
        double needMm = Banner("1 m", "").Plan!.Rounds[0].LengthMm;
        var report = Banner(FormattableString.Invariant($"{needMm - 7:0.0} mm"), tolerance);
        var fit = Assert.Single(report.Plan!.Fits);
        Assert.InRange(fit.OverMm, 6.9, 7.1);
        Assert.Equal(tolerance.Length == 0 ? 0.005 * fit.HemMm : 6, fit.AllowedMm, 9);
        Assert.Equal(status == ExitStatus.AllPlaced, report.Plan.MatchesHem);
        Assert.Equal(status, report.Status);
        Assert.Equal(fit.Judged(), report.Verdicts[0]);
    }

    /// <summary>As many traced names as make some two metres.</summary>
    private static MakeReport Banner(string hem, string tolerance)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "name\n" + string.Concat("ABCDEFGHJKMNPRSTUV".Select(letter => $"Ottilie Marshlander {letter}\n")))
            .With("job.json", $$"""
                { "format": 1, "way": "traced", "lists": ["names.csv"], "hem": { "length": "{{hem}}", "turn": 0{{tolerance}} },
                  "lettering": { "height": "8 mm" } }
                """);
        return Bander.Make(folder.FullPath);
    }

    private static void AssertWritten(MakeReport report)
    {
        var written = PlanJson.Read(File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.Plan))).Verdicts!;
        Assert.Equal(
            report.Verdicts.Select(v => (Word(v.About), v.Round, Word(v.Kind), v.Text.English)),
            written.Select(v => (v.About, v.Round, v.Verdict, v.Text)));
    }

    private static string Word<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    private static string PacketOf(MakeReport report)
    {
        using var pdf = PdfDocument.Open(File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.WorkPacket("a4"))));
        return string.Concat(pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
