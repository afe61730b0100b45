using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Web.Table;

namespace NameBand.Tests.Hostile;

/// <summary>
/// What a maker does in an evening, over and over and at random until the process is killed: the page's saves, the whole
/// job, a hooping marked as sewn. Each deed is said before it is begun, and again once it is done.
/// </summary>
internal static class KilledWork
{
    public const string Verb = "work-until-killed";

    private const string JobText =
        """{ "format": 1, "title": "walk 0", "lists": ["names.csv"], "hem": { "length": "400 mm", "turn": 0, "closed": false }, "hoop": { "along": "120 mm" } }""";

    private static readonly string[] Names = ["Ana Lind", "Bo Varga", "Cleo Marsh", "Dora Berg", "Emil Holub", "Fay Tarn"];

    /// <summary>Writes the job and makes it once.</summary>
    public static void Begin(string folder)
    {
        File.WriteAllText(Path.Combine(folder, "job.json"), JobText);
        File.WriteAllText(Path.Combine(folder, "names.csv"), "name\n" + string.Join('\n', Names) + "\n");
        if (Bander.Make(folder).OutFolder is null)
        {
            throw new InvalidOperationException("The job cannot be made.");
        }
    }

    /// <summary>The child.</summary>
    /// <param name="seed">Also the first of the numbers by which what was done is known again.</param>
    public static void Run(string folder, int seed)
    {
        var random = new Random(seed);
        using var table = new Worktable(folder);
        table.Open();
        for (int number = seed; ; number++)
        {
            int row = random.Next(Names.Length);
            int what = random.Next(10);
            string deed =
                string.Create(
                    CultureInfo.InvariantCulture, $"{(what < 4 ? "make" : what < 6 ? "title" : what < 8 ? "why" : "sewn")} {row} {number}");
            Console.WriteLine("do " + deed);
            Console.WriteLine((Do(folder, table, deed) ? "done " : "refused ") + deed);
        }
    }

    private static bool Do(string folder, Worktable table, string deed)
    {
        string[] words = deed.Split(' ');
        int row = int.Parse(words[1], CultureInfo.InvariantCulture);
        return words[0] switch
        {
            "make" => Bander.Make(folder).OutFolder is not null,
            "title" => table.ChangeAsync("the title", JobEdit.Text("title", "walk " + words[2])).Result.IsEmpty,
            "why" => table.DecideAsync(
                "a row", new RowDecision(
                    new RowRef("names.csv", row + 2), Names[row], Decision.Keep, "", "number " + words[2])).Result.IsEmpty,
            _ => Bander.Sewn(
                folder, null, new SewingWord(1 + (row % 3), SewingDeed.Sewn, Minutes: 10, Note: "number " + words[2]),
                () => Thread.Sleep(20)).Said is not null,
        };
    }

    /// <summary>Says what is wrong in a folder after a kill and the next command; null when nothing is.</summary>
    /// <param name="said">What the child said, line by line.</param>
    public static string? Fault(string folder, ImmutableArray<string> said)
    {
        // The next command mends.
        var look = Bander.Sewn(folder, null, null, () => { });
        if (look.Hoopings.IsEmpty)
        {
            return "the plan cannot be read: " + string.Join(" ", look.Problems.Select(p => p.Found));
        }

        return OutFault(folder, look) ?? LogFault(folder, said) ?? SaveFault(folder, said) ?? StrayFault(folder);
    }

    private static string? OutFault(string folder, SewingReport look)
    {
        string output = Path.Combine(folder, "out");
        var works = new PreviousOutput(output);
        foreach (var state in look.Hoopings)
        {
            var hooping = works.Hooping(state.Number)!;
            if (!IsAsPrinted(output, NameBand.Output.OutPaths.NeedlePath(state.Number), hooping.PathPrint)
                || !IsAsPrinted(output, NameBand.Output.OutPaths.HoopingProof(state.Number), hooping.ProofPrint))
            {
                return $"hooping {state.Number} has not the files its plan tells of";
            }
        }

        int paths = Directory.GetFiles(Path.Combine(output, "needle-paths")).Length;
        return paths == look.Hoopings.Length ? null : $"{paths} needle paths for {look.Hoopings.Length} hoopings";
    }

