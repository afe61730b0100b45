using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>A worktable's secret as it was found or made.</summary>
/// <param name="Port">Where this job's worktable answered last; 0: nowhere yet.</param>
/// <param name="Doubt">What the maker has to know of it; null: nothing.</param>
internal sealed record KeptKey(PageKey Key, int Port, Problem? Doubt);

/// <summary>
/// Keeps each job's secret for this account alone, in the account's own data folder and never in the job's: whoever may read
/// the job's folder is not thereby let in, and tabs that are open come back when the worktable is started again.
/// </summary>
/// <param name="folder">Where the secrets lie; null: this account has no such place.</param>
internal sealed class PageKeyStore(string? folder)
{
    private const UnixFileMode FileForOne = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode FolderForOne = FileForOne | UnixFileMode.UserExecute;
    private const int MostFileBytes = 200; // Bytes: a version, 64 hexadecimal signs and a port take 72.

    // Looking takes a few milliseconds; two seconds are patience enough.
    private const int MostTries = 200;
    private const int BetweenTriesMs = 10;

    public static PageKeyStore OfThisAccount()
    {
        string data =
            Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        return new PageKeyStore(Path.IsPathFullyQualified(data) ? Path.Combine(data, "nameband") : null);
    }

    /// <summary>The secret of a job's folder, made where there is none; where none can be kept, one for this run.</summary>
    public KeptKey Of(string jobFolder)
    {
        if (folder is null)
        {
            return OfThisRun("This account has no folder for its own data.", "Set XDG_DATA_HOME to one.");
        }

        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(folder)!);
            if (OperatingSystem.IsWindows())
            {
                Directory.CreateDirectory(folder);
            }
            else
            {
                Directory.CreateDirectory(folder, FolderForOne);
                if (new DirectoryInfo(folder).LinkTarget is not null || !IsForOne(folder, FolderForOne))
                {
                    return OfThisRun(
                        $"{folder} is not a folder that only you can open.", $"Put this line into a terminal: chmod 700 '{folder}'");
                }
            }

            using var turn = TakeTurn(Path.ChangeExtension(FileOf(jobFolder), ".lock"));
            return Read(jobFolder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return OfThisRun(
                $"{folder} cannot be used: {e.Message}", "Check whether there is room on the disk and whether you may write there.");
        }
    }

    /// <summary>Remembers where a worktable answers, and writes the page that leads a browser there.</summary>
    /// <returns>
    /// That page's file; null where none can be kept. A browser is started with it and not with the address: what a program
    /// is started with can be read by every account of the computer.
    /// </returns>
    public string? Keep(string jobFolder, KeptKey kept, int port, string address)
    {
        if (folder is null || !IsKept(jobFolder, kept.Key))
        {
            return null;
        }

        try
        {
            if (port != kept.Port)
            {
                Put(FileOf(jobFolder), Written(kept.Key, port));
            }

            string opener = Path.ChangeExtension(FileOf(jobFolder), ".html");
            Put(opener, DoorPages.Leading(address));
            return opener;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Worktables of one folder that are started at the same moment look one after another.</summary>
    /// <exception cref="IOException">Another one has not finished looking for as long as anybody would wait.</exception>
    private static FileStream TakeTurn(string path)
    {
        var options = new FileStreamOptions { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = FileForOne;
        }

        for (int tries = 1; ; tries++)
        {
            try
            {
                return new FileStream(path, options);
            }
            catch (IOException) when (tries < MostTries)
            {
                Thread.Sleep(BetweenTriesMs);
            }
        }
    }

    private KeptKey Read(string jobFolder)
    {
        string path = FileOf(jobFolder);
        bool isNew = !Path.Exists(path) && new FileInfo(path).LinkTarget is null;
        if (!isNew && Trusted(path) is { } kept)
        {
            return kept;
        }

        var key = PageKey.New();
        Put(path, Written(key, 0));
        return new KeptKey(key, 0, isNew ? null : Problem.Note(
            new Where(path), "The secret of this job's worktable was not for you alone any longer, so it was made again.",
            "Tabs that are still open do not come back: open the address above in them."));
    }

    /// <summary>What an ordinary file holds that nobody else can have read or written; null: nothing to be trusted.</summary>
    private static KeptKey? Trusted(string path)
    {
        var file = new FileInfo(path);
        if (!file.Exists || file.LinkTarget is not null || file.Length is 0 or > MostFileBytes
            || (!OperatingSystem.IsWindows() && !IsForOne(path, FileForOne)))
        {
            return null;
        }

        string[] said = File.ReadAllText(path).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return said is ["1", var secret, var at] && secret.Length == 2 * PageKey.SecretBytes && secret.All(char.IsAsciiHexDigit)
            && int.TryParse(at, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port <= 65535
            ? new KeptKey(new PageKey(Convert.FromHexString(secret)), port, null)
            : null;
    }

    /// <summary>Whether nobody else has any right to it; setting the rights it has shows that it is this account's own.</summary>
    private static bool IsForOne(string path, UnixFileMode mode)
    {
        if (OperatingSystem.IsWindows())
        {
            return true;
        }

        if (File.GetUnixFileMode(path) != mode)
        {
            return false;
        }

        File.SetUnixFileMode(path, mode);
        return true;
    }

    private bool IsKept(string jobFolder, PageKey key) => Trusted(FileOf(jobFolder)) is { } there && there.Key.Cookie == key.Cookie;

    private static string Written(PageKey key, int port) =>
        FormattableString.Invariant($"1\n{Convert.ToHexStringLower(key.ToBytes())}\n{port}\n");

    private static KeptKey OfThisRun(Said found, Said mend) => new(PageKey.New(), 0, Problem.Note(
        new Where(), $"{found} So the worktable's secret is not kept, and tabs that are open do not come back when it is started again.",
        mend));

    private string FileOf(string jobFolder)
    {
        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(Path.TrimEndingDirectorySeparator(Path.GetFullPath(jobFolder))));
        return Path.Combine(folder!, $"page-{Convert.ToHexStringLower(hash)[..32]}.key");
    }

    /// <summary>Whole or not at all, and never open to others, not even for a moment; a link that stands there is replaced
    /// itself.</summary>
    private static void Put(string path, string text)
    {
        string beside = $"{path}.{RandomNumberGenerator.GetHexString(16, lowercase: true)}.new";
        // Its name is nobody else's, so it needs no lock; one would outlive its closing where a program is started just then, which
        // holds it until it is under way, and whoever reads meanwhile would find it locked.
        var options =
            new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.ReadWrite | FileShare.Delete };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = FileForOne;
        }

        try
        {
            using (var file = new FileStream(beside, options))
            {
                file.Write(Encoding.UTF8.GetBytes(text));
                file.Flush(flushToDisk: true);
            }

            File.Move(beside, path, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
