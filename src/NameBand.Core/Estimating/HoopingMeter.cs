using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Stitching;

namespace NameBand.Estimating;

/// <summary>Counts what one hooping takes, from its needle path.</summary>
internal static class HoopingMeter
{
    /// <summary>Thread left hanging at each cut, needle and bobbin alike: our assumption, a thumb's length.</summary>
    internal const double TailMm = 40;

    /// <summary>What a path takes, and what each of the hooping's names takes of it.</summary>
    public static HoopingFigures Measure(Hooping hooping, StripPlan plan, NeedlePath path, Fabric fabric, MachineSettings machine) =>
        Measure(hooping.Number, path, fabric, machine, NamePlaces.Of(hooping, plan));

    /// <summary>What a path takes when it is not known which name a stitch belongs to.</summary>
    public static HoopingFigures Measure(int number, NeedlePath path, Fabric fabric, MachineSettings machine) =>
        Measure(number, path, fabric, machine, null);

    /// <remarks>A jump after a cut takes no thread: there is none in the needle's way, only the tail that is counted at the cut.</remarks>
    private static HoopingFigures Measure(int number, NeedlePath path, Fabric fabric, MachineSettings machine, NamePlaces? places)
    {
        int stitches = 0;
        int jumps = -1;
        int trims = 0;
        int stops = 0;
        int snips = 0;
        double seconds = 0;

        // Whether a thread hangs from the stitch before: none does at the start, or after the machine has cut it.
        bool hangs = false;
        var thread = new NameTally(places, TailMm);
        var steps = path.Steps;
        for (int i = 0; i < steps.Length; i++)
        {
            double movedMm = i > 0 ? steps[i].At.DistanceTo(steps[i - 1].At) : 0;
            switch (steps[i].Action)
            {
                case NeedleAction.Stitch:
                    stitches++;
                    hangs = true;
                    thread.GoTo(steps[i].At);
                    if (i > 0 && steps[i - 1].Action == NeedleAction.Stitch)
                    {
                        var (needle, bobbin) = ThreadGeometry.Stitch(movedMm, fabric.ThicknessMm, ThreadGeometry.EmbroideryNeedlePart);
                        thread.Add(needle, bobbin);
                        seconds += Pace.SecondsPerStitch(movedMm, machine);
                    }
                    else
                    {
                        seconds += 60 / machine.StitchesPerMinute;
                    }

                    break;
                case NeedleAction.Jump:
                    bool begins = i == 0 || steps[i - 1].Action != NeedleAction.Jump;
                    jumps += begins ? 1 : 0;
                    snips += begins && hangs ? 1 : 0;
                    thread.Add(hangs ? movedMm : 0, 0);
                    break;
                case NeedleAction.Trim:
                    trims++;
                    hangs = false;
                    thread.Add(TailMm, TailMm);
                    break;
                case NeedleAction.Stop:
                    stops++;
                    break;
            }
        }

        jumps = Math.Max(jumps, 0);
        snips += hangs ? 1 : 0;
        var names = thread.Names();
        var counted = new HoopingFigures(number, stitches, jumps, trims, stops, thread.NeedleMm / 1000, thread.BobbinMm / 1000, 0)
        {
            StitchingMinutes = seconds / 60,
            Snips = snips,
            Names = places is null ? [] : names,
        };
        return Timed(counted, machine);
    }

    /// <summary>With its minutes at the machine, of which those of its stitches are known.</summary>
    internal static HoopingFigures Timed(HoopingFigures counted, MachineSettings machine)
    {
        double between = MinutesBetween(counted.Jumps, counted.Trims, counted.Stops, machine)
            + (ExpectedBreaks(counted.Stitches, machine) * machine.SecondsPerBreak / 60);
        return counted with { MachineMinutes = counted.StitchingMinutes + between };
    }

    /// <summary>Thread breaks to be allowed for in so many stitches.</summary>
    public static double ExpectedBreaks(double stitches, MachineSettings machine) => stitches / 1000 * machine.BreaksPer1000Stitches;

    /// <summary>Minutes for everything between the stitches; breaks and bobbins left out.</summary>
    private static double MinutesBetween(int jumps, int trims, int stops, MachineSettings machine) =>
        ((jumps * machine.SecondsPerJump) + (trims * machine.SecondsPerTrim) + (stops * machine.SecondsPerStop) + machine.SecondsToStart)
            / 60;

    /// <summary>Adds thread up for the whole path and for the name that is being sewn.</summary>
    private sealed class NameTally(NamePlaces? places, double firstTailMm)
    {
        private readonly List<(int Order, double NeedleMm, double BobbinMm)> _names = [(0, firstTailMm, firstTailMm)];

        public double NeedleMm { get; private set; } = firstTailMm;

        public double BobbinMm { get; private set; } = firstTailMm;

        public void GoTo(Point at)
        {
            if (places?.OrderAt(at) is { } order && order != _names[^1].Order)
            {
                _names.Add((order, 0, 0));
            }
        }

        public void Add(double needleMm, double bobbinMm)
        {
            NeedleMm += needleMm;
            BobbinMm += bobbinMm;
            var (order, needle, bobbin) = _names[^1];
            _names[^1] = (order, needle + needleMm, bobbin + bobbinMm);
        }

        public ImmutableArray<NameThread> Names() =>
            [.. _names.Select(n => new NameThread(n.Order, n.NeedleMm / 1000, n.BobbinMm / 1000))];
    }
}
