using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;
using NameBand.PlanFile;

namespace NameBand.Pipeline.Resume;

/// <summary>
/// Keeps the numbers of names that are keyed in or traced: a name has the number that the first plan gave it, whoever comes
/// later and whatever the order is, and no number comes twice.
/// </summary>
internal static class NameNumbers
{
    private const string MadePlan = "out/plan.json";

    /// <param name="sewn">The plan that is gone on from; null where nothing is sewn.</param>
    public static StripPlan Keep(StripPlan plan, BandJob job, EarlierPlan? sewn)
    {
        bool areLogged = plan.Hoopings.Any(h => !h.HasNeedlePath);
        var made = areLogged ? EarlierPlanFile.Read(job.Folder, MadePlan).Value : null;
        EarlierPlan[] known = [.. new[] { sewn, made }.OfType<EarlierPlan>()];
        if (!areLogged || known.Length == 0)
        {
            return plan;
        }

        int last = known.Max(k => Math.Max(k.LastNumber, k.Names.Select(n => n.Order).DefaultIfEmpty(0).Max()));
        var numbers = Numbers(plan, known);
        var order = new Dictionary<int, int>();
        foreach (var name in plan.Rounds.SelectMany(r => r.Names).OrderBy(n => n.Order))
        {
            order[name.Order] = numbers.TryGetValue(name.Order, out int kept) ? kept : ++last;
        }

        return order.All(o => o.Key == o.Value) && last <= order.Keys.DefaultIfEmpty(0).Max()
            ? plan : Numbered(plan, order) with { LastNumber = last };
    }

    /// <summary>The number that each name had before, by the number it has in the plan; each is given once.</summary>
    private static Dictionary<int, int> Numbers(StripPlan plan, EarlierPlan[] known)
    {
        var found = new Dictionary<int, int>();
        var taken = new HashSet<int>();
        var names = plan.Rounds.SelectMany(r => r.Names).OrderBy(n => n.Order).ToList();
        foreach (var earlier in known)
        {
            Pair(earlier, (name, before) => name.Row == before.Row && name.Text == before.Text);
            Pair(earlier, (name, before) => name.Row.List == before.Row.List && name.Text == before.Text);
            Pair(earlier, (name, before) => name.Text == before.Text);
            Pair(earlier, (name, before) => name.Row == before.Row && SewnMatching.AreAlike(name.Text, before.Text));
        }

        return found;

        void Pair(EarlierPlan earlier, Func<Name, EarlierName, bool> agree)
        {
            var free = earlier.Names.Where(n => !taken.Contains(n.Order)).OrderBy(n => n.Order).ToList();
            var byText = free.ToLookup(n => n.Text, StringComparer.Ordinal);
            var byRow = free.ToLookup(n => n.Row);
            foreach (var name in names.Where(n => !found.ContainsKey(n.Order)))
            {
                var own = name.Lettered.Name;
                if (byRow[own.Row].Concat(byText[own.Text]).FirstOrDefault(b => !taken.Contains(b.Order) && agree(own, b)) is { } before)
                {
                    found.Add(name.Order, before.Order);
                    taken.Add(before.Order);
                }
            }
        }
    }

    private static StripPlan Numbered(StripPlan plan, Dictionary<int, int> order)
    {
        ImmutableArray<Round> rounds = [.. plan.Rounds.Select(r => r with { Segments = [.. r.Segments.Select(Of)] })];
        var bySegment = rounds.SelectMany(r => r.Segments.Select(s => (Round: r, Segment: s))).ToDictionary(p => p.Segment.Number);
        return plan with
        {
            Rounds = rounds,
            Hoopings =
            [
                .. plan.Hoopings.Select(h => h with
                {
                    Segments =
                    [
                        .. h.Segments.Select(s =>
                            s with { Round = bySegment[s.Segment.Number].Round, Segment = bySegment[s.Segment.Number].Segment }),
                    ],
                }),
            ],
        };

        Segment Of(Segment segment) => segment with { Names = [.. segment.Names.Select(n => n with { Order = order[n.Order] })] };
    }
}
