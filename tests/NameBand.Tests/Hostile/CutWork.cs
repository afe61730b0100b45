using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Output.Asking;
using NameBand.Web.Table;

namespace NameBand.Tests.Hostile;

/// <summary>
/// All that writes, done once on a disk that is known step by step, and the power cut after any of them: the job opens, every
/// file and folder is the earlier or the new one, and what was said to be done is there.
/// </summary>
internal sealed class CutWork : IDisposable
{
    private const string JobText = """
        { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "400 mm", "turn": 0, "closed": false },
          "lettering": { "height": "9 mm" }, "hoop": { "along": "120 mm" }, "asking": { "answerBy": "2027-03-01" } }
        """;

    private const string List =
        "Name,E-mail,Show on the web?\nAna Lind,ana@lantern.example,yes\n" +
        "Bo Varga,bo@lantern.example,no\nCleo Marsh,cleo@lantern.example,yes\n";

    // What is there is compared byte for byte after every cut; the job is looked through, and made again, after one in so many.
    private const int Looked = 20;
    private const int Gone = 100;

    /// <summary>Folders that are renewed as a whole.</summary>
    private static readonly (string Name, OutKind Kind)[] Whole =
        [("out", OutKind.Plan), ("swatch", OutKind.Swatch), (AskingFiles.FolderName, OutKind.Private), ("public", OutKind.Public)];

    private readonly TemporaryFolder _begun = new();
    private readonly Dictionary<string, Deed> _deeds = new(StringComparer.Ordinal);

    public CutWork()
    {
        _begun.With("job.json", JobText).With("names.csv", List);
        _ = Bander.Make(_begun.FullPath).OutFolder ?? throw new InvalidOperationException("The job of the cuts cannot be made.");
        _begun.With("out/my own notes.txt", "wind two bobbins");
        _ = Bander.Sewn(_begun.FullPath, null, new SewingWord(1, SewingDeed.Sewn, Minutes: 10), () => { });
        _ = Bander.Swatch(_begun.FullPath);
        _ = Bander.Invite(_begun.FullPath);
        _ = Bander.Public(_begun.FullPath);
    }

    public static ImmutableArray<string> Deeds { get; } =
        ["make", "make on Windows", "print", "sewn", "spoiled", "settle", "title on the page", "decision on the page", "swatch",
            "invite", "public", "first make", "first invite"];

    public void Dispose()
    {
        foreach (var deed in _deeds.Values)
        {
            deed.Folder.Dispose();
        }

        _begun.Dispose();
    }

    /// <summary>How many different disks were left by the cuts of a deed until now.</summary>
    public int DisksLeft(string what) => Done(what).Tried.Count;

    /// <summary>
    /// Cuts the power once in a deed, and says what is wrong afterwards; null when nothing is. A disk that an earlier cut left
    /// byte for byte is not started from again: the next command would do the same.
    /// </summary>
    public string? Cut(string what, int seed)
    {
        var deed = Done(what);
        var random = new Random(seed);

        // One in eight after it was said to be done, when only what a disk did not have to confirm may be lost.
        int told = random.Next(8) == 0 ? deed.Disk.Length : random.Next(deed.Disk.Length + 1);
        var kind = Enum.GetValues<CutKind>()[random.Next(4)];
        bool isSaid = told == deed.Disk.Length;
        var left = deed.Disk.Left(told, kind, random);
        var disk = new DiskLeft(Print(left), isSaid);
        int depth = seed % Gone == 0 ? 3 : seed % Looked == 0 ? 2 : 1;
        if (deed.Tried.TryGetValue(disk, out var known) && (known.Depth >= depth || known.Fault is not null))
        {
            return known.Fault;
        }

        string? fault = FaultOf(left, deed, isSaid, depth);
        fault = fault is null ? null
            : string.Create(CultureInfo.InvariantCulture, $"{what}, cut after {told} of {deed.Disk.Length}, {kind}, seed {seed}: {fault}");
        deed.Tried[disk] = (depth, fault);
        return fault;
    }