    private static bool IsAsPrinted(string output, string relative, string print) =>
        Path.Combine(output, relative) is var file && File.Exists(file)
            && NameBand.Output.InputFingerprint.Fingerprint(File.ReadAllBytes(file)) == print;

    private static string? LogFault(string folder, ImmutableArray<string> said)
    {
        var log = SewingLogFile.Read(folder);
        var notes = log.Entries.Select(e => e.Note).ToHashSet(StringComparer.Ordinal);
        if (Numbers(said, "done sewn").FirstOrDefault(n => !notes.Contains(n)) is { } lost)
        {
            return $"the log lost {lost}, which was acknowledged";
        }

        foreach (int hooping in log.Sewn)
        {
            if (NameBand.Output.SewnFolder.Read(folder, NameBand.Output.OutPaths.NeedlePath(hooping)) is not { } kept
                || NameBand.Output.SewingPrint.Of(kept) != log.Last(hooping)!.Path)
            {
                return $"hooping {hooping} is logged as sewn and its needle path is not kept as it was sewn";
            }
        }

        // A line that was being written at the kill may be torn; it is named and spoils no other.
        return log.Problems.All(p =>
            p.Found.English.Contains("cut off", StringComparison.Ordinal) || p.Found.English.Contains("left aside", StringComparison.Ordinal))
            ? null : "the log: " + log.Problems[0].Found.English;
    }

    private static string? SaveFault(string folder, ImmutableArray<string> said)
    {
        var job = JobReader.Read(folder);
        string? title = job.Value?.Title.Replace("walk", "number", StringComparison.Ordinal);

        // The last one acknowledged, or one of those begun after it: a kill may come between the save and the word.
        int last = said.LastIndexOf(said.LastOrDefault(l => l.StartsWith("done title", StringComparison.Ordinal), ""));
        string[] possible =
            [last < 0 ? "number 0" : Numbers([said[last]], "done title").Single(), .. Numbers([.. said.Skip(last + 1)], "do title")];
        if (!possible.Contains(title))
        {
            return $"job.json has the title “{job.Value?.Title}”, and only {string.Join(", ", possible)} can be";
        }

        var corrections = Corrections.Read(folder);
        string decided = Numbers(said, "done why").LastOrDefault("");
        return corrections.Value is not { } read || !corrections.IsUsable ? "corrections.csv cannot be read"
            : decided.Length > 0 && !File.ReadAllText(Path.Combine(folder, Corrections.FileName))
                .Contains(decided, StringComparison.Ordinal)
                && Numbers(said, "do why").Last() == decided ? $"corrections.csv lost {decided}" : null;
    }

    private static string? StrayFault(string folder)
    {
        string[] known = ["job.json", "names.csv", "corrections.csv", "sewing-log.csv", HistoryFile.Name, "out", "sewn"];
        string? stray = Directory.EnumerateFileSystemEntries(folder).Select(e => Path.GetFileName(e))
            .FirstOrDefault(e => !known.Contains(e));
        string sewn = Path.Combine(folder, "sewn");
        int unfinished = Directory.Exists(sewn) ? Directory.GetFiles(sewn, WholeFile.Unfinished, SearchOption.AllDirectories).Length : 0;
        return stray is not null ? $"“{stray}” lies about" : unfinished > 1 ? $"{unfinished} unfinished files in sewn" : null;
    }

    private static IEnumerable<string> Numbers(ImmutableArray<string> said, string what) =>
        said.Where(l => l.StartsWith(what + " ", StringComparison.Ordinal)).Select(l => "number " + l.Split(' ')[^1]);
}
