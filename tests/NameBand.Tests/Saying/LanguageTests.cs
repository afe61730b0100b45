using System.Text.RegularExpressions;
using NameBand.Job;
using NameBand.Tests.CommandLine;
using NameBand.Tests.Lettering;
using Xunit;
using static NameBand.Tests.Saying.Spoken;

namespace NameBand.Tests.Saying;

/// <summary>
/// The whole line in a language made from the English: what a program reads is byte for byte the same, names are never touched, and
/// no verb says anything in English alone.
/// </summary>
public sealed partial class LanguageTests
{
    private const string Accented = "en-XA";

    private static readonly HashSet<string> Keys = [.. JobKeys.All.SelectMany(k => k.Path.Split('.'))];

    private const string Job = """
        { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "40 cm", "turn": 0 },
          "bobbin": { "capacity": "2 m" }, "prices": { "currency": "kr", "spool": 49.5, "needle": 3.25, "hour": 200 } }
        """;

    private const string Names = "Name\nAda Marsh\nBo Reed\nada marsh\nBo Reed\nTuva\u200b Lind\nOrla Penhale\n";

    private static readonly string[][] Verbs =
    [
        ["names"], ["plans"], ["make"], ["sewn", "1", "--minutes", "31"], ["sewn"], ["hours", "--evening", "20 min"], ["make"], ["check"],
        ["swatch"], ["public"], ["invite"],
    ];

    [Fact]
    public void What_programs_read_is_the_same_in_every_language()
    {
        using var english = new TemporaryFolder().With("job.json", Job).With("names.csv", Names);
        using var other = new TemporaryFolder().With("job.json", Job).With("names.csv", Names);
        foreach (string[] verb in Verbs)
        {
            var said = In("", () => CliRun.Of([verb[0], english.FullPath, .. verb[1..], "--json"]));
            var told = In(Accented, () => CliRun.Of([verb[0], other.FullPath, .. verb[1..], "--json"]));
            Assert.Equal(said.Status, told.Status);
            Assert.Equal(Bare(said, english), Bare(told, other));
        }

        string[] files = ForPrograms(english);
        Assert.Contains("out/plan.json", files);
        Assert.True(files.Length > 8, string.Join(' ', files));
        Assert.Equal(files, ForPrograms(other));
        Assert.All(files, f => Assert.Equal(WithoutPrints(english[f]), WithoutPrints(other[f])));
    }

    [Fact]
    public void A_verb_says_nothing_that_is_only_English()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", Names);
        foreach (string[] verb in Verbs.Append(["faces"]))
        {
            var run = In(Accented, () => CliRun.Of([verb[0], .. verb[0] == "faces" ? [] : new[] { folder.FullPath }, .. verb[1..]]));
            Assert.Contains("«", run.Out, StringComparison.Ordinal);
            string said = Pasted().Replace(run.Out.Replace(folder.FullPath, "", StringComparison.Ordinal), "");
            string[] left = [.. Word().Matches(said).Select(m => m.Value).Where(w => !IsOfNobody(w)).Distinct()];
            Assert.True(left.Length == 0, $"{verb[0]} says in English alone: {string.Join(' ', left)}\n{said}");
        }
    }

    [Fact]
    public void Names_are_never_touched()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", "Name\nRound Nothing\nHooping Strip\n");
        var run = In(Accented, () => CliRun.Of("make", folder.FullPath));
        Assert.NotEqual(2, run.Status);
        string sewn = In(Accented, () => CliRun.Of("sewn", folder.FullPath).Out);
        Assert.Contains("Round Nothing", sewn, StringComparison.Ordinal);
        Assert.Contains("Hooping Strip", sewn, StringComparison.Ordinal);
    }

    /// <summary>Without what may differ: where the job lies, how long the search took, and how long the texts of the page are.</summary>
    private static string Bare(CliRun run, TemporaryFolder folder) =>
        Seconds().Replace(run.Out.Replace(folder.FullPath, "JOB", StringComparison.Ordinal), "");

    /// <summary>But for the lists of files with their sums, in which read-me files of another language have another sum.</summary>
    private static string[] ForPrograms(TemporaryFolder folder) =>
    [
        .. Directory.EnumerateFiles(folder.FullPath, "*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".json" or ".csv").Where(f => Path.GetFileName(f) != ".made-by-nameband.json")
            .Select(f => Path.GetRelativePath(folder.FullPath, f).Replace('\\', '/')).Order(StringComparer.Ordinal),
    ];

    /// <summary>But for the fingerprints of proofs, which have words on them, and of what they are made from.</summary>
    private static string WithoutPrints(string file) => Prints().Replace(File.ReadAllText(file), "");

    /// <summary>Words of the job, of its keys and its plans' marks, of the faces' names, and that of the swatch.</summary>
    private static bool IsOfNobody(string word) =>
        Keys.Contains(word) || Mark().IsMatch(word) || word == "Bde"
        || LetteringRig.Shelf.Cards.Any(c => c.Name.Split(' ').Contains(word)) || (Job + Names).Contains(word, StringComparison.Ordinal);

    [GeneratedRegex("\"(seconds|pageBytes)\": [0-9.]+")]
    private static partial Regex Seconds();

    [GeneratedRegex("\"(madeFrom|proofPrint)\": ?\"[0-9a-f]+\"")]
    private static partial Regex Prints();

    /// <summary>What is put into a terminal or a file as it stands: a command, JSON, lines for corrections.csv.</summary>
    [GeneratedRegex(
        @"^ *nameband .*$|^ *→ "".*$|^ *\{ ""(?:.+\n)+|" + @"""\w+"": \{[^}]*\}|^list,line,(?:.+\n)+",
        RegexOptions.Multiline)]
    private static partial Regex Pasted();

    [GeneratedRegex("^[A-Z0-9]{4}$")]
    private static partial Regex Mark();

    /// <summary>A word in plain letters: every vowel of a translated one has an accent. No part of a path or an option.</summary>
    [GeneratedRegex(@"(?<![\w./-])(?=[a-z]*[aeiou])[A-Za-z]{3,}(?![\w/-]|\.[a-z])", RegexOptions.IgnoreCase)]
    private static partial Regex Word();
}
