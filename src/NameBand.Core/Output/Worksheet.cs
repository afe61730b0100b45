using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>
/// Writes worksheet.csv (RFC 4180, UTF-8 with a byte order mark so that spreadsheets read every script): one row for
/// each segment in the order of sewing, with an empty last column to tick.
/// </summary>
internal static class Worksheet
{
    private static readonly ImmutableArray<string> Header =
        ["hooping", "round", "segment", "names", "cloth_start_mm", "cloth_end_mm", "mark_line_mm", "cloth", "on_cloth_mm", "left_mark_mm",
            "right_mark_mm", "marks_apart_mm", "spare_mm", "letters_mm", "last_number", "ends_at_mm", "strip", "mark", "plan", "stitches",
            "minutes", "done"];

    /// <param name="frame">Name of the plan's own frame; empty: it has none.</param>
    public static void Write(Stream stream, StripPlan plan, Estimate estimate, string frame = "")
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true)
        {
            NewLine = CsvText.LineEnd,
        };
        var header = plan.Hem.IsCurved ? Header.Insert(Header.IndexOf("stitches"), "arc_off_line_mm") : Header;
        header = plan.Threads.AreSeveral ? header.Insert(header.IndexOf("stitches"), "threads") : header;
        bool isMixed = plan.Hoopings.Any(h => h.Frame is not null);
        writer.WriteLine(CsvText.Row([.. isMixed ? header.Add("frame") : header]));
        string planMark = SheetMarks.Of(plan);
        var figures = estimate.Hoopings.ToDictionary(f => f.Number);
        foreach (var hooping in plan.Hoopings)
        {
            var figure = figures[hooping.Number];
            var strips = StripWords.FromAbove(hooping);
            for (int i = 0; i < strips.Count; i++)
            {
                var hooped = strips[i];
                var segment = hooped.Segment;
                var marks = plan.MarksAlongMm(hooped);
                writer.WriteLine(CsvText.Row(
                [
                    Whole(hooping.Number),
                    Whole(hooped.Round.Number),
                    Whole(segment.Number),
                    string.Join(" | ", segment.Names.Select(n => n.Lettered.Name.Text + OnLine(n))),
                    Tenths(StripPlan.OnClothMm(hooping, hooped)),
                    Tenths(plan.EndOnClothMm(hooping, hooped)),

                    // Of a line below the centre: no leading minus, which a spreadsheet might take for a formula.
                    Tenths(Math.Abs(plan.MarkYMm)),
                    Whole(hooping.Cloth),
                    Tenths(StripPlan.OnClothMm(hooping, hooped)),
                    Tenths(StripPlan.OnClothMm(hooping, hooped) + marks.LeftMm),
                    Tenths(StripPlan.OnClothMm(hooping, hooped) + marks.RightMm),
                    Tenths(plan.RightMarkMm(hooped) - segment.LeftMarkMm),
                    Tenths(plan.SpareMm),
                    string.Join(
                        " | ", segment.Names.Select(n => Tenths(plan.LetterHeightMm * n.Lettered.Standing.HeightFactor)).Distinct()),
                    segment.LastName is { } last ? Whole(last.Order) : "",
                    segment.LastName is { } ends ? Tenths(ends.EndMm) : "",
                    .. plan.FrameOf(hooped) is { } bent ? new[] { Tenths(bent.MarkBowMm(plan.MarkYMm, segment.MarkArmMm)) } : [],
                    StripWords.Of(i, strips.Count).English,
                    SheetMarks.Of(plan, hooping),
                    planMark,
                    .. plan.Threads.Of(hooping.Number) is { } threads
                    ? new[] { i == 0 ? string.Join(" then ", threads.Order.Select(t => t.InWords.English)) : "" } : [],
                    i == 0 ? Whole(figure.Stitches) : "",
                    i == 0 ? Tenths(estimate.OwnMinutes(figure)) : "",
                    "",
                    .. isMixed ? new[] { hooping.Frame?.Name ?? frame } : [],
                ]));
            }
        }
    }

    private static string OnLine(PlacedName name) => name.Line > 0 ? $" ({StripWords.LineOf(name)})" : "";

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Tenths(double value) => Thousandths.Tenths(value).ToString("0.0", CultureInfo.InvariantCulture);
}
