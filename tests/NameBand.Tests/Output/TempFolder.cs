namespace NameBand.Tests.OutputRoom;

/// <summary>A folder of its own for one test, with a name that has blanks and letters of several scripts.</summary>
internal sealed class TempFolder : IDisposable
{
    public TempFolder(string name = "lantern wålk – 行列 ñ")
    {
        string root = Directory.CreateTempSubdirectory("nameband-").FullName;
        Root = root;
        Job = Path.Combine(root, name);
        Directory.CreateDirectory(Job);
    }

    public string Root { get; }

    public string Job { get; }

    public string Out => Path.Combine(Job, "out");

    /// <summary>Relative names and contents of all files under the job, lock files and build folders included.</summary>
    public SortedDictionary<string, string> Contents()
    {
        var found = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string file in Directory.EnumerateFiles(Job, "*", SearchOption.AllDirectories))
        {
            found[Path.GetRelativePath(Job, file).Replace('\\', '/')] = File.ReadAllText(file);
        }

        return found;
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
