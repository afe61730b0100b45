using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>How much of a thread that goes over bare cloth is in sight: what no satin covers, from where it comes out to where it
/// goes under.</summary>
internal static class JoinSight
{
    private const double StepMm = 0.05; // An eighth of a thread's width.
    private const int MostSamples = 400; // A count: 20 mm of thread, many times the longest join; they lie on the stack.
    private const int BoxStitches = 12; // A count: a box is asked once for the twelve stitches in it. Our choice.

    /// <summary>So far past its first hole a thread that comes to a part may still lie beside the part's satin.</summary>
    private const int MostAfter = 3;

    /// <summary>The longest piece in sight of the stitch from the last hole of a run to the first hole of the next.</summary>
    /// <param name="after">Stands so as seen from the run before.</param>
    public static double OfJoin(NeedleStep[] before, NeedleStep[] after, Placing after0, double threadMm)
    {
        Span<Point> line = stackalloc Point[MostAfter + 1];
        line[0] = before[^1].At;
        int count = 1;
        for (int i = 0; i < after.Length && count < line.Length && (i == 0 || IsCovered(after[i].Kind)); i++)
        {
            line[count++] = after0.Of(after[i].At);
        }

        line = line[..count];
        Span<bool> hidden = stackalloc bool[MostSamples];
        int samples = Samples(line);
        Cover(line, hidden, new Stretch(before, null, 1, before.Length), threadMm / 2);
        Span<Point> back = stackalloc Point[count];
        for (int i = 0; i < count; i++)
        {
            back[i] = after0.Back(line[i]);
        }

        Cover(back, hidden, new Stretch(after, null, 1, after.Length), threadMm / 2);
        return Longest(line, hidden[..samples]);
    }

    /// <summary>The longest piece in sight of a run's own travel.</summary>
    public static double Within(NeedleStep[] run, double threadMm)
    {
        double longest = 0;
        var all = new Stretch(run, Boxes(run), 1, run.Length);
        var line = new List<Point>();
        Span<bool> hidden = stackalloc bool[MostSamples];
        for (int i = 1; i <= run.Length; i++)
        {
            if (i < run.Length && IsCovered(run[i].Kind))
            {
                if (line.Count == 0)
                {
                    line.Add(run[i - 1].At);
                }

                line.Add(run[i].At);
            }
            else if (line.Count > 0)
            {
                var points = CollectionsMarshal.AsSpan(line);
                int samples = Samples(points);
                hidden.Clear();
                Cover(points, hidden, all, threadMm / 2);
                longest = Math.Max(longest, Longest(points, hidden[..samples]));
                line.Clear();
            }
        }

        return longest;
    }

    /// <summary>How much of a run's own travel and underlay lies over satin that is sewn before it, and how much of that no later
    /// satin covers; with the length of all its thread.</summary>
    public static (double OverMm, double SeenMm, double ThreadMm) OverSatin(NeedleStep[] run, double threadMm)
    {
        var (over, seen, all) = (0.0, 0.0, run.Length > 1 ? run[0].At.DistanceTo(run[1].At) : 0);
        Span<bool> before = stackalloc bool[MostSamples];
        Span<bool> after = stackalloc bool[MostSamples];
        Span<Point> line = stackalloc Point[2];
        var boxes = Boxes(run);
        for (int i = 2; i < run.Length; i++)
        {
            all += run[i - 1].At.DistanceTo(run[i].At);
            if (!IsCovered(run[i].Kind))
            {
                continue;
            }

            (line[0], line[1]) = (run[i - 1].At, run[i].At);
            int samples = Samples(line);
            before.Clear();
            Cover(line, before, new Stretch(run, boxes, 1, i), threadMm / 2);
            if (!before[..samples].Contains(true))
            {
                continue;
            }

            after.Clear();
            Cover(line, after, new Stretch(run, boxes, i + 1, run.Length), threadMm / 2);
            double step = line[0].DistanceTo(line[1]) / samples;
            for (int k = 0; k < samples; k++)
            {
                over += before[k] ? step : 0;
                seen += before[k] && !after[k] ? step : 0;
            }
        }

        return (over, seen, all);
    }

    private static bool IsCovered(StitchKind kind) => kind is StitchKind.Travel or StitchKind.Underlay;

    private static int PartsOf(Point a, Point b) => Math.Max(1, (int)(a.DistanceTo(b) / StepMm));

