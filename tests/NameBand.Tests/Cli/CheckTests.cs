using System.Text.Json;
using NameBand.Output;
using NameBand.Tests.CommonRoom;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>
/// <c>check</c> tells apart what is whole and what is not, names the part, and what it says mends it does. One job is made and
/// sewn on once; each test spoils a copy.
/// </summary>
public sealed class CheckTests(CheckTests.SewnJob sewn) : IClassFixture<CheckTests.SewnJob>, IDisposable
{
    private readonly TemporaryFolder _folder = sewn.Copy();

    private string Job => _folder.FullPath;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_whole_job_is_whole_and_nothing_is_written()
    {
        var before = Bytes(Job);
        var run = CliRun.Of("check", Job);
        Assert.True(run.Status == 0, run.Out + run.Errors);
        Assert.Contains("All that is there is whole and agrees.", run.Out, StringComparison.Ordinal);
        Assert.Equal(before, Bytes(Job));

        // On every system it may be copied to, and two that differ only in their case are one on some.
        string[] files =
            [.. Directory.GetFiles(Job, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Job, f).Replace('\\', '/'))];
        Assert.All(files.SelectMany(f => f.Split('/')), part => Assert.True(NamesEverywhere.Is(part), part));
        Assert.Equal(files.Length, files.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.Equal(
            [
                "Job and list true", "Files true", "Plan true", "Needle paths true", "Plan and list true", "Sewing log true",
                "What is sewn true", "Swatch true", "Letters to owners true", "Page for supporters true",
            ],
            Parts());
    }

    /// <param name="part">The part that is told not to be whole.</param>
    /// <param name="isMended">Whether make mends it, as is said.</param>
    [Theory]
    [InlineData("needle path", "Files", true)]
    [InlineData("needle path, list and all", "Needle paths", true)]
    [InlineData("one stitch moved, list and all", "Needle paths", true)]
    [InlineData("proof gone", "Files", true)]
    [InlineData("nothing but NULs", "Files", true)]
    [InlineData("list of files gone", "Files", true)]
    [InlineData("minutes of the plan", "Plan", true)]
    [InlineData("name out of the rounds", "Plan", true)]
    [InlineData("half a plan", "Plan", false)]
    [InlineData("left out since", "Plan and list", true)]
    [InlineData("one more name", "Plan and list", true)]
    [InlineData("kept path", "What is sewn", true)]
    [InlineData("kept path, in out too", "What is sewn", false)]
    [InlineData("kept path, its list and out too", "What is sewn", false)]
    [InlineData("log cut off", "Sewing log", false)]
    [InlineData("job.json", "Job and list", false)]
    [InlineData("swatch path", "Swatch", true)]
    [InlineData("letter gone", "Letters to owners", true)]
    [InlineData("page for supporters", "Page for supporters", true)]
    [InlineData("half a picture for supporters", "Page for supporters", true)]
    [InlineData("list of the page gone", "Page for supporters", true)]
    public void What_is_not_whole_is_told_with_its_part(string spoiled, string part, bool isMended)
    {
        Spoil(spoiled);
        var run = CliRun.Of("check", Job);
        Assert.True(run.Status == 1, run.Out + run.Errors);
        Assert.Contains("To be mended", run.Out, StringComparison.Ordinal);
        Assert.Contains($"{part} false", Parts());
        if (isMended)
        {
            string verb = part switch
            {
                "Swatch" => "swatch",
                "Letters to owners" => "invite",
                "Page for supporters" => "public",
                _ => "make",
            };
            Assert.Contains($"Run {verb}", run.Out, StringComparison.Ordinal);
            Assert.InRange(CliRun.Of(verb, Job).Status, 0, 1);
            var after = CliRun.Of("check", Job);
            Assert.True(after.Status == 0, after.Out);
        }
    }

