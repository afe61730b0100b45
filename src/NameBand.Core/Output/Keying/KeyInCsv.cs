using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Output.Keying;

/// <summary>
/// The key-in sheet as a file for a spreadsheet: a row for each piece that is keyed in at one go. A copy of it with what was
/// measured filled in, saved as lengths.csv in the job's folder, is read from there.
/// </summary>
internal static class KeyInCsv
{
    private static readonly string[] Header =
    [
        "turn", "order", "round", "sitting", "name", "part", "key_in", "size_mm", "gap_mm", "start_from_end_mm", "start_from_last_mm",
        "expected_mm", "least_mm", "most_mm", "seconds", "estimated", "list", "line", "cloth", "start_on_cloth_mm", "mark", "plan", "done",
        "feed_mm", "measured_mm", "blank_mm", "sewn_on", "by_hand",
    ];

    /// <param name="names">In the order of sewing, those first that are to be measured before.</param>
    public static void Write(Stream stream, IEnumerable<KeyInName> names, string planMark)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true)
        {
            NewLine = CsvText.LineEnd,
        };
        var all = names.ToList();
        bool hasLines = all.Exists(n => n.Line > 0);
        writer.WriteLine(CsvText.Row(hasLines ? [.. Header, "on_line"] : Header));
        int turn = 0;
        foreach (var name in all)
        {
            turn++;
            for (int i = 0; i < name.Parts.Length; i++)
            {
                var part = name.Parts[i];
                writer.WriteLine(CsvText.Row(
                [
                    Whole(turn), name.IsMotif ? "" : Whole(name.Order), Whole(name.Round), Whole(name.Hooping), name.Text,
                    name.IsMotif ? SewnLengths.MotifWord
                    : name.Parts.Length == 1 ? "" : FormattableString.Invariant($"{i + 1} of {name.Parts.Length}"),
                    Letters.Shown(part.Keyed), Mm(name.Step.HeightMm), Mm(name.Step.GapMm), Mm(part.FromEndMm), Mm(part.FromLastMm),
                    Mm(part.ExpectedMm), Mm(part.LeastMm), Mm(part.MostMm),
                    part.Seconds?.ToString("0", CultureInfo.InvariantCulture) ?? "", part.IsEstimated ? "~" : "",
                    name.Row.List, name.IsMotif ? "" : Whole(name.Row.Line), Whole(name.Ruler.Cloth),
                    Thousandths.Tenths(part.OnClothMm).ToString("0.0", CultureInfo.InvariantCulture), name.Mark, planMark,
                    name.IsSewn || name.IsLogged ? "sewn" : "",
                    Mm(part.FeedMm), "", "", "", i == 0 ? name.ByHand.English : "",
                    .. hasLines ? new[] { name.Line == 1 ? "upper" : "lower" } : [],
                ]));
            }
        }
    }

    private static string Mm(double? mm) => mm?.ToString("0.0", CultureInfo.InvariantCulture) ?? "";

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
