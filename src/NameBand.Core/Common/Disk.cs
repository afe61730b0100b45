namespace NameBand.Common;

/// <summary>
/// All that the program changes in a job goes through here: files and folders made, written, named, removed and confirmed by the
/// disk. So a witness sees each step, in its order, and can refuse it. What is read is no step of it.
/// </summary>
internal static class Disk
{
    // Source: Windows' system error codes: ERROR_ACCESS_DENIED, ERROR_SHARING_VIOLATION, ERROR_LOCK_VIOLATION.
    private static readonly int[] HeldByAnother = [unchecked((int)0x80070005), unchecked((int)0x80070020), unchecked((int)0x80070021)];

    // A program that looks at new files (a search, a guard against viruses, a copy to the network) lets go after a moment.
    private static readonly TimeSpan[] Pauses =
        [.. new[] { 10, 20, 40, 80, 160, 320, 640, 1280 }.Select(ms => TimeSpan.FromMilliseconds(ms))];

    private static readonly AsyncLocal<IDiskWitness?> Watching = new();

    /// <summary>From now on, in this flow of calls and those it starts, a witness sees what is done.</summary>
    public static IDisposable Under(IDiskWitness witness)
    {
        Watching.Value = witness;
        return new Ended();
    }

    /// <summary>A file to be written. What it is given goes to the system at once.</summary>
    public static FileStream Open(string path, FileMode mode, FileAccess access, FileShare share)
    {
        if (Watching.Value is not { } witness)
        {
            return new FileStream(path, mode, access, share, bufferSize: 1);
        }

        var deed = new DiskDeed(mode == FileMode.Create ? DiskAct.Renew : DiskAct.Open, path);
        witness.Before(deed);
        var file = new WatchedFile(path, mode, access, share, witness);
        witness.After(deed);
        return file;
    }

    /// <summary>A file to be added to, made where there is none. Where another program has it to itself, it is asked for again.</summary>
    public static FileStream OpenToAdd(string path) =>
        Patiently(() => Open(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read));

