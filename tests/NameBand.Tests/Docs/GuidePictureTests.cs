using System.Diagnostics;
using System.Text.RegularExpressions;
using NameBand.Tests.House;
using NameBand.Tests.Outside;
using SixLabors.ImageSharp;
using Xunit;

namespace NameBand.Tests.Docs;

/// <summary>The pictures of the guide are made by a script, and it can still make them.</summary>
public sealed partial class GuidePictureTests
{
    private const string Script = "docs/pictures/make-pictures";

    [SkippableFact]
    public void The_script_makes_every_picture_of_the_guide()
    {
        OutsideTool.Require("pdftoppm", "poppler-utils");
        OutsideTool.Require("sh", "dash");
        using var folder = new TemporaryFolder();
        var start = new ProcessStartInfo("sh", [Path.Combine(Repository.Root, Script), folder.FullPath]) { RedirectStandardError = true };
        start.Environment["NAMEBAND"] = "dotnet " + Path.Combine(AppContext.BaseDirectory, "nameband.dll");
        using (var process = Process.Start(start)!)
        {
            string errors = process.StandardError.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, errors);
        }

        var shown = Picture().Matches(Repository.Read("docs/guide.md")).Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(shown, Directory.GetFiles(folder.FullPath).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        Assert.All(shown, name =>
        {
            var made = Image.Identify(folder[name]);
            var kept = Image.Identify(Path.Combine(Repository.Root, "docs", "pictures", name));

            // The words and stitches in it may have changed since; its kind and size tell that it is the same picture.
            Assert.InRange(made.Width, kept.Width * 0.9, kept.Width * 1.1);
            Assert.InRange(made.Height, kept.Height * 0.9, kept.Height * 1.1);
        });
    }

    [GeneratedRegex(@"!\[[^\]]+\]\(pictures/([\w-]+\.png)\)")]
    private static partial Regex Picture();
}
