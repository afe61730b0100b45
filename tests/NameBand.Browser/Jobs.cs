using System.Text;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;

namespace NameBand.Browser;

/// <summary>Jobs to open on the page, each in a folder of its own.</summary>
internal static class Jobs
{
    private static readonly Lock Making = new();
    private static TemporaryFolder? _made;

    public static TemporaryFolder LanternWalk() => Sample("lantern-walk");

    /// <summary>The lantern walk with what <c>make</c> makes of it; made once.</summary>
    public static TemporaryFolder MadeLanternWalk()
    {
        lock (Making)
        {
            if (_made is null)
            {
                _made = LanternWalk();
                Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(_made.FullPath).Status);
            }
        }

        var folder = new TemporaryFolder();
        foreach (string file in Directory.EnumerateFiles(_made.FullPath, "*", SearchOption.AllDirectories))
        {
            string copy = folder[Path.GetRelativePath(_made.FullPath, file)];
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        return folder;
    }

    /// <summary>One of the project's samples.</summary>
    public static TemporaryFolder Sample(string name)
    {
        var folder = new TemporaryFolder();
        foreach (string file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "samples", name)))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        return folder;
    }

    /// <summary>A few names, quickly counted.</summary>
    public static TemporaryFolder Small(string list = "name\nOttilie Marsh\nBram Sedgewick\nNgozi Farrow\n") => new TemporaryFolder()
        .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""")
        .With("names.csv", list);

    public static FilePayload Upload(string name, string text) =>
        new() { Name = name, MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(text) };
}
