using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Output.Drawing;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>The parts of a hooping's path that are sewn with one thread each, as its stops part them.</summary>
internal static class ThreadSections
{
    /// <summary>Draws the names of a hooping, each in its own thread.</summary>
    /// <param name="origin">Where the path's origin lies on the picture, in pixels.</param>
    public static void Draw(
        IndexedBitmap picture, (StripPlan Plan, Hooping Hooping) of, ReadOnlySpan<NeedleStep> steps, (double X, double Y) origin,
        double threadMm)
    {
        foreach (var (from, to, thread) in Of(of.Plan, of.Hooping, steps))
        {
            var (at, shades) = picture.Palette.ShadesOf(thread);
            ThreadLayer.Draw(picture, steps[from..to], (origin.X, origin.Y), ThreadKinds.Names, (at, shades), threadMm);
        }
    }

    /// <summary>The colours that a picture of a hooping needs.</summary>
    public static DyePalette Dyes(StripPlan plan, Hooping hooping) =>
        Dyes(plan, hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs));

    public static DyePalette Dyes(StripPlan plan, IEnumerable<PlacedName> names) =>
        DyePalette.Of(plan.Colours, [.. names.Select(plan.Colours.OfThread).Distinct()]);

    /// <summary>A part's thread is that of the name which its first stitch belongs to: so it is also with a path that was sewn by
    /// an earlier plan.</summary>
    public static ImmutableArray<(int From, int To, CssColour? Thread)> Of(StripPlan plan, Hooping hooping, ReadOnlySpan<NeedleStep> steps)
    {
        CssColour?[] threads = [.. hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs).Select(plan.Colours.OfThread).Distinct()];
        if (threads.Length < 2)
        {
            return [(0, steps.Length, threads.FirstOrDefault() ?? plan.Colours.Job.Thread)];
        }

        var places = NamePlaces.Of(hooping, plan);
        var nameOf = hooping.Segments.SelectMany(s => s.Segment.Names).DistinctBy(n => n.Order).ToDictionary(n => n.Order);
        var parts = ImmutableArray.CreateBuilder<(int From, int To, CssColour? Thread)>();
        int from = 0;
        for (int i = 0; i < steps.Length; i++)
        {
            if (steps[i].Action is NeedleAction.Stop or NeedleAction.End || i == steps.Length - 1)
            {
                parts.Add((from, i + 1, ThreadIn(steps[from..(i + 1)])));
                from = i + 1;
            }
        }

        return parts.ToImmutable();

        CssColour? ThreadIn(ReadOnlySpan<NeedleStep> part)
        {
            foreach (var step in part)
            {
                if (step.Action == NeedleAction.Stitch && step.Kind != StitchKind.Mark && places.OrderAt(step.At) is { } order
                    && nameOf.TryGetValue(order, out var name))
                {
                    return plan.Colours.OfThread(name);
                }
            }

            return plan.Colours.Job.Thread;
        }
    }
}
