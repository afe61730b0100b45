using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using NameBand.Job;
using NameBand.Output;
using NameBand.Tests.CommandLine;
using NameBand.Tests.CommonRoom;
using SkiaSharp;
using Xunit;

namespace NameBand.Tests.Windows;

/// <summary>
/// The program for Windows, as it is given away, in wine: what it makes is what is made here, and it bears the paths, names and
/// line ends of Windows. What wine cannot tell stands in docs/reliability.md.
/// </summary>
public sealed class WindowsTests(Wine wine) : IClassFixture<Wine>
{
    /// <summary>
    /// On Windows the letters of captions are drawn by the system and not by FreeType, so their edges have other shades; stitches,
    /// cloth and lines are drawn by us. Measured: 0.9 % of the pixels of a proof at most, and 4.2 % of a cutting plan, half of which
    /// is captions.
    /// </summary>
    private static double MostOfCaptions(string file) => file.Contains("cutting-plan", StringComparison.Ordinal) ? 0.05 : 0.015;

    /// <summary>Lines of plan.json that tell how pictures are packed and which build made it: the packing differs, the pictures do
    /// not.</summary>
    private static readonly string[] OfTheBuild = ["\"proofPrint\"", "\"madeFrom\""];

    /// <summary>One sample each time, every one where the long form is asked for.</summary>
    public static TheoryData<string> Samples => Wine.IsLong
        ? [.. Directory.GetDirectories(Path.Combine(House.Repository.Root,
            "samples")).Select(s => Path.GetFileName(s)).Order(StringComparer.Ordinal)]
        : ["quay-banner"];

    [SkippableTheory]
    [MemberData(nameof(Samples))]
    public void What_it_makes_of_a_sample_is_what_is_made_here(string sample)
    {
        wine.Require();
        using var here = Copy(sample);
        using var there = Copy(sample);
        int status = CliRun.Of("make", here.FullPath).Status;
        var made = wine.NameBand("make", Wine.InWindows(there.FullPath));
        Assert.True(made.Status == status, made.ToString());
        Assert.Contains("Z:/", made.Out, StringComparison.Ordinal);

        string[] files = Files(here["out"]);
        Assert.Equal(files, Files(there["out"]));
        foreach (string file in files.Where(f => f != OutPaths.Manifest))
        {
            byte[] one = File.ReadAllBytes(here[$"out/{file}"]), other = File.ReadAllBytes(there[$"out/{file}"]);
            if (file == OutPaths.Plan)
            {
                Assert.Equal(Lines(one), Lines(other));
            }
            else if (file.EndsWith(".png", StringComparison.Ordinal))
            {
                double differs = DifferingShare(one, other);
                Assert.True(differs < MostOfCaptions(file),
                    FormattableString.Invariant($"{sample}, {file}: {differs:P2} of the pixels are others"));
            }
            else
            {
                bool isPdf = file.EndsWith(".pdf", StringComparison.Ordinal);
                Assert.True(
                    isPdf ? WithoutDescent(one) == WithoutDescent(other) : one.AsSpan().SequenceEqual(other),
                    $"{sample}, {file}: other bytes");
            }
        }
    }

