using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Choosing;

/// <summary>Choices one step from another: a round more or less, a wider strip, narrower gaps, smaller letters, shorter pieces.</summary>
internal sealed class VisibleSteps(JobAsWritten written, BandJob asSet)
{
    /// <summary>More were never wished for: each takes as long to attach as the first.</summary>
    public const int MostRounds = 6;

    /// <summary>A gap as wide as the letters are high still keeps two names apart: our choice.</summary>
    private const double NarrowGapFactor = 1;

    // Shorter pieces hold a name or two, and have more joins than anybody would sew: our assumption.
    private const double LeastPieceMm = 200;
    // Of a round: each join is seen, and more of them are only worth it where they fill the lanes of a cloth.
    private const int MostPieces = 3;

    // An inch wider than she set it at most, and half an inch narrower: others are other garments.
    private const int WidestStep = 4;
    private const int NarrowestStep = -2;

    /// <summary>Whether the edge of each round is known, so that their number is free.</summary>
    private bool AreRoundsFree => asSet.Hem.Lengths.Length <= 1 && (asSet.Hem.Skirt is not null || asSet.Hem.Turn is not null);

    private IEnumerable<double> Widths => Enumerable.Range(NarrowestStep, WidestStep - NarrowestStep + 1)
        .Select(w => asSet.Strip.CutWidth.Mm + (w * WidthStepMm)).Where(w => w > 2 * asSet.Strip.TurnIn.Mm);

    private double WidthStepMm => IsInQuarters(asSet.Strip.CutWidth.Mm) ? Length.MmPerInch / 4 : 5;

    public VisibleChoice LargestLetters => written.With(VisibleChoice.AsSet, JobEdit.Remove(JobKeys.Height.Path));

    /// <summary>What she wrote of the keys that a choice changes.</summary>
    public ImmutableArray<JobEdit> AsWritten(VisibleChoice choice) =>
    [
        .. from edit in choice.Edits
           let json = written.ValueOf(edit.Path)
           where json is not null
           select new JobEdit(edit.Path, json),
    ];

    /// <summary>One round, two and so on, with the rest of a choice.</summary>
    public ImmutableArray<VisibleChoice> OnRounds(VisibleChoice from, int most = MostRounds) => AreRoundsFree
        ? [.. Enumerable.Range(1, most).Select(r => written.With(from, Rounds(r)))] : [from];

    public IEnumerable<VisibleChoice> OnWiderStrips(VisibleChoice from) =>
        Widths.Where(w => w > asSet.Strip.CutWidth.Mm - Tolerance.RoundingMm).Select(w => Cut(from, w));

    /// <summary>Names in two lines on a wider strip, on at most as many rounds as her plan has: half the strip is to be attached.</summary>
    public ImmutableArray<VisibleChoice> InTwoLines(VisibleChoice start, int most) => asSet.Layout.Lines > 1 || asSet.Layout.IsCurved
        ? []
        :
        [
            .. from rounds in OnRounds(start, most)
               from width in Widths.Where(w => w > asSet.Strip.CutWidth.Mm + (1.5 * WidthStepMm))
               select written.With(Cut(rounds, width), new JobEdit(LayoutKeys.Lines.Path, "2")),
        ];

    /// <summary>Each thing that she wrote and that is seen left as it would be unwritten: one of them may be what stands in the
    /// way.</summary>
    public ImmutableArray<(string Path, VisibleChoice Without)> WithoutEachWish =>
    [
        .. from key in Wishes
           where written.Has(key.Path)
           select (key.Path, written.With(VisibleChoice.AsSet, JobEdit.Remove(key.Path))),
    ];

    private static readonly ImmutableArray<JobKey> Wishes =
    [
        JobKeys.Height, JobKeys.Rounds, JobKeys.Gap, LayoutKeys.MostGap, JobKeys.CutWidth, JobKeys.TurnIn, JobKeys.Margin, JobKeys.Face,
        LayoutKeys.Piece, LayoutKeys.Join, LayoutKeys.EaseLimit, JobKeys.Order,
    ];

    public VisibleChoice WithTucks(VisibleChoice from) => written.With(from, new JobEdit(LayoutKeys.Tucks.Path, "true"));

