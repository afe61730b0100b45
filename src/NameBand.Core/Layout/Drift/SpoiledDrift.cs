using System.Collections.Immutable;
using System.Globalization;
using System.IO.Hashing;
using System.Text;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout.Drift;

/// <summary>
/// Lines of drift.csv that measured what was spoiled afterwards. They say nothing of the hooping that is sewn in its place:
/// the log's line that says “again” or “patch” remembers them by their fingerprints, and they are left aside from then on.
/// </summary>
internal static class SpoiledDrift
{
    private const string Mark = "drift";

    /// <summary>What the log is to remember of the ends measured on a hooping that is said to be spoiled; empty for none.</summary>
    public static string Remembered(IEnumerable<MeasuredEnd> ends, EarlierPlan plan, int hooping)
    {
        var names = Numbers(plan, hooping);
        string prints = string.Join(' ', ends.Where(e => names.Contains(e.Number)).Select(Print));
        return prints.Length == 0 ? "" : $"{Mark} {prints}";
    }

    /// <summary>The ends that still count, and a note for each that does not.</summary>
    public static (ImmutableArray<MeasuredEnd> Counting, ImmutableArray<Problem> Aside) Split(
        ImmutableArray<MeasuredEnd> ends, EarlierPlan plan, SewingLog log)
    {
        var hoopingOf = plan.Hoopings.SelectMany(h => Numbers(plan, h.Number).Select(n => (Number: n, Hooping: h.Number)))
            .ToLookup(p => p.Number, p => p.Hooping);
        var counting = ImmutableArray.CreateBuilder<MeasuredEnd>();
        var aside = ImmutableArray.CreateBuilder<Problem>();
        var remembered = log.Entries.Where(IsSpoiled).GroupBy(e => e.Hooping)
            .ToDictionary(g => g.Key, g => g.SelectMany(e => e.Path.Split(' ').Skip(1)).ToHashSet(StringComparer.Ordinal));
        foreach (var end in ends)
        {
            int hooping = hoopingOf[end.Number].FirstOrDefault();
            bool isOpen = log.Last(hooping) is { } last && IsSpoiled(last);
            if (!isOpen && !(remembered.TryGetValue(hooping, out var prints) && prints.Contains(Print(end))))
            {
                counting.Add(end);
                continue;
            }

            aside.Add(Problem.Note(
                new Where(DriftFile.FileName, end.FileLine),
                $"The end of number {end.Number} was measured before its hooping {hooping} was spoiled, so this line counts no longer.",
                isOpen ? (Said)$"Once hooping {hooping} is sewn again, measure again and write that instead."
                    : "If it is off again, measure again and write that instead."));
        }

        return (counting.ToImmutable(), aside.ToImmutable());
    }

    private static bool IsSpoiled(SewingEntry entry) => entry.Deed is SewingDeed.Again or SewingDeed.Patch;

    /// <summary>Numbers of the names in a hooping.</summary>
    private static HashSet<int> Numbers(EarlierPlan plan, int hooping)
    {
        var segments = plan.Hoopings.Where(h => h.Number == hooping).SelectMany(h => h.Segments).Select(s => s.Segment).ToHashSet();
        return [.. plan.Rounds.SelectMany(r => r.Segments).Where(s => segments.Contains(s.Number)).SelectMany(s => s.Names)
            .Select(n => n.Order)];
    }

    private static string Print(MeasuredEnd end) => Crc32
        .HashToUInt32(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{end.Number},{end.EndMm:R}")))
            .ToString("x8", CultureInfo.InvariantCulture);
}
