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
        var (header, all) = Read(folder);
        int At(string column) => Place(header, column);
        string order = length.Number?.ToString(CultureInfo.InvariantCulture) ?? "";
        var rows = all.Where(r => length.IsScrap || r[At("order")] != order || r[At("sewn_on")].Length > 0).ToList();
        string[] line = [.. header.Select(_ => "")];
        line[At("name")] = length.Name;
        line[At("order")] = order;
        line[At("measured_mm")] = Mm(length.LengthMm);
        line[At("blank_mm")] = blank;
        line[At("size_mm")] = length.HeightMm is { } height ? Mm(height) : "";
        line[At("gap_mm")] = length.SpacingMm is { } gap ? Mm(gap) : "";
        line[At("sewn_on")] = length.IsScrap ? SewnLengths.ScrapWord : "";
        rows.Add(line);
        Write(folder, header, rows);
    }

    /// <summary>The last length told of a name no longer counts: its line stays, and says so.</summary>
    /// <param name="isScrap">Of those on scraps; else that on the strip.</param>
    /// <returns>How long it was told to be, as it was written; null: there was none.</returns>
    public static string? TakeBack(string folder, int number, string name, bool isScrap)
    {
        if (!InnerFile.IsThere(folder, SewnLengths.FileName))
        {
            return null;
        }

        var (header, rows) = Read(folder);
        string order = number.ToString(CultureInfo.InvariantCulture);
        string Of(string[] row, string column) => row[Place(header, column)].Trim();
        var last = rows.FindLast(r => Of(r, "measured_mm").Length > 0
            && (Of(r, "order") == order || (Of(r, "order").Length == 0 && PlainText.Normal(Of(r, "name")) == name))
            && Of(r, "sewn_on").Equals(isScrap ? SewnLengths.ScrapWord : "", StringComparison.OrdinalIgnoreCase));
        if (last is null)
        {
            return null;
        }

        last[Place(header, "sewn_on")] = isScrap ? $"{SewnLengths.ScrapWord}, {SewnLengths.TakenBackWord}" : SewnLengths.TakenBackWord;
        Write(folder, header, rows);
        return Of(last, "measured_mm");
    }

    /// <summary>The heading with all our columns, and the rows under it.</summary>
    private static (List<string> Header, List<string[]> Rows) Read(string folder)
    {
        var read = InnerFile.IsThere(folder, SewnLengths.FileName) ? CsvFile.Read(folder, SewnLengths.FileName).Value : null;
        List<string> header = [.. read?.Rows[0].Fields.Select(f => f.Trim()) ?? []];
        header.AddRange(Columns.Where(c => Place(header, c) < 0));
        return (header,
            [.. (read?.Rows.Skip(1) ?? [])
            .Select(r => header.Select((_, i) => i < r.Fields.Length ? CsvText.ReadBack(r.Fields[i]) : "").ToArray())]);
    }

    private static int Place(List<string> header, string column) =>
        header.FindIndex(h => h.Equals(column, StringComparison.OrdinalIgnoreCase));

    private static void Write(string folder, List<string> header, List<string[]> rows)
    {
        string text = string.Concat(rows.Prepend([.. header]).Select(r => CsvText.Row(r) + CsvText.LineEnd));
        WholeFile.Put(Path.Combine(folder, SewnLengths.FileName), Encoding.UTF8.GetBytes(text));
    }

    private static string Mm(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);
}
