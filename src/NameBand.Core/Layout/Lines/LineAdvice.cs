using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout.Lines;

/// <summary>Says whether two lines of names fit a strip, and what pairing did to the order.</summary>
internal static class LineAdvice
{
    private const double TenthMm = 0.1; // Letter heights go by tenths of a millimetre, as people measure them.

    /// <summary>Why two lines do not fit the strip at the least height that is asked for; null where they do.</summary>
    public static Problem? TooNarrow(BandJob job, Sizing sizing, IReadOnlyList<LetteredName> paired)
    {
        double height = job.Lettering.Height?.Mm ?? job.Lettering.Least.Mm;
        if (paired.Count == 0)
        {
            return null;
        }

        double ink = paired.Max(p => p.Ink.TopMm) - Math.Min(0, paired.Min(p => p.Ink.BottomMm));
        if (sizing.FitsZone(0, ink, height))
        {
            return null;
        }

        double zone = sizing.Hem.Strip.SewingZoneMm;
        double needed = (ink * height) + (2 * sizing.ReachMm(height));
        double fitting = Math.Floor((Math.Min(zone, sizing.FieldAcrossMm) - (2 * sizing.ReachMm(height))) / ink / TenthMm) * TenthMm;
        double cut = Math.Ceiling(job.Strip.CutWidth.Mm + needed - zone);
        Said smaller = job.Traits.HasLettersOfItsOwn || fitting < JobKeys.Height.LowMm ? ""
            : (Said)$"; or letters {fitting:0.0} mm high (\"{(job.Lettering.Height is null ? "least" : "height")}\" in “lettering”)";
        return Problem.CannotUse(
            new Where(JobReader.FileName, Key: "strip.lines"),
            $"Two lines of letters {height:0.0} mm high, with their accents, tails and the room between, are {needed:0.0} mm high, "
                + $"and the strip has {Math.Min(zone, sizing.FieldAcrossMm):0.0} mm to sew on.",
            $"Write \"cutWidth\": \"{cut:0} mm\" in the group “strip”{smaller}; or \"lines\": 1.");
    }

    /// <summary>How many names stand elsewhere than in the order that was asked for.</summary>
    public static Problem OrderChanges(IReadOnlyList<LetteredName> ordered, IEnumerable<LetteredName> asPlaced, bool isFree)
    {
        var place = new Dictionary<LetteredName, int>(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < ordered.Count; i++)
        {
            place.TryAdd(ordered[i], i);
        }

        int moved = ordered.Count - LongestInOrder([.. asPlaced.Select(n => place[n])]);
        return Problem.Note(
            new Where(JobReader.FileName, Key: "strip.lines"),
            $"{ordered.Count} names stand in two lines, paired by length, one above the other"
                + $"{(isFree || moved == 0 ? "." : (Said)$": {moved} of them stand elsewhere than in their order.")}",
            "The name finder says where each one is. \"lines\": 1 in the group “strip” keeps the order.");
    }

    /// <summary>Most numbers that stand in growing order: all others have been moved.</summary>
    internal static int LongestInOrder(IReadOnlyList<int> places)
    {
        // The last place of the best run of each length so far.
        var ends = new List<int>();
        foreach (int place in places)
        {
            int at = ends.BinarySearch(place);
            at = at < 0 ? ~at : at;
            if (at == ends.Count)
            {
                ends.Add(place);
            }
            else
            {
                ends[at] = place;
            }
        }

        return ends.Count;
    }
}
