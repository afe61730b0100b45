using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>What the next evening holds, as the plan of the evenings deals it out.</summary>
/// <param name="Minutes">Until the last machine is done.</param>
/// <param name="Names">To be sewn.</param>
/// <param name="LastNumber">Number of the last of them; null where none is.</param>
/// <param name="Hoopings">In their order along the cloth; empty where names are sewn without a hoop.</param>
/// <param name="Bobbins">To be wound before it begins.</param>
public sealed record Tonight(double Minutes, int Names, int? LastNumber, ImmutableArray<int> Hoopings, int Bobbins)
{
    // The evening's part of all sewing is a quotient of sums: looser than the rounding of one, and no time to sew in.
    private const double SlightMinutes = 1e-6;

    /// <summary>Work before the names.</summary>
    public ImmutableArray<Said> Before { get; init; } = [];

    /// <summary>Work after them.</summary>
    public ImmutableArray<Said> After { get; init; } = [];

    /// <summary>Null where the evenings are not dated.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>Such as <c>22 names, as far as number 31; wind one bobbin first; about 1 h 50 min</c>.</summary>
    public Said InWords
    {
        get
        {
            // Strips side by side have names of every round in one hooping: there its number says how far.
            Said last = Hoopings.IsEmpty ? (Said)$"number {Whole(LastNumber.GetValueOrDefault())}" : $"hooping {Whole(Hoopings[^1])}";
            Said names = Names == 0 ? "" : (Said)$"{(Names == 1 ? "one name" : Wording.Count(Names, "name"))}, as far as {last}";
            Said[] acts = [.. Before, .. names.IsEmpty ? Array.Empty<Said>() : [names], .. After];
            Said?[] parts =
                [Said.Join(", then ", acts), Bobbins == 0 ? null : (Said)$"wind {(Bobbins == 1 ? "one bobbin" : Wording.Count(Bobbins, "bobbin"))} first",
                $"about {Duration.InWords(Minutes)}"];
            return Wording.AsSentence(Said.Join("; ", parts.OfType<Said>().Where(p => !p.IsEmpty)));
        }
    }

    /// <param name="orders">Numbers of the names in the order of sewing.</param>
    /// <returns>Null where nothing is left to do.</returns>
    public static Tonight? Of(EveningPlan evenings, Estimate estimate, StripPlan plan, IReadOnlyList<int> orders)
    {
        if (evenings.Sittings.IsEmpty)
        {
            return null;
        }

        int first = evenings.Sittings.Min(s => s.Evening);
        Sitting[] now = [.. evenings.Sittings.Where(s => s.Evening == first)];
        ImmutableArray<int> hoopings = [.. now.SelectMany(s => s.Hoopings)];
        var sewn = hoopings.IsEmpty ? OneByOne(evenings, now, estimate, orders) : InHoopings(hoopings, estimate, plan);
        var numbers = sewn.ToHashSet();
        int bobbins = estimate.BobbinChanges
            .Where(c => !c.IsPast && (hoopings.IsEmpty ? numbers.Contains(c.BeforeOrder) : hoopings.Contains(c.Hooping)))
                .Sum(c => c.Bobbins);

        // The one that is put in before the first stitch changes none.
        bobbins += !estimate.IsBegun && sewn.Count > 0 ? 1 : 0;
        return new Tonight(now.Max(s => s.Minutes), sewn.Count, sewn.Count == 0 ? null : sewn[^1], hoopings, bobbins)
        {
            Before = Acts(now.SelectMany(s => s.Before)),
            After = Acts(now.SelectMany(s => s.After)),
        };
    }

    private static List<int> InHoopings(ImmutableArray<int> hoopings, Estimate estimate, StripPlan plan)
    {
        var sewn = estimate.Names.Where(n => n.IsSewn).Select(n => n.Order).ToHashSet();
        var all = plan.Hoopings.ToDictionary(h => h.Number);
        return [.. hoopings.SelectMany(h => all[h].Segments).SelectMany(s => s.Segment.Names).Where(n => !n.IsGone).Select(n => n.Order)
            .Where(n => !sewn.Contains(n))];
    }

    /// <summary>Names that the evening's part of the sewing is long enough for; a name that is not done in it is not begun.</summary>
    private static List<int> OneByOne(EveningPlan evenings, Sitting[] now, Estimate estimate, IReadOnlyList<int> orders)
    {
        static double Sewing(IEnumerable<Sitting> sittings) =>
            sittings.SelectMany(s => s.Before.Concat(s.After)).Where(t => t.Act == EveningWork.SewingTheNames).Sum(t => t.Minutes);

        var left = estimate.Names.Where(n => !n.IsSewn).ToDictionary(n => n.Order, n => n.MachineMinutes + n.TimedHandMinutes);
        double all = left.Values.Sum();
        double part = all > 0 && Sewing(evenings.Sittings) is > 0 and var sewing ? all * Sewing(now) / sewing : 0;
        var sewn = new List<int>();
        foreach (int order in orders.Where(left.ContainsKey))
        {
            part -= left[order];
            if (part < -SlightMinutes)
            {
                break;
            }

            sewn.Add(order);
        }

        return sewn;
    }

    private static ImmutableArray<Said> Acts(IEnumerable<OtherTask> tasks) =>
        [.. tasks.Select(t => t.Act).Where(a => a != EveningWork.SewingTheNames).Distinct()];

    private static string Whole(int number) => FormattableString.Invariant($"{number}");
}
