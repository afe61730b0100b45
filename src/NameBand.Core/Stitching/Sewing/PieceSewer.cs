using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Sewing;

/// <summary>A letter piece as it is sewn at one height: its origin on the base line, in mm.</summary>
/// <param name="Parts">One for each connected part.</param>
/// <param name="Together">
/// The same, with dots and accents near by sewn on the way through the largest part; empty when there are none.
/// </param>
/// <param name="IsRun">Its strokes are run along their centre lines.</param>
internal sealed record SewnPiece(ImmutableArray<SewnPart> Parts, ImmutableArray<SewnPart> Together, bool IsRun, Problem? Problem);

/// <summary>Works out the stitches of one letter piece at one height.</summary>
internal sealed class PieceSewer(Fabric fabric, double letterHeightMm)
{
    // Each reads the outline a little more coarsely (docs/stitching.md); still coarser it would be another letter.
    private const int MostTries = 3;

    /// <summary>Over the least stitch, and as long as the usual thread is wide: it comes out as a dot.</summary>
    private const double DotMm = 0.4;

    /// <summary>No script's letter, with all its dots and marks, has nearly as many: our assumption.</summary>
    private const int MostPartsOfACharacter = 12;

    /// <summary>A letter read as strokes.</summary>
    public ReadPiece Read(LetterPiece piece) => new(piece, Read(piece, letterHeightMm));

    /// <summary>Sews a letter in the style of its name: its thin strokes are widened where that is satin.</summary>
    public SewnPiece Sew(ReadPiece read, NameStyle style)
    {
        var (piece, parts) = (read.Piece, read.Parts);
        bool isRun = style == NameStyle.Run;
        double leastWidth = NameStyling.Alone(read, fabric) == NameStyle.Run ? Fabric.NarrowestSatinMm : 0;
        SatinSettings? satin = isRun
            ? null
            : new SatinSettings(fabric) { LeastWidthMm = leastWidth };
        var bounds = piece.Outline.Scaled(letterHeightMm).Bounds();
        NeedleStep[] Finish(SewnRun run) => Steps(run, bounds, fabric.LettersReachMm(letterHeightMm));
        var sewn = ImmutableArray.CreateBuilder<SewnPart>();
        var satinParts = new List<(int Part, PartWays Ways)>();
        foreach (var (region, columns) in parts)
        {
            if (columns is not { Count: > 0 })
            {
                var edge = AlongOutline(region);
                sewn.Add(SewnPart.Fixed(Finish(edge.Needles.Count > 1 ? edge : Dot(region, StitchKind.Running))));
                continue;
            }

            var ways = satin is { } settings ? new PartWays(columns!, settings, fromAllSides: parts.Count > 1) : null;
            var part = ways is null ? SewnPart.Run(columns!, Finish) : SewnPart.Satin(ways, Finish);
            bool isDot = columns!.Sum(c => c.Length) < ReadPiece.LongestMarkMm && part.Alone.Length <= 1;
            sewn.Add(isDot ? SewnPart.Fixed(Finish(Dot(region, isRun ? StitchKind.Running : StitchKind.Satin))) : part);
            if (ways is not null && !isDot)
            {
                satinParts.Add((sewn.Count - 1, ways));
            }
        }

        var all = sewn.ToImmutable();
        var together = satinParts.Count > 1 && all.Length <= MostPartsOfACharacter
            ? Excursions.Together(all, satinParts, Finish, fabric.Thread.DiameterMm) : [];
        return new SewnPiece(all, together, isRun, ProblemOf(read));
    }

    /// <summary>The strokes of a piece, however it is to be sewn.</summary>
    public static IEnumerable<Column> Columns(LetterPiece piece, double letterHeightMm) =>
        Read(piece, letterHeightMm).SelectMany(p => p.Columns ?? []);

    private static List<(Region Region, List<Column>? Columns)> Read(LetterPiece piece, double letterHeightMm)
    {
        var outline = piece.Outline.Scaled(letterHeightMm);
        double step = Math.Clamp(0.02 * letterHeightMm, 0.1, 0.5);
        var parts = Parts(outline, step, letterHeightMm);
        for (int again = 1; again <= MostTries && parts.Any(p => p.Columns is null); again++)
        {
            // Rings that cross by a hair often no longer do when they are read a little more coarsely.
            var coarser = Parts(outline, step * (1 + (0.37 * again)), letterHeightMm);
            parts = coarser.Count(p => p.Columns is null) < parts.Count(p => p.Columns is null) ? coarser : parts;
        }

        return parts;
    }

