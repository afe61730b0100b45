using NameBand.Job;

namespace NameBand.Layout.Resuming;

/// <summary>How much the cloth really got shorter, from pieces measured after sewing and pressing.</summary>
public static class MeasuredStrips
{
    /// <summary>
    /// Part by which the measured pieces came out shorter than they lay on the cloth, all of them together; what the
    /// job says where nothing was measured.
    /// </summary>
    public static double Shortening(SewingLog log, EarlierPlan plan, double askedPart)
    {
        var segmentsOf = plan.Hoopings.ToDictionary(h => h.Number, h => h.Segments);
        var segments = plan.Rounds.SelectMany(r => r.Segments).ToDictionary(s => s.Number);
        double onCloth = 0;
        double measured = 0;
        foreach (var entry in log.Entries.Where(e => e.Deed == SewingDeed.Measured).GroupBy(e => e.Hooping).Select(g => g.Last()))
        {
            if (segmentsOf.TryGetValue(entry.Hooping, out var hooped) && OnClothMm(segments[hooped[0].Segment], plan.Shortening) is { } lay && log.IsSewn(entry.Hooping))
            {
                onCloth += lay;
                measured += entry.MeasuredMm!.Value;
            }
        }

        return onCloth > 0 ? Math.Clamp(1 - (measured / onCloth), 0, 0.1) : askedPart;
    }

    /// <summary>
    /// Length on the cloth, before sewing, from the first name's left edge to the last one's right edge: places are set
    /// apart by the shortening that was reckoned with, and letters are not stretched.
    /// </summary>
    public static double? OnClothMm(EarlierSegment segment, double shortening)
    {
        if (segment.Names.IsEmpty)
        {
            return null;
        }

        double first = segment.Names.Min(n => n.StartMm);
        return segment.Names.Max(n => ((n.StartMm - first) / (1 - shortening)) + n.WidthMm);
    }
}
