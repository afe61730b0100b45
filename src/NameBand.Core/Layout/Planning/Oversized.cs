using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>
/// Names too wide for the sewing field or too tall for the strip at the height that was asked for. Where smaller letters
/// would do they are what is asked for: nobody is asked for a shorter name before.
/// </summary>
internal sealed class Oversized
{
    private readonly BandJob _job;
    private readonly Sizing _sizing;
    private readonly double _heightMm;
    private readonly double _leastMm;
    private readonly SmallerAlone _alone;

    public Oversized(BandJob job, Sizing sizing, ImmutableArray<LetteredName> all)
    {
        (_job, _sizing) = (job, sizing);
        _heightMm = job.Lettering.Height?.Mm ?? job.Lettering.Least.Mm;
        _leastMm = SmallerAlone.LeastMm(job);
        _alone = new SmallerAlone(job, _heightMm, n => Fits(n, _heightMm));
        var names = new List<LetteredName>(all.Length);
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        var tooBig = new List<LetteredName>();
        foreach (var name in all)
        {
            if (!Fits(name, _heightMm))
            {
                double? factor = _alone.FactorFor(name);
                held.Add(new HeldRow(name.Name.Row, Reason(name, factor)) { IsForItsSize = true, FitsAtFactor = factor });
                if (IsOfList(name))
                {
                    tooBig.Add(name);
                }
            }
            else
            {
                names.Add(name);
            }
        }

        Fitting = names;
        Held = held.ToImmutable();
        Advice = SmallerLetters(all, tooBig);
    }

    public List<LetteredName> Fitting { get; }

    public ImmutableArray<HeldRow> Held { get; }

    /// <summary>The letter height at which names that are held now would fit; null where none is held, or no height would do.</summary>
    public Problem? Advice { get; }

    /// <summary>Headings stand in the job's own file, and have an advice of their own.</summary>
    private static bool IsOfList(LetteredName name) => name.Name.Row.List != JobReader.FileName;

    /// <summary>Why it does not fit, and how it would.</summary>
    /// <param name="factor">Of its own letters; null: none is known.</param>
    private Said Reason(LetteredName name, double? factor)
    {
        if (!IsOfList(name))
        {
            return OfHeading(name);
        }

        if (!_sizing.FitsField(name, _heightMm))
        {
            Said mend = Smaller(name, factor) ?? "Agree a shorter form with its owner, or use a longer hoop";
            return $"too wide for one hooping: at letters {_heightMm:0.#} mm high the name is {_sizing.WidthMm(name, _heightMm):0} mm long and the field holds {_sizing.LongestSegmentMm:0.#} mm once sewn. {mend}";
        }

        Said lower = Smaller(name, factor) ?? "Use a wider strip or smaller letters";
        return $"too tall for the strip: at letters {_heightMm:0.#} mm high its ink is {TallMm(name):0.0} mm from top to bottom "
            + $"and the sewing zone is {_sizing.Hem.Strip.SewingZoneMm:0.0} mm. {lower}";
    }

    /// <summary>A heading has no owner who would agree to another.</summary>
    private Said OfHeading(LetteredName heading) => _sizing.FitsField(heading, _heightMm)
        ? (Said)$"too tall for the strip: at letters {_heightMm:0.#} mm high its ink is {TallMm(heading):0.0} mm from top to bottom and the sewing zone is {_sizing.Hem.Strip.SewingZoneMm:0.0} mm"
        : $"too wide for one hooping: at letters {_heightMm:0.#} mm high it is {_sizing.WidthMm(heading, _heightMm):0} mm long and the field holds {_sizing.LongestSegmentMm:0.#} mm once sewn";

    private double TallMm(LetteredName name) => (name.Ink.HeightMm * _heightMm) + (2 * _sizing.ReachMm(_heightMm));

    private Said? Smaller(LetteredName name, double? factor)
    {
        if (LargestMm(name) is not { } mm)
        {
            return factor is { } only
                ? (Said)$"Use smaller letters for it alone: with \"heightFactor\": {only:0.##} in the list “names” of job.json it fits" : null;
        }

        return factor is { } alone
            ? (Said)$"Use smaller letters: {mm:0.0} mm high it fits; or for it alone, with \"heightFactor\": {alone:0.##} in the list “names” of job.json"
            : $"Use smaller letters: {mm:0.0} mm high it fits";
    }

    private bool FitsZone(LetteredName name, double heightMm) => _sizing.FitsZone(name.Ink.BottomMm, name.Ink.TopMm, heightMm);

    private bool Fits(LetteredName name, double heightMm) => _sizing.FitsField(name, heightMm) && FitsZone(name, heightMm);

    /// <summary>The largest height, in tenths of a millimetre, under the one asked for at which a name fits by itself; null where
    /// it is too small to be sewn.</summary>
    private double? LargestMm(LetteredName name)
    {
        // What fits at one height fits at every smaller one.
        int enough = Tenths(_leastMm), over = Tenths(_heightMm);
        if (_job.Traits.HasLettersOfItsOwn || enough >= over || !Fits(name, _leastMm))
        {
            return null;
        }

        while (over - enough > 1)
        {
            int middle = (enough + over) / 2;
            (enough, over) = Fits(name, middle / 10.0) ? (middle, over) : (enough, middle);
        }

        return enough / 10.0;
    }

    private static int Tenths(double mm) => (int)Math.Ceiling((mm * 10) - Tolerance.Rounding);

    private Problem? SmallerLetters(ImmutableArray<LetteredName> all, List<LetteredName> tooBig)
    {
        double[] alone = [.. tooBig.Select(LargestMm).OfType<double>()];
        if (alone.Length == 0)
        {
            return null;
        }

        var able = Ordering.Order([.. all.Where(n => Fits(n, _leastMm))], _job.Lettering.Order, _job.Lettering.Collation);
        var search = new HeightSearch(_sizing, _leastMm, _job.Lettering.Order == NameOrder.BestFit);
        double together = search.Largest(able).HeightMm;
        bool isEnough = search.Obstacle(able, together) is null;
        double best = isEnough ? together : alone.Min();
        bool isGiven = _job.Lettering.Height is not null;
        string key = isGiven ? "height" : "least";
        int never = tooBig.Count - alone.Length;
        Said rest = never == 0 ? "all names fit" : (Said)$"all names fit but {never}";
        return Problem.NeedsPerson(
            new Where(JobReader.FileName, Key: $"lettering.{key}"),
            $"Letters {_heightMm:0.0} mm high are too large for {tooBig.Count} of {all.Count(IsOfList)} names: they do not fit the hoop or the strip.",
            $"Write \"{key}\": \"{best:0.0} mm\" in the group “lettering”"
            + $"{(isGiven && isEnough && best >= _job.Lettering.Least.Mm ? (Said)", or \"largest\"" : "")}"
            + $"{(isEnough ? (Said)$": then {rest}." : ": then they do; all names together want more rounds as well.")}");
    }
}
