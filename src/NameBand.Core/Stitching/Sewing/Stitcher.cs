using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Turns lettered names into needle paths at one letter height on one cloth. What is worked out for a letter piece
/// is kept, so a piece that comes again costs next to nothing. Safe to use from several threads.
/// </summary>
internal sealed class Stitcher
{
    private readonly Fabric _fabric;
    private readonly double _letterHeightMm;
    private readonly SewingSettings _settings;
    private readonly PieceSewer _sewer;
    private readonly JoinShelf _joins;
    private readonly ConcurrentDictionary<LetterPiece, KeptPiece> _kept = new();

    /// <summary>Names that are asked about, with the letter that is the cause.</summary>
    private readonly ConcurrentDictionary<LetteredName, ReadPiece> _asked = new();

    /// <summary>A letter with what was worked out of it: each thing once, also where two threads ask for it at the same moment.</summary>
    private sealed class KeptPiece(PieceSewer sewer, Fabric fabric, LetterPiece piece)
    {
        private readonly Lazy<ReadPiece> _read = new(() => sewer.Read(piece));
        private Lazy<SewnPiece>? _run;
        private Lazy<SewnPiece>? _satin;

        public ReadPiece Read => _read.Value;

        public SewnPiece Alone => In(NameStyling.Alone(Read, fabric));

        public SewnPiece In(NameStyle style) => style == NameStyle.Run ? Made(ref _run, style) : Made(ref _satin, style);

        public IEnumerable<SewnPiece> Made() => new[] { _satin, _run }.OfType<Lazy<SewnPiece>>().Select(m => m.Value);

        private SewnPiece Made(ref Lazy<SewnPiece>? made, NameStyle style)
        {
            if (Volatile.Read(ref made) is { } known)
            {
                return known.Value;
            }

            var mine = new Lazy<SewnPiece>(() => sewer.Sew(Read, style));
            return (Interlocked.CompareExchange(ref made, mine, null) ?? mine).Value;
        }
    }

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
        [.. _kept.OrderBy(k => k.Key.Key, StringComparer.Ordinal)
            .Select(k => k.Value.Made().Select(m => m.Problem).OfType<Problem>().FirstOrDefault()).OfType<Problem>()];

    /// <summary>Names sewn so far in which some letters' strokes are too thin for the style of the others, letter by letter.</summary>
    public ImmutableArray<Problem> StyleProblems => [.. StyleAdvice.For(_asked.Select(a => (a.Key, a.Value)), _fabric, _letterHeightMm)];

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
    /// The whole path of one hooping: alignment marks, where they are sewn, with a stop to change the thread, the names from left
    /// to right, thread by thread,
    /// the end. Origin: left end of the first segment, on its strip's centre line.
    /// </summary>
    public NeedlePath SewHooping(StripPlan plan, Hooping hooping)
    {
        var writer = new PathWriter();
        if (plan.Marks == MarkMethod.Sewn)
        {
            SewMarks(plan, hooping, writer);
        }

        // One thread after another, with a stop between; a name that is gone is sewn with whatever comes last.
        ImmutableArray<CssColour> threads = plan.Threads.Of(hooping.Number)?.Order ?? [];
        for (int i = 0; i < Math.Max(1, threads.Length); i++)
        {
            if (i > 0)
            {
                writer.Stop();
            }

            var later = threads.Skip(i + 1).ToHashSet();
            var before = threads.Take(i).ToHashSet();
            AddNames(plan, hooping, writer, n => threads.Length < 2 || ThreadTurns.ThreadOf(plan, n) is var own
                && (own == threads[i] || (i == threads.Length - 1 && !before.Contains(own) && !later.Contains(own))));
        }

        writer.End();
        return writer.ToPath();
    }

    private void AddNames(StripPlan plan, Hooping hooping, PathWriter writer, Func<PlacedName, bool> isNow)
    {
        foreach (var placed in hooping.Segments)
        {
            foreach (var name in placed.Segment.NamesAndMotifs.Where(isNow))
            {
                double x = plan.OnClothMm(name.StartMm - placed.Segment.StartMm);
                var arc = plan.FrameOf(placed) is { } frame
                    ? new LetterArc(frame, x + (name.WidthMm / 2), name, _letterHeightMm, new Point(placed.XMm, placed.YMm)) : null;
                AddName(name.Lettered, new Point(placed.XMm + x, placed.YMm + name.BaselineYMm), writer, arc);
            }
        }
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

    /// <summary>
    /// Whether nothing is to be said of a name: all its letters could be read as strokes, and suit its style. They are worked out, so that
    /// <see cref="Problems"/> and <see cref="StyleProblems"/> speak of them.
    /// </summary>
    public bool IsRead(LetteredName name)
    {
        var (style, kept) = Styled(name);
        bool isRead = true;
        foreach (var piece in kept)
        {
            isRead &= piece.In(style).Problem is null;
        }

        return isRead && !_asked.ContainsKey(name);
    }

    /// <summary>Whether all letters of a name could be read as strokes; none is sewn for it.</summary>
    public bool AreStrokesRead(LetteredName name) => name.Pieces.All(p => PieceSewer.ProblemOf(Kept(p.Piece).Read) is null);

    /// <summary>The style of a name: one for all its letters.</summary>
    public NameStyle StyleOf(LetteredName name) => Styled(name).Style;

    /// <summary>A letter by itself.</summary>
    internal SewnPiece Sewn(LetterPiece piece) => Kept(piece).Alone;

    private KeptPiece Kept(LetterPiece piece) => _kept.GetOrAdd(piece, p => new KeptPiece(_sewer, _fabric, p));

    private (NameStyle Style, KeptPiece[] Kept) Styled(LetteredName name)
    {
        KeptPiece[] kept = [.. name.Pieces.Select(p => Kept(p.Piece))];
        var styling = NameStyling.Of([.. kept.Select(k => k.Read)], _fabric);
        if (styling.Asked is { } letter)
        {
            _asked.TryAdd(name, letter);
        }

        return (styling.Style, kept);
    }

    private void AddName(LetteredName name, Point at, PathWriter writer, LetterArc? arc)
    {
        double x = at.XMm + _fabric.LettersReachMm(_letterHeightMm) - (name.Ink.LeftMm * _letterHeightMm);
        var route = new NameRoute(_settings, _joins);
        var (style, kept) = Styled(name);
        for (int i = 0; i < kept.Length; i++)
        {
            var placed = name.Pieces[i];
            var origin = new Point(x + (placed.At.XMm * _letterHeightMm), at.YMm + (placed.At.YMm * _letterHeightMm));
            route.Add(kept[i].In(style), arc?.PlacingOf(placed) ?? new Placing(origin, 0));
        }

        foreach (var way in route.Best())
        {
            writer.Run(way.Run, way.At, way.IsJoined);
        }

        writer.Trim();
    }
}
