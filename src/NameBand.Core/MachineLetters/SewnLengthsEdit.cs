using System.Globalization;
using System.Text;
using NameBand.Common;

namespace NameBand.MachineLetters;

/// <summary>Adds a length to lengths.csv; what else stands there stays, under the same headings.</summary>
internal static class SewnLengthsEdit
{
    private static readonly string[] Columns = ["name", "order", "measured_mm", "blank_mm", "size_mm", "gap_mm", "sewn_on"];

    /// <summary>A name on the strip has one length: a later one takes the place of the earlier. On scraps all are kept.</summary>
    /// <param name="blank">Where its blank lies, as it was written.</param>
    public static void Add(string folder, SewnLength length, string blank)
    {
        var read = InnerFile.IsThere(folder, SewnLengths.FileName) ? CsvFile.Read(folder, SewnLengths.FileName).Value : null;
        List<string> header = [.. read?.Rows[0].Fields.Select(f => f.Trim()) ?? []];
        header.AddRange(Columns.Where(c => !header.Contains(c, StringComparer.OrdinalIgnoreCase)));
        int At(string column) => header.FindIndex(h => h.Equals(column, StringComparison.OrdinalIgnoreCase));
        string order = length.Number?.ToString(CultureInfo.InvariantCulture) ?? "";
        var rows = (read?.Rows.Skip(1) ?? []).Select(r => header.Select((_, i) => i < r.Fields.Length ? CsvText.ReadBack(r.Fields[i]) : "").ToArray())
            .Where(r => length.IsScrap || r[At("order")] != order || r[At("sewn_on")].Length > 0).ToList();
        string[] line = [.. header.Select(_ => "")];
        line[At("name")] = length.Name;
        line[At("order")] = order;
        line[At("measured_mm")] = Mm(length.LengthMm);
        line[At("blank_mm")] = blank;
        line[At("size_mm")] = length.HeightMm is { } height ? Mm(height) : "";
        line[At("gap_mm")] = length.SpacingMm is { } gap ? Mm(gap) : "";
        line[At("sewn_on")] = length.IsScrap ? SewnLengths.ScrapWord : "";
        rows.Add(line);
        string text = string.Concat(rows.Prepend([.. header]).Select(r => CsvText.Row(r) + CsvText.LineEnd));
        WholeFile.Put(Path.Combine(folder, SewnLengths.FileName), Encoding.UTF8.GetBytes(text));
    }

    private static string Mm(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);
}
