using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Stitching.Sewing;

namespace NameBand.Stitching;

/// <summary>
/// Turns lettered names into needle paths at one letter height on one cloth. What is worked out for a letter piece
/// is kept, so a piece that comes again costs next to nothing. Safe to use from several threads.
/// </summary>
public sealed class Stitcher
{
    private readonly Fabric _fabric;
    private readonly double _letterHeightMm;
    private readonly SewingSettings _settings;
    private readonly PieceSewer _sewer;
    private readonly JoinShelf _joins;
    private readonly ConcurrentDictionary<LetterPiece, Lazy<SewnPiece>> _kept = new();

    /// <param name="letterHeightMm">Cap height in mm, above 0.</param>
    /// <param name="settings">Those of <see cref="SewingSettings"/> when left out.</param>
    public Stitcher(Fabric fabric, double letterHeightMm, SewingSettings? settings = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(letterHeightMm);
        _fabric = fabric;
        _letterHeightMm = letterHeightMm;
        _settings = settings ?? new SewingSettings();
        _sewer = new PieceSewer(fabric, letterHeightMm);
        _joins = new JoinShelf(_settings, letterHeightMm, fabric.Thread.DiameterMm);
    }

    /// <summary>Letters sewn so far that could not be read as strokes, in the order of their keys.</summary>
    public ImmutableArray<Problem> Problems =>
        [.. _kept.OrderBy(k => k.Key.Key, StringComparer.Ordinal).Select(k => k.Value.Value.Problem).OfType<Problem>()];

    /// <summary>
    /// The stitches of one name. Origin: the left edge of the name's width (its ink and the pull compensation) on
    /// the base line. No alignment marks and no end.
    /// </summary>
    public NeedlePath SewName(LetteredName name)
    {
        var writer = new PathWriter();
        AddName(name, new Point(0, 0), writer, null);
        return writer.ToPath();
    }

    /// <summary>The stitches of one name standing on a curved strip. Origin: the middle of its width on the strip's centre line.</summary>
    public NeedlePath SewName(PlacedName name, StripCurve curve)
    {
        var writer = new PathWriter();
        AddName(name.Lettered, new Point(0, 0), writer, new LetterArc(curve.Frame(0), 0, name, _letterHeightMm));
        return writer.ToPath();
    }

    /// <summary>
    /// The whole path of one hooping: alignment marks, where they are sewn, with a stop to change the thread, the names from left to right,
    /// the end. Origin: left end of the first segment, on its strip's centre line.
    /// </summary>
    public NeedlePath SewHooping(StripPlan plan, Hooping hooping)
    {
        var writer = new PathWriter();
        if (plan.Marks == MarkMethod.Sewn)
        {
            SewMarks(plan, hooping, writer);
        }

        foreach (var placed in hooping.Segments)
        {
            foreach (var name in placed.Segment.NamesAndMotifs)
            {
                double x = plan.OnClothMm(name.StartMm - placed.Segment.StartMm);
                var arc = plan.FrameOf(placed) is { } frame ? new LetterArc(frame, x + (name.WidthMm / 2), name, _letterHeightMm) : null;
                AddName(name.Lettered, new Point(placed.XMm + x, placed.YMm + name.BaselineYMm), writer, arc);
            }
        }

        writer.End();
        return writer.ToPath();
    }

    private static void SewMarks(StripPlan plan, Hooping hooping, PathWriter writer)
    {
        foreach (var placed in hooping.Segments)
        {
            AlignmentMarks.Sew(placed, plan, writer);
        }

        writer.Trim(withLock: false);
        writer.Stop();
    }

    /// <summary>Whether all letters of a name could be read as strokes. They are worked out, so that <see cref="Problems"/> speaks of them.</summary>
    public bool IsRead(LetteredName name)
    {
        bool isRead = true;
        foreach (var placed in name.Pieces)
        {
            isRead &= Sewn(placed.Piece).Problem is null;
        }

        return isRead;
    }

    /// <summary>Worked out once, also where two threads ask for it at the same moment.</summary>
    internal SewnPiece Sewn(LetterPiece piece) => _kept.GetOrAdd(piece, p => new Lazy<SewnPiece>(() => _sewer.Sew(p))).Value;

    private void AddName(LetteredName name, Point at, PathWriter writer, LetterArc? arc)
    {
        double x = at.XMm + _fabric.PullCompensationMm - (name.Ink.LeftMm * _letterHeightMm);
        var route = new NameRoute(_settings, _joins);
        foreach (var placed in name.Pieces)
        {
            var origin = new Point(x + (placed.At.XMm * _letterHeightMm), at.YMm + (placed.At.YMm * _letterHeightMm));
            route.Add(Sewn(placed.Piece), arc?.PlacingOf(placed) ?? new Placing(origin, 0));
        }

        foreach (var way in route.Best())
        {
            writer.Run(way.Run, way.At, way.IsJoined);
        }

        writer.Trim();
    }
}
