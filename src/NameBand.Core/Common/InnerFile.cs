namespace NameBand.Common;

/// <summary>What lies in a folder of ours.</summary>
/// <param name="Name">Relative to the folder, forward slashes.</param>
internal sealed record InnerEntry(string Name, EntryKind Kind, FileSystemInfo Info);

/// <summary>
/// The one door to the files of a job and of its out folder. No link on the way is followed, and nothing but a plain file
/// is opened: a link may lead to a file that is nobody's business, or round in a circle, and a pipe makes the reader wait.
/// </summary>
internal static class InnerFile
{
    /// <summary>A hundred bytes a row, half a million rows: no list of names is so long, and it fits the memory of any machine.</summary>
    public const int MostBytes = 50_000_000;

    /// <summary>
    /// What holds settings is written by hand or by us, and has at most some thousand lines of a hundred bytes: a larger file is another
    /// one, and reading it would only take time. Our assumption.
    /// </summary>
    public const int MostSettingsBytes = 1_000_000;

    /// <summary>What grows line by line while sewing: two hundred thousand lines of a hundred bytes. Our assumption.</summary>
    public const int MostLogBytes = 20_000_000;

    private static readonly EnumerationOptions Everything = new() { AttributesToSkip = 0, IgnoreInaccessible = false };

    /// <summary>The whole file; a problem when it is missing, empty, too big, unreadable or no plain file inside the folder.</summary>
    /// <param name="name">Relative to the folder, forward slashes.</param>
    public static Result<byte[]> Read(string folder, string name)
    {
        var where = new Where(File: name);
        try
        {
            if (Objection(folder, name) is { } objection)
            {
                return Result.Fail<byte[]>(objection);
            }

            string path = Path.GetFullPath(Path.Combine(folder, name));
            if (Directory.Exists(path))
            {
                return Fail(where, "This is a folder, not a file.", "Name a CSV file.");
            }

            if (!File.Exists(path))
            {
                return Fail(where, "There is no such file in the job's folder.",
                    "Put the file into the folder, or correct its name in job.json; small and capital letters count.");
            }

            return ReadWhole(where, folder, name);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return Fail(where, "This file cannot be opened.",
                "Check that you may read it, that no other program holds it, and that its name has no odd characters.");
        }
    }

    private static Result<byte[]> ReadWhole(Where where, string folder, string name)
    {
        if (IsEmpty(folder, name))
        {
            return Fail(where, "This file is empty.", "Save the list again as CSV; it needs at least one row with a name.");
        }

        using var stream = Open(folder, name);
        using var bytes = new MemoryStream();
        byte[] block = new byte[81920];
        for (int got = stream.Read(block); got > 0; got = stream.Read(block))
        {
            bytes.Write(block, 0, got);
            if (bytes.Length > MostBytes)
            {
                return Fail(where, "This file is bigger than 50 MB, which no list of names is.",
                    "Check that it is the right file, and take out pictures and columns that are not needed.");
            }
        }

        return Result.Of(bytes.ToArray());
    }

