using System.Diagnostics;
using System.Text.RegularExpressions;
using NameBand.Tests.CommandLine;
using NameBand.Tests.House;
using NameBand.Tests.OutputRoom;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Docs;

/// <summary>The pictures of the guide and of the README are made by a script, and show what the program makes now.</summary>
public sealed partial class GuidePictureTests
{
    private const string Script = "docs/pictures/make-pictures";

    [SkippableFact]
    public void Every_picture_of_the_guide_and_the_README_shows_what_the_program_makes_now()
    {
        OutsideTool.Require("pdftoppm", "poppler-utils");
        OutsideTool.Require("sh", "dash");
        using var folder = new TemporaryFolder();
        var start = new ProcessStartInfo("sh", [Path.Combine(Repository.Root, Script), folder.FullPath]) { RedirectStandardError = true };
        start.Environment["NAMEBAND"] = "dotnet " + CliProcess.Program;
        using (var process = Process.Start(start)!)
        {
            string errors = process.StandardError.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, errors);
        }

        var shown = Picture().Matches(Repository.Read("docs/guide.md")).Select(m => m.Groups[1].Value)
            .Concat(ReadmePicture().Matches(Repository.Read("README.md")).Select(m => m.Groups[1].Value))
            // Those of the page are taken in a browser, and held there.
            .Where(f => !f.StartsWith("page-", StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(shown, Directory.GetFiles(folder.FullPath).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));

        // Whoever changes what they show runs the script, looks at them and commits them.
        Assert.All(shown, name => PictureComparison.AssertSame(
            name, File.ReadAllBytes(Path.Combine(Repository.Root, "docs", "pictures", name)), File.ReadAllBytes(folder[name])));
    }

    [GeneratedRegex(@"!\[[^\]]+\]\(docs/pictures/([\w-]+\.png)\)")]
    private static partial Regex ReadmePicture();

    [GeneratedRegex(@"!\[[^\]]+\]\(pictures/([\w-]+\.png)\)")]
    private static partial Regex Picture();
}
