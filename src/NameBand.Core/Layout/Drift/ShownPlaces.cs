using NameBand.Job;

namespace NameBand.Layout.Drift;

/// <summary>
/// Sewn names as an earlier plan shows them where that knew of the same measured end: widths are foretold a little otherwise by every
/// version and every new measure, and what is sewn does not move by that.
/// </summary>
/// <param name="AreLaidOut">The plan that is corrected has what is sewn where it was laid out then.</param>
internal sealed record ShownPlaces(IReadOnlyCollection<EarlierRound> Rounds, bool AreLaidOut)
{
    /// <summary>The earlier plan knew of a measured end where its name ends there, as exactly as it is written.</summary>
    private const double SameEndMm = 0.06;

    /// <summary>A name that differs by more was sewn in other letters.</summary>
    private const double SameNameMm = 5;

    /// <summary>The round with what is sewn of it where it is shown.</summary>
    /// <param name="round">Set out after measured ends.</param>
    /// <param name="moved">A segment with its names placed anew.</param>
    internal Round Kept(Round round, bool forward, Func<Segment, Dictionary<int, PlacedName>, Segment> moved)
    {
        var shown = Rounds.FirstOrDefault(r => r.Number == round.Number);
        var names = (forward ? round.Names : round.Names.Reverse()).Take(round.Sewn!.SewnNames).ToList();
        var before = shown?.Segments.SelectMany(s => s.Names).OrderBy(n => forward ? n.ShownStartMm : -n.ShownStartMm).Take(names.Count)
            .ToList() ?? [];
        if (shown is null || names.Count != before.Count || names.Zip(before).Any(p => !IsSame(p.First, p.Second))
            || Math.Abs(From(before[^1], shown.LengthMm, forward) + before[^1].ShownWidthMm - round.Sewn.SewnToMm) > SameEndMm)
        {
            return round;
        }

        var placed = round.Names.ToDictionary(n => n.Order);
        foreach (var (name, was) in names.Zip(before))
        {
            double from = From(was, shown.LengthMm, forward);
            double start = forward ? from : round.LengthMm - from - was.ShownWidthMm;
            placed[name.Order] = name with
            {
                StartMm = start,
                WidthMm = was.ShownWidthMm,
                PlannedMm = AreLaidOut || name.PlannedMm is not { } laid ? name.PlannedMm
                    : (laid.StartMm + start - name.StartMm, laid.WidthMm + was.ShownWidthMm - name.WidthMm),
            };
        }

        return round with { Segments = [.. round.Segments.Select(s => moved(s, placed))] };
    }

    private static bool IsSame(PlacedName name, EarlierName was) => name.Lettered.Name.Text == was.Text
        && Math.Abs((name.PlannedMm?.WidthMm ?? name.WidthMm) - was.ShownWidthMm) < SameNameMm;

    private static double From(EarlierName name, double lengthMm, bool forward) =>
        forward ? name.ShownStartMm : lengthMm - name.ShownStartMm - name.ShownWidthMm;
}
