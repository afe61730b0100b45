using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>How much needle thread of each colour a job takes.</summary>
internal static class ThreadMetres
{
    /// <summary>The most first. Where it is not known what each name takes, its width tells its part.</summary>
    public static ImmutableArray<(CssColour Thread, double Metres)> Of(StripPlan plan, Estimate estimate)
    {
        var figures = estimate.ByNumber();
        var metres = new Dictionary<CssColour, double>();
        foreach (var hooping in plan.Hoopings.Where(h => figures.ContainsKey(h.Number)))
        {
            var names = hooping.Segments.SelectMany(s => s.Segment.Names).ToList();
            var figure = figures[hooping.Number];
            var known = figure.Names.GroupBy(n => n.Order).ToDictionary(g => g.Key, g => g.Sum(n => n.NeedleM));
            double widths = names.Sum(n => n.WidthMm);
            foreach (var name in names)
            {
                var thread = ThreadTurns.ThreadOf(plan, name);
                double own = known.TryGetValue(name.Order, out double m)
                    ? m : known.Count == 0 && widths > 0 ? figure.NeedleThreadM * name.WidthMm / widths : 0;
                metres[thread] = metres.GetValueOrDefault(thread) + own;
            }
        }

        return metres.Count == 0
            ? [(plan.Colours.Job.Thread ?? ColourSettings.UsualThread, 0)]
            : [.. metres.OrderByDescending(m => m.Value).ThenBy(m => m.Key.Number).Select(m => (m.Key, m.Value))];
    }
}