    /// <summary>
    /// Names that Windows keeps for itself or cannot write, two that differ only in their case, a list with Windows' line ends, a job
    /// in a folder with a blank, an umlaut and a path longer than 260 characters: each verb does its work, and all is whole at the end.
    /// </summary>
    [SkippableFact]
    public void Every_verb_does_its_work_on_names_and_paths_that_are_hard_on_Windows()
    {
        wine.Require();
        using var at = new TemporaryFolder();
        string deep = string.Join('/', Enumerable.Repeat("a folder of some length, with ü", 9)) + "/Jörg’s walk";
        at.With($"{deep}/job.json", Job.Replace("\n", "\r\n", StringComparison.Ordinal)).With($"{deep}/names.csv", List);
        string job = at[deep], path = Wine.InWindows(job);
        Assert.True(path.Length > 300);

        Does("names", path, "--settle");
        Does("make", path);
        Does("hours", path);
        Does("print", path);
        Does("swatch", path);
        Does("sewn", path, "1", "--minutes", "12");
        Does("invite", path);
        Does("public", path);
        Does("plans", path);
        var check = Does("check", path);
        Assert.True(check.Status == 0, check.ToString());
        Assert.Contains("All that is there is whole and agrees.", check.Out, StringComparison.Ordinal);

        // The same folder, read here: what one system has written the other takes up.
        Assert.Equal(0, CliRun.Of("check", job).Status);
        Assert.Equal(7, Bander.Make(job).Plan!.NameCount);
        Assert.Equal([1], SewingLogFile.Read(job).Sewn.ToArray());
        Assert.All(Files(job), f => Assert.True(NamesEverywhere.Is(Path.GetFileName(f)), f));

        Wine.Answer Does(params string[] args)
        {
            var answer = wine.NameBand(args);
            Assert.True(answer.Status is 0 or 1, $"{args[0]}: {answer}");
            return answer;
        }
    }

    [SkippableFact]
    public void Killed_in_the_middle_or_with_a_file_held_open_nothing_is_lost_there()
    {
        wine.Require();
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", List);
        string path = Wine.InWindows(folder.FullPath);
        Assert.InRange(wine.NameBand("make", path).Status, 0, 1);
        Assert.InRange(wine.NameBand("sewn", path, "1").Status, 0, 1);
        for (int kill = 0; kill < (Wine.IsLong ? 20 : 1); kill++)
        {
            folder.With("names.csv", List + FormattableString.Invariant($"Pip Wren the {kill}.\n"));
            using (var process = wine.Start(Wine.ProgramPath, "make", path))
            {
                // As soon as it has begun to write.
                SpinWait.SpinUntil(() => process.HasExited || Directory.Exists(folder[".out.nameband-new"]), TimeSpan.FromSeconds(60));
                process.Kill();
                process.WaitForExit();
            }

            Assert.Equal([1], SewingLogFile.Read(folder.FullPath).Sewn.ToArray());
            var made = wine.NameBand("make", path);
            Assert.True(made.Status is 0 or 1, made.ToString());
            Assert.True(wine.NameBand("check", path) is { Status: 0 } check, made.ToString());
            Assert.DoesNotContain(Directory.GetFileSystemEntries(folder.FullPath), e => Path.GetFileName(e).StartsWith('.'));
        }

        MakesWhileAFileIsHeld(folder);
    }

    /// <summary>
    /// Another program has a file of out/ open that it lets nobody remove. Wine renames the folder all the same (Windows would refuse,
    /// see HeldFolderTests), but not the file: the new folder stands, the rest of the earlier one is told of and goes later.
    /// </summary>
    private void MakesWhileAFileIsHeld(TemporaryFolder folder)
    {
        string path = Wine.InWindows(folder.FullPath);
        using (var holder = wine.Start("cmd", "/c", $"echo begun & ping -n 300 127.0.0.1 < {path}\\out\\worksheet.csv"))
        {
            Assert.NotNull(holder.StandardOutput.ReadLine());
            folder.With("names.csv", List + "Rill Tarn\n");
            var made = wine.NameBand("make", path);
            Assert.True(made.Status is 0 or 1, made.ToString());
            Assert.Contains("The earlier out folder could not be removed", made.OutOnOneLine, StringComparison.Ordinal);
            Assert.Contains("the next command then takes it away", made.OutOnOneLine, StringComparison.Ordinal);
            Assert.Contains("Rill Tarn", File.ReadAllText(folder["out/plan.json"]), StringComparison.Ordinal);
            Assert.Equal(0, wine.Run("taskkill", "/f", "/im", "ping.exe").Status);
            holder.WaitForExit();
        }

        var check = wine.NameBand("check", path);
        Assert.True(check.Status == 0, check.ToString());
        Assert.DoesNotContain(Directory.GetFileSystemEntries(folder.FullPath), e => Path.GetFileName(e).StartsWith('.'));
    }

