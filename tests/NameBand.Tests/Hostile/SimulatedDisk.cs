using NameBand.Common;

namespace NameBand.Tests.Hostile;

/// <summary>
/// A disk of which it is known what it was told, in which order, and what it confirmed. From that it lays out what it may hold
/// after a power cut at any moment: what was confirmed is there; of everything else any part may be lost, torn or in
/// another order. It stands beside a real folder, in which the work is done.
/// </summary>
internal sealed class SimulatedDisk : IDiskWitness
{
    /// <summary>What a disk writes whole or not at all.</summary>
    private const int Sector = 512;

    private readonly string _root;
    private readonly Lock _oneAtATime = new();
    private readonly List<Change> _changes = [];
    private readonly Folder _now = new();
    private readonly Dictionary<Folder, SortedDictionary<string, Node>> _first = [];
    private readonly Dictionary<DataFile, byte[]> _firstBytes = [];
    private InOrder? _inOrder;

    /// <summary>Takes up what a folder holds: all of it is on the disk.</summary>
    public SimulatedDisk(string root)
    {
        _root = Path.GetFullPath(root);
        TakeUp(_now, _root);
    }

    /// <summary>What was told until now.</summary>
    public int Length => _changes.Count;

    /// <summary>Pauses that were asked for instead of a try at once.</summary>
    public List<TimeSpan> Pauses { get; } = [];

    /// <summary>Asked before each deed whether the disk refuses it: the number of the deed, and the deed.</summary>
    public Func<int, DiskDeed, IOException?> Refuses { get; set; } = (_, _) => null;

    public int Deeds { get; private set; }

    public void Before(DiskDeed deed)
    {
        lock (_oneAtATime)
        {
            if (Refuses(Deeds++, deed) is { } refusal)
            {
                throw refusal;
            }
        }
    }

    public void Wait(TimeSpan pause) => Pauses.Add(pause);

    public void After(DiskDeed deed)
    {
        lock (_oneAtATime)
        {
            if (Parts(deed.Path) is { } parts)
            {
                Note(deed, parts);
            }
        }
    }

    /// <summary>What the disk may hold when the power went after so many changes were told: each file by its path, and each folder
    /// as null.</summary>
    public SortedDictionary<string, byte[]?> Left(int told, CutKind kind, Random random)
    {
        var kept = Kept(told, kind, random);
        var folders = _first.ToDictionary(f => f.Key, f => new SortedDictionary<string, Node>(f.Value, StringComparer.Ordinal));
        foreach (var naming in Enumerable.Range(0, told).Where(i => kept[i]).Select(i => _changes[i]).OfType<Naming>())
        {
            foreach (var (folder, name, node) in naming.Names)
            {
                var names = folders.TryGetValue(folder, out var there) ? there : folders[folder] = new(StringComparer.Ordinal);
                _ = node is null ? names.Remove(name) : (names[name] = node) is not null;
            }
        }

        var left = new SortedDictionary<string, byte[]?>(StringComparer.Ordinal);
        Gather(_now, "", folders, file => Content(file, told, kind, random), left);
        return left;
    }

    /// <summary>Writes into an empty folder what is left of a disk.</summary>
    public static void Lay(SortedDictionary<string, byte[]?> left, string into)
    {
        foreach (var (path, bytes) in left)
        {
            string at = Path.Combine(into, path);
            if (bytes is null)
            {
                Directory.CreateDirectory(at);
            }
            else
            {
                File.WriteAllBytes(at, bytes);
            }
        }
    }

    /// <summary>Which of the changes of names are on the disk, and which of the data's are confirmed.</summary>
    private bool[] Kept(int told, CutKind kind, Random random)
    {
        bool[] sure = [.. Known().SureFrom.Take(told).Select(from => from < told)];
        bool[] kept = [.. sure];
        if (kind == CutKind.NamesInOrder)
        {
            // As a file system with a journal of its names: what was confirmed takes all earlier names along.
            int last = Array.FindLastIndex(sure, s => s) + 1;
            int until = random.Next(last, told + 1);
            for (int i = 0; i < until; i++)
            {
                kept[i] |= _changes[i] is Naming;
            }
        }
        else if (kind == CutKind.NamesWithoutData)
        {
            for (int i = 0; i < told; i++)
            {
                kept[i] |= _changes[i] is Naming;
            }
        }
        else if (kind == CutKind.AnyOrder)
        {
            // Each folder's list in its own order, one folder's before another's.
            var until = new Dictionary<Folder, int>();
            for (int i = 0; i < told; i++)
            {
                if (_changes[i] is Naming naming && !sure[i])
                {
                    kept[i] = naming.Names.All(n => (until.TryGetValue(n.Folder, out int at) ? at
                        : until[n.Folder] = random.Next(0, told + 1)) > i);
                }
            }
        }

        return kept;
    }

