using System.Globalization;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Tests.SewingOn;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>Plan, needle path, what was kept and the log are held against each other, and healed from the copy that verifies.</summary>
public sealed partial class SpoiledSewnTests
{
    public static TheoryData<string, string> Spoilings() => new()
    {
        { "needle-paths/hooping-001.csv", "empty" },
        { "needle-paths/hooping-001.csv", "NULs" },
        { "needle-paths/hooping-001.csv", "another digit" },
        { "needle-paths/hooping-001.csv", "cut off" },
        { "proofs/hooping-001.png", "empty" },
        { "proofs/hooping-001.png", "NULs" },
        { "proofs/hooping-001.png", "cut off" },
    };

    [Theory]
    [MemberData(nameof(Spoilings))]
    public void What_is_spoiled_in_the_out_folder_is_not_kept(string file, string how)
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        byte[] whole = File.ReadAllBytes(job["out/" + file]);
        Spoil(job["out/" + file], how);

        var said = job.Say(1);

        Assert.Equal((ExitStatus.CannotUse, null), (said.Status, said.Said));
        Assert.Contains("not the one that its plan was made with", said.Problems[^1].Found.English, StringComparison.Ordinal);
        Assert.False(Directory.Exists(job["sewn"]));
        Assert.False(File.Exists(job[SewingLogFile.FileName]));

