using System.Runtime.InteropServices;
using NameBand.Job;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Tests.House;
using NameBand.Tests.OutputRoom;
using Xunit;

namespace NameBand.Tests.Golden;

/// <summary>
/// The plans, needle paths and sheets of the four samples and of fifty drawn jobs are what they were. A change that is meant
/// renews them (DEVELOPERS.md), and the commit says why each line is another.
/// </summary>
public sealed class GoldenPlanTests
{
    private const string Kept = "tests/NameBand.Tests/Data/plans.golden.txt";

    private static readonly string[] Samples = ["lantern-walk", "quay-banner", "boat-banner", "lantern-cape"];

    private static readonly SeededJob[] Seeded = [.. Enumerable.Range(0, SeededJob.Count).Select(seed => new SeededJob(seed))];

    private static readonly string[] All = [.. Samples, .. Seeded.Select(s => s.Name)];

    public static TheoryData<string> Jobs => new(All);

    [SkippableTheory]
    [MemberData(nameof(Jobs))]
    public void What_is_made_of_a_job_is_what_was_made(string job)
    {
        Skip.IfNot(
            OperatingSystem.IsLinux() && RuntimeInformation.OSArchitecture == Architecture.X64,
            "skipped: needs Linux on x64, where these digests were made; elsewhere coordinates may differ by a hundredth");
        using var folder = new TemporaryFolder();
        var (kind, made) = Make(job, folder);
        AssertStatus(made);
        string line = $"{job} ({kind}): {PlanDigest.Of(folder["out"])}";
        Goldens.Show(job, folder["out"]);
        if (kind == "sample")
        {
            HoldGallery(job, folder["out"]);
        }

        if (Goldens.AreRenewed)
        {
            Keep(job, line);
        }

        string was = KeptLines().SingleOrDefault(l => IsOf(l, job), "nothing");
        Assert.True(
            was == line,
            $"{job} is made otherwise than it was.\nwas: {was}\nnow: {line}\n"
            + $"To see what differs, run this with {Goldens.Showing}=FOLDER before and after the change. "
            + $"If it is meant, renew with {Goldens.Renewing}=1 and say why in the commit.");
    }

    [Fact]
    public void Every_job_has_its_line_and_no_other_has() =>
        Assert.Equal(All, KeptLines().Select(l => l[..l.IndexOf(' ', StringComparison.Ordinal)]));

    [Fact]
    public void Every_way_shape_and_state_is_among_the_drawn_jobs()
    {
        Assert.All(Enum.GetValues<Way>(), way => Assert.True(Seeded.Count(s => s.Way == way) >= 10));
        Assert.All([1, 2, 3], rounds => Assert.True(Seeded.Count(s => s.Rounds == rounds) >= 5));
        Assert.All(["1", "2", "asManyAsFit"], lanes => Assert.True(Seeded.Count(s => s.Lanes == lanes) >= 5));
        Func<SeededJob, bool>[] traits =
            [s => s.IsCurved, s => s.HasGroups, s => s.HasMotif, s => s.IsClosed, s => s.HasCorrections, s => s.IsSewnOn];
        Assert.All(traits, trait => Assert.InRange(Seeded.Count(trait), 6, SeededJob.Count - 6));
        Assert.Contains(Seeded, s => s.Lanes != "1" && s.IsSewnOn);
        Assert.Contains(Seeded, s => s.IsCurved && s.IsSewnOn);
        Assert.Contains(Seeded, s => s.HasGroups && s.HasMotif && s.IsSewnOn);
    }

    /// <summary>docs/gallery.md shows every sample as it is drawn now; renewed with the lines.</summary>
    private static void HoldGallery(string sample, string made)
    {
        string name = $"gallery-{sample}.png";
        string kept = Path.Combine(Repository.Root, "docs", "pictures", name);
        // A run without a hoop is as long as its strip: its round is drawn smaller.
        string drawn = Path.Combine(made, sample == "boat-banner" ? "proofs/round-01.png" : "proofs/hooping-001.png");
        if (Goldens.AreRenewed)
        {
            File.Copy(drawn, kept, overwrite: true);
        }

        Assert.Contains($"](pictures/{name})", Repository.Read("docs/gallery.md"), StringComparison.Ordinal);
        PictureComparison.AssertSame(name, File.ReadAllBytes(kept), File.ReadAllBytes(drawn));
    }

    private static (string Kind, MakeReport Made) Make(string job, TemporaryFolder folder)
    {
        if (Seeded.SingleOrDefault(s => s.Name == job) is { } seeded)
        {
            return (seeded.InWords, seeded.Make(folder));
        }

        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", job)))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        var made = Bander.Make(folder.FullPath);
        Assert.True(made.Status != ExitStatus.CannotUse);
        return ("sample", made);
    }

    /// <summary>Status 1, a verdict that needs a person, and a problem that does: there is none of them without the others.</summary>
    private static void AssertStatus(MakeReport made)
    {
        var plan = PlanJson.Read(File.ReadAllBytes(Path.Combine(made.OutFolder!, OutPaths.Plan)));
        bool needs = made.Status == ExitStatus.NeedsPerson;
        Assert.Equal(needs, plan.Verdicts!.Any(v => v.Verdict == "needsAPerson"));
        Assert.Equal(needs, plan.Problems!.Count > 0);
        Assert.Equal(plan.Strip.MatchesHem, plan.Verdicts!.All(v => v.About != "hem" || v.Verdict == "good"));
    }

    private static string[] KeptLines() =>
        [.. File.ReadAllLines(Path.Combine(Repository.Root, Kept)).Where(l => l.Length > 0 && !l.StartsWith('#'))];

    private static bool IsOf(string line, string job) => line.StartsWith(job + " ", StringComparison.Ordinal);

    private static void Keep(string job, string line)
    {
        string path = Path.Combine(Repository.Root, Kept);
        var lines = KeptLines().Where(l => !IsOf(l, job)).Append(line).ToLookup(l => l[..l.IndexOf(' ', StringComparison.Ordinal)]);
        string[] heading = [.. File.ReadAllLines(path).Where(l => l.StartsWith('#'))];
        File.WriteAllText(path, string.Concat(heading.Concat(All.SelectMany(j => lines[j])).Select(l => l + "\n")));
    }
}
