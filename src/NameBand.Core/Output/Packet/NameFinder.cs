using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>Writes name-finder.csv (RFC 4180, UTF-8 with a byte order mark): where each name lies, sorted by name.</summary>
internal static class NameFinder
{
    private static readonly string[] Header =
    [
        "name", "number", "round", "start_mm", "end_mm", "from_strip_start_mm", "from_middle_mm", "side_of_middle", "hooping",
        "from_centre_front_mm", "side_of_centre_front", "from_centre_back_mm", "side_of_centre_back", "letters_mm",
    ];

    public static void Write(Stream stream, StripPlan plan, string collation)
    {
        using var writer =
            new StreamWriter(
                stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true)
            { NewLine = CsvText.LineEnd };
        bool hasLines = plan.LineStepMm > 0;
        writer.WriteLine(CsvText.Row(hasLines ? [.. Header, "on_line"] : Header));
        foreach (var found in FoundName.Sorted(plan, collation))
        {
            writer.WriteLine(CsvText.Row(
            [
                found.Text, Whole(found.Placed.Order), Whole(found.Round), Mm(found.Placed.StartMm), Mm(found.Placed.EndMm),
                Mm(found.MiddleMm),
                Mm(Math.Abs(found.FromRoundMiddleMm)), found.FromRoundMiddleMm < 0 ? "left" : "right", Whole(found.Hooping),
                Mm(found.FromFront?.DistanceMm), Side(found.FromFront), Mm(found.FromBack?.DistanceMm), Side(found.FromBack),
                Mm(plan.LetterHeightMm * found.Placed.Lettered.Standing.HeightFactor),
                .. hasLines ? new[] { found.Placed.Line == 1 ? "upper" : "lower" } : [],
            ]));
        }
    }

    private static string Side(FromMiddle? from) => from is not { } known ? "" : known.IsRight ? "right" : "left";

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Mm(double? mm) => mm is { } known ? Thousandths.Mm(known).ToString("0.0", CultureInfo.InvariantCulture) : "";
}