    public VisibleChoice WithLetters(VisibleChoice from, string letters) => written.With(from, JobEdit.Text(LettersKeys.Has.Path, letters));

    public VisibleChoice WithoutMotif(VisibleChoice from) => written.With(from, JobEdit.Remove(LayoutKeys.Motif.Path));

    public VisibleChoice InFace(VisibleChoice from, string face) => written.With(from, JobEdit.Text(JobKeys.Face.Path, face));

    /// <summary>Typed into the machine's own letters, without a hoop.</summary>
    /// <param name="sizes">Heights of the machine's letters, where neither the job nor the workshop tells them.</param>
    public VisibleChoice Typed(VisibleChoice from, ImmutableArray<Length> sizes) => written.With(
        from,
        [
            .. Way(WayTraits.Typed),
            .. sizes.IsEmpty ? ImmutableArray<JobEdit>.Empty
                : [new JobEdit(LettersKeys.Sizes.Path, $"[{string.Join(",", sizes.Select(s => $"\"{s.InMillimetres().English}\""))}]")],
        ]);

    public VisibleChoice AtHeight(VisibleChoice from, Length height) =>
        written.With(from, JobEdit.Text(JobKeys.Height.Path, height.InMillimetres().English));

    public VisibleChoice With(ImmutableArray<JobEdit> edits) => written.With(VisibleChoice.AsSet, edits.AsSpan());

    public VisibleChoice ByHand(VisibleChoice from) => written.With(from, [.. Way(WayTraits.ByHand)]);

    public VisibleChoice FromNeedlePaths(VisibleChoice from) => written.With(from, [.. Way(WayTraits.FromNeedlePaths)]);

    /// <summary>As many rounds as the names take.</summary>
    public VisibleChoice AsManyRounds(VisibleChoice from) =>
        AreRoundsFree ? written.With(from, new JobEdit(JobKeys.Rounds.Path, "\"asNeeded\"")) : from;

    /// <param name="from">Of which the job is <paramref name="job"/>, laid out as <paramref name="plan"/>.</param>
    public IEnumerable<VisibleChoice> Around(VisibleChoice from, BandJob job, StripPlan plan) =>
    [
        .. MoreOrFewerRounds(from, plan.Rounds.Length),
        .. OtherGaps(from, job, plan),
        .. OtherHeights(from, job, plan),
        .. OtherPieces(from, job, plan),
        .. written.Has(LayoutKeys.Lanes.Path) ? [written.With(from, JobEdit.Remove(LayoutKeys.Lanes.Path))] : Array.Empty<VisibleChoice>(),
    ];

    private IEnumerable<VisibleChoice> MoreOrFewerRounds(VisibleChoice from, int rounds) => AreRoundsFree
        ? new[] { rounds - 1, rounds + 1 }.Where(r => r is >= 1 and <= MostRounds).Select(r => written.With(from, Rounds(r))) : [];

    public IEnumerable<VisibleChoice> NextWidths(VisibleChoice from, BandJob job)
    {
        double now = job.Strip.CutWidth.Mm;
        return Widths.Where(w => Math.Abs(w - now) > Tolerance.RoundingMm && Math.Abs(w - now) < WidthStepMm + Tolerance.RoundingMm)
            .Select(w => Cut(from, w));
    }

    /// <summary>
    /// Names keep the gap of her job, or one that is as wide as the letters are high; of short lists, which are
    /// laid out quickly, one between these two is tried too.
    /// </summary>
    private IEnumerable<VisibleChoice> OtherGaps(VisibleChoice from, BandJob job, StripPlan plan)
    {
        double now = job.Lettering.Gap?.Mm ?? JobDefaults.GapFactor * plan.LetterHeightMm;
        double[] factors = plan.NameCount <= FewNames ? [NarrowGapFactor, MiddleGapFactor] : [NarrowGapFactor];
        foreach (double gap in factors.Select(f => Math.Ceiling(f * plan.LetterHeightMm * 2) / 2).Distinct())
        {
            if (gap < now - Tolerance.RoundingMm)
            {
                yield return written.With(from, Text(JobKeys.Gap, gap));
            }
        }
    }

    // A quarter wider, as docs/plans.md says: between the gap as high as the letters and the usual one and a half.
    private const double MiddleGapFactor = 1.25;
    // A count: with more of them each gap that is tried takes longer to lay out (docs/plans.md). Our choice.
    private const int FewNames = 100;

    private IEnumerable<VisibleChoice> OtherHeights(VisibleChoice from, BandJob job, StripPlan plan)
    {
        yield return written.With(from, JobEdit.Remove(JobKeys.Height.Path));
        if (asSet.ReadWhileWorn == true)
        {
            yield break;
        }

        double least = asSet.Lettering.Least.Mm;
        IEnumerable<double> heights = job.Traits.HasLettersOfItsOwn
            ? job.Letters.Sizes.Select(s => s.Mm) : [StartingValues.UnreadHeightMm, least];
        foreach (double height in heights.Where(
            h => h < plan.LetterHeightMm - Tolerance.RoundingMm && (h >= least || job.Traits.HasLettersOfItsOwn)))
        {
            yield return written.With(from, Text(JobKeys.Height, height));
        }
    }

    /// <summary>Pieces of like length lie side by side; each makes a join that is seen.</summary>
    private IEnumerable<VisibleChoice> OtherPieces(VisibleChoice from, BandJob job, StripPlan plan)
    {
        double longest = plan.Rounds.Select(r => r.LengthMm).DefaultIfEmpty(0).Max();
        foreach (int pieces in job.IsHooped ? Pieces(plan) : [])
        {
            double length = Math.Ceiling(longest / pieces / 10) * 10;
            if (pieces == 1)
            {
                yield return written.With(from, JobEdit.Remove(LayoutKeys.Piece.Path));
            }
            else if (length >= LeastPieceMm)
            {
                yield return written.With(from, Text(LayoutKeys.Piece, length));
            }
        }
    }

    /// <summary>
    /// How many pieces of a round are tried: one, two and three; as few as fill all lanes of all cloths, where as many strips lie side by
    /// side as the field may hold; of curved strips, which nest the closer the shorter they are, one and two more than there are.
    /// </summary>
    internal static IEnumerable<int> Pieces(StripPlan plan)
    {
        int rounds = Math.Max(1, plan.Rounds.Length);
        int now = plan.Cloths.Sum(c => c.Pieces.Length) / rounds;
        double room = plan.FieldAcrossMm - plan.Hem.Strip.SewingZoneMm;
        int lanes = 1 + (int)Math.Max(0, Math.Floor(room / plan.Hem.Strip.CutWidthMm));
        var even = Enumerable.Range(2, Math.Max(0, lanes - 1)).Select(l => l / (int)BigInteger.GreatestCommonDivisor(l, rounds));
        return Enumerable.Range(1, MostPieces).Concat(plan.Hem.IsCurved ? [now + 1, now + 2] : even).Where(p => p <= MostEvenPieces)
            .Distinct();
    }

    private const int MostEvenPieces = 8; // More lanes than any domestic field has for strips of two inches: our assumption.

    private IEnumerable<JobEdit> Way(Way way)
    {
        string[] others = [JobKeys.Ways.Path, HoldingKeys.Hold.Path, HoldingKeys.Marks.Path, LettersKeys.Hooped.Path];
        return others.Where(written.Has).Select(JobEdit.Remove).Prepend(JobEdit.Text(JobKeys.Way.Path, JobKeys.WordOf(way)));
    }

    private static JobEdit Rounds(int rounds) => new(JobKeys.Rounds.Path, rounds.ToString(CultureInfo.InvariantCulture));

    private VisibleChoice Cut(VisibleChoice from, double widthMm)
    {
        var width = Length.FromMm(widthMm);
        var told = IsInQuarters(widthMm) ? width.InInches() : width.InMillimetres();
        return written.With(from, JobEdit.Text(JobKeys.CutWidth.Path, told.English));
    }

    private static JobEdit Text(LengthKey key, double mm) => JobEdit.Text(key.Path, Length.FromMm(mm).InMillimetres().English);

    private static bool IsInQuarters(double mm) => Math.Abs((mm * 4 / Length.MmPerInch) - Math.Round(mm * 4 / Length.MmPerInch)) < 1e-6;
}
