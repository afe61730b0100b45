namespace NameBand.Estimating;

/// <summary>
/// A whole job by the pace that was learned from the log, what is sewn included. The lines of the estimate are scaled to
/// it and keep their ranges, which are wider than the total's: the pace is learned as a whole and not line by line.
/// </summary>
/// <param name="AtSetPace">The same estimate with nothing timed.</param>
/// <param name="MachineFactor">Minutes at the machine for each one reckoned.</param>
/// <param name="HandFactor">The same of the hand work at each hooping.</param>
public sealed record OwnPace(Estimate AtSetPace, double MachineFactor, double HandFactor, Figure MachineMinutes, Figure HandsOnMinutes)
{
    /// <summary>The estimate by what was learned; <paramref name="atSetPace"/> itself where nothing was timed.</summary>
    /// <param name="machine">Learned with the whole machine time as what is left to do; null: not timed.</param>
    /// <param name="hands">Learned with all hand work at the hoop as what is left to do; null: not timed.</param>
    public static Estimate Apply(Estimate atSetPace, LearnedPace? machine, LearnedPace? hands)
    {
        if (machine is null && hands is null)
        {
            return atSetPace;
        }

        double machineFactor = machine?.PaceFactor ?? 1;
        double handFactor = hands?.PaceFactor ?? 1;
        var elsewhere = Estimate.Sum(atSetPace.HandWork.Where(w => !w.IsAtTheHoop));
        return atSetPace with
        {
            MachineWork = [.. atSetPace.MachineWork.Select(w => Scaled(w, machineFactor))],
            HandWork = [.. atSetPace.HandWork.Select(w => w.IsAtTheHoop ? Scaled(w, handFactor) : w)],
            OwnPace = new OwnPace(
                atSetPace, machineFactor, handFactor, machine?.Now ?? atSetPace.MachineMinutes,
                hands is null ? atSetPace.HandsOnMinutes : elsewhere + hands.Now),
        };
    }

    private static WorkLine Scaled(WorkLine line, double factor) =>
        line with { Minutes = new Figure(line.Minutes.Low * factor, line.Minutes.Likely * factor, line.Minutes.High * factor) };
}
