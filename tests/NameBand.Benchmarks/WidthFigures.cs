using System.Globalization;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Widths;
using NameBand.Tests.MachineLettersRoom;

namespace NameBand.Benchmarks;

/// <summary>How well lengths of names are foretold on simulated machines, whose letters are those of faces the prior does not
/// know.</summary>
internal static class WidthFigures
{
    /// <param name="options">
    /// How many machines; “folds” has every face of the prior held out in its turn, “splits” every face there is; settings by their names.
    /// </param>
    public static int Run(string[] options)
    {
        int machines = options.Length > 0 ? int.Parse(options[0], CultureInfo.InvariantCulture) : 1000;
        bool splits = options.Contains("splits");
        bool folds = splits || options.Contains("folds");
        var faces = FaceMetrics.Read(FaceMetrics.File);
        int[] reads = [0, 1, 2, 3, 5, 8, 16, 20];
        foreach (var (name, setting) in Settings().Where(s => options.Contains(s.Name) || !Settings().Any(t => options.Contains(t.Name))))
        {
            var cases = new List<(FaceMetrics Face, int Seed, LetterPrior? Prior)>();
            if (folds)
            {
                const int count = 6;
                var known = faces.Where(f => splits || !f.IsHeldOut).ToList();
                for (int fold = 0; fold < count; fold++)
                {
                    var others = known.Where((_, i) => i % count != fold).ToList();
                    var prior = LetterPrior.Read(LetterPriorFit.Table(others));
                    cases.AddRange(Each([.. known.Where((_, i) => i % count == fold)], machines / count)
                        .Select(c => (c.Face, c.Seed, (LetterPrior?)prior)));
                }
            }
            else
            {
                cases.AddRange(Each([.. faces.Where(f => f.IsHeldOut)], machines).Select(c => (c.Face, c.Seed, (LetterPrior?)null)));
            }

            var outcomes = cases.AsParallel().AsOrdered()
                .SelectMany(c => WidthTrial.Run(c.Face, c.Seed, setting with { Prior = c.Prior }, reads).ToList()).ToList();
            Console.WriteLine($"{name}, {cases.Count} machines, {cases.Select(c => c.Face.Face).Distinct().Count()} faces");
            foreach (int read in reads)
            {
                var mine = outcomes.Where(o => o.Read == read).ToList();
                Console.WriteLine($"  {read,2} names: {Line(mine)}");
                if (read is 0 or 3 or 8)
                {
                    foreach (var look in mine.GroupBy(o => o.Look))
                    {
                        Console.WriteLine($"      {look.Key,-10} {Line([.. look])}");
                    }

                    Console.WriteLine($"      all but script {Line([.. mine.Where(o => o.Look != "script")])}");
                }
            }
        }

        return 0;
    }

    private static IEnumerable<(string Name, WidthTrial.Setting Setting)> Settings() =>
    [
        ("known", new(LookKnown: true)),
        ("picked", new(LookKnown: true) { WrongPickOneIn = 5 }),
        ("unknown", new(LookKnown: false)),
        ("blanks", new(LookKnown: true, WithBlank: true)),
        ("feed", new(LookKnown: true, TrueFeed: 0.0175, AssumedFeed: 0.0175)),
        ("feed-assumed-only", new(LookKnown: true, TrueFeed: 0, AssumedFeed: 0.0175)),
    ];

    private static IEnumerable<(FaceMetrics Face, int Seed)> Each(List<FaceMetrics> faces, int machines) =>
        Enumerable.Range(0, machines).Select(i => (faces[i % faces.Count], 1 + i));

    private static string Line(List<WidthTrial.Outcome> outcomes)
    {
        double[] errors = [.. outcomes.SelectMany(o => o.Errors).Select(Math.Abs).Order()];
        double[] halves = [.. outcomes.SelectMany(o => o.HalfRanges).Order()];
        double held = outcomes.SelectMany(o => o.Held).Average(h => h ? 1.0 : 0);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"p50 {At(errors, 0.5):0.00} p95 {At(errors, 0.95):0.00} worst {errors[^1]:0.0}; range ± {At(halves, 0.5):0.0} holds {100 * held:0.0} %{Gross(outcomes)}");
    }

    private static string Gross(List<WidthTrial.Outcome> outcomes)
    {
        var odd = outcomes.SelectMany(o => o.OddReadings).ToList();
        var gross = odd.Where(o => o.GrossMm > 0).ToList();
        var large = gross.Where(o => o.GrossMm > 5).ToList();
        int sound = outcomes.Sum(o => o.Readings) - gross.Count;
        return gross.Count == 0 ? "" : string.Create(
            CultureInfo.InvariantCulture,
            $"; gross {gross.Count}, told of {Part(gross.Count(o => o.IsTold), gross.Count):0} %, left aside {Part(gross.Count(o => o.IsLeftAside), gross.Count):0} %; over 5 mm {Part(large.Count(o => o.IsTold), large.Count):0} %; sound told of {Part(odd.Count(o => o.GrossMm == 0), sound):0.00} %, left aside {Part(odd.Count(o => o.GrossMm == 0 && o.IsLeftAside), sound):0.00} %");
    }

    private static double Part(int some, int all) => all == 0 ? 0 : 100.0 * some / all;

    private static double At(double[] ordered, double part) => ordered[Math.Min(ordered.Length - 1, (int)(part * ordered.Length))];
}