    private void Spoil(string what)
    {
        switch (what)
        {
            case "needle path":
                Change("out/needle-paths/hooping-002.csv", t => t.Replace("stitch", "jump", StringComparison.Ordinal));
                break;
            case "needle path, list and all":
                Change("out/needle-paths/hooping-002.csv", t => t.Replace("1,", "2,", StringComparison.Ordinal));
                OutManifest.Write(_folder["out"], new Dictionary<string, string>());
                break;
            case "one stitch moved, list and all":
                MoveAStitch("out/needle-paths/hooping-002.csv");
                OutManifest.Write(_folder["out"], new Dictionary<string, string>());
                break;
            case "proof gone":
                File.Delete(_folder["out/proofs/hooping-002.png"]);
                break;
            case "nothing but NULs":
                File.WriteAllBytes(_folder["out/needle-paths/hooping-002.csv"], new byte[5000]);
                break;
            case "list of files gone":
                File.Delete(_folder["out/.made-by-nameband.json"]);
                break;
            case "minutes of the plan":
                Change("out/plan.json",
                    t => System.Text.RegularExpressions.Regex.Replace(t, "\"machineMinutes\": [0-9.]+", "\"machineMinutes\": 1.5"));
                OutManifest.Write(_folder["out"], new Dictionary<string, string>());
                break;
            case "name out of the rounds":
                Change("out/plan.json",
                    t => t.Replace(
                        "\"outcome\": \"placed\",\n      \"text\": \"Tuva Lind\"", "\"outcome\": \"held\",\n      \"text\": \"Tuva Lind\"",
                        StringComparison.Ordinal));
                OutManifest.Write(_folder["out"], new Dictionary<string, string>());
                break;
            case "half a plan":
                Change("out/plan.json", t => t[..(t.Length / 2)]);
                break;
            case "left out since":
                Change("names.csv", t => t.Replace("Orla Penhale,yes", "Orla Penhale,no", StringComparison.Ordinal));
                break;
            case "one more name":
                Change("names.csv", t => t + "Jory Keast,yes,\n");
                break;
            case "kept path":
                Change("sewn/needle-paths/hooping-001.csv", t => t.Replace("1,", "2,", StringComparison.Ordinal));
                break;
            case "kept path, in out too":
                Change("sewn/needle-paths/hooping-001.csv", t => t.Replace("1,", "2,", StringComparison.Ordinal));
                Change("out/needle-paths/hooping-001.csv", t => t.Replace("1,", "2,", StringComparison.Ordinal));
                break;
            case "kept path, its list and out too":
                MoveAStitch("sewn/needle-paths/hooping-001.csv");
                MoveAStitch("out/needle-paths/hooping-001.csv");
                OutManifest.Write(_folder["sewn"], new Dictionary<string, string>());
                break;
            case "log cut off":
                Change("sewing-log.csv", t => t + "2,sew");
                break;
            case "job.json":
                Change("job.json", t => t[..^5]);
                break;
            case "swatch path":
                Change("swatch/needle-paths/swatch-01.csv", t => t.Replace("stitch", "jump", StringComparison.Ordinal));
                break;
            case "letter gone":
                File.Delete(_folder["private/letters/name-0002.txt"]);
                break;
            case "page for supporters":
                Change("public/index.html", t => t[..(t.Length / 2)]);
                break;
            case "half a picture for supporters":
                Change("public/pictures/name-0002.svg", t => t[..(t.Length / 2)]);
                break;
            case "list of the page gone":
                File.Delete(_folder["public/.made-by-nameband.json"]);
                break;
            default:
                throw new ArgumentException(what);
        }
    }

