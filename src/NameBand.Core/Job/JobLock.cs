using System.Globalization;
using System.Text;
using Microsoft.Win32.SafeHandles;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>
/// The one writer of a folder. The lock is the operating system's own hold on an open file, so it is gone the moment
/// its process is, however it ended: a lock file that a killed process left behind is simply taken over. The file
/// holds the process id, for the message a second writer gets. Removed when the lock is given back.
/// </summary>
public sealed class JobLock : IDisposable
{
    /// <summary>The lock file's name inside a job's folder.</summary>
    public const string FileName = ".nameband-lock";

    private const int MostTries = 20; // A few rounds are plenty: each needs another holder ending. Our choice.

    // A command that only reads holds the lock for a moment, to put right what a killed run left; a second is ample for that,
    // on a busy computer too, and who writes for longer is told of. Our choice.
    private const int MostAsked = 40;
    private static readonly TimeSpan BetweenAsking = TimeSpan.FromMilliseconds(25);

    private readonly FileStream _held;
    private readonly string _path;
    private bool _givenBack;

    private JobLock(FileStream held, string path)
    {
        _held = held;
        _path = path;
    }

    /// <summary>Takes the lock of a job's folder, or says who has it or why it cannot be written.</summary>
    public static Result<JobLock> Take(string jobFolder) =>
        Swept(TakeFile(Path.Combine(jobFolder, FileName), jobFolder), jobFolder);

    /// <summary>The same without waiting for whoever has it for a moment: for those who only tidy up.</summary>
    public static Result<JobLock> TakeIfFree(string jobFolder) =>
        Swept(TakeFileIfFree(Path.Combine(jobFolder, FileName), jobFolder), jobFolder);

    /// <summary>Takes the lock kept in the file <paramref name="path"/>, which guards <paramref name="what"/> (named in
    /// messages).</summary>
    public static Result<JobLock> TakeFile(string path, string what)
    {
        var taken = TakeFileOnce(path, what, out bool isBusy);
        for (int asked = 1; isBusy && asked < MostAsked; asked++)
        {
            Thread.Sleep(BetweenAsking);
            taken = TakeFileOnce(path, what, out isBusy);
        }

        return taken;
    }

    /// <summary>The same without waiting for whoever has it for a moment.</summary>
    public static Result<JobLock> TakeFileIfFree(string path, string what) => TakeFileOnce(path, what, out _);

    private static Result<JobLock> Swept(Result<JobLock> taken, string jobFolder)
    {
        if (taken.Value is not null)
        {
            WholeFile.Sweep(jobFolder);
        }

        return taken;
    }

    private static Result<JobLock> TakeFileOnce(string path, string what, out bool isBusy)
    {
        isBusy = false;
        // A holder that ends between our opening its file and our hold on it leaves us holding a file that is no longer
        // there; then another try is made with a new file.
        for (int attempt = 0; attempt < MostTries; attempt++)
        {
            FileStream file;
            try
            {
                if (EntryKinds.Of(path) is EntryKind.Link or EntryKind.Special)
                {
                    // Nothing of ours is a link or a pipe: what it leads to is somebody's, and is not written to.
                    Disk.RemoveFile(path);
                }

                file = Disk.Open(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, Share);
            }
            catch (IOException) when (File.Exists(path))
            {
                isBusy = true;
                return Result.Fail<JobLock>(Busy(path, what));
            }
            catch (IOException) when (attempt < MostTries - 1 && Directory.Exists(Path.GetDirectoryName(path)))
            {
                continue; // Its holder gave it back, file and all, after we had opened it.
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return Result.Fail<JobLock>(Problem.CannotUse(
                    new Where(what),
                    $"Nothing can be written in this folder: {e.Message}",
                    "Give yourself the right to write there, free some room on the disk, or choose another folder with --out."));
            }

            string mark = string.Create(CultureInfo.InvariantCulture, $"{Environment.ProcessId} {Guid.NewGuid():N}\n");
            try
            {
                file.SetLength(0);
                file.Write(Encoding.ASCII.GetBytes(mark));
                file.Flush();
                if (Read(path) == mark)
                {
                    return Result.Of(new JobLock(file, path));
                }
            }
            catch (IOException e)
            {
                LetGo(file, path);
                return Result.Fail<JobLock>(Problem.CannotUse(
                    new Where(what),
                    $"The lock file {Path.GetFileName(path)} cannot be written: {e.Message}",
                    "Free some room on the disk and start again."));
            }

            file.Dispose();
        }

        isBusy = true;
        return Result.Fail<JobLock>(Busy(path, what));
    }

    /// <summary>Gives the lock back.</summary>
    public void Dispose()
    {
        if (_givenBack)
        {
            return;
        }

        _givenBack = true;
        LetGo(_held, _path);
    }

    /// <summary>Removed while still held, so that nobody else's file can be the one that goes; Windows removes no open file.</summary>
    private static void LetGo(FileStream held, string path)
    {
        if (!OperatingSystem.IsWindows())
        {
            TryDelete(path);
            held.Dispose();
        }
        else
        {
            held.Dispose();
            TryDelete(path);
        }
    }

    /// <summary>Lets go as a killed process does: the hold is gone, the file stays.</summary>
    internal void AbandonAsIfKilled()
    {
        _givenBack = true;
        _held.Dispose();
    }

    // On Windows the sharing mode itself is the lock and readers must be let in for the message; elsewhere only
    // FileShare.None asks the system for an exclusive hold, and reading is free.
    private static FileShare Share => OperatingSystem.IsWindows() ? FileShare.Read : FileShare.None;

    private static Problem Busy(string path, string what)
    {
        string holder = (Read(path) ?? "").Split(' ')[0];
        Said who = holder.Length > 0 && holder.All(char.IsAsciiDigit) ? (Said)$" (process {holder})" : "";
        return Problem.CannotUse(
            new Where(what),
            $"Another NameBand{who} is writing here just now.",
            "Wait until it is done and start again; if it hangs, end that process: nothing half done is left behind.");
    }

    private static string? Read(string path)
    {
        try
        {
            using var file = OpenToRead(path);
            Span<byte> bytes = stackalloc byte[64];
            return file.IsInvalid ? null : Encoding.ASCII.GetString(bytes[..RandomAccess.Read(file, bytes, 0)]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    // Outside Windows .NET asks for a hold even to read, which the holder's own hold forbids; the system does not.
    private static SafeFileHandle OpenToRead(string path) => OperatingSystem.IsWindows()
        ? File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete)
        : new SafeFileHandle(PosixOpen.ToRead(path), ownsHandle: true);

    private static void TryDelete(string path)
    {
        try
        {
            Disk.RemoveFile(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A lock file that stays is taken over by the next writer.
        }
    }
}
