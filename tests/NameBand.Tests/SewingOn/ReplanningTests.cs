using System.Text.Json;
using NameBand.Output;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Planning again takes over what would come out the same, and gives the bytes of a plan made with nothing to take over.</summary>
public class ReplanningTests
{
    private static SewnJob WithRoom(params string[] names)
    {
        var job = new SewnJob(names);
        job.Settings("\"keepFree\": \"120 mm\"", ", \"fabric\": \"quilting cotton\"");
        return job;
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void After_a_latecomer_all_files_are_those_of_a_full_make(bool begun)
    {
        using var job = WithRoom("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        job.Make();
        if (begun)
        {
            job.Say(1, minutes: 12);
            job.Make();
        }

        job.Names.Add("Al Ash");
        job.Make();
        Bander.Make(job.Folder, job["full"]);
        string[] files =
            [.. Directory.EnumerateFiles(job["full"], "*", SearchOption.AllDirectories)
            .Select(f => System.IO.Path.GetRelativePath(job["full"], f))
            .Where(f => !f.StartsWith('.')).Order(StringComparer.Ordinal)];
        Assert.Contains("proofs/round-01.png", files);
        Assert.All(files, f => Assert.Equal(File.ReadAllBytes(job["full/" + f]), File.ReadAllBytes(job["out/" + f])));
    }

    [Fact]
    public void Hoopings_and_rounds_that_do_not_change_are_not_made_again()
    {
        using var job = WithRoom("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        job.Make();
        job.Say(1);
        job.Make();
        var before = Made(job);
        DateTime longAgo = new(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        foreach (string file in Directory.EnumerateFiles(job["out/proofs"]).Concat(Directory.EnumerateFiles(job["out/needle-paths"])))
        {
            File.SetLastWriteTimeUtc(file, longAgo);
        }

        job.Names.Add("Al Ash");
        job.Make();
        var now = Made(job);
        var kept = before.Where(b => now.TryGetValue(b.Key, out string? made) && made == b.Value && b.Key != "proofs/hooping-001.png")
            .Select(b => b.Key).ToList();
        Assert.True(kept.Count >= 4, string.Join(", ", kept));
        if (OperatingSystem.IsLinux())
        {
            Assert.All(kept, k => Assert.Equal(longAgo, File.GetLastWriteTimeUtc(job["out/" + k])));
        }
    }

    [Theory]
    [InlineData("\"measured\": [", "\"measured\": [7, ")]
    [InlineData("\"measured\"", "\"other\"")]
    public void What_a_plan_does_not_tell_of_a_needle_path_is_measured_again(string said, string now)
    {
        using var job = WithRoom("Orla Penhale", "Bram Sedgewick", "Tuva Lind");
        job.Make();
        job.Say(1);
        job.Make();
        string before = File.ReadAllText(job["out/plan.json"]);
        Assert.Contains(said, before);
        File.WriteAllText(job["out/plan.json"], before.Replace(said, now));
        job.Make();
        Assert.Equal(before, File.ReadAllText(job["out/plan.json"]));
    }

    [Fact]
    public void What_a_plan_tells_of_a_needle_path_is_believed_and_so_comes_back_to_the_last_bit()
    {
        using var job = WithRoom("Orla Penhale", "Bram Sedgewick", "Tuva Lind");
        job.Make();
        var hooping = JsonDocument.Parse(File.ReadAllText(job["out/plan.json"])).RootElement.GetProperty("hoopings")[0];
        int stitches = hooping.GetProperty("stitches").GetInt32();
        File.WriteAllText(
            job["out/plan.json"],
            File.ReadAllText(job["out/plan.json"]).Replace($"\"measured\": [{stitches},", $"\"measured\": [{stitches + 1},"));
        job.Make();
        var again = JsonDocument.Parse(File.ReadAllText(job["out/plan.json"])).RootElement.GetProperty("hoopings")[0];
        Assert.Equal(stitches + 1, again.GetProperty("stitches").GetInt32());
        Assert.Equal(
            hooping.GetProperty("measured").EnumerateArray().Skip(1).Select(m => m.GetRawText()),
            again.GetProperty("measured").EnumerateArray().Skip(1).Select(m => m.GetRawText()));
    }

    [Fact]
    public void The_proof_of_a_round_that_does_not_change_is_not_drawn_again()
    {
        using var job = WithRoom("Orla Penhale", "Bram Sedgewick", "Tuva Lind");
        job.Make();
        DateTime longAgo = new(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        File.SetLastWriteTimeUtc(job["out/proofs/round-01.png"], longAgo);
        byte[] before = File.ReadAllBytes(job["out/proofs/round-01.png"]);
        job.Make();
        Assert.Equal(before, File.ReadAllBytes(job["out/proofs/round-01.png"]));
        if (OperatingSystem.IsLinux())
        {
            Assert.Equal(longAgo, File.GetLastWriteTimeUtc(job["out/proofs/round-01.png"]));
        }

        job.Names.Add("Pip Ash");
        job.Make();
        Assert.NotEqual(before, File.ReadAllBytes(job["out/proofs/round-01.png"]));
    }

    [Theory]
    [InlineData("proofs/round-01.png")]
    [InlineData("proofs/hooping-003.png")]
    [InlineData("needle-paths/hooping-003.csv")]
    public void A_file_that_was_changed_by_hand_is_not_taken_over(string file)
    {
        using var job = WithRoom("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill");
        job.Make();
        byte[] whole = File.ReadAllBytes(job["out/" + file]);
        byte[] spoiled = [.. whole];
        spoiled[^20] ^= 0x10;
        File.WriteAllBytes(job["out/" + file], spoiled);
        job.Make();
        Assert.Equal(whole, File.ReadAllBytes(job["out/" + file]));
    }

    [Fact]
    public void The_sheets_show_a_sewn_hooping_as_it_was_sewn()
    {
        using var job = WithRoom("Orla Penhale", "Bram Sedgewick");
        job.Make();
        job.Say(1);
        Bander.Print(job.Folder, job["one"]);

        // Another path in the folder of what is sewn, and in the log as the one that was: the sheets follow it, so they do not
        // stitch it anew.
        string[] lines = File.ReadAllLines(job["sewn/needle-paths/hooping-001.csv"]);
        int stop = Array.FindIndex(lines, l => l.EndsWith(",stop", StringComparison.Ordinal));
        var shorter = lines.Take(stop + 3)
            .Append(lines[^1].Replace(lines[^1].Split(',')[0] + ",", $"{stop + 3},", StringComparison.Ordinal));
        byte[] other = System.Text.Encoding.UTF8.GetBytes(string.Concat(shorter.Select(l => l + "\r\n")));
        string log = File.ReadAllText(job["sewing-log.csv"]);
        string print = SewingPrint.Of(File.ReadAllBytes(job["sewn/needle-paths/hooping-001.csv"]));
        Assert.Contains(print, log, StringComparison.Ordinal);
        File.WriteAllText(job["sewing-log.csv"], log.Replace(print, SewingPrint.Of(other), StringComparison.Ordinal));
        File.WriteAllBytes(job["sewn/needle-paths/hooping-001.csv"], other);
        File.Delete(job[$"sewn/{OutPaths.Manifest}"]);
        Bander.Print(job.Folder, job["other"]);
        Assert.NotEqual(File.ReadAllBytes(job["one/sheets/work-packet-a4.pdf"]), File.ReadAllBytes(job["other/sheets/work-packet-a4.pdf"]));
    }

    /// <summary>What each picture was made from.</summary>
    private static Dictionary<string, string> Made(SewnJob job)
    {
        var plan = job.Plan();
        return plan.GetProperty("hoopings").EnumerateArray().Select(h => (File: h.GetProperty("proof").GetString()!, From: Text(h)))
            .Concat(plan.GetProperty("rounds").EnumerateArray()
                .Select(r => (File: $"proofs/round-{r.GetProperty("number").GetInt32():00}.png", From: Text(r))))
            .ToDictionary(p => p.File, p => p.From);

        static string Text(JsonElement at) => at.GetProperty("madeFrom").GetString()!;
    }
}
