using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Output.Changes;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>What lies in the out folder from last time, as its plan tells: fingerprints, and where each name lies.</summary>
internal sealed class PreviousOutput
{
    private readonly byte[] _plan;
    private readonly Dictionary<int, EarlierHooping> _hoopings = [];
    private readonly Dictionary<int, EarlierRound> _rounds = [];
    private readonly Dictionary<int, NameStyle> _styles = [];

    public PreviousOutput(string outFolder)
        : this(PlanIn(outFolder))
    {
    }

    private PreviousOutput(byte[] plan)
    {
        _plan = plan;
        if (plan.Length == 0)
        {
            return;
        }

        // A plan that was tampered with stops nothing: what it does not tell is made anew and not compared.
        Try(() =>
        {
            var read = PlanJson.Read(plan);
            Try(() => Names = NamePlace.Of(read));
            Kept = KeptChoices.Of(read);
            Take(read);
        });
    }

    /// <summary>The names with their places; null when there was no plan, or none that tells them.</summary>
    public ImmutableArray<NamePlace>? Names { get; private set; }

    /// <summary>The marks of its hoopings.</summary>
    public IEnumerable<(int Hooping, string Mark)> Marks => _hoopings.Values.Select(h => (h.Number, h.Mark));

    /// <summary>What it chose where the job left it free; null when there was no plan.</summary>
    public KeptChoices? Kept { get; private set; }

    /// <summary>The same of a folder's plan, of which nothing else is wanted.</summary>
    public static KeptChoices? KeptIn(string outFolder)
    {
        KeptChoices? kept = null;
        if (PlanIn(outFolder) is { Length: > 0 } plan)
        {
            Try(() => kept = KeptChoices.Of(PlanJson.Read(plan)));
        }

        return kept;
    }

    public EarlierHooping? Hooping(int number) => _hoopings.GetValueOrDefault(number);

    /// <summary>How a name was sewn, by its order; null when the plan does not say.</summary>
    public NameStyle? StyleOf(int order) => _styles.TryGetValue(order, out var style) ? style : null;

    public EarlierRound? Round(int number) => _rounds.GetValueOrDefault(number);

    /// <summary>Itself when the folder's plan is still the one that was read, which may have been before its lock was taken.</summary>
    public PreviousOutput AsOf(string outFolder) =>
        PlanIn(outFolder) is var plan && plan.AsSpan().SequenceEqual(_plan) ? this : new PreviousOutput(plan);

    private void Take(WrittenPlan plan)
    {
        foreach (var hooping in plan.Hoopings)
        {
            _hoopings.TryAdd(hooping.Number, EarlierPlanFile.Hooping(hooping));
        }

        foreach (var round in plan.Rounds)
        {
            _rounds.TryAdd(round.Number, EarlierPlanFile.RoundPrints(round));
            foreach (var name in round.Segments.SelectMany(s => s.Names))
            {
                if (RoundScribe.StyleOf(name.Style) is { } style)
                {
                    _styles.TryAdd(name.Order, style);
                }
            }
        }
    }

    private static byte[] PlanIn(string outFolder)
    {
        byte[] plan = [];
        Try(() =>
        {
            plan = InnerFile.IsPlain(outFolder, OutPaths.Plan) ? InnerFile.Bytes(outFolder, OutPaths.Plan) : [];
        });
        return plan;
    }

    private static void Try(Action read)
    {
        try
        {
            read();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException || EarlierPlanFile.IsOfThePlan(e))
        {
            // As if it were not there.
        }
    }
}
