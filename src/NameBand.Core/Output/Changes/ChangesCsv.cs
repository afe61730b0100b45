using System.Globalization;
using System.Text;
using NameBand.Common;

namespace NameBand.Output.Changes;

/// <summary>Writes changes.csv (RFC 4180, UTF-8 with a byte order mark): one row for each name of this plan and of the one
/// before.</summary>
internal static class ChangesCsv
{
    private static readonly string[] Header = ["change", "name", "name_before", "list", "line", "hooping", "hooping_before", "why"];

    public static void Write(Stream stream, PlanChanges changes)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true)
        {
            NewLine = CsvText.LineEnd,
        };
        writer.WriteLine(CsvText.Row(Header));
        foreach (var name in changes.Names)
        {
            writer.WriteLine(CsvText.Row(
            [
                PlanChanges.Word(name.Fate), name.Text, name.TextBefore, name.Row.List,
                name.Row.Line.ToString(CultureInfo.InvariantCulture),
                Whole(name.Hooping), Whole(name.HoopingBefore), name.Why?.English ?? "",
            ]));
        }
    }

    private static string Whole(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";
}