    [Fact]
    public void What_a_person_wrote_is_no_fault()
    {
        Change("out/worksheet.csv", t => t + "my own line\r\n");
        Change("private/letter.txt", t => t + "Yours, the makers\n");
        Directory.Delete(_folder["swatch"], recursive: true);
        _folder.With("swatch/a photograph.txt", "a folder of my own under this name");
        _folder.With("out/notes of mine.txt", "wind two bobbins");
        var run = CliRun.Of("check", Job);
        Assert.True(run.Status == 0, run.Out);
        Assert.Contains("1 file of your own", run.Out, StringComparison.Ordinal);
        Assert.Contains("out/worksheet.csv was changed by hand", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("private/letter.txt was changed by hand", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.DoesNotContain("Swatch", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_made_yet_is_no_fault_and_no_folder_is()
    {
        using var fresh = new TemporaryFolder().With("job.json", SewnJob.Text).With("names.csv", SewnJob.List);
        Assert.Equal(0, CliRun.Of("check", fresh.FullPath).Status);
        Assert.Contains("not made yet", CliRun.Of("check", fresh.FullPath).Out, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("check", fresh["nowhere"]).Status);
    }

    /// <summary>A log that knows of a hooping which no plan has any longer.</summary>
    [Fact]
    public void A_sewn_hooping_that_the_plan_lacks()
    {
        Directory.Delete(_folder["out"], recursive: true);
        Directory.Delete(_folder["sewn"], recursive: true);
        using var other = new TemporaryFolder().With("job.json", SewnJob.Text).With("names.csv", "Name,Show\nBo Reed,yes\n");
        Assert.InRange(CliRun.Of("make", other.FullPath).Status, 0, 1);
        Directory.Move(other["out"], _folder["out"]);
        var run = CliRun.Of("check", Job);
        Assert.Equal(1, run.Status);
        Assert.Contains("What is sewn false", Parts());
    }

    /// <summary>A needle path that can be read and has as many stitches as before: nothing but its fingerprint tells.</summary>
    private void MoveAStitch(string file) => Change(file, t =>
    {
        int at = t.LastIndexOf(",stitch\r\n", StringComparison.Ordinal) - 1;
        return $"{t[..at]}{(t[at] == '5' ? '4' : '5')}{t[(at + 1)..]}";
    });

    private void Change(string file, Func<string, string> change)
    {
        string text = File.ReadAllText(_folder[file]), changed = change(text);
        Assert.NotEqual(text, changed);
        File.WriteAllText(_folder[file], changed);
    }

    private string[] Parts()
    {
        using var json = JsonDocument.Parse(CliRun.Of("check", Job, "--json").Out);
        return [.. json.RootElement.GetProperty("parts").EnumerateArray().Select(p =>
            $"{p.GetProperty("name").GetString()} {(p.TryGetProperty("whole", out var whole) && whole.ValueKind != JsonValueKind.Null ? whole.GetBoolean() ? "true" : "false" : "none")}")];
    }

    private static string[] Bytes(string folder) =>
        [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        .Select(f => f + " " + Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(f))))];

    /// <summary>A job of six names in a small field, whose first hooping is sewn.</summary>
    public sealed class SewnJob : IDisposable
    {
        public const string Text = """
            { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "columns": { "name": "Name", "show": ["Show"] },
              "hem": { "length": "70 cm", "turn": 0 }, "hoop": { "along": 130, "across": 90 } }
            """;

        public const string List = "Name,Show,Show on the web?\nAda Marsh,yes,yes\nBo Reed,yes,yes\nTuva Lind,yes,yes\n" +
            "Orla Penhale,yes,yes\nMerryn Tolland,yes,no\nPip Wren,yes,\n";

        private readonly TemporaryFolder _job = new TemporaryFolder().With("job.json", Text).With("names.csv", List);

        public SewnJob()
        {
            Assert.Equal(0, CliRun.Of("make", _job.FullPath).Status);
            Assert.Equal(0, CliRun.Of("sewn", _job.FullPath, "1").Status);
            Assert.Equal(0, CliRun.Of("make", _job.FullPath).Status);
            foreach (string verb in (string[])["swatch", "invite", "public"])
            {
                Assert.InRange(CliRun.Of(verb, _job.FullPath).Status, 0, 1);
            }
        }

        public TemporaryFolder Copy()
        {
            var copy = new TemporaryFolder();
            foreach (string file in Directory.GetFiles(_job.FullPath, "*", SearchOption.AllDirectories))
            {
                string to = copy[Path.GetRelativePath(_job.FullPath, file)];
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to);
            }

            return copy;
        }

        public void Dispose() => _job.Dispose();
    }
}
