using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;

namespace NameBand.Output.Tracing;

/// <summary>A line to be followed or looked at; closed ones end where they began.</summary>
internal sealed record TraceLine(ImmutableArray<Point> Points)
{
    public double LengthMm => Points.Zip(Points.Skip(1)).Sum(p => p.First.DistanceTo(p.Second));
}

/// <summary>The lines of names at one letter height. What is worked out for a letter is kept.</summary>
internal sealed class TraceLines(double letterHeightMm, bool followOutline)
{
    private const double StitchMm = 2; // A stitch of free-motion work: common practice, no source.
    private readonly ConcurrentDictionary<LetterPiece, ImmutableArray<TraceLine>> _centres = new();

    /// <summary>Outlines of a name's letters; origin at the left edge of the name on its base line.</summary>
    public IEnumerable<TraceLine> Outlines(LetteredName name) =>
        name.Pieces.SelectMany(p =>
            p.Piece.Outline.Rings.Select(r => Placed(name, p, [.. r.Points.Append(r.Points[0]).Select(q => q * letterHeightMm)])));

    /// <summary>Middle lines of a name's strokes; a letter that cannot be read as strokes gives its outline instead.</summary>
    public IEnumerable<TraceLine> Centres(LetteredName name)
    {
        foreach (var placed in name.Pieces)
        {
            foreach (var line in _centres.GetOrAdd(placed.Piece, CentresOf))
            {
                yield return Placed(name, placed, line.Points);
            }
        }
    }

    /// <summary>The lines that are sewn.</summary>
    public IEnumerable<TraceLine> Followed(LetteredName name) => followOutline ? Outlines(name) : Centres(name);

    /// <summary>The followed lines as stitches of 2 mm, for pictures and thread.</summary>
    public NeedlePath Path(LetteredName name) => new([.. Steps(name, new Point(0, 0))]);

    /// <summary>All names of a run, its origin at the run's left end on the strip's centre line.</summary>
    public NeedlePath Path(StripPlan plan, Hooping run)
    {
        var steps = run.Segments.SelectMany(s => s.Segment.NamesAndMotifs.SelectMany(n => Steps(
            n.Lettered, new Point(s.XMm + plan.OnClothMm(n.StartMm - s.Segment.StartMm), s.YMm + n.BaselineYMm)))).ToList();
        steps.Add(new NeedleStep(NeedleAction.End, StitchKind.None, steps.Count == 0 ? default : steps[^1].At));
        return new NeedlePath([.. steps]);
    }

    public double LengthMm(Hooping run) =>
        run.Segments.SelectMany(s => s.Segment.NamesAndMotifs).Sum(n => Followed(n.Lettered).Sum(l => l.LengthMm));

    private ImmutableArray<TraceLine> CentresOf(LetterPiece piece)
    {
        var lines = Centrelines.Of(piece, letterHeightMm);
        return lines.IsEmpty
            ? [.. piece.Outline.Rings.Select(r => new TraceLine([.. r.Points.Append(r.Points[0]).Select(p => p * letterHeightMm)]))]
            : [.. lines.Select(l => new TraceLine(l))];
    }

    private TraceLine Placed(LetteredName name, PlacedPiece placed, ImmutableArray<Point> points)
    {
        var by = new Point((placed.At.XMm - name.Ink.LeftMm) * letterHeightMm, placed.At.YMm * letterHeightMm);
        return new TraceLine([.. points.Select(p => p + by)]);
    }

    private IEnumerable<NeedleStep> Steps(LetteredName name, Point at)
    {
        foreach (var line in Followed(name))
        {
            yield return new NeedleStep(NeedleAction.Jump, StitchKind.None, line.Points[0] + at);
            var last = line.Points[0];
            yield return new NeedleStep(NeedleAction.Stitch, StitchKind.Running, last + at);
            for (int i = 1; i < line.Points.Length; i++)
            {
                if (i == line.Points.Length - 1 || last.DistanceTo(line.Points[i]) >= StitchMm)
                {
                    last = line.Points[i];
                    yield return new NeedleStep(NeedleAction.Stitch, StitchKind.Running, last + at);
                }
            }
        }
    }
}
