namespace NameBand.Output;

/// <summary>The out folder's full path and the names beside it, on the same volume, that its building uses.</summary>
internal sealed record OutSiblings(string Out, string Parent)
{
    /// <summary>What kind of folder it is to be.</summary>
    public OutKind Kind { get; init; } = OutKind.Plan;

    /// <summary>Where the next out folder is built; after an exchange of names, the earlier one until it is gone.</summary>
    public string New => Beside("new");

    /// <summary>The earlier out folder between two renames, where no exchange is to be had.</summary>
    public string Old => Beside("old");

    /// <summary>A finished one that waits until no other program has a file of the earlier one open.</summary>
    public string Next => Beside("next");

    public string Lock => Beside("lock");

    /// <summary>The job's folder, where its sewing log lies; null: nobody said.</summary>
    public string? Job { get; init; }

    public OutSiblings For(string job, OutKind kind) => this with { Job = job, Kind = kind };

    /// <summary>Full path, links followed; null for a root or a text that is no path.</summary>
    public static OutSiblings? Of(string outFolder)
    {
        try
        {
            string path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(outFolder));

            // A link to a folder stays a link: its target is what is exchanged.
            path = new DirectoryInfo(path).LinkTarget is null ? path : Directory.ResolveLinkTarget(path, returnFinalTarget: true)!.FullName;
            path = Path.TrimEndingDirectorySeparator(path);
            return Path.GetDirectoryName(path) is { } parent ? new OutSiblings(path, parent) : null;
        }
        catch (Exception e) when (e is ArgumentException or IOException or NotSupportedException)
        {
            return null;
        }
    }

    /// <summary>Whether <paramref name="folder"/> is the out folder or lies inside it, so that an exchange would take it along.</summary>
    public bool WouldSwallow(string folder)
    {
        string path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        path = Directory.Exists(path) ? Directory.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path : path;
        return (path + Path.DirectorySeparatorChar).StartsWith(
            Out + Path.DirectorySeparatorChar, OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase);
    }

    private string Beside(string use) => Path.Combine(Parent, $".{Path.GetFileName(Out)}.nameband-{use}");
}
