using System.Diagnostics;
using System.IO.Compression;
using System.Security.Cryptography;
using NameBand.Tests;
using NameBand.Tests.Outside;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>
/// The zip for Linux as somebody without the SDK gets it: unpacked, and run with nothing on the PATH but what the file to
/// click needs. <c>NAMEBAND_BUNDLE</c> says where the zip lies; .ci/run makes it.
/// </summary>
[Collection(InBrowser.Name)]
public sealed class BundleTests(Chromium browser, BundleTests.Unpacked unpacked) : BrowserTests(browser),
IClassFixture<BundleTests.Unpacked>
{
    [SkippableFact]
    public void What_it_makes_is_what_the_built_program_makes()
    {
        unpacked.Require();
        using var byBundle = Jobs.LanternWalk();
        using var byBuild = Jobs.LanternWalk();

        int status = unpacked.Run(unpacked.Program, "make", byBundle.FullPath, "--json");
        using var built = Process.Start(new ProcessStartInfo(
            "dotnet", [Path.Combine(AppContext.BaseDirectory, "nameband.dll"), "make", byBuild.FullPath, "--json"])
        {
            RedirectStandardOutput = true,
        })!;
        built.StandardOutput.ReadToEnd();
        built.WaitForExit();

        Assert.Equal(built.ExitCode, status);
        var files = Files(byBuild);
        Assert.Contains("plan.json", files.Keys);
        Assert.Equal(files, Files(byBundle));
    }

    [SkippableFact]
    public void What_others_made_is_told_in_it()
    {
        unpacked.Require();
        Assert.All(
            new[] { "LICENSE", "THIRD-PARTY-NOTICES.txt", "sbom.cdx.json", "CHANGELOG.md" },
            f => Assert.True(File.Exists(Path.Combine(unpacked.Folder, "licences", f)), f));
        Assert.NotEmpty(Directory.GetFiles(unpacked.Folder, "LICENCE.txt", SearchOption.AllDirectories));
    }

    [SkippableFact]
    public async Task The_file_to_click_opens_a_page_that_lives()
    {
        unpacked.Require();
        Chromium.Require();
        using var server = RunningPage.Start(unpacked.StartInfo(Path.Combine(unpacked.Folder, "open-the-worktable.sh")));

        var tab = await Chromium.OpenAsync(server.Url);

        Assert.True(await tab.Page.EvaluateAsync<bool>("() => typeof window.Blazor === 'object'"));
        await Expect(tab.Page.Locator("h1").First).ToBeVisibleAsync();
        Assert.True(Directory.Exists(Path.Combine(unpacked.Folder, "My names")));
        tab.ExpectNoComplaint();
    }

    /// <summary>What was made, but for the lines that say from which build of the program.</summary>
    private static SortedDictionary<string, string> Files(TemporaryFolder job)
    {
        string folder = job["out"];
        return new(Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => Path.GetFileName(f) != ".made-by-nameband.json")
            .ToDictionary(f => Path.GetRelativePath(folder, f), Content));
    }

    private static string Content(string file) => Path.GetFileName(file) == "plan.json"
        ? string.Join('\n', File.ReadLines(file).Where(l => !l.Contains("\"madeFrom\"", StringComparison.Ordinal)))
        : Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)));

    /// <summary>The zip unpacked, and an environment that knows of no .NET.</summary>
    public sealed class Unpacked : IDisposable
    {
        private static readonly string? Zip = Environment.GetEnvironmentVariable("NAMEBAND_BUNDLE");
        private readonly TemporaryFolder _folder = new();

        public Unpacked()
        {
            if (File.Exists(Zip))
            {
                ZipFile.ExtractToDirectory(Zip, Folder);
                Directory.CreateDirectory(_folder["tools"]);
                foreach (string tool in (string[])["dirname", "mkdir"])
                {
                    File.CreateSymbolicLink(Path.Combine(_folder["tools"], tool), Path.Combine("/usr/bin", tool));
                }
            }
        }

        public string Folder => _folder["bundle"];

        public string Program => Path.Combine(Folder, "program", "nameband");

        public void Require() => OutsideTool.RequireMade(Zip, "src/NameBand.Cli/Bundles/Bundles.proj (NAMEBAND_BUNDLE)");

        public ProcessStartInfo StartInfo(string program, params string[] args)
        {
            var start = new ProcessStartInfo(
                program, args)
            { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
            start.Environment.Clear();
            start.Environment["PATH"] = _folder["tools"];
            start.Environment["HOME"] = _folder["nobody"];
            return start;
        }

        public int Run(string program, params string[] args)
        {
            using var process = Process.Start(StartInfo(program, args))!;
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode;
        }

        public void Dispose() => _folder.Dispose();
    }
}
