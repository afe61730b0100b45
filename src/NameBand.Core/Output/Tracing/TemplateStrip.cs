using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output.Tracing;

/// <summary>A name on a flat strip.</summary>
/// <param name="AtMm">Where its ink begins.</param>
internal readonly record struct TemplateName(PlacedName Placed, double AtMm);

/// <summary>The middle of an alignment cross on a flat strip, and its hooping.</summary>
/// <param name="ArmMm">Half its length along the strip.</param>
internal readonly record struct TemplateMark(double AtMm, double ArmMm, Hooping Hooping, bool IsLeft);

/// <summary>A flat strip to be drawn at true size; lengths are those of its tape.</summary>
/// <param name="Code">Said at the joins of its rows, so that rows of two strips are not taped together.</param>
/// <param name="MarkYMm">Height of the crosses' line above the centre line.</param>
internal sealed record TemplateStrip(
    Said Label, string Code, double FromMm, double ToMm, ImmutableArray<TemplateName> Names, ImmutableArray<TemplateMark> Marks,
    double MarkYMm)
{
    /// <summary>Where the finished strip ends within its cut ends.</summary>
    public ImmutableArray<double> FinishedEndsMm { get; init; } = [];

    /// <summary>Number of its cloth: strips of one cloth lie side by side on it, and are shown so.</summary>
    public int Cloth { get; init; }

    /// <summary>From where to where each hooping lies; empty where a strip is sewn in one run.</summary>
    public ImmutableArray<(double FromMm, double ToMm)> Hooped { get; init; } = [];

    /// <summary>
    /// Each piece of each round as it is cut, its ends with it, where its hoopings will sew it, with their alignment
    /// crosses where there are any; the tape is that of the cloth, from its left end, as on the worksheet and in the packet.
    /// </summary>
    public static ImmutableArray<TemplateStrip> OfCloths(StripPlan plan) =>
        [.. plan.Cloths.SelectMany(c => c.Pieces.OrderBy(p => p.Lane).ThenBy(p => p.OnClothMm).Select(p => OfPiece(plan, p)))];

    private static TemplateStrip OfPiece(StripPlan plan, StripPiece piece)
    {
        const double slightMm = 0.5; // A segment belongs to the piece that its middle lies on; half a millimetre for what drifted.
        var hooped = plan.Hoopings.Where(h => h.Cloth == piece.Cloth)
            .SelectMany(h => h.Segments.Select(s => (Hooping: h, Hooped: s)))
            .Where(s => s.Hooped.Round.Number == piece.Round && IsOn(s.Hooped.Segment)).ToList();
        Said cloth = plan.Cloths.Length > 1 ? (Said)$"cloth {piece.Cloth}, " : "";
        Said which = plan.Cloths.SelectMany(c => c.Pieces).Count(p => p.Round == piece.Round) > 1
            ? (Said)$", piece {piece.Number}" : "";
        double end = piece.OnClothMm + plan.OnClothMm(piece.LengthMm);
        return new TemplateStrip(
            $"{cloth}round {piece.Round}{which}", FormattableString.Invariant($"{piece.Number}"),
            piece.OnClothMm - piece.StartAllowanceMm, end + piece.EndAllowanceMm,
            [.. hooped.SelectMany(s => s.Hooped.Segment.NamesAndMotifs.Select(n => new TemplateName(
                n, Left(s.Hooping, s.Hooped) + plan.OnClothMm(n.StartMm - s.Hooped.Segment.StartMm) + plan.PullCompensationMm)))],
            plan.HasNeedlePaths ? [.. hooped.SelectMany(s => new[]
            {
                new TemplateMark(Left(s.Hooping, s.Hooped) + s.Hooped.Segment.LeftMarkMm, s.Hooped.Segment.MarkArmMm, s.Hooping, true),
                new TemplateMark(Left(s.Hooping, s.Hooped) + s.Hooped.Segment.RightMarkMm, s.Hooped.Segment.MarkArmMm, s.Hooping, false),
            })] : [],
            plan.MarkYMm)
        {
            Cloth = piece.Cloth,
            Hooped = plan.HasNeedlePaths
                ? [.. hooped.Select(s => s.Hooping).Distinct().Select(h =>
                    (h.OnClothMm, h.Segments.Max(s => plan.EndOnClothMm(h, s))))] : [],
            FinishedEndsMm =
                [.. new[] { (piece.StartAllowanceMm, piece.OnClothMm), (piece.EndAllowanceMm, end) }.Where(e => e.Item1 > 0)
                .Select(e => e.Item2)],
        };

        bool IsOn(Segment segment)
        {
            double middle = segment.Names.IsEmpty
                ? segment.StartMm + (segment.LengthMm / 2)
                : (segment.Names[0].StartMm + segment.LastName!.EndMm) / 2;
            return middle >= piece.StartMm - slightMm && middle <= piece.EndMm + slightMm;
        }

        static double Left(Hooping hooping, HoopedSegment hooped) => hooping.OnClothMm + hooped.XMm;
    }
}
