using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.Output;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>What a person says of the bare edge behind what is sewn and pinned, as a line of the log.</summary>
internal static class LeftMarking
{
    private static readonly Where Option = new(Key: "--left");

    /// <summary>The line, or why it cannot be written down.</summary>
    public static (SewingEntry[] Lines, Problem? Why) Lines(SewingWord word, SewingLog log, PlanOverview plan)
    {
        double left = word.LeftMm!.Value;
        var (round, why) = RoundOf(word, plan);
        return (why ?? Objection(round!, left, log)) is { } objection
            ? ([], objection)
            : ([new SewingEntry(
                round!.Number, SewingDeed.Left, MeasuredMm: left, When: PlainText.Whole(word.When), Note: PlainText.Whole(word.Note))
            {
                Of = SewingSubject.Round,
            }], null);
    }

    private static (EarlierRound? Round, Problem? Why) RoundOf(SewingWord word, PlanOverview plan)
    {
        if (!plan.Plan.Names.All(n => WayTraits.Of(n.Way) is { HasLettersOfItsOwn: true, FollowsCoordinates: false }))
        {
            return (null, Problem.CannotUse(
                Option, "A bare length moves the rest of a strip only where all its names are keyed in.",
                "Measure where a sewn name ends instead, and write it into drift.csv."));
        }

        if (plan.Plan.Names.Any(n => n.OnLine > 0))
        {
            return (null, Problem.CannotUse(
                Option, "Names that stand in two lines are not spread again: what one line would win, the other has sewn.",
                    "Begin each name at its own mark."));
        }

        var rounds = plan.Plan.Rounds;
        if (word.Round == 0 && rounds.Length > 1)
        {
            return (null, Problem.CannotUse(
                Option, $"The plan has {rounds.Length} rounds, and the length does not say of which it is.",
                $"Say it, the lowest being 1: sewn JOB --left \"{word.LeftMm:0.#} mm\" --round 1"));
        }

        return rounds.FirstOrDefault(r => word.Round is 0 || r.Number == word.Round) is { } round ? (round, null)
            : (null, Problem.CannotUse(
                Option, $"There is no round {word.Round} in the plan; it has {rounds.Length}.",
                "Say the number of the round, the lowest being 1."));
    }

    private static Problem? Objection(EarlierRound round, double leftMm, SewingLog log)
    {
        var names = round.Segments.SelectMany(s => s.Names).ToLookup(n => log.OfNames.IsSewn(n.Order));
        var (sewn, open) = (names[true].ToList(), names[false].ToList());
        if (sewn.Count == 0 || open.Count == 0)
        {
            return Problem.CannotUse(
                Option, $"Of round {round.Number} "
                    + $"{(sewn.Count == 0 ? (Said)"no name is logged as sewn yet." : "all names are sewn: nothing is left to be spread.")}",
                sewn.Count == 0
                    ? (Said)$"Say first what is sewn: sewn JOB n{open.Select(n => n.Order).DefaultIfEmpty(1).First()}."
                    : "Check whether the number of the round is right.");
        }

        double first = sewn.Min(n => n.StartMm), last = sewn.Max(n => n.StartMm + n.WidthMm);
        bool isRight = open.TrueForAll(n => n.StartMm >= last);
        if (!isRight && !open.TrueForAll(n => n.StartMm + n.WidthMm <= first))
        {
            return Problem.CannotUse(
                Option, "Names that are not sewn lie between those that are, so the bare length does not begin behind the last one.",
                $"If these are sewn too, say so first: sewn JOB n{open.First(n => n.StartMm < last).Order}.");
        }

        double expected = isRight ? round.HemMm - last : first;
        return Math.Abs(leftMm - expected) <= DriftCorrection.MostOffMm(round.HemMm - expected) && leftMm < round.HemMm
            ? null
            : Problem.CannotUse(
                Option, $"About {expected:0} mm of round {round.Number} should be left bare, and {leftMm:0.#} mm is too far from that. "
                    + $"Nothing was logged.",
                "Measure along the edge, from where the last sewn name ends to the end of the round, and mind the number of the round.");
    }
}
