using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Widths;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>How well the names of one simulated machine are foretold after some were read.</summary>
internal sealed class WidthTrial
{
    public const int NameCount = 60;

    /// <param name="Error">Of each name that was not read: foretold less true.</param>
    /// <param name="Held">Of these, whether the stated range holds the true length.</param>
    public sealed record Outcome(
        string Look, int Read, double[] Errors, bool[] Held, double[] HalfRanges, int Gross, int GrossFound, int FalseAlarms)
    {
        /// <summary>Gross readings of which a second one is asked, whether they are left aside or not; and sound ones of which it is.</summary>
        public (int Gross, int Sound) AskedAbout { get; init; }
    }

    /// <param name="lookKnown">She picked the right look from the pictures.</param>
    /// <param name="reads">How many names are read, one outcome for each.</param>
    public static IEnumerable<Outcome> Run(FaceMetrics face, int seed, Setting setting, params int[] reads)
    {
        var machine = new SimulatedMachine(face, seed);
        var names = machine.Names(NameCount);
        var look = setting.LookKnown ? Enum.Parse<LetterLook>(face.Look, ignoreCase: true) : LetterLook.Unknown;
        var model = new WidthModel(look, HasSpacings: false, 0.5, setting.AssumedFeed) { Prior = setting.Prior ?? LetterPrior.Shipped };
        var sums = names.Select(n => LetterTerms.Length(Letters.Of(n), SimulatedMachine.HeightMm, null)).ToList();
        var order = NameDesign.Choose(model, sums, reads.Max());
        var readings = new List<WidthReading>();
        var gross = new List<bool>();
        foreach (int at in order)
        {
            readings.Add(new WidthReading(sums[at], machine.Read(machine.TrueMm(names[at]), 0.5, setting.TrueFeed), at));
            gross.Add(machine.LastWasGross);
            if (setting.WithBlank)
            {
                var letters = Letters.Of(names[at]);
                int blank = names[at].IndexOf(' ', StringComparison.Ordinal);
                var (end, begin) = machine.TrueBlank(names[at]);
                readings.Add(new WidthReading(
                    LetterTerms.Length([.. letters.Take(blank)], SimulatedMachine.HeightMm, null), machine.Read(end, 0.5, 0, hasGross: false), at));
                gross.Add(false);
                readings.Add(new WidthReading(
                    LetterTerms.Start(letters, blank + 1, SimulatedMachine.HeightMm, null), machine.Read(begin, 0.5, 0, hasGross: false), at));
                gross.Add(false);
            }
        }

        int each = setting.WithBlank ? 3 : 1;
        foreach (int count in reads)
        {
            var belief = new WidthBelief(model, readings.Take(count * each));
            var done = order.Take(count).ToHashSet();
            var rest = Enumerable.Range(0, names.Count).Where(i => !done.Contains(i)).ToList();
            var told = rest.Select(i => (Told: belief.Foretell(sums[i]), True: machine.TrueMm(names[i]))).ToList();
            var found = belief.Doubtful.Where(d => d.Chance > 0.5).Select(d => d.Reading).ToList();
            yield return new Outcome(
                face.Look, count, [.. told.Select(t => t.Told.MeanMm - t.True)], [.. told.Select(t => t.Told.LowMm <= t.True && t.True <= t.Told.HighMm)],
                [.. told.Select(t => (t.Told.HighMm - t.Told.LowMm) / 2)], gross.Take(count * each).Count(g => g), found.Count(f => gross[f]),
                found.Count(f => !gross[f]))
            {
                AskedAbout = (belief.Doubtful.Count(d => gross[d.Reading]), belief.Doubtful.Count(d => !gross[d.Reading])),
            };
        }
    }

    public sealed record Setting(bool LookKnown, double TrueFeed = 0, double AssumedFeed = 0, bool WithBlank = false)
    {
        public LetterPrior? Prior { get; init; }
    }
}
