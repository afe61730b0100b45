using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>
/// A whole job by the pace that was learned from the log, what is sewn included. The acts that were timed are scaled to it and
/// take on the range of what was learned, as one cause: the pace is learned as a whole and not act by act.
/// </summary>
/// <param name="AtSetPace">The same estimate with nothing timed.</param>
/// <param name="MachineFactor">Minutes at the machine for each one calculated.</param>
/// <param name="HandFactor">The same of the hand work at each hooping.</param>
public sealed record OwnPace(Estimate AtSetPace, double MachineFactor, double HandFactor)
{
    /// <summary>The estimate by what was learned; <paramref name="atSetPace"/> itself where nothing was timed.</summary>
    public static Estimate Apply(Estimate atSetPace, IReadOnlyList<TimedWork> machine, IReadOnlyList<TimedWork> hands)
    {
        var whole = new Learned(atSetPace.Work, machine, hands);
        return whole.IsNothing ? atSetPace : atSetPace with
        {
            Work = whole.Apply(),
            Left = new Learned(atSetPace.Left, machine, hands).Apply(),
            OwnPace = new OwnPace(atSetPace, whole.MachineFactor, whole.HandFactor),
        };
    }

    private sealed class Learned
    {
        private readonly Work _work;
        private readonly LearnedPace _machine;
        private readonly LearnedPace _hands;

        public Learned(Work work, IReadOnlyList<TimedWork> machine, IReadOnlyList<TimedWork> hands)
        {
            _work = work;
            _machine = PaceLearning.Learn(machine, work.Rows.Where(IsTimedMachine).Sum(r => r.Minutes.Likely));
            _hands = PaceLearning.Learn(hands, work.Rows.Where(r => r.IsAtTheHoop).Sum(r => r.Minutes.Likely));
        }

        public bool IsNothing => _machine.Timed == 0 && _hands.Timed == 0;

        public double MachineFactor => _machine.Timed > 0 ? _machine.PaceFactor : 1;

        public double HandFactor => _hands.Timed > 0 ? _hands.PaceFactor : 1;

        public Work Apply()
        {
            var machine = Cause("the machine's pace, timed", _machine);
            var hands = Cause("her pace at the hoop, timed", _hands);
            return new Work([.. _work.Rows.Select(r => r switch
            {
                { By: Doer.Machine } when _machine.Timed > 0 => r with
                {
                    EachMinutes = r.EachMinutes * MachineFactor,
                    Cause = IsTimedMachine(r) ? machine : r.Cause,
                },
                { IsAtTheHoop: true } when _hands.Timed > 0 => r with { EachMinutes = r.EachMinutes * HandFactor, Cause = hands },
                _ => r,
            })]);
        }

        /// <summary>How many names will be spoiled is not learned by timing what was sewn.</summary>
        private static bool IsTimedMachine(WorkRow row) => row.By == Doer.Machine && row.Cause != WorkCause.Spoiling;

        private static WorkCause Cause(Said name, LearnedPace pace) => pace.Now.Likely > 0
            ? new WorkCause(
                name, pace.Now.Low / pace.Now.Likely, pace.Now.High / pace.Now.Likely,
                "learned from what you timed; the more you time, the narrower it gets")
            : new WorkCause(name, 1, 1, "nothing of it is left");
    }
}
