using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>A mark that a hooping of this number had in an earlier plan.</summary>
/// <param name="IsPrinted">Its sheets were printed with it; else only its proof was made.</param>
internal sealed record EarlierMark(int Hooping, string Mark, bool IsPrinted);

/// <summary>
/// The file earlier-marks.csv in an out folder (RFC 4180): which marks the hoopings had before, so that a sheet that lies
/// about is known to be an old one. It is there only where there are any.
/// </summary>
internal static class EarlierMarks
{
    private const string Printed = "printed";
    private const string Made = "made";

    /// <summary>All that are kept; a line that is none of ours tells nothing.</summary>
    public static ImmutableArray<EarlierMark> Read(string outFolder)
    {
        try
        {
            if (!InnerFile.IsPlain(outFolder, OutPaths.EarlierMarks)
                || InnerFile.Length(outFolder, OutPaths.EarlierMarks) > InnerFile.MostLogBytes)
            {
                return [];
            }

            string text = Encoding.UTF8.GetString(InnerFile.Bytes(outFolder, OutPaths.EarlierMarks));
            return [.. text.Split('\n').Select(Line).OfType<EarlierMark>()];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or RefusedEntryException)
        {
            return [];
        }
    }

    /// <summary>What is to be kept beside a new plan. Its own marks are none, unless a sheet was printed with them before.</summary>
    /// <param name="known">Kept beside the plan before, that plan's own marks with them.</param>
    /// <param name="now">The new plan's marks, by hooping.</param>
    /// <param name="prints">Sheets are printed with it: she sews from those, so proofs that were only looked at count no longer.</param>
    public static ImmutableArray<EarlierMark> After(IEnumerable<EarlierMark> known, IReadOnlyDictionary<int, string> now, bool prints) =>
    [
        .. known.Where(k => SheetMarks.IsMark(k.Mark))
            .GroupBy(k => (k.Hooping, k.Mark), (of, all) => new EarlierMark(of.Hooping, of.Mark, all.Any(k => k.IsPrinted)))
            .Where(k => k.IsPrinted || (!prints && now.GetValueOrDefault(k.Hooping) != k.Mark))
            .OrderBy(k => k.Hooping).ThenBy(k => k.Mark, StringComparer.Ordinal),
    ];

    public static void Write(Stream stream, IEnumerable<EarlierMark> marks)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = CsvText.LineEnd };
        writer.WriteLine(CsvText.Row(["hooping", "mark", "what"]));
        foreach (var mark in marks)
        {
            string hooping = mark.Hooping.ToString(CultureInfo.InvariantCulture);
            writer.WriteLine(CsvText.Row([hooping, mark.Mark, mark.IsPrinted ? Printed : Made]));
        }
    }

    private static EarlierMark? Line(string line) =>
        line.Trim().Split(',') is [var number, var mark, var what, ..] && SheetMarks.IsMark(mark)
        && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int hooping)
            ? new EarlierMark(hooping, mark, what == Printed) : null;
}
