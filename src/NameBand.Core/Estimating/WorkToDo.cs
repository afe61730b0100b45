using System.Collections.Immutable;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>The hoopings that work is counted for: all of them, or what of them is not sewn yet. A name that is logged by itself
/// counts by its share.</summary>
internal sealed class WorkToDo
{
    private readonly WorkMatter _matter;
    private readonly Dictionary<int, double> _sewnPart;
    private readonly bool _isLeft;

    public WorkToDo(WorkMatter matter, ImmutableArray<NameShare> names, bool isLeft)
    {
        _matter = matter;
        _isLeft = isLeft;
        _sewnPart = names.Where(n => n.IsSewn).GroupBy(n => n.Hooping).ToDictionary(g => g.Key, g => Math.Min(1, g.Sum(n => n.Part)));
        Hoopings = [.. matter.Plan.Hoopings.Where(h => !isLeft || !matter.IsSewn(h))];
        var open = Hoopings.Select(h => h.Number).ToHashSet();
        Figures = [.. matter.Hoopings.Where(f => open.Contains(f.Number)).Select(f => Left(f, PartOf(f.Number)))];
        Names = [.. names.Where(n => !isLeft || !n.IsSewn)];
    }

    public ImmutableArray<Hooping> Hoopings { get; }

    public ImmutableArray<HoopingFigures> Figures { get; }

    /// <summary>Names that are keyed in or traced.</summary>
    public ImmutableArray<NameShare> Names { get; }

    /// <summary>Of a hooping: names and headings that count.</summary>
    public int NamesIn(Hooping hooping) => !_isLeft || !_matter.WayOf(hooping.Number).IsLoggedByName
        ? HoopHands.NamesIn(hooping) : HoopHands.OrdersIn(hooping).Count(o => !_matter.IsSewnName(o));

    public int NamesIn(IEnumerable<Hooping> hoopings) => hoopings.Sum(NamesIn);

    /// <summary>Metres of line to be traced in one way.</summary>
    public double TracedM(WayActs way) => Hoopings.Sum(h => way.TracedMm.GetValueOrDefault(h.Number) * PartOf(h.Number)) / 1000;

    private double PartOf(int hooping) => _isLeft ? 1 - _sewnPart.GetValueOrDefault(hooping) : 1;

    private static HoopingFigures Left(HoopingFigures figures, double part)
    {
        int Of(int count) => (int)Math.Round(count * part);
        return part == 1 ? figures : figures with
        {
            Stitches = Of(figures.Stitches),
            Jumps = Of(figures.Jumps),
            Trims = Of(figures.Trims),
            Stops = Of(figures.Stops),
            Snips = Of(figures.Snips),
            BobbinChanges = Of(figures.BobbinChanges),
            StitchingMinutes = figures.StitchingMinutes * part,
            MachineMinutes = figures.MachineMinutes * part,
        };
    }
}