    [SkippableFact]
    public async Task The_page_answers_there()
    {
        wine.Require();
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", List);
        Assert.InRange(CliRun.Of("make", folder.FullPath).Status, 0, 1);
        using var process = wine.Start(Wine.ProgramPath, "page", Wine.InWindows(folder.FullPath), "--no-browser");
        try
        {
            string? line;
            do
            {
                line = await process.StandardOutput.ReadLineAsync();
            }
            while (line is not null && !line.StartsWith("http:", StringComparison.Ordinal));

            Assert.NotNull(line);
            using var browser = new HttpClient(new HttpClientHandler { CookieContainer = new CookieContainer() });
            var page = await browser.GetAsync(new Uri(line));
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
            Assert.Contains("<title>The worktable opens</title>", await page.Content.ReadAsStringAsync());
            string[] pages =
                ["/", "/steps", "/machine", "/print", "/machine/state", "/strip/version", "/made/out/needle-paths/hooping-001.csv"];
            foreach (string at in Enumerable.Repeat(pages, Wine.IsLong ? 100 : 5).SelectMany(p => p))
            {
                Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync(new Uri(new Uri(line), at))).StatusCode);
            }

            // What is said at the machine is in the log, and what a program elsewhere says is not heard.
            using var said = new StringContent("""{ "hooping": 1, "deed": "sewn", "minutes": 12 }""", Encoding.UTF8, "application/json");
            var answer = await browser.PostAsync(new Uri(new Uri(line), "/machine/said"), said);
            Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
            Assert.Equal([1], SewingLogFile.Read(folder.FullPath).Sewn.ToArray());

            using var stranger = new HttpClient();
            Assert.Equal(HttpStatusCode.Forbidden, (await stranger.GetAsync(new Uri(new Uri(line), "/"))).StatusCode);
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync();
        }
    }

    private const string Job = """
        { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "columns": { "name": "Name" },
          "hem": { "length": "900 mm", "turn": 0 }, "lettering": { "height": "8 mm" }, "asking": { "answerBy": "2027-03-01" } }
        """;

    private const string List = "Name,Show on the web?\r\nCON,yes\r\nNul.,yes\r\nAda Marsh...,yes\r\n" +
        "ada marsh...,no\r\nADA MARSH...,yes\r\naux.txt,yes\r\nBo: Reed?,yes\r\nCOM1,yes\r\nLPT¹,yes\r\n";

    private static TemporaryFolder Copy(string sample)
    {
        var copy = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(Path.Combine(House.Repository.Root, "samples", sample)))
        {
            File.Copy(file, copy[Path.GetFileName(file)]);
        }

        return copy;
    }

    private static string[] Files(string folder) =>
        [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder, f).Replace('\\',
            '/')).Order(StringComparer.Ordinal)];

    private static string[] Lines(byte[] plan) =>
        [.. Encoding.UTF8.GetString(plan).Split('\n').Where(l => OfTheBuild.All(o => !l.Contains(o,
            StringComparison.Ordinal)))];

    /// <summary>
    /// A page with a face in it says how far its letters go down: measured from the system, below the line on Linux, without a sign on
    /// Windows. No reader draws by it. After it every object lies a byte further on, which the table at the end tells.
    /// </summary>
    private static string WithoutDescent(byte[] pdf) => Regex.Replace(
        Encoding.Latin1.GetString(pdf), @"(?<=/Descent )-|\d{10}(?= \d{5} n)|(?<=startxref\n|/Prev )\d+", "");

    private static double DifferingShare(byte[] one, byte[] other)
    {
        using var first = SKBitmap.Decode(one);
        using var second = SKBitmap.Decode(other);
        Assert.Equal((first.Width, first.Height), (second.Width, second.Height));
        SKColor[] left = first.Pixels, right = second.Pixels;
        return (double)left.Zip(right).Count(p => p.First != p.Second) / left.Length;
    }
}