    private static List<(Region Region, List<Column>? Columns)> Parts(Outline outline, double step, double letterHeightMm) =>
        [.. RegionSampler.Sample(outline, step).Select(r => (r, ColumnsOf(r, letterHeightMm)))];

    private static List<Column>? ColumnsOf(Region region, double letterHeightMm) =>
        Triangulation.Of(region) is { } mesh ? Reading.Best(region, mesh, letterHeightMm) : null;

    private static SewnRun AlongOutline(Region region)
    {
        var run = new SewnRun();
        int start = region.RingStarts[0];
        run.Add(region.Points[start], StitchKind.Running);
        double gone = 0;
        for (int i = region.Next[start]; i != start; i = region.Next[i])
        {
            gone += (region.Points[i] - region.Points[region.Previous[i]]).Length;
            if (gone >= 1)
            {
                run.Add(region.Points[i], StitchKind.Running, 0.3);
                gone = 0;
            }
        }

        run.GoTo(region.Points[start], StitchKind.Running);
        return run;
    }

    /// <summary>A dot so small that its stroke is shorter than a stitch: two stitches over its middle, for no dot of a letter may
    /// be lost.</summary>
    private static SewnRun Dot(Region region, StitchKind kind)
    {
        double left = region.Points.Min(p => p.X), right = region.Points.Max(p => p.X);
        double low = region.Points.Min(p => p.Y), high = region.Points.Max(p => p.Y);
        var middle = new Vec((left + right) / 2, (low + high) / 2);
        var aside = right - left >= high - low ? new Vec(DotMm / 2, 0) : new Vec(0, DotMm / 2);
        var run = new SewnRun();
        run.Add(middle - aside, kind);
        run.Add(middle + aside, kind);
        run.Add(middle - aside, kind);
        return run;
    }

    /// <summary>
    /// No needle point lies farther out than the ink and the pull compensation: the layout counts on it. Of two points that
    /// this brings together only one is kept.
    /// </summary>
    private static NeedleStep[] Steps(SewnRun run, Box ink, double reach)
    {
        var steps = new List<NeedleStep>(run.Needles.Count);
        bool wasMoved = false;
        foreach (var n in run.Needles)
        {
            var at = new Point(
                Math.Clamp(n.At.X, ink.LeftMm - reach, ink.RightMm + reach), Math.Clamp(n.At.Y, ink.BottomMm - reach, ink.TopMm + reach));
            bool isMoved = at != n.At.ToPoint();
            if (steps.Count == 0 || (!isMoved && !wasMoved) || steps[^1].At.DistanceTo(at) >= SewnRun.ShortestMm)
            {
                steps.Add(new NeedleStep(NeedleAction.Stitch, n.Kind, at));
                wasMoved = isMoved;
            }
        }

        return [.. steps];
    }

    /// <summary>Null where nothing is to be said of a letter.</summary>
    public static Problem? ProblemOf(ReadPiece read) =>
        read.Parts.Count == 0 ? TooSmall(read.Piece)
        : read.Parts.Any(p => p.Columns is not { Count: > 0 }) ? Unreadable(read.Piece)
        : IsScattered(read.Piece, read.Parts.Count) ? Scattered(read.Piece, read.Parts.Count)
        : null;

    private static bool IsScattered(LetterPiece piece, int parts) =>
        parts > MostPartsOfACharacter * Math.Max(1, piece.Text.EnumerateRunes().Count());

    private static Problem Scattered(LetterPiece piece, int parts) => Problem.NeedsPerson(
        new Where(Name: piece.Text),
        $"“{piece.Text}” in the face {piece.Face} is made of {parts} separate parts; each is tied off by itself, with a jump to the next one.",
        "Look at the proof and its stitches, and choose another face if the letter does not please.");

    private static Problem Unreadable(LetterPiece piece) => Problem.NeedsPerson(
        new Where(Name: piece.Text),
        $"The outline of “{piece.Text}” in the face {piece.Face} cannot be read as strokes, because its lines cross or it has too many parts; it is sewn as a running stitch along its edge.",
        "Look at the proof, and choose another face if the letter does not please.");

    private static Problem TooSmall(LetterPiece piece) => Problem.NeedsPerson(
        new Where(Name: piece.Text),
        $"“{piece.Text}” in the face {piece.Face} is too small to be sewn at this height and is left out.",
        "Choose larger letters or another face.");
}