    private static string? FaultOf(SortedDictionary<string, byte[]?> left, Deed deed, bool isSaid, int depth)
    {
        using var folder = new TemporaryFolder();
        SimulatedDisk.Lay(left, folder.FullPath);
        return Fault(folder.FullPath, deed, isSaid)
            ?? (depth > 1 ? OpensNot(folder.FullPath, mayBeTorn: !isSaid) : null)
            ?? (depth > 2 && Bander.Make(folder.FullPath).OutFolder is null ? "nothing can be made any more" : null);
    }

    private static string Print(SortedDictionary<string, byte[]?> left)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (path, bytes) in left)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(FormattableString.Invariant($"{path}\n{bytes?.Length ?? -1}\n")));
            hash.AppendData(bytes ?? []);
        }

        return Convert.ToHexString(hash.GetHashAndReset());
    }

    /// <summary>Has the disk refuse one step of a deed, or all from there on, and says what is wrong afterwards; null when nothing
    /// is.</summary>
    /// <param name="isDone">Whether the step was past the end.</param>
    public string? Refuse(string what, int step, bool andAllAfter, out bool isDone)
    {
        using var folder = Copy(what);
        var before = State(folder.FullPath);
        var disk = new SimulatedDisk(folder.FullPath)
        {
            Refuses = (n, deed) => n == step || (andAllAfter && n > step)
                ? new IOException($"There is not enough space on the disk. : '{deed.Path}'") : null,
        };
        bool isSaid;
        using (Disk.Under(disk))
        {
            try
            {
                isSaid = Do(folder.FullPath, what);
            }
            catch (Exception e) when (e is IOException)
            {
                isSaid = false;
            }
        }

        isDone = disk.Deeds <= step;
        var after = State(folder.FullPath);
        string? fault = OpensNot(folder.FullPath, mayBeTorn: false);
        if (fault is null && isSaid && Differing(before, after).Count == 0)
        {
            fault = "it is said to be done, and nothing was written";
        }

        return fault is null ? null
            : string.Create(CultureInfo.InvariantCulture,
                $"{what}, step {step} refused{(andAllAfter ? " and all after it" : "")}: {fault}");
    }

    private Deed Done(string what)
    {
        if (_deeds.TryGetValue(what, out var known))
        {
            return known;
        }

        var folder = Copy(what);
        var before = State(folder.FullPath);
        byte[] log = File.Exists(folder[SewingLogFile.FileName]) ? File.ReadAllBytes(folder[SewingLogFile.FileName]) : [];
        var disk = new SimulatedDisk(folder.FullPath);
        using (Disk.Under(disk))
        {
            if (!Do(folder.FullPath, what))
            {
                throw new InvalidOperationException($"“{what}” cannot be done.");
            }
        }

        var after = State(folder.FullPath);
        return Differing(before, after).Count > 0 ? _deeds[what] = new Deed(folder, disk, before, after) { Log = log }
            : throw new InvalidOperationException($"“{what}” changes nothing, so a cut in it proves nothing.");
    }

    private TemporaryFolder Copy(string what)
    {
        var copy = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(_begun.FullPath, "*", SearchOption.AllDirectories))
        {
            string name = Path.GetRelativePath(_begun.FullPath, file);
            string unit = name.Split(Path.DirectorySeparatorChar)[0];
            bool isWanted = what == "first make" ? unit is "job.json" or "names.csv"
                : Whole.Skip(1).All(w => w.Name != unit)
                    || what.EndsWith(unit == AskingFiles.FolderName ? "invite" : unit, StringComparison.Ordinal);
            if (isWanted)
            {
                string to = copy[name];
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to);
            }
        }

        if (what is "make" or "make on Windows" or "print")
        {
            copy.With("names.csv", List + "Dora Berg,dora@lantern.example,yes\n");
        }
        else if (what is "settle" or "decision on the page")
        {
            copy.With("names.csv", List + "Emil Holub 🌟,,yes\nFay Tarn 🌟,,yes\n");
        }
        else if (what == "public")
        {
            copy.With("approvals.csv", "list,line,name,state,date,text,details,web\nnames.csv,2,Ana Lind,agreed,,,,no\n");
        }
        else if (what == "swatch")
        {
            Directory.Delete(copy["swatch"], recursive: true);
        }
        else if (what == "invite")
        {
            copy.With("job.json", JobText.Replace("2027-03-01", "2027-04-01", StringComparison.Ordinal));
        }
        else if (what == "first invite")
        {
            File.Delete(copy["approvals.csv"]);
            Directory.Delete(copy[AskingFiles.FolderName], recursive: true);
        }

        return copy;
    }

    /// <summary>Whether it was said to be done.</summary>
    private static bool Do(string folder, string what)
    {
        switch (what)
        {
            case "make" or "first make":
                return Bander.Make(folder).OutFolder is not null;
            case "make on Windows":
                return MakeByTwoRenames(folder);
            case "print":
                return Bander.Print(folder).OutFolder is not null;
            case "sewn":
                return Bander.Sewn(folder, null, new SewingWord(2, SewingDeed.Sewn, Minutes: 12), () => { }).Said is not null;
            case "spoiled":
                return Bander.Sewn(folder, null, new SewingWord(1, SewingDeed.Again, Note: "tore"), () => { }).Said is not null;
            case "settle":
                return Bander.SettleNames(folder).Written > 0;
            case "swatch":
                return Bander.Swatch(folder).Folder is not null;
            case "invite" or "first invite":
                return Bander.Invite(folder).Folder is not null;
            case "public":
                return Bander.Public(folder).Folder is not null;
            default:
                using (var table = new Worktable(folder))
                {
                    table.Open();
                    return (what == "title on the page"
                        ? table.ChangeAsync("the title", JobEdit.Text("title", "Lantern walk, the second " + new string('x', 100)))
                        : table.DecideAsync("a row", new RowDecision(new RowRef("names.csv", 5), "Emil Holub 🌟", Decision.Keep, "",
                            "why"))).Result.IsEmpty;
                }
        }
    }

    /// <summary>Another folder in the place of the one that is there, where the system cannot exchange two names in one step.</summary>
    private static bool MakeByTwoRenames(string folder)
    {
        using var into = OutFolder.Begin(folder, Path.Combine(folder, "out"), null, withoutExchange: true).Value;
        if (into is null)
        {
            return false;
        }

        foreach (string file in Directory.GetFiles(into.FullPath, "*", SearchOption.AllDirectories)
            .Where(f => !f.EndsWith("notes.txt", StringComparison.Ordinal)))
        {
            string name = Path.GetRelativePath(into.FullPath, file);
            if (name != OutPaths.Manifest)
            {
                into.Create(name, stream => stream.Write(File.ReadAllBytes(file)));
            }
        }

        into.Create("proofs/round-09.png", stream => stream.Write([1, 2, 3]));
        into.Commit();
        return true;
    }

    private static string? Fault(string folder, Deed deed, bool isSaid)
    {
        if (MendsNot(folder) is { } left)
        {
            return left;
        }

        var now = State(folder);
        foreach (string unit in now.Keys.Union(deed.Before.Keys).Union(deed.After.Keys))
        {
            var (before, after, there) = (deed.Before.GetValueOrDefault(unit, []), deed.After.GetValueOrDefault(unit, []),
                now.GetValueOrDefault(unit, []));
            bool isNew = AreSame(there, after), isOld = AreSame(there, before);
            if (isSaid && !isNew)
            {
                return $"{unit} is not as it was said to be: {string.Join(", ", Differing(after, there).Take(3))}";
            }

            // The log may have gained part of a line, and a hooping's files are kept one by one before the log speaks of it.
            bool isOnTheWay = unit == SewingLogFile.FileName ? IsLonger(folder, deed)
                : unit is "sewn" && there.All(f => before.GetValueOrDefault(f.Key) == f.Value
                    || after.GetValueOrDefault(f.Key) == f.Value) && before.Keys.All(there.ContainsKey);
            if (!isNew && !isOld && !isOnTheWay)
            {
                return $"{unit} is neither the earlier nor the new one: {string.Join(", ", Differing(before, there).Take(3))}";
            }
        }

        return null;
    }

    private static bool IsLonger(string folder, Deed deed)
    {
        byte[] log = File.Exists(Path.Combine(folder, SewingLogFile.FileName))
            ? File.ReadAllBytes(Path.Combine(folder, SewingLogFile.FileName)) : [];
        return log.AsSpan().StartsWith(deed.Log);
    }

    /// <summary>All looked through; null when it opens and is whole.</summary>
    private static string? OpensNot(string folder, bool mayBeTorn)
    {
        if (MendsNot(folder) is { } left)
        {
            return left;
        }

        var check = Bander.Check(folder);
        string[] mayBe = mayBeTorn ? ["Sewing log"] : [];
        if (check.Parts.FirstOrDefault(p => p.IsWhole == false && !mayBe.Contains(p.Name.English) && !(p.Name == "Plan and list")) is { } part)
        {
            return $"{part.Name}: {part.Found}; {string.Join(' ', check.Problems.Select(p => p.Found))}";
        }

        return null;
    }

    /// <summary>What every command does first.</summary>
    private static string? MendsNot(string folder)
    {
        foreach (var (name, kind) in Whole)
        {
            if (OutFolder.MendInterrupted(folder, Path.Combine(folder, name), kind)
                .FirstOrDefault(p => p.Severity != Severity.Note) is { } left)
            {
                return $"{name}: {left.Found}";
            }
        }

        string? stray = Directory.EnumerateFileSystemEntries(folder).Select(e => Path.GetFileName(e)).FirstOrDefault(
            e => e.StartsWith('.') && e is not (WholeFile.Unfinished or JobLock.FileName or HistoryFile.Name));
        return stray is null ? null : $"“{stray}” lies about";
    }

    /// <summary>Each file of the job, and each folder with all that is in it, by what it holds.</summary>
    private static SortedDictionary<string, SortedDictionary<string, string>> State(string folder)
    {
        var state = new SortedDictionary<string, SortedDictionary<string, string>>(StringComparer.Ordinal);
        foreach (string file in Directory.GetFiles(folder, "*", SearchOption.AllDirectories))
        {
            string name = Path.GetRelativePath(folder, file);
            string unit = name.Split(Path.DirectorySeparatorChar)[0];
            if (unit is not (WholeFile.Unfinished or JobLock.FileName) && Path.GetFileName(name) != WholeFile.Unfinished)
            {
                (state.TryGetValue(unit, out var files) ? files
                    : state[unit] = new(StringComparer.Ordinal))[name] = Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)));
            }
        }

        return state;
    }

    private static bool AreSame(SortedDictionary<string, string> one, SortedDictionary<string, string> other) => one.SequenceEqual(other);

    private static List<string> Differing(SortedDictionary<string, string> one, SortedDictionary<string, string> other) =>
        [.. one.Keys.Union(other.Keys).Where(k => one.GetValueOrDefault(k) != other.GetValueOrDefault(k))];

    private static List<string> Differing(
        SortedDictionary<string, SortedDictionary<string, string>> one, SortedDictionary<string, SortedDictionary<string, string>> other) =>
        [.. one.Keys.Union(other.Keys).SelectMany(u => Differing(one.GetValueOrDefault(u, []), other.GetValueOrDefault(u, [])))];

    private sealed record Deed(
        TemporaryFolder Folder, SimulatedDisk Disk, SortedDictionary<string, SortedDictionary<string, string>> Before,
        SortedDictionary<string, SortedDictionary<string, string>> After)
    {
        /// <summary>The log before it.</summary>
        public byte[] Log { get; init; } = [];

        /// <summary>The disks from which it was started again, how much of it was looked at, and what was wrong then.</summary>
        public Dictionary<DiskLeft, (int Depth, string? Fault)> Tried { get; } = [];
    }

    /// <param name="IsSaid">Whether the deed was said to be done, so that all of it must be there.</param>
    private sealed record DiskLeft(string Print, bool IsSaid);
}
