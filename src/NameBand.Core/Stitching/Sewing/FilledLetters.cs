using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Names as a machine sews its own letters: each letter by itself and filled, whatever its outline is like, and no thread from one to
/// the next. It stands for stitches that only the machine knows, and is never sewn. Safe to use from several threads.
/// </summary>
internal sealed class FilledLetters(Fabric fabric, double letterHeightMm)
{
    /// <summary>Rows of a letter that cannot be read as strokes, as close as its thread is wide.</summary>
    private readonly double _rowMm = fabric.Thread.DiameterMm * 0.9;

    private readonly PieceSewer _sewer = new(fabric, letterHeightMm);
    private readonly ConcurrentDictionary<LetterPiece, Lazy<ImmutableArray<NeedleStep>>> _kept = new();

    /// <summary>One name; origin: the left edge of its ink on the base line.</summary>
    public NeedlePath PathOf(LetteredName name)
    {
        var steps = new List<NeedleStep>();
        Add(name, default, steps, null);
        return new NeedlePath([.. steps]);
    }

    /// <summary>One name standing on a curved strip; origin: the middle of its width on the strip's centre line.</summary>
    public NeedlePath PathOf(PlacedName name, StripCurve curve)
    {
        var steps = new List<NeedleStep>();
        Add(name.Lettered, default, steps, new LetterArc(curve.Frame(0), 0, name, letterHeightMm));
        return new NeedlePath([.. steps]);
    }

    /// <summary>All names of a hooping or a run; origin: left end of its first segment, on its strip's centre line.</summary>
    public NeedlePath PathOf(StripPlan plan, Hooping hooping)
    {
        var steps = new List<NeedleStep>();
        foreach (var placed in hooping.Segments)
        {
            foreach (var name in placed.Segment.NamesAndMotifs)
            {
                double x = plan.OnClothMm(name.StartMm - placed.Segment.StartMm);
                var arc = plan.FrameOf(placed) is { } frame
                    ? new LetterArc(frame, x + (name.WidthMm / 2), name, letterHeightMm, new Point(placed.XMm, placed.YMm)) : null;
                Add(name.Lettered, new Point(placed.XMm + x, placed.YMm + name.BaselineYMm), steps, arc);
            }
        }

        steps.Add(new NeedleStep(NeedleAction.End, StitchKind.None, steps.Count == 0 ? default : steps[^1].At));
        return new NeedlePath([.. steps]);
    }

    /// <param name="arc">That it stands on; null: on a straight line.</param>
    private void Add(LetteredName name, Point at, List<NeedleStep> steps, LetterArc? arc)
    {
        foreach (var placed in name.Pieces)
        {
            var placing = arc?.PlacingOf(placed)
                ?? new Placing(at + new Point((placed.At.XMm - name.Ink.LeftMm) * letterHeightMm, placed.At.YMm * letterHeightMm), 0);
            steps.AddRange(Letter(placed.Piece).Select(s => s with { At = placing.Of(s.At) }));
        }

        if (steps.Count > 0)
        {
            steps.Add(new NeedleStep(NeedleAction.Trim, StitchKind.None, steps[^1].At));
        }
    }

    private ImmutableArray<NeedleStep> Letter(LetterPiece piece) =>
        _kept.GetOrAdd(piece, p => new Lazy<ImmutableArray<NeedleStep>>(() => Sew(p))).Value;

    /// <summary>In satin, for thin strokes too: built-in letters have no others. What has no strokes is filled row by row.</summary>
    private ImmutableArray<NeedleStep> Sew(LetterPiece piece)
    {
        var read = _sewer.Read(piece);
        var sewn = _sewer.Sew(read, NameStyle.Satin).Parts;
        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        for (int i = 0; i < read.Parts.Count; i++)
        {
            var (region, columns) = read.Parts[i];
            if (columns is { Count: > 0 } && sewn[i].Alone is [var first, ..] run)
            {
                steps.Add(new NeedleStep(NeedleAction.Jump, StitchKind.None, first.At));
                steps.AddRange(run);
            }
            else
            {
                steps.AddRange(Rows(region));
            }
        }

        return steps.ToImmutable();
    }

    private IEnumerable<NeedleStep> Rows(Region region)
    {
        double low = region.Points.Min(p => p.Y), high = region.Points.Max(p => p.Y);
        int rows = Math.Max(1, (int)Math.Ceiling((high - low) / _rowMm));
        for (int row = 0; row < rows; row++)
        {
            double y = low + ((high - low) * (row + 0.5) / rows);
            double[] crossings = [.. Crossings(region, y).Order()];
            for (int i = 0; i + 1 < crossings.Length; i += 2)
            {
                yield return new NeedleStep(NeedleAction.Jump, StitchKind.None, new Point(crossings[i], y));
                yield return new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(crossings[i], y));
                yield return new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(crossings[i + 1], y));
            }
        }
    }

    /// <summary>Where the outline crosses a level line.</summary>
    private static IEnumerable<double> Crossings(Region region, double y)
    {
        for (int i = 0; i < region.Points.Length; i++)
        {
            Vec a = region.Points[i], b = region.Points[region.Next[i]];
            if (a.Y <= y != b.Y <= y)
            {
                yield return a.X + ((y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
            }
        }
    }
}
