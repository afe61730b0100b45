namespace NameBand.Common;

/// <summary>Opens a file that must lie inside a job's folder, wherever links lead.</summary>
internal static class InnerFile
{
    public const int MostBytes = 50_000_000;

    private const int MostLinks = 40;

    /// <summary>The whole file; a problem when it is missing, empty, too big, unreadable or outside the folder.</summary>
    /// <param name="name">Relative to the folder, forward slashes.</param>
    public static Result<byte[]> Read(string folder, string name)
    {
        var where = new Where(File: name);
        try
        {
            string path = Path.GetFullPath(Path.Combine(folder, name));
            if (Directory.Exists(path))
            {
                return Fail(where, "This is a folder, not a file.", "Name a CSV file.");
            }

            var file = new FileInfo(path);
            if (!file.Exists)
            {
                return Fail(where, "There is no such file in the job's folder.",
                    "Put the file into the folder, or mend its name in job.json; small and capital letters count.");
            }

            if (!LiesInside(folder, path))
            {
                return Fail(where, "This file lies outside the job's folder.", "Copy the file itself into the job's folder.");
            }

            return ReadWhole(where, path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return Fail(where, "This file cannot be opened.",
                "See that you may read it, that no other program holds it, and that its name has no odd characters.");
        }
    }

    private static Result<byte[]> ReadWhole(Where where, string path)
    {
        if (IsEmpty(path))
        {
            return Fail(where, "This file is empty.", "Save the list again as CSV; it needs at least one row with a name.");
        }

        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var bytes = new MemoryStream();
        byte[] block = new byte[81920];
        for (int got = stream.Read(block); got > 0; got = stream.Read(block))
        {
            bytes.Write(block, 0, got);
            if (bytes.Length > MostBytes)
            {
                return Fail(where, "This file is bigger than 50 MB, which no list of names is.",
                    "See that it is the right file, and take out pictures and columns that are not needed.");
            }
        }

        return Result.Of(bytes.ToArray());
    }

    /// <summary>
    /// Whether a file, wherever links lead, holds nothing. Pipes and devices say so too, and opening one could wait for ever.
    /// </summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    public static bool IsEmpty(string path) => Path.GetFullPath(path) is var full && new FileInfo(RealPath(full) ?? full).Length == 0;

    /// <summary>A whole file that lies where our files lie; nothing where it is a pipe or a device.</summary>
    public static byte[] Bytes(string path) => IsEmpty(path) ? [] : File.ReadAllBytes(path);

    private static Result<byte[]> Fail(Where where, string found, string mend) =>
        Result.Fail<byte[]>(Problem.CannotUse(where, found, mend));

    /// <summary>Whether a path, with every link on the way followed, lies inside a folder; the file need not be there.</summary>
    public static bool LiesInside(string folder, string path)
    {
        if (RealPath(Path.GetFullPath(folder)) is not { } realFolder || RealPath(path) is not { } realPath)
        {
            return false;
        }

        var compare = OperatingSystem.IsWindows() ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal;
        string inside = Path.TrimEndingDirectorySeparator(realFolder) + Path.DirectorySeparatorChar;
        return realPath.StartsWith(inside, compare);
    }

    /// <summary>The path with every link on the way followed; null when links go round in a circle.</summary>
    private static string? RealPath(string fullPath)
    {
        string root = Path.GetPathRoot(fullPath) ?? "";
        var waiting = new Stack<string>(Parts(fullPath[root.Length..]).Reverse());
        string done = root;
        int links = 0;
        while (waiting.TryPop(out string? part))
        {
            string next = Path.GetFullPath(Path.Combine(done, part));
            string? target = new FileInfo(next).LinkTarget ?? new DirectoryInfo(next).LinkTarget;
            if (target is null)
            {
                done = next;
                continue;
            }

            if (++links > MostLinks)
            {
                return null;
            }

            // A link's target is relative to the folder the link stands in; it may hold links itself.
            if (Path.IsPathRooted(target))
            {
                done = Path.GetPathRoot(target) ?? root;
                target = target[done.Length..];
            }

            foreach (string piece in Parts(target).Reverse())
            {
                waiting.Push(piece);
            }
        }

        return done;
    }

    private static string[] Parts(string path) => path.Split(
        [Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries);
}
