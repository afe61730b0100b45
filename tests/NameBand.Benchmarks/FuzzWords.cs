using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using dnlib.DotNet;
using dnlib.DotNet.Emit;
using NameBand.Job;
using NameBand.Tests.Hostile;

namespace NameBand.Benchmarks;

/// <summary>
/// The words to put into files of a kind: what stands in real ones, the keys of job.json, and what the reader itself has in its
/// code: names of columns, answers, markers, units.
/// </summary>
internal static partial class FuzzWords
{
    private const int MostBytes = 60; // AFL++ takes 128; a longer text is a sentence.

    /// <summary>A list of words of a vocabulary is one text with commas.</summary>
    private const int FewestOfAList = 4;

    public static IReadOnlyList<byte[]> Of(string kind, IEnumerable<byte[]> files)
    {
        string[] rooms = Rooms(kind);
        var known = rooms.Contains("NameBand.Job") ? JobKeys.All.SelectMany(k => k.Path.Split('.')).Select(k => $"\"{k}\":") : [];
        var words = known.Concat(Literals(typeof(Bander).Assembly.Location, rooms));
        if (kind == "spreadsheet")
        {
            words = words.Concat(Literals(Path.Combine(AppContext.BaseDirectory, "ExcelDataReader.dll"), ["ExcelDataReader"]));
        }

        return [.. Mutator.Words(files).Concat(words.Select(Encoding.UTF8.GetBytes)).Where(w => w.Length is > 0 and <= MostBytes)
            .DistinctBy(Convert.ToHexString)];
    }

    /// <summary>For each key of job.json a small file that has it, so that all are near from the beginning.</summary>
    public static IEnumerable<byte[]> JobsOfEachKey() => JobKeys.All.Select(key =>
    {
        var root = JsonNode.Parse("""{ "lists": ["names.csv"], "hem": { "length": "2 m" }, "title": "Walk" }""")!.AsObject();
        var at = root;
        string[] path = key.Path.Split('.');
        foreach (string group in path[..^1])
        {
            at = at[group] as JsonObject ?? (JsonObject)(at[group] = new JsonObject());
        }

        at[path[^1]] = key switch
        {
            FlagKey flag => !flag.Default,
            NumberKey number => number.Low + 1,
            LengthKey length => FormattableString.Invariant($"{length.LowMm + 1} mm"),
            WordKey word => word.Words[^1],
            TextsKey texts => new JsonArray(texts.Example.English),
            FormKey => new JsonArray("a", "b"),
            _ => "names.csv",
        };
        return Encoding.UTF8.GetBytes(root.ToJsonString());
    });

    /// <summary>The rooms whose code reads a kind.</summary>
    private static string[] Rooms(string kind) => kind switch
    {
        "job.json" or "workshop" => ["NameBand.Job", "NameBand.Common"],
        "list" or "spreadsheet" or "approvals" or "corrections" => ["NameBand.Names", "NameBand.Job.Corrections", "NameBand.Common"],
        "sewing log" => ["NameBand.Job.Sewing", "NameBand.Common"],
        "letters" or "measured lines" => ["NameBand.MachineLetters", "NameBand.Common"],
        "drift" => ["NameBand.Layout.Drift", "NameBand.Common"],
        "out plan" => ["NameBand.PlanFile", "NameBand.Output"],
        "manifest" => ["NameBand.Output", "NameBand.Common"],
        _ => [],
    };

    /// <summary>What stands in quotes in the code of some types and is a word, not a sentence said to a person.</summary>
    private static string[] Literals(string library, string[] within)
    {
        using var module = ModuleDefMD.Load(library);
        var code = module.GetTypes().Where(t => within.Any(w => t.FullName.StartsWith(w, StringComparison.Ordinal)))
            .SelectMany(t => t.Methods).Where(m => m.HasBody).Select(m => m.Body.Instructions).ToList();
        var quoted = code.SelectMany(c => c).Where(i => i.OpCode.Code == Code.Ldstr).Select(i => (string)i.Operand)
            .SelectMany(f => f.Split(',') is { Length: >= FewestOfAList } list ? list.Select(w => w.Trim()) : [f])
            .Where(f => f.Length > 0 && !Sentence().IsMatch(f));
        return [.. quoted.Concat(code.SelectMany(SignsInARow)).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>A word that is asked for sign by sign is nowhere in quotes: the signs a method compares with, as they come.</summary>
    private static IEnumerable<string> SignsInARow(IList<Instruction> code)
    {
        string signs = string.Concat(Enumerable.Range(0, code.Count - 1)
            .Where(i => code[i].IsLdcI4() && ComparedValues.IsForSame(code[i + 1]) && code[i].GetLdcI4Value() is > ' ' and < '\u007f')
            .Select(i => (char)code[i].GetLdcI4Value()));
        int[] lengths = [1, 2, 3, 4, signs.Length];
        return Enumerable.Range(0, signs.Length).SelectMany(from =>
            lengths.Where(length => from + length <= signs.Length).Select(length => signs.Substring(from, length)));
    }

    [GeneratedRegex(@"[“”{}]|[.!?:,] |\.$|^ | $|(\S+ ){4}")]
    private static partial Regex Sentence();
}