    private static int Samples(ReadOnlySpan<Point> line)
    {
        int samples = 0;
        for (int i = 1; i < line.Length; i++)
        {
            samples += PartsOf(line[i - 1], line[i]);
        }

        return Math.Min(samples, MostSamples);
    }

    /// <summary>Stitches of a run, from the one that leads to a step up to, not including, another.</summary>
    private readonly record struct Stretch(NeedleStep[] Run, Extent[]? Boxes, int From, int To);

    /// <summary>How far some stitches after each other reach.</summary>
    private readonly record struct Extent(double Left, double Right, double Bottom, double Top);

    /// <summary>How far each dozen of stitches reaches: most of them lie nowhere near a line.</summary>
    private static Extent[] Boxes(NeedleStep[] run)
    {
        var boxes = new Extent[(run.Length - 1 + BoxStitches - 1) / BoxStitches];
        for (int b = 0; b < boxes.Length; b++)
        {
            var (left, right, bottom, top) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
            for (int i = b * BoxStitches; i <= Math.Min((b + 1) * BoxStitches, run.Length - 1); i++)
            {
                var p = run[i].At;
                (left, right, bottom, top) = (Math.Min(left, p.XMm), Math.Max(right, p.XMm), Math.Min(bottom, p.YMm), Math.Max(top, p.YMm));
            }

            boxes[b] = new Extent(left, right, bottom, top);
        }

        return boxes;
    }

    /// <summary>Marks the samples of a line that lie under the satin of a run, thread by thread.</summary>
    [SkipLocalsInit]
    private static void Cover(ReadOnlySpan<Point> line, Span<bool> hidden, Stretch stretch, double half)
    {
        var (run, boxes, first, end) = stretch;
        Span<Point> samples = stackalloc Point[MostSamples];
        samples = samples[..Place(line, samples)];
        var (left, right, bottom, top) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        foreach (var p in line)
        {
            (left, right) = (Math.Min(left, p.XMm - half), Math.Max(right, p.XMm + half));
            (bottom, top) = (Math.Min(bottom, p.YMm - half), Math.Max(top, p.YMm + half));
        }

        for (int i = first; i < end; i++)
        {
            if (boxes is not null && (i - 1) % BoxStitches == 0)
            {
                ref var box = ref boxes[(i - 1) / BoxStitches];
                if (box.Right < left || box.Left > right || box.Top < bottom || box.Bottom > top)
                {
                    i += BoxStitches - 1;
                    continue;
                }
            }

            var (a, b) = (run[i - 1].At, run[i].At);
            if (run[i].Kind is not (StitchKind.Satin or StitchKind.Running)
                || Math.Max(a.XMm, b.XMm) < left || Math.Min(a.XMm, b.XMm) > right || Math.Max(a.YMm, b.YMm) < bottom
                    || Math.Min(a.YMm, b.YMm) > top)
            {
                continue;
            }

            double length = a.DistanceTo(b);
            if (length < 1e-9)
            {
                continue;
            }

            var along = (b - a) * (1 / length);
            for (int k = 0; k < samples.Length; k++)
            {
                var p = samples[k] - a;
                double at = (p.XMm * along.XMm) + (p.YMm * along.YMm);
                double off = (p.XMm * along.YMm) - (p.YMm * along.XMm);
                hidden[k] |= at >= 0 && at <= length && Math.Abs(off) <= half;
            }
        }
    }

    /// <summary>The samples of a line, as many as there is room for; their number.</summary>
    private static int Place(ReadOnlySpan<Point> line, Span<Point> samples)
    {
        int sample = 0;
        for (int k = 1; k < line.Length; k++)
        {
            int parts = PartsOf(line[k - 1], line[k]);
            for (int j = 0; j < parts && sample < samples.Length; j++, sample++)
            {
                samples[sample] = line[k - 1] + ((line[k] - line[k - 1]) * ((j + 0.5) / parts));
            }
        }

        return sample;
    }

    private static double Longest(ReadOnlySpan<Point> line, ReadOnlySpan<bool> hidden)
    {
        double longest = 0;
        double piece = 0;
        int sample = 0;
        for (int k = 1; k < line.Length; k++)
        {
            int parts = PartsOf(line[k - 1], line[k]);
            double step = line[k - 1].DistanceTo(line[k]) / parts;
            for (int j = 0; j < parts && sample < hidden.Length; j++, sample++)
            {
                piece = hidden[sample] ? 0 : piece + step;
                longest = Math.Max(longest, piece);
            }
        }

        return longest;
    }
}