    /// <summary>All that was told, put in order once and not again for each of ten thousand cuts.</summary>
    private InOrder Known()
    {
        if (_inOrder?.SureFrom.Length == _changes.Count)
        {
            return _inOrder;
        }

        var told = _changes.Index().ToList();
        int[] sureFrom = [.. _changes.Select(_ => int.MaxValue)];
        foreach (var (i, flush) in told.Where(c => c.Item is Flush).Select(c => (c.Index, (Flush)c.Item)))
        {
            for (int j = 0; j < i; j++)
            {
                sureFrom[j] = sureFrom[j] == int.MaxValue && flush.Confirms(_changes[j]) ? i : sureFrom[j];
            }
        }

        return _inOrder = new InOrder(
            sureFrom, told.Where(c => c.Item is Data).ToLookup(c => ((Data)c.Item).File, c => ((Data)c.Item, c.Index)),
            told.Where(c => c.Item is Flush).SelectMany(c => ((Flush)c.Item).Files.Select(f => (File: f, c.Index)))
                .ToLookup(f => f.File, f => f.Index));
    }

    private byte[] Content(DataFile file, int told, CutKind kind, Random random)
    {
        var known = Known();
        var changes = known.Data[file].TakeWhile(c => c.At < told);
        int confirmed = known.Flushed[file].TakeWhile(at => at < told).LastOrDefault(-1);
        byte[] sure = After(_firstBytes.GetValueOrDefault(file, []), changes.Where(c => c.At < confirmed).Select(c => c.Change));
        Data[] open = [.. changes.Where(c => c.At > confirmed).Select(c => c.Change)];
        int how = open.Length == 0 || kind is CutKind.OnlyConfirmed or CutKind.NamesWithoutData ? 0 : random.Next(5);
        byte[] whole = After(sure, open);
        return how switch
        {
            0 => sure,
            1 => After(sure, open.Take(random.Next(open.Length + 1))),
            2 => Torn(sure, whole, random),
            3 => [.. sure.Take(whole.Length), .. new byte[Math.Max(0, whole.Length - sure.Length)]], // The new length, and nothing written.
            _ => whole,
        };
    }

    private static byte[] After(byte[] bytes, IEnumerable<Data> changes)
    {
        byte[] all = bytes;
        int length = bytes.Length;
        foreach (var change in changes)
        {
            int end = (int)change.At + (change.Bytes?.Length ?? 0);
            if (end > all.Length || all == bytes)
            {
                // A file is written in a thousand pieces: it is not copied for each.
                Array.Resize(ref all, Math.Max(2 * all.Length, end) + Sector);
            }

            if (change.Bytes is { } written)
            {
                written.CopyTo(all, change.At);
                length = Math.Max(length, end);
            }
            else
            {
                Array.Clear(all, end, Math.Max(0, length - end));
                length = end;
            }
        }

        return all[..length];
    }

    /// <summary>Some sectors are written and others are not.</summary>
    private static byte[] Torn(byte[] before, byte[] after, Random random)
    {
        byte[] torn = new byte[random.Next(2) == 0 ? after.Length : random.Next(Math.Min(before.Length, after.Length), after.Length + 1)];
        for (int at = 0; at < torn.Length; at += Sector)
        {
            byte[] from = random.Next(2) == 0 ? before : after;
            int until = Math.Min(Math.Min(at + Sector, torn.Length), from.Length);
            if (until > at)
            {
                from.AsSpan(at, until - at).CopyTo(torn.AsSpan(at));
            }
        }

        return torn;
    }

    private static void Gather(
        Folder folder, string path, Dictionary<Folder, SortedDictionary<string, Node>> names, Func<DataFile, byte[]> content,
        SortedDictionary<string, byte[]?> left)
    {
        foreach (var (name, node) in names.GetValueOrDefault(folder) ?? [])
        {
            string at = Path.Combine(path, name);
            left[at] = node is DataFile file ? content(file) : null;
            if (node is Folder below)
            {
                Gather(below, at, names, content, left);
            }
        }
    }

    private void TakeUp(Folder folder, string path)
    {
        foreach (string below in Directory.GetDirectories(path))
        {
            var inner = new Folder();
            folder.Names[Path.GetFileName(below)] = inner;
            TakeUp(inner, below);
        }

        foreach (string file in Directory.GetFiles(path))
        {
            var data = new DataFile();
            folder.Names[Path.GetFileName(file)] = data;
            _firstBytes[data] = File.ReadAllBytes(file);
        }

        _first[folder] = new(folder.Names, StringComparer.Ordinal);
    }

