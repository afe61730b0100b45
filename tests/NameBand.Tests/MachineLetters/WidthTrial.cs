using System.Collections.Immutable;
using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Widths;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>How well the names of one simulated machine are foretold after some were read.</summary>
internal sealed class WidthTrial
{
    public const int NameCount = 60;
    private const int Chosen = 3;

    /// <param name="Error">Of each name that was not read: foretold less true.</param>
    /// <param name="Held">Of these, whether the stated range holds the true length.</param>
    public sealed record Outcome(
        string Look, int Read, double[] Errors, bool[] Held, double[] HalfRanges)
    {
        /// <summary>How many were read: of a name up to three.</summary>
        public required int Readings { get; init; }

        /// <summary>Readings that were gross, or that were told of or left aside.</summary>
        public required ImmutableArray<Odd> OddReadings { get; init; }
    }

    /// <param name="GrossMm">How far a gross reading is out; 0 of a sound one.</param>
    /// <param name="IsTold">She is asked for a second reading.</param>
    /// <param name="IsLeftAside">It hardly counts.</param>
    public readonly record struct Odd(double GrossMm, bool IsTold, bool IsLeftAside);

    /// <param name="lookKnown">She picked the right look from the pictures.</param>
    /// <param name="reads">How many names are read, one outcome for each.</param>
    public static IEnumerable<Outcome> Run(FaceMetrics face, int seed, Setting setting, params int[] reads)
    {
        var machine = new SimulatedMachine(face, seed);
        var names = machine.Names(NameCount);
        var look = Picked(Enum.Parse<LetterLook>(face.Look, ignoreCase: true), seed, setting);
        var model = new WidthModel(look, HasSpacings: false, 0.5, setting.AssumedFeed) { Prior = setting.Prior ?? LetterPrior.Shipped };
        var sums = names.Select(n => LetterTerms.Length(Letters.Of(n), SimulatedMachine.HeightMm, null)).ToList();
        // Three names are chosen, as the program asks for them; those after them come in the order of the list.
        int[] first = [.. NameDesign.Choose(model, sums, Math.Min(Chosen, reads.Max()))];
        var order = first.Concat(Enumerable.Range(0, names.Count).Except(first)).Take(reads.Max()).ToList();
        var readings = new List<WidthReading>();
        var gross = new List<double>();
        foreach (int at in order)
        {
            readings.Add(new WidthReading(sums[at], machine.Read(machine.TrueMm(names[at]), 0.5, setting.TrueFeed), at));
            gross.Add(machine.LastGrossMm);
            if (setting.WithBlank)
            {
                var letters = Letters.Of(names[at]);
                int blank = names[at].IndexOf(' ', StringComparison.Ordinal);
                var (end, begin) = machine.TrueBlank(names[at]);
                readings.Add(new WidthReading(
                    LetterTerms.Length([.. letters.Take(blank)], SimulatedMachine.HeightMm, null),
                    machine.Read(end, 0.5, 0, hasGross: false), at));
                gross.Add(0);
                readings.Add(new WidthReading(
                    LetterTerms.Start(letters, blank + 1, SimulatedMachine.HeightMm, null), machine.Read(begin, 0.5, 0, hasGross: false),
                    at));
                gross.Add(0);
            }
        }

        int each = setting.WithBlank ? 3 : 1;
        foreach (int count in reads)
        {
            var belief = new WidthBelief(model, readings.Take(count * each));
            var done = order.Take(count).ToHashSet();
            var rest = Enumerable.Range(0, names.Count).Where(i => !done.Contains(i)).ToList();
            var told = rest.Select(i => (Told: belief.Foretell(sums[i]), True: machine.TrueMm(names[i]))).ToList();
            var asked = belief.Doubtful.Select(d => d.Reading).ToHashSet();
            var odd = gross.Take(count * each).Select((mm, i) => new Odd(Math.Abs(mm), asked.Contains(i), belief.Wrong.Contains(i)));
            yield return new Outcome(
                face.Look, count, [.. told.Select(t => t.Told.MeanMm - t.True)],
                [.. told.Select(t => t.Told.LowMm <= t.True && t.True <= t.Told.HighMm)],
                [.. told.Select(t => (t.Told.HighMm - t.Told.LowMm) / 2)])
            {
                Readings = count * each,
                OddReadings = [.. odd.Where(o => o.GrossMm > 0 || o.IsTold || o.IsLeftAside)],
            };
        }
    }

    /// <summary>What she picks from the pictures: the right look, or now and then another one, or none.</summary>
    private static LetterLook Picked(LetterLook right, int seed, Setting setting)
    {
        bool isWrong = setting.WrongPickOneIn > 0 && seed % setting.WrongPickOneIn == 0;
        var others = Enum.GetValues<LetterLook>().Where(l => l != LetterLook.Unknown && l != right).ToList();
        return !setting.LookKnown ? LetterLook.Unknown : isWrong ? others[seed / setting.WrongPickOneIn % others.Count] : right;
    }

    public sealed record Setting(bool LookKnown, double TrueFeed = 0, double AssumedFeed = 0, bool WithBlank = false)
    {
        /// <summary>One machine in so many has another look picked than its own; 0: none has.</summary>
        public int WrongPickOneIn { get; init; }

        public LetterPrior? Prior { get; init; }
    }
}