        job.Make();
        Assert.Equal(whole, File.ReadAllBytes(job["out/" + file]));
        Assert.NotNull(job.Say(1).Said);
    }

    [Theory]
    [MemberData(nameof(Spoilings))]
    public void What_is_spoiled_of_what_was_kept_is_healed_from_the_out_folder(string file, string how)
    {
        using var job = Begun();
        byte[] whole = File.ReadAllBytes(job["sewn/" + file]);
        foreach (bool byMake in new[] { true, false })
        {
            Spoil(job["sewn/" + file], how);
            var problems = byMake ? job.Make().Problems : job.Say(2).Problems;
            Assert.Contains(
                problems, p =>
                    p.Severity == Severity.Note && p.Where.File == "sewn/" + file
                    && p.Found.English.Contains("put in its place", StringComparison.Ordinal));
            Assert.Equal(whole, File.ReadAllBytes(job["sewn/" + file]));
            Assert.Equal(whole, File.ReadAllBytes(job["out/" + file]));
        }
    }

    [Fact]
    public void Where_no_copy_is_whole_that_is_said_and_the_proof_is_drawn_from_the_path()
    {
        using var job = Begun();
        Spoil(job["sewn/proofs/hooping-001.png"], "NULs");
        Spoil(job["out/proofs/hooping-001.png"], "empty");
        Assert.Contains(
            job.Make().Problems, p => p.Found.English.Contains("drawn again from the needle path that was sewn", StringComparison.Ordinal));
        Assert.False(SpoiledFile.Is(job["out"], OutPaths.HoopingProof(1)));

        byte[] sewn = job.Path(1, "sewn");
        Spoil(job["sewn/needle-paths/hooping-001.csv"], "another digit");
        Spoil(job["out/needle-paths/hooping-001.csv"], "NULs");
        Assert.Contains(
            Bander.Sewn(job.Folder, null, null, () => { }).Problems,
            p => p.Severity == Severity.NeedsPerson && p.Found.English.Contains("no longer whole", StringComparison.Ordinal));
        var made = job.Make();
        Assert.Contains(
            made.Problems, p => p.Severity == Severity.NeedsPerson && p.Found.English.Contains(
            "made again, and may differ", StringComparison.Ordinal));
        Assert.Equal(ExitStatus.NeedsPerson, made.Status);
        Assert.NotEmpty(sewn);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_kept_plan_that_was_moved_by_20_mm_is_not_believed(bool ofVersion01)
    {
        using var job = Begun();
        string right = Places(job);
        Move(job, "sewn/plan.json", ofVersion01);

        var made = job.Make();

        Assert.Contains(made.Problems, p => p.Where.File == "sewn/plan.json");
        Assert.Equal(right, Places(job));
        Assert.Equal(ofVersion01 ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced, made.Status);
        Assert.NotNull(job.Say(2).Said);
        Assert.DoesNotContain(job.Make().Problems, p => p.Where.File == "sewn/plan.json");
    }

    [Fact]
    public void Without_another_copy_a_kept_plan_that_was_changed_stops_everything_until_she_says_it_is_right()
    {
        using var job = Begun();
        Move(job, "sewn/plan.json", ofVersion01: false);
        Directory.Delete(job["out"], recursive: true);
        var made = job.Make();
        Assert.Equal(ExitStatus.CannotUse, made.Status);
        var problem = Assert.Single(made.Problems, p => p.Where.File == "sewn/plan.json");
        Assert.Contains("delete sewn/.made-by-nameband.json", problem.Mend.English, StringComparison.Ordinal);

        File.Delete(job["sewn/.made-by-nameband.json"]);
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
    }

    [Fact]
    public void A_plan_in_the_out_folder_that_was_moved_is_not_kept()
    {
        using var job = Begun();
        Move(job, "out/plan.json", ofVersion01: false);
        var said = job.Say(2);
        Assert.Null(said.Said);
        Assert.Contains("not as make wrote it", said.Problems[^1].Found.English, StringComparison.Ordinal);
    }

    /// <summary>Version 0.1 kept no list, and wrote checksums only of what lies at the top of the out folder.</summary>
    [Fact]
    public void A_folder_of_version_01_is_read_and_gets_its_list_with_the_next_word()
    {
        using var job = Begun();
        File.Delete(job["sewn/.made-by-nameband.json"]);
        string list = job["out/.made-by-nameband.json"];
        File.WriteAllText(list, TopOnly().Replace(File.ReadAllText(list), "$1"));
        Assert.DoesNotContain("\"sha256\"", File.ReadAllText(list).Split("needle-paths", 2)[1].Split('}')[0], StringComparison.Ordinal);

        var look = Bander.Sewn(job.Folder, null, null, () => { });
        Assert.Empty(look.Problems);
        Assert.DoesNotContain(job.Make().Problems, p => p.Where.File?.StartsWith("sewn", StringComparison.Ordinal) == true);
        Assert.NotNull(job.Say(2).Said);
        Assert.Null(OutManifest.Read(job["sewn"]).Fault(job["sewn"]));
    }

    [Theory]
    [InlineData("1e9")]
    [InlineData("-1e9")]
    [InlineData("1e300")]
    [InlineData("\"\\ud800\"")]
    [InlineData("null")]
    public void A_kept_plan_with_a_name_as_wide_as_a_country_is_refused(string width)
    {
        using var job = Begun();
        File.Delete(job["sewn/.made-by-nameband.json"]);
        File.WriteAllText(job["sewn/plan.json"], Width().Replace(File.ReadAllText(job["sewn/plan.json"]), "\"widthMm\": " + width, 3));
        Directory.Delete(job["out"], recursive: true);
        var made = job.Make();
        Assert.Equal(ExitStatus.CannotUse, made.Status);
        Assert.Contains(
            made.Problems, p => p.Where.File == "sewn/plan.json" && p.Found.English.Contains("not a whole plan of ours", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("proofs/hooping-002.png")]
    [InlineData("proofs/round-01.png")]
    [InlineData("proofs/cutting-plan.png")]
    [InlineData("needle-paths/hooping-002.csv")]
    [InlineData("worksheet.csv")]
    [InlineData("read-me-first.txt")]
    public void A_file_full_of_NULs_is_made_anew(string file)
    {
        using var job = Begun();
        byte[] whole = File.ReadAllBytes(job["out/" + file]);
        Spoil(job["out/" + file], "NULs");
        job.Make();
        Assert.Equal(whole, File.ReadAllBytes(job["out/" + file]));
        Assert.DoesNotContain(
            Directory.EnumerateFiles(job["out"], "*", SearchOption.AllDirectories), f => f.Contains("(kept)", StringComparison.Ordinal));
    }

    [Fact]
    public void Half_a_character_in_a_note_is_written_as_the_sign_for_what_cannot_be_read()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        var said = Bander.Sewn(job.Folder, null, new SewingWord(1, SewingDeed.Sewn, Machine: "\ud800", Note: "late \udc00!"), () => { });
        Assert.Equal("late \ufffd!", said.Said!.Note);
        Assert.Equal(said.Said, SewingLogFile.Read(job.Folder).Entries.Single());
        Assert.Empty(SewingLogFile.Read(job.Folder).Problems);
    }

    /// <summary>The rounds of the plan, with every segment and name; what is told of the job stands elsewhere in it.</summary>
    private static string Places(SewnJob job) => job.Plan().GetProperty("rounds").GetRawText();

    private static SewnJob Begun()
    {
        var job = new SewnJob(SewnJob.TenNames);
        job.Make();
        Assert.NotNull(job.Say(1).Said);
        job.Make();
        return job;
    }

    private static void Spoil(string file, string how)
    {
        byte[] bytes = File.ReadAllBytes(file);
        int at = bytes.Length / 2;
        while (how == "another digit" && bytes[at] is not (>= (byte)'0' and < (byte)'9'))
        {
            at++;
        }

        bytes[at] = how == "another digit" ? (byte)(bytes[at] + 1) : bytes[at];
        File.WriteAllBytes(file, how switch
        {
            "empty" => [],
            "NULs" => new byte[bytes.Length],
            "cut off" => bytes[..at],
            _ => bytes,
        });
    }

    private static void Move(SewnJob job, string plan, bool ofVersion01)
    {
        File.WriteAllText(job[plan], Start().Replace(
            File.ReadAllText(job[plan]),
            m => "\"startMm\": " + (double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) + 20)
            .ToString(CultureInfo.InvariantCulture)));
        if (ofVersion01)
        {
            File.Delete(job["sewn/.made-by-nameband.json"]);
        }
    }

    [GeneratedRegex("\"startMm\": ([0-9.]+)")]
    private static partial Regex Start();

    [GeneratedRegex("\"widthMm\": [0-9.]+")]
    private static partial Regex Width();

    [GeneratedRegex("(\"path\": \"[^\"]*/[^\"]*\",\\s*\"bytes\": [0-9]+),\\s*\"sha256\": \"[0-9a-f]+\"")]
    private static partial Regex TopOnly();
}
