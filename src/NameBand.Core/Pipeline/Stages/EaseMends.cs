using System.Collections.Immutable;
using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Pipeline.Stages;

/// <summary>
/// Finds what mends strips whose upper edge cannot be sewn down. Each mend is tried: the job is laid out with it, and it is
/// offered only where every round can be attached then and nothing else comes to need a decision.
/// </summary>
internal sealed class EaseMends
{
    /// <summary>A narrower strip than this holds no letters beside its margins.</summary>
    private const double LeastZoneMm = 4;

    // Widths, a millimetre apart: each is laid out in full, and a strip narrowed by more is another strip.
    private const int MostTries = 12;

    private readonly NamesRead _names;
    private readonly Fabric _fabric;
    private readonly StripPlan _plan;
    private readonly ImmutableArray<Problem> _found;

    private EaseMends(NamesRead names, Fabric fabric, StripPlan plan, ImmutableArray<Problem> found)
    {
        _names = names;
        _fabric = fabric;
        _plan = plan;
        _found = found;
    }

    /// <param name="found">What was found of the plan as it is.</param>
    public static ImmutableArray<EaseMend> For(NamesRead names, Fabric fabric, StripPlan plan, ImmutableArray<Problem> found) =>
        plan.Easing.Any(e => e.Verdict == EaseVerdict.WantsShaping) ? [.. new EaseMends(names, fabric, plan, found).All()] : [];

    private IEnumerable<EaseMend> All()
    {
        // Once something is sewn its cloth is cut and its grain is what it is; a tuck can still be folded.
        if (_names.Sewn is not null)
        {
            return Some(Tucks());
        }

        EaseMend[] single =
            [.. Some(
                Narrower(_names.Job, _plan.Easing.Where(e => e.Verdict == EaseVerdict.WantsShaping).Min(e => e.WidestMm)), Tucks(), Curve(),
                Bias())];
        return single.Length > 0 ? single : Some(NarrowerWithTucks());

        static IEnumerable<EaseMend> Some(params EaseMend?[] mends) => mends.OfType<EaseMend>();
    }

    /// <summary>Where neither does by itself: a strip that is narrower and tucked.</summary>
    private EaseMend? NarrowerWithTucks()
    {
        var tucked = _names.Job with { Layout = _names.Job.Layout with { HasTucks = true } };
        return Narrower(tucked, double.PositiveInfinity) is not { } mend ? null : mend with
        {
            Edits = [.. mend.Edits, new JobEdit(LayoutKeys.Tucks.Path, "true")],
        };
    }

    /// <summary>The widest strip, in whole millimetres, that does as it is then laid out.</summary>
    /// <param name="mostMm">No wider one can do.</param>
    private EaseMend? Narrower(BandJob with, double mostMm)
    {
        var strip = _plan.Hem.Strip;
        double leastMm = (2 * strip.MarginMm) + LeastZoneMm;
        double width = Math.Min(Math.Floor(mostMm + Tolerance.RoundingMm), Math.Ceiling(strip.FinishedWidthMm) - 1);
        for (int i = 0; i < MostTries && width >= leastMm; i++, width--)
        {
            double cutMm = Math.Round(width + (2 * strip.TurnInMm), 3);
            string cut = (cutMm + 0.0).ToString("0.###", CultureInfo.InvariantCulture) + " mm";
            if (Tried(with with { Strip = with.Strip with { CutWidth = Length.FromMm(cutMm) } }) is { } plan)
            {
                Said letters = Thousandths.Tenths(plan.LetterHeightMm) == Thousandths.Tenths(_plan.LetterHeightMm)
                    ? "" : (Said)$", with letters {LettersOf(plan)} mm high instead of {LettersOf(_plan)} mm";
                return new EaseMend(
                    EaseMendKind.Narrower, [JobEdit.Text("strip.cutWidth", cut)],
                    with.Layout.HasTucks && !_names.Job.Layout.HasTucks
                        ? (Said)$"a strip {width:0} mm wide when finished, with tapered tucks in its gaps{letters}: \"strip\": {{ \"cutWidth\": \"{cut}\", \"tucks\": true }}."
                        : $"a strip {width:0} mm wide when finished{letters}: \"strip\": {{ \"cutWidth\": \"{cut}\" }}.", width)
                {
                    Tucks = [.. plan.Easing.Select(e => e.Tucked).OfType<TuckSet>()],
                };
            }
        }

        return null;
    }

    private EaseMend? Tucks()
    {
        var job = _names.Job with { Layout = _names.Job.Layout with { HasTucks = true } };
        if (_names.Job.Layout.HasTucks || Tried(job) is not { } plan)
        {
            return null;
        }

        var tucked = plan.Easing.Where(e => e.Tucked is not null).ToList();
        return new EaseMend(
            EaseMendKind.Tucks, [new JobEdit(LayoutKeys.Tucks.Path, "true")],
            $"tapered tucks in the gaps: {TucksOf(plan, tucked)}; \"strip\": {{ \"tucks\": true }}.", plan.Hem.Strip.FinishedWidthMm)
        {
            Tucks = [.. tucked.Select(e => e.Tucked!)],
        };
    }

