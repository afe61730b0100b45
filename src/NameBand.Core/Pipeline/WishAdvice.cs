using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline;

/// <summary>Tells which names do not stand where they were wished to, and why: read off the plan as it is.</summary>
internal static class WishAdvice
{
    /// <summary>Farther from its pin a name is not where it was wished to be.</summary>
    private const double PinnedWithinMm = 1;

    private sealed record Stand(PlacedName Name, int Round, int Place);

    public static IEnumerable<Problem> For(NamesRead names, StripPlan plan)
    {
        if (names.Job.Wishes.All(w => !w.IsOfPlace))
        {
            yield break;
        }

        var row = plan.Rounds.SelectMany(
            r => r.Names.Where(n => n.IsOfList && !n.IsGone).OrderBy(n => n.StartMm).Select(n => (Round: r.Number, Name: n)))
            .Select((p, i) => new Stand(p.Name, p.Round, i)).ToList();
        var sewn = names.Sewn?.From.SewnRows() ?? [];
        foreach (var stand in row.Where(s => s.Name.Lettered.Name.Wish is { IsOfPlace: true }))
        {
            var name = stand.Name.Lettered.Name;
            if (Found(stand, row, plan.Hem) is { } found)
            {
                var (why, mend) = Why(name, sewn, names, plan);
                yield return Problem.NeedsPerson(
                    new Where(JobReader.FileName, Key: LayoutKeys.Names.Path, Name: PlainText.Short(name.Text)), $"{found} {why}", mend);
            }
        }
    }

    /// <summary>Where it stands in place of where it was wished to; null: where it was wished to.</summary>
    private static Said? Found(Stand stand, List<Stand> row, HemPlan hem)
    {
        var wish = stand.Name.Lettered.Name.Wish!;
        int? round = wish.Round ?? (wish.Pin is null ? null : 1);
        if (round is { } wished && wished != stand.Round)
        {
            return $"It was wished on round {wished} and stands on round {stand.Round}.";
        }

        if (wish.Pin is { } pin)
        {
            double middle = stand.Name.StartMm + (stand.Name.WidthMm / 2);
            return GarmentMiddles.PinMm(hem, pin, stand.Round) is not { } asked
                ? (Said)$"It was wished at {pin.InWords}, and nobody said where that lies."
                : Math.Abs(middle - asked) <= PinnedWithinMm ? null
                : (Said)$"It was wished at {pin.InWords} and stands {Length.FromMm(Math.Abs(middle - asked)).InMillimetres()} beside it.";
        }

        return (wish.After ?? wish.Before) is not { } other || StandsBeside(stand, other, wish.After is not null, row) ? null
            : wish.After is null ? (Said)$"It was wished before “{PlainText.Short(other)}” and does not stand there."
            : $"It was wished after “{PlainText.Short(other)}” and does not stand there.";
    }

    /// <summary>Names with a place of their own may stand between.</summary>
    private static bool StandsBeside(Stand stand, string other, bool isAfter, List<Stand> row)
    {
        int step = isAfter ? -1 : 1;
        int at = stand.Place + step;
        while (at >= 0 && at < row.Count && row[at].Name.Lettered.Name is { Wish: { } own } name && name.Text != other
            && (own.Pin is not null || own.Round is not null || (own.After ?? own.Before) == other))
        {
            at += step;
        }

        return at >= 0 && at < row.Count && row[at].Name.Lettered.Name.Text == other;
    }

    private static (Said Why, Said Mend) Why(Name name, HashSet<RowRef> sewn, NamesRead names, StripPlan plan)
    {
        var wish = name.Wish!;
        if (sewn.Contains(name.Row))
        {
            return ("It is sewn and stays where it is.", "Remove the wish; or unpick the name and say so.");
        }

        if (names.Sewn is not null)
        {
            return ("Something is sewn already, and what was planned beside it keeps its place.",
                "Remove the wish, or leave the name where it stands.");
        }

        if (names.Lettered.Names.Any(n => n.Standing.OwnRounds > 0))
        {
            return ("Groups with rounds of their own share the rounds out.",
                "Remove the place from the name, or “ownRound” from the groups.");
        }

        if (wish.Pin is { At: null } pin && GarmentMiddles.PinMm(plan.Hem, pin, 1) is null)
        {
            return ("An edge with two ends has no middle of its own.",
                $"Write where it lies: \"{(pin.IsFront ? "centreFront" : "centreBack")}\": \"900 mm\" in the group “hem”.");
        }

        if ((wish.Round ?? 1) > plan.Rounds.Length)
        {
            int rounds = plan.Rounds.Length;
            return (Said.Plural(rounds, "There is one round.", $"There are {rounds} rounds."),
                "Take another round, or give the garment more of them.");
        }

        if (wish.Pin is not null)
        {
            return ("Another name stands there already, or something is kept clear.",
                "Pin it at another place, or take away what is in its way.");
        }

        return ("The two are separated by their groups, or by the end of a round.", "Take another place for it, or another group.");
    }
}