    /// <summary>Why a name in a folder is not opened: the first link on the way to it, or that it is no file. Null when it may
    /// be.</summary>
    public static Problem? Objection(string folder, string name)
    {
        string at = folder;
        string[] parts = name.Split(['/', Path.DirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries);
        if (Path.IsPathRooted(name) || parts.Contains(".."))
        {
            return Problem.CannotUse(
                new Where(PlainText.Short(name, 100)), "This lies outside the job's folder.",
                "Copy the file itself into the job's folder.");
        }

        for (int i = 0; i < parts.Length; i++)
        {
            at = Path.Combine(at, parts[i]);
            var kind = EntryKinds.Of(at);
            string shown = PlainText.Short(string.Join('/', parts[..(i + 1)]), 100);
            if (kind == EntryKind.Link)
            {
                return Problem.CannotUse(
                    new Where(shown), $"“{shown}” is a link to another place, and no link inside a job is followed.",
                    "Remove the link, and put a copy of the file or folder itself in its place.");
            }

            if (kind == EntryKind.Special)
            {
                return Problem.CannotUse(
                    new Where(shown), $"“{shown}” is not a file but a pipe, a socket or a device, so it was not opened.",
                    "Remove it, and put the file itself in its place.");
            }

            if (kind == EntryKind.Nothing)
            {
                return null;
            }
        }

        return null;
    }

    /// <summary>The same for a folder that may lie in the job's folder: then nothing between the two may be a link.</summary>
    public static Problem? ObjectionBelow(string jobFolder, string folder)
    {
        string relative = Path.GetRelativePath(Path.GetFullPath(jobFolder), Path.GetFullPath(folder));
        bool isBelow = !Path.IsPathRooted(relative) && relative != "." && relative.Split('/', Path.DirectorySeparatorChar)[0] != "..";
        return isBelow ? Objection(jobFolder, relative) : null;
    }

    /// <summary>Whether anything at all bears this name, a link that leads nowhere included: opening it then says what is wrong.</summary>
    public static bool IsThere(string folder, string name) =>
        EntryKinds.Of(Path.Combine(folder, name)) is not (EntryKind.Nothing or EntryKind.Folder);

    /// <summary>Whether a plain file bears this name and no link lies on the way.</summary>
    public static bool IsPlain(string folder, string name) =>
        Objection(folder, name) is null && EntryKinds.Of(Path.Combine(folder, name)) == EntryKind.File;

    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="RefusedEntryException">It is a link, or no file.</exception>
    public static long Length(string folder, string name)
    {
        Guard(folder, name);
        return new FileInfo(Path.Combine(folder, name)).Length;
    }

    /// <inheritdoc cref="Length"/>
    public static bool IsEmpty(string folder, string name) => Length(folder, name) == 0;

    /// <summary>A whole file.</summary>
    /// <inheritdoc cref="Length"/>
    public static byte[] Bytes(string folder, string name)
    {
        // Where the system does not tell a pipe from a file, a pipe's length still is nothing.
        if (IsEmpty(folder, name))
        {
            return [];
        }

        using var file = Open(folder, name);
        byte[] bytes = new byte[file.Length];
        int read = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return read == bytes.Length ? bytes : bytes[..read];
    }

    /// <summary>Opens a file to be read; others may go on writing it. One that another program holds is asked for again.</summary>
    /// <inheritdoc cref="Length"/>
    public static FileStream Open(string folder, string name)
    {
        Guard(folder, name);
        return Disk.OpenToRead(Path.Combine(folder, name));
    }

    /// <summary>Opens a file to be added to, and makes it where there is none.</summary>
    /// <inheritdoc cref="Length"/>
    public static FileStream OpenToAdd(string folder, string name)
    {
        Guard(folder, name);
        return Disk.OpenToAdd(Path.Combine(folder, name));
    }

    /// <summary>Makes a file, with the folders on the way to it; one that is there is emptied.</summary>
    /// <exception cref="RefusedEntryException">A link is in the way, or what is no file.</exception>
    public static FileStream Create(string folder, string name)
    {
        Guard(folder, name);
        string path = Path.Combine(folder, name);
        Disk.MakeFolder(Path.GetDirectoryName(path)!);
        return Disk.Open(path, FileMode.Create, FileAccess.Write, FileShare.Read);
    }

    /// <summary>Copies a file to a place where there is none, its time of writing too.</summary>
    /// <inheritdoc cref="Length"/>
    public static void Copy(string folder, string name, string to)
    {
        Guard(folder, name);
        Disk.Copy(Path.Combine(folder, name), to);
    }

    /// <summary>
    /// All that lies in a folder and below it, in the order of the names, folders before what is in them. Links and special
    /// files are told of and not followed.
    /// </summary>
    public static IEnumerable<InnerEntry> Walk(string folder) => Walk(folder, "");

    private static IEnumerable<InnerEntry> Walk(string folder, string below)
    {
        foreach (var entry in In(folder, below))
        {
            yield return entry;
            foreach (var inner in entry.Kind == EntryKind.Folder ? Walk(folder, entry.Name) : [])
            {
                yield return inner;
            }
        }
    }

    /// <summary>What lies in a folder, or in one below it, and not what is in its folders.</summary>
    public static IReadOnlyList<InnerEntry> In(string folder, string below = "") =>
    [
        .. new DirectoryInfo(Path.Combine(folder, below)).EnumerateFileSystemInfos("*", Everything)
            .OrderBy(e => e.Name, StringComparer.Ordinal)
            .Select(e => new InnerEntry(below.Length == 0 ? e.Name : $"{below}/{e.Name}", EntryKinds.Of(e.FullName), e)),
    ];

    private static void Guard(string folder, string name)
    {
        if (Objection(folder, name) is { } objection)
        {
            throw new RefusedEntryException(objection);
        }
    }

    private static Result<byte[]> Fail(Where where, Said found, Said mend) =>
        Result.Fail<byte[]>(Problem.CannotUse(where, found, mend));
}