    /// <summary>A file to be read. Where another program has it to itself, such as one that saves it just now, it is asked for again.
    /// </summary>
    public static FileStream OpenToRead(string path) => Patiently(() =>
        new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 1));

    /// <summary>A folder, with those on the way to it.</summary>
    public static void MakeFolder(string path)
    {
        if (!Directory.Exists(path))
        {
            Do(new DiskDeed(DiskAct.MakeFolder, path), d => Directory.CreateDirectory(d.Path));
        }
    }

    /// <summary>Another name for a file or folder; where something bears it, it stays and the renaming fails.</summary>
    public static void Move(string from, string to) => Patiently(new DiskDeed(DiskAct.Move, from, to), d => Directory.Move(d.Path, d.To));

    /// <summary>Another name for a file; what bore it before is gone.</summary>
    public static void MoveOver(string from, string to) =>
        Patiently(new DiskDeed(DiskAct.Move, from, to), d => File.Move(d.Path, d.To, overwrite: true));

    /// <inheritdoc cref="FolderRename.TryExchange"/>
    public static bool TryExchange(string one, string other) =>
        Try(new DiskDeed(DiskAct.Exchange, one, other), d => FolderRename.TryExchange(d.Path, d.To));

    /// <inheritdoc cref="FolderRename.TryLink"/>
    public static bool TryLink(string file, string secondName) =>
        Try(new DiskDeed(DiskAct.Link, file, secondName), d => FolderRename.TryLink(d.Path, d.To));

    /// <summary>A copy of a file where there is none, its time of writing too.</summary>
    public static void Copy(string from, string to) => Do(new DiskDeed(DiskAct.Copy, from, to), d =>
    {
        File.Copy(d.Path, d.To);
        File.SetLastWriteTimeUtc(d.To, File.GetLastWriteTimeUtc(d.Path));
    });

    /// <summary>A link that leads where another one does.</summary>
    public static void LinkTo(string path, string target) => File.CreateSymbolicLink(path, target);

    /// <summary>A file; none is no fault.</summary>
    public static void RemoveFile(string path)
    {
        if (EntryKinds.Of(path) != EntryKind.Nothing)
        {
            Patiently(new DiskDeed(DiskAct.Remove, path), d => File.Delete(d.Path));
        }
    }

    public static void RemoveEmptyFolder(string path) => Patiently(new DiskDeed(DiskAct.Remove, path), d => Directory.Delete(d.Path));

    /// <summary>A folder with all that is in it; links in it are removed, not followed.</summary>
    public static void RemoveTree(string path) =>
        Patiently(new DiskDeed(DiskAct.RemoveTree, path), d => Directory.Delete(d.Path, recursive: true));

    /// <summary>Who may do what with a file or folder, as it is with another; Windows has other rights.</summary>
    public static void SetRightsAs(string path, string other)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, File.GetUnixFileMode(other));
        }
    }

    /// <summary>Opens a folder that was closed to writing, with all that is in it, so that it can be removed.</summary>
    public static void OpenToRemoval(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            foreach (var file in InnerFile.Walk(folder).Where(e => e.Kind == EntryKind.File))
            {
                file.Info.Attributes = FileAttributes.Normal;
            }

            return;
        }

        File.SetUnixFileMode(
            folder, File.GetUnixFileMode(folder) | UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        foreach (var below in InnerFile.In(folder).Where(e => e.Kind == EntryKind.Folder))
        {
            OpenToRemoval(below.Info.FullName);
        }
    }

    /// <inheritdoc cref="DiskFlush.TryFolder"/>
    public static void TryFlushFolder(string folder) => Do(new DiskDeed(DiskAct.FlushFolder, folder), d => DiskFlush.TryFolder(d.Path));

    /// <inheritdoc cref="DiskFlush.Folder"/>
    public static void FlushFolder(string folder) => Do(new DiskDeed(DiskAct.FlushFolder, folder), d => DiskFlush.Folder(d.Path));

    /// <inheritdoc cref="DiskFlush.Tree"/>
    public static void FlushTree(string folder) => Do(new DiskDeed(DiskAct.FlushTree, folder), d => DiskFlush.Tree(d.Path));

    private static void Do(DiskDeed deed, Action<DiskDeed> act) => Try(deed, d =>
    {
        act(d);
        return true;
    });

    private static bool Try(DiskDeed deed, Func<DiskDeed, bool> act)
    {
        var witness = Watching.Value;
        witness?.Before(deed);
        bool isDone = act(deed);
        if (isDone)
        {
            witness?.After(deed);
        }

        return isDone;
    }

    private static void Patiently(DiskDeed deed, Action<DiskDeed> act) => Patiently(() =>
    {
        Do(deed, act);
        return true;
    });

    /// <summary>Windows lets nobody rename, remove or write what another program has open: it is asked again, ever later.</summary>
    private static T Patiently<T>(Func<T> act)
    {
        foreach (var pause in Pauses)
        {
            try
            {
                return act();
            }
            catch (Exception e) when (IsHeld(e))
            {
                if (Watching.Value is { } witness)
                {
                    witness.Wait(pause);
                }
                else
                {
                    Thread.Sleep(pause);
                }
            }
        }

        return act();
    }

    /// <summary>Whether something was refused because another program has it open; elsewhere than on Windows it is one that asked to have
    /// it alone (flock's EWOULDBLOCK: 11 on Linux, 35 on macOS).</summary>
    public static bool IsHeld(Exception e) => OperatingSystem.IsWindows()
        ? e is IOException or UnauthorizedAccessException && HeldByAnother.Contains(e.HResult)
        : e is IOException && (e.HResult is 11 or 35 || HeldByAnother.Contains(e.HResult));

    /// <summary>A file of which the witness is told.</summary>
    private sealed class WatchedFile : FileStream
    {
        private readonly string _path;
        private readonly IDiskWitness _witness;

        public WatchedFile(string path, FileMode mode, FileAccess access, FileShare share, IDiskWitness witness)
            : base(path, mode, access, share, bufferSize: 1) => (_path, _witness) = (path, witness);

        public override void Write(byte[] buffer, int offset, int count)
        {
            var deed = new DiskDeed(DiskAct.Write, _path) { At = Position, Bytes = buffer.AsSpan(offset, count).ToArray() };
            _witness.Before(deed);
            base.Write(buffer, offset, count);
            _witness.After(deed);
        }

        public override void Write(ReadOnlySpan<byte> buffer) => Write(buffer.ToArray(), 0, buffer.Length);

        public override void WriteByte(byte value) => Write([value], 0, 1);

        public override void SetLength(long value)
        {
            var deed = new DiskDeed(DiskAct.Resize, _path) { At = value };
            _witness.Before(deed);
            base.SetLength(value);
            _witness.After(deed);
        }

        public override void Flush(bool flushToDisk)
        {
            var deed = new DiskDeed(DiskAct.FlushFile, _path);
            if (flushToDisk)
            {
                _witness.Before(deed);
            }

            base.Flush(flushToDisk);
            if (flushToDisk)
            {
                _witness.After(deed);
            }
        }
    }

    private sealed class Ended : IDisposable
    {
        public void Dispose() => Watching.Value = null;
    }
}