    private void Note(DiskDeed deed, string[] parts)
    {
        switch (deed.Act)
        {
            case DiskAct.MakeFolder:
                MakeFolders(parts);
                break;
            case DiskAct.Open or DiskAct.Renew:
                var (folder, name) = Place(parts);
                if (!folder.Names.TryGetValue(name, out var there))
                {
                    Name((folder, name, new DataFile()));
                }
                else if (deed.Act == DiskAct.Renew)
                {
                    _changes.Add(new Data((DataFile)there, 0, null));
                }

                break;
            case DiskAct.Write:
                _changes.Add(new Data((DataFile)Find(parts)!, deed.At, deed.Bytes.ToArray()));
                break;
            case DiskAct.Resize:
                _changes.Add(new Data((DataFile)Find(parts)!, deed.At, null));
                break;
            case DiskAct.Copy:
                var copy = new DataFile();
                Name(At(Parts(deed.To)!, copy));
                _changes.Add(new Data(copy, 0, File.ReadAllBytes(deed.To)));
                break;
            case DiskAct.FlushFile or DiskAct.FlushFolder or DiskAct.FlushTree:
                _changes.Add(FlushOf(deed.Act, Find(parts)!));
                break;
            case DiskAct.Move:
                Name(At(parts, null), At(Parts(deed.To)!, Find(parts)));
                break;
            case DiskAct.Exchange:
                Name(At(parts, Find(Parts(deed.To)!)), At(Parts(deed.To)!, Find(parts)));
                break;
            case DiskAct.Link:
                Name(At(Parts(deed.To)!, Find(parts)));
                break;
            case DiskAct.RemoveTree:
                Empty((Folder)Find(parts)!);
                Name(At(parts, null));
                break;
            case DiskAct.Remove:
                Name(At(parts, null));
                break;
            default:
                throw new InvalidOperationException($"The simulated disk does not know {deed.Act}.");
        }
    }

    private Folder MakeFolders(string[] parts)
    {
        var at = _now;
        foreach (string part in parts)
        {
            if (!at.Names.TryGetValue(part, out var below))
            {
                Name((at, part, below = new Folder()));
            }

            at = (Folder)below;
        }

        return at;
    }

    /// <summary>A tree goes name by name, so a cut may come in the middle of it.</summary>
    private void Empty(Folder folder)
    {
        foreach (var (name, node) in folder.Names.ToList())
        {
            if (node is Folder below)
            {
                Empty(below);
            }

            Name((folder, name, null));
        }
    }

    private void Name(params (Folder Folder, string Name, Node? Node)[] names)
    {
        _changes.Add(new Naming(names));
        foreach (var (folder, name, node) in names)
        {
            _ = node is null ? folder.Names.Remove(name) : (folder.Names[name] = node) is not null;
        }
    }

    private static Flush FlushOf(DiskAct act, Node node)
    {
        var flush = new Flush([], []);
        Add(node);
        return flush;

        void Add(Node at)
        {
            if (at is DataFile file)
            {
                flush.Files.Add(file);
                return;
            }

            flush.Folders.Add((Folder)at);
            foreach (var below in act == DiskAct.FlushTree ? ((Folder)at).Names.Values.ToList() : [])
            {
                Add(below);
            }
        }
    }

    private string[]? Parts(string path)
    {
        string relative = Path.GetRelativePath(_root, Path.GetFullPath(path));
        return relative == "." ? [] : relative.StartsWith("..", StringComparison.Ordinal) ? null
            : relative.Split(Path.DirectorySeparatorChar);
    }

    private Node? Find(string[] parts) =>
        parts.Aggregate((Node?)_now, (at, part) => at is Folder folder ? folder.Names.GetValueOrDefault(part) : null);

    private (Folder Folder, string Name, Node? Node) At(string[] parts, Node? node)
    {
        var (folder, name) = Place(parts);
        return (folder, name, node);
    }

    /// <summary>A folder may be told of a moment after another thread has put something into it.</summary>
    private (Folder Folder, string Name) Place(string[] parts) => (MakeFolders(parts[..^1]), parts[^1]);

    /// <param name="SureFrom">Of each change the first that confirms it.</param>
    private sealed record InOrder(
        int[] SureFrom, ILookup<DataFile, (Data Change, int At)> Data, ILookup<DataFile, int> Flushed);

    private abstract class Node;

    private sealed class Folder : Node
    {
        public SortedDictionary<string, Node> Names { get; } = new(StringComparer.Ordinal);
    }

    private sealed class DataFile : Node;

    private abstract record Change;

    /// <summary>Names that change in one step.</summary>
    private sealed record Naming((Folder Folder, string Name, Node? Node)[] Names) : Change;

    /// <param name="Bytes">Null: the file is that long from now on.</param>
    private sealed record Data(DataFile File, long At, byte[]? Bytes) : Change;

    private sealed record Flush(HashSet<DataFile> Files, HashSet<Folder> Folders) : Change
    {
        public bool Confirms(Change earlier) => earlier switch
        {
            Naming naming => naming.Names.Any(n => Folders.Contains(n.Folder)),
            Data data => Files.Contains(data.File),
            _ => false,
        };
    }
}