    private EaseMend? Curve()
    {
        if (_names.Job.Layout.Lines > 1)
        {
            return null; // Two lines are of straight strips.
        }

        var job = _names.Job with { Layout = _names.Job.Layout with { IsCurved = true } };
        if (Tried(job) is not { } plan)
        {
            return null;
        }

        double[] radii = [.. plan.Rounds.Select(r => plan.Hem.RadiusMm(r.Number))];
        Said each = Said.Join(", ", radii.Select(r => (Said)$"{r:0} mm"));
        return new EaseMend(
            EaseMendKind.Curve, [JobEdit.Text(LayoutKeys.Shape.Path, "curved")],
            $"a strip cut to the curve, its lower edge on a radius of {each}, which needs no easing: the cutting plan then draws the arc, but there is no template at its own size; \"strip\": {{ \"shape\": \"curved\" }}.",
            plan.Hem.Strip.FinishedWidthMm)
        {
            RadiiMm = [.. radii],
        };
    }

    private EaseMend? Bias()
    {
        if (_names.Job.Layout.IsBias)
        {
            return null;
        }

        // Cloth gives no long strips on the bias: where one is too long, shorter pieces are tried.
        double longest = _names.Job.Layout.Piece?.Mm ?? double.PositiveInfinity;
        foreach (double? pieceMm in new double?[] { null, 1000, 600 }.Where(p => p is not { } mm || mm < longest))
        {
            var layout = _names.Job.Layout with { IsBias = true };
            var job = _names.Job with { Layout = pieceMm is { } mm ? layout with { Piece = Length.FromMm(mm) } : layout };
            if (Tried(job) is { } plan)
            {
                return OnTheBias(plan, pieceMm);
            }
        }

        return null;
    }

    private static EaseMend OnTheBias(StripPlan plan, double? pieceMm)
    {
        Said limit = $"{100 * plan.Hem.Ease.GapsPart:0.#}", most = $"{100 * plan.Easing.Max(e => e.GapsPart):0.#}";
        var tucked = plan.Easing.Where(e => e.Tucked is not null).ToList();
        Said loses = tucked.Count == 0
            ? (Said)$"whose gaps may lose {limit} % and would lose {most} %"
            : $"whose gaps may lose {limit} %, with tucks: {TucksOf(plan, tucked)}";
        Said pieces = pieceMm is { } told ? (Said)$", in pieces of at most {told:0} mm" : "";
        string piece = pieceMm is { } written ? FormattableString.Invariant($", \"piece\": \"{written:0} mm\"") : "";
        return new EaseMend(
            EaseMendKind.Bias,
            [
                JobEdit.Text(LayoutKeys.Grain.Path, "bias"),
                .. pieceMm is { } mm
                ? [JobEdit.Text(LayoutKeys.Piece.Path, FormattableString.Invariant($"{mm:0} mm"))] : Array.Empty<JobEdit>(),
            ],
            $"a strip cut on the bias{pieces}, {loses}{(tucked.Count == 0 ? Said.Plain(":") : Said.Plain(";"))} \"strip\": {{ \"grain\": \"bias\"{piece} }}.",
            plan.Hem.Strip.FinishedWidthMm)
        {
            Tucks = [.. tucked.Select(e => e.Tucked!)],
        };
    }

    private static Said TucksOf(StripPlan plan, IEnumerable<RoundEase> tucked) =>
        Said.Join(
            "; ", tucked.Select(e => plan.Rounds.Length > 1 ? (Said)$"round {e.Number} {e.TucksInWords()}" : e.TucksInWords()));

    private static Said LettersOf(StripPlan plan) => $"{plan.LetterHeightMm:0.0}";

    /// <summary>The plan with a mend in it; null where it does not mend, or something else would need a decision.</summary>
    private StripPlan? Tried(BandJob job)
    {
        var hem = HemPlanner.Plan(job);
        if (hem.Value is null || _names.Way.LayOut(_names with { Job = job }, hem.Value, _fabric) is not { Value: { } plan } laid)
        {
            return null;
        }

        bool isAttached = plan.Easing.All(e => e.Verdict != EaseVerdict.WantsShaping)
            && plan.Fits.Count(f => !f.Meets) <= _plan.Fits.Count(f => !f.Meets);
        bool isNoWorse = Needed([.. hem.Problems, .. HemFits.Settled(plan, laid.Problems)]) <= Needed(_found)
            && plan.Held.Length <= _plan.Held.Length;
        return isAttached && isNoWorse ? plan : null;
    }

    private static int Needed(IEnumerable<Problem> problems) =>
        problems.Count(p => p.Severity != Severity.Note && p.Judged is not { About: Fact.Easing });
}
