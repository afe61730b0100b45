using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>A name that was read on its proof and found right, as it was written then.</summary>
public readonly record struct ReadProof(RowRef Row, string Name);

/// <summary>The file that keeps which names were read on their proofs: one line each.</summary>
public static class ReadProofsFile
{
    public const string FileName = "proofs-read.csv";

    private static readonly string[] Columns = ["list", "line", "name"];

    /// <summary>A line that cannot be read says nothing: its name is read once more.</summary>
    public static ImmutableHashSet<ReadProof> Read(string jobFolder) =>
        !InnerFile.IsPlain(jobFolder, FileName) || InnerFile.IsEmpty(jobFolder, FileName)
            || CsvFile.Read(jobFolder, FileName).Value is not { } table
            ? [] : [.. table.Rows.Skip(1).Select(Line).OfType<ReadProof>()];

    /// <summary>Adds names that were read now.</summary>
    /// <returns>What kept them from being written down; empty: nothing.</returns>
    /// <exception cref="IOException">The machine could not write; the file is as it was.</exception>
    public static ImmutableArray<Problem> Add(string jobFolder, IEnumerable<ReadProof> right)
    {
        var before = JobStore.Read(jobFolder, FileName);
        var all = Read(jobFolder).Union(right).OrderBy(p => p.Row.List, StringComparer.Ordinal).ThenBy(p => p.Row.Line)
            .ThenBy(p => p.Name, StringComparer.Ordinal);
        string text = string.Concat(all.Select(p => (string[])[p.Row.List, p.Row.Line.ToString(CultureInfo.InvariantCulture), p.Name])
            .Prepend(Columns).Select(r => CsvText.Row(r) + CsvText.LineEnd));
        var saved = JobStore.Save(jobFolder, FileName, KeptFile.Of(Encoding.UTF8.GetBytes(text)), before);
        return saved.Value is null ? saved.Problems : [];
    }

    private static ReadProof? Line(CsvRow row) => row.Fields is [var list, var line, var name, ..]
        && int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
        ? new ReadProof(new RowRef(CsvText.ReadBack(list), number), CsvText.ReadBack(name)) : null;
}
