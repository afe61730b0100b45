using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>
/// Fills the evenings of several people. They begin together: what comes before is shared among those who do hand work, then
/// whoever sews takes the hoopings of whole cloths, each at a machine of her own as far as there are machines, then the rest is shared
/// again. Hoopings are begun in their order along the cloth.
/// </summary>
internal sealed class PeopleDiary
{
    /// <summary>Longer than any job: nobody ever comes to sew.</summary>
    private const int MostEvenings = 4000;

    private readonly IReadOnlyList<SewingMachine> _machines;
    private readonly EveningLengths _lengths;
    private readonly LinkedList<HoopingTime> _pieces;
    private readonly ImmutableDictionary<int, PersonEvenings> _owners;
    private readonly Queue<OtherTask> _before;
    private readonly Queue<OtherTask> _after;
    private readonly List<Sitting> _sittings = [];

    private PeopleDiary(IReadOnlyList<HoopingTime> pieces, IReadOnlyList<SewingMachine> machines, EveningLengths lengths, OtherWork other)
    {
        _machines = machines;
        _lengths = lengths;
        _pieces = new LinkedList<HoopingTime>(pieces);
        _owners = ClothShares.Of(pieces, lengths.People);
        _before = new Queue<OtherTask>(other.Before.Where(t => t.Minutes > Tolerance.Rounding));
        _after = new Queue<OtherTask>(other.After.Where(t => t.Minutes > Tolerance.Rounding));
    }

    public static ImmutableArray<Sitting> Fill(
        IReadOnlyList<HoopingTime> pieces, IReadOnlyList<SewingMachine> machines, EveningLengths lengths, OtherWork other)
    {
        var diary = new PeopleDiary(pieces, machines, lengths, other);
        for (int evening = 1; evening <= MostEvenings && diary.IsWorkLeft; evening++)
        {
            diary.Fill(evening);
        }

        return [.. diary._sittings];
    }

    private bool IsWorkLeft => _before.Count + _pieces.Count + _after.Count > 0;

    private void Fill(int evening)
    {
        Seat[] all = [.. _lengths.People.Select(p => new Seat(p, _lengths.LengthMinutes(p, evening)))
            .Where(s => s.LengthMinutes > Tolerance.Rounding)];
        double now = Pour(_before, [.. all.Where(s => s.Person.DoesHands)], 0, s => s.Before);
        if (_before.Count == 0)
        {
            now = Sew(
                [.. all.Where(s => s.Person.DoesMachine && s.LengthMinutes - now > Tolerance.Rounding && Next(s) is not null)
                    .OrderByDescending(s => s.LengthMinutes).Take(_machines.Count)], now);
        }

        if (_before.Count + _pieces.Count == 0)
        {
            Pour(_after, [.. all.Where(s => s.Person.DoesHands)], now, s => s.After);
        }

        _sittings.AddRange(all.Where(s => s.Minutes > Tolerance.Rounding).Select(s => s.Sit(evening)));
    }

    /// <summary>Each seat in its turn takes the next pieces that its evening is long enough for.</summary>
    /// <returns>When the last of them is done.</returns>
    private double Sew(Seat[] seats, double now)
    {
        double end = now;
        for (int i = 0; i < seats.Length; i++)
        {
            var (seat, machine) = (seats[i], _machines[i]);
            double room = seat.LengthMinutes - now, used = 0;
            while (Next(seat) is { Value: var piece } node)
            {
                double minutes = piece.TakesMinutes(machine);
                bool isAlone = used == 0 && IsTooLong(piece) && room > LongestMinutes - Tolerance.Rounding;
                if (used + minutes > room + Tolerance.Rounding && !isAlone)
                {
                    break;
                }

                seat.Hoopings.Add(piece.Number);
                seat.Machine = machine.Name;
                used += minutes;
                _pieces.Remove(node);
                if (isAlone)
                {
                    break;
                }
            }

            seat.Minutes += used;
            end = Math.Max(end, now + used);
        }

        return end;
    }

    /// <summary>The next hooping that is hers: of a cloth of hers, or of none.</summary>
    private LinkedListNode<HoopingTime>? Next(Seat seat)
    {
        var node = _pieces.First;
        while (node is not null && _owners.TryGetValue(node.Value.Cloth, out var owner) && owner != seat.Person)
        {
            node = node.Next;
        }

        return node;
    }

    /// <summary>Longest evening of anybody who sews.</summary>
    private double LongestMinutes => _lengths.People.Where(p => p.DoesMachine).SelectMany(p => p.Minutes).DefaultIfEmpty(0).Max();

    private bool IsTooLong(HoopingTime piece) => _machines.Min(piece.TakesMinutes) > LongestMinutes + Tolerance.Rounding;

    /// <summary>Shares work out so that all are done with it at one time, but for those whose evening is over before.</summary>
    /// <returns>That time.</returns>
    private static double Pour(Queue<OtherTask> tasks, Seat[] seats, double now, Func<Seat, List<OtherTask>> list)
    {
        double all = tasks.Sum(t => t.Minutes);
        double until = Until(all, [.. seats.Select(s => s.LengthMinutes)], now);
        foreach (var seat in seats)
        {
            for (double room = Math.Min(seat.LengthMinutes, until) - now; room > Tolerance.Rounding && tasks.TryPeek(out var task);)
            {
                double part = Math.Min(room, task.Minutes);
                list(seat).Add(task with { Minutes = part });
                seat.Minutes += part;
                room -= part;
                Take(tasks, part);
            }
        }

        return until;
    }

    /// <summary>When so much work is done by people who are there from one time on, each to the end of her evening.</summary>
    private static double Until(double minutes, double[] ends, double now)
    {
        double until = now;
        double[] later = [.. ends.Where(e => e > now).Order()];
        for (int i = 0; i < later.Length && minutes > Tolerance.Rounding; i++)
        {
            double step = Math.Min(later[i] - until, minutes / (later.Length - i));
            until += step;
            minutes -= step * (later.Length - i);
        }

        return until;
    }

    private static void Take(Queue<OtherTask> tasks, double part)
    {
        var first = tasks.Dequeue();
        if (first.Minutes - part <= Tolerance.Rounding)
        {
            return;
        }

        OtherTask[] rest = [first with { Minutes = first.Minutes - part }, .. tasks];
        tasks.Clear();
        foreach (var task in rest)
        {
            tasks.Enqueue(task);
        }
    }

    /// <summary>What one person has to do this evening.</summary>
    private sealed class Seat(PersonEvenings person, double lengthMinutes)
    {
        public PersonEvenings Person => person;

        public double LengthMinutes => lengthMinutes;

        public double Minutes { get; set; }

        public string Machine { get; set; } = "";

        public List<int> Hoopings { get; } = [];

        public List<OtherTask> Before { get; } = [];

        public List<OtherTask> After { get; } = [];

        public Sitting Sit(int evening) =>
            new(evening, Machine, [.. Hoopings], Minutes) { Person = person.Name, Before = [.. Before], After = [.. After] };
    }
}
