using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>
/// Fills evening after evening, which need not be alike, in the order of the work. Going through the hoopings as they lie and
/// closing an evening only
/// when the next one does not fit takes as few evenings as any plan that keeps to that order.
/// </summary>
internal sealed class EveningDiary(IReadOnlyList<SewingMachine> machines, EveningLengths lengths)
{
    private readonly List<Sitting> _sittings = [];
    private Place[] _places = Fresh(machines);
    private int _evening = 1;

    /// <summary>The machine that is being filled; those before it have had their part of the cloth.</summary>
    private int _now;

    public ImmutableArray<Sitting> Sittings => [.. _sittings];

    public void Begin(IEnumerable<OtherTask> tasks) => Pour(tasks, p => p.Before);

    /// <summary>What comes after the last hooping, to the end.</summary>
    public void End(IEnumerable<OtherTask> tasks)
    {
        if (_now > 0)
        {
            // Another machine sews on while the first one stands still: what comes after them all waits for the next evening.
            Close();
        }

        Pour(tasks, p => p.After);
        Close();
    }

    public void Sew(HoopingTime hooping)
    {
        while (true)
        {
            for (; _now < machines.Count; _now++)
            {
                double minutes = hooping.TakesMinutes(machines[_now]);
                if (_places[_now].Minutes + minutes <= lengths.LengthMinutes(_evening) + Tolerance.Rounding)
                {
                    _places[_now].Hoopings.Add(hooping.Number);
                    _places[_now].Minutes += minutes;
                    return;
                }
            }

            if (_places.All(p => p.Minutes <= 0))
            {
                // A short evening, with longer ones to come.
                _evening++;
                _now = 0;
            }

            Close();
        }
    }

    /// <summary>An evening for one hooping that is longer than it.</summary>
    public void SewAlone(HoopingTime hooping, SewingMachine machine)
    {
        Close();
        _sittings.Add(new Sitting(_evening++, machine.Name, [hooping.Number], hooping.TakesMinutes(machine)));
    }

    private void Pour(IEnumerable<OtherTask> tasks, Func<Place, List<OtherTask>> list)
    {
        foreach (var task in tasks)
        {
            for (double left = task.Minutes; left > Tolerance.Rounding;)
            {
                double room = lengths.LengthMinutes(_evening) - _places[0].Minutes;
                if (room <= Tolerance.Rounding)
                {
                    Close();
                    continue;
                }

                double part = Math.Min(left, room);
                list(_places[0]).Add(new OtherTask(task.Act, part));
                _places[0].Minutes += part;
                left -= part;
            }
        }
    }

    private void Close()
    {
        var used = _places.Select((p, j) => p.Sit(_evening, machines[j].Name)).Where(s => s.Minutes > 0).ToList();
        _sittings.AddRange(used);
        _evening += used.Count > 0 ? 1 : 0;
        _places = Fresh(machines);
        _now = 0;
    }

    private static Place[] Fresh(IReadOnlyList<SewingMachine> machines) => [.. machines.Select(_ => new Place())];

    /// <summary>What one machine and whoever is at it have to do this evening.</summary>
    private sealed class Place
    {
        public double Minutes { get; set; }

        public List<int> Hoopings { get; } = [];

        public List<OtherTask> Before { get; } = [];

        public List<OtherTask> After { get; } = [];

        public Sitting Sit(int evening, string machine) =>
            new(evening, machine, [.. Hoopings], Minutes) { Before = [.. Before], After = [.. After] };
    }
}
