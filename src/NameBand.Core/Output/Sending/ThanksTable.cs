using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Packet;

namespace NameBand.Output.Sending;

/// <summary>
/// Writes thanks.csv (RFC 4180, UTF-8 with a byte order mark): which picture is whose, by the row of the list, and each
/// picture in words. It stays with the maker: the pictures' own names say nothing of a person.
/// </summary>
internal static class ThanksTable
{
    private static readonly string[] Header = ["file", "name", "list", "line", "number", "round", "place", "description"];

    public static void Write(Stream stream, string title, StripPlan plan, ImmutableArray<FoundName> names)
    {
        using var writer =
            new StreamWriter(
                stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true)
            { NewLine = CsvText.LineEnd };
        writer.WriteLine(CsvText.Row(Header));
        foreach (var found in names)
        {
            var row = found.Placed.Lettered.Name.Row;
            writer.WriteLine(CsvText.Row(
            [
                Path.GetFileName(OutPaths.Thanks(found.Placed.Order)), found.Text, row.List, Whole(row.Line), Whole(found.Placed.Order),
                Whole(found.Round), ThanksWords.Place(found).English, ThanksWords.Description(title, plan, found).English,
            ]));
        }
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
