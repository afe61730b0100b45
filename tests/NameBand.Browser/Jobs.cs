using NameBand.Tests;

namespace NameBand.Browser;

/// <summary>Jobs to open on the page, each in a folder of its own.</summary>
internal static class Jobs
{
    public static TemporaryFolder LanternWalk()
    {
        var folder = new TemporaryFolder();
        foreach (string file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "samples", "lantern-walk")))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        return folder;
    }
}
