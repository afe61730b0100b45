using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Tests;
using NameBand.Tests.MachineLettersRoom;

namespace NameBand.Benchmarks;

/// <summary>
/// The names of the boat banner sewn by a simulated machine, from an empty alphabet to finished strips: how surely lengths are known on
/// the way, how the strips come out, and the hours beside those of the same names sewn from needle paths. Figures only.
/// </summary>
internal static class BannerRun
{
    private const double FeedPart = 0.0175;
    private const int OnScrap = 3;
    private static readonly int[] Looks = [0, 3, 8];

    /// <summary>A name that is sewn: where it begins on the finished strip, and how long it came out.</summary>
    private sealed record Sewn(string Name, int Round, double StartMm, double TrueMm);

    public static int Run(string[] args)
    {
        string root = args.Length > 0 ? args[0] : Environment.CurrentDirectory;
        int seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1;
        string sample = Path.Combine(root, "samples", "boat-banner");
        var faces = FaceMetrics.Read(FaceMetrics.File).Where(f => f is { IsHeldOut: true, Look: "sans" }).ToList();
        var machine = new SimulatedMachine(faces[seed % faces.Count], seed);
        Console.WriteLine($"machine with the letters of {machine.Face.Face}, seed {seed}");
        using var folder = new TemporaryFolder();
        foreach (string file in new[] { "crews.csv", "corrections.csv" })
        {
            File.Copy(Path.Combine(sample, file), folder[file]);
        }

        folder.With("job.json", Job("machineLetters"));
        Sew(folder, machine);
        using var drawn = new TemporaryFolder();
        foreach (string file in new[] { "crews.csv", "corrections.csv" })
        {
            File.Copy(Path.Combine(sample, file), drawn[file]);
        }

        drawn.With("job.json", Job("needlePath"));
        Say(Bander.Make(drawn.FullPath), "from needle paths");
        return 0;
    }

    /// <summary>The machine has letters of one height here, and a gap of its own.</summary>
    private static string Job(string way) => $$"""
        { "format": 1, "title": "Boat banner", "way": "{{way}}", "lists": ["crews.csv"], "hem": { "length": "1.6 m", "turn": 0, "closed": false },
          "strip": { "rounds": 2 }, "lettering": { "height": "9 mm", "least": "6 mm" }{{(way == "needlePath" ? "" : """
        , "letters": { "sizes": ["9 mm"], "look": "sans", "holds": "any", "feed": "lengthwise", "tops": "right" }
        """)}} }
        """;

    private static void Sew(TemporaryFolder folder, SimulatedMachine machine)
    {
        var lengths = new List<string> { "name,measured_mm,sewn_on" };
        var sewn = new List<Sewn>();
        var report = Bander.Make(folder.FullPath);
        Say(report, "keyed in, nothing measured");
        for (int count = 0; ; count++)
        {
            var rows = Rows(folder);
            var left = rows.Where(r => sewn.TrueForAll(s => s.Name != r["name"])).ToList();
            if (Looks.Contains(count) || left.Count == 0)
            {
                Tell(count, left.Count > 0 ? left : rows, machine);
            }

            if (left.Count == 0)
            {
                break;
            }

            // The first three are those it asks for, on a scrap; then all are sewn in the order of the strips.
            bool isScrap = count < OnScrap;
            var next = isScrap ? rows[count] : left[0];
            string name = next["name"];
            double trueMm = machine.Read(machine.TrueMm(name), errorMm: 0, FeedPart, hasGross: false);
            double readMm = machine.Read(trueMm, hasGross: false);
            lengths.Add(FormattableString.Invariant($"{name},{readMm:0.0},{(isScrap ? "scrap" : "")}"));
            folder.With("lengths.csv", string.Join('\n', lengths) + "\n");
            if (!isScrap)
            {
                var (round, place) = report.Plan!.Rounds.SelectMany(r => r.Names.Select(n => (r, n)))
                    .First(p => p.n.Lettered.Name.Text == name);
                sewn.Add(new Sewn(name, round.Number, place.StartMm, trueMm));
                int number = int.Parse(next["order"], CultureInfo.InvariantCulture);
                Bander.Sewn(folder.FullPath, null, new SewingWord(0, SewingDeed.Sewn) { Names = (number, number) }, () => { });
            }

            report = Bander.Make(folder.FullPath);
            foreach (var problem in report.Problems.Where(p => p.Severity == Severity.NeedsPerson && count >= OnScrap - 1))
            {
                Console.WriteLine(
                    $"  told after {name}, round by round {string.Join(" and ", report.Plan!.Rounds.Select(r => r.Names.Count()))} names: {problem.Found}");
            }
        }

        Say(report, "keyed in, all sewn");
        foreach (var round in report.Plan!.Rounds)
        {
            var along = sewn.Where(s => s.Round == round.Number).OrderBy(s => s.StartMm).ToList();
            double[] gaps = [.. along.Zip(along.Skip(1)).Select(p => p.Second.StartMm - p.First.StartMm - p.First.TrueMm)];
            double before = along[0].StartMm;
            double behind = round.HemMm - along[^1].StartMm - along[^1].TrueMm;
            Console.WriteLine(FormattableString.Invariant(
                $"  round {round.Number}: gaps {string.Join(' ', gaps.Select(g => g.ToString("0", CultureInfo.InvariantCulture)))}; {along.Count} names on {round.HemMm:0} mm; as sewn, gaps of {gaps.Min():0.0} to {gaps.Max():0.0} mm, {before:0.0} mm before the first and {behind:0.0} mm behind the last"));
        }
    }

    private static void Tell(int count, List<Dictionary<string, string>> rows, SimulatedMachine machine)
    {
        double[] halves = [.. rows.Select(r => (Mm(r, "most_mm") - Mm(r, "least_mm")) / 2).Order()];
        double[] errors = [.. rows.Select(r => Math.Abs(Mm(r, "expected_mm") - machine.TrueMm(r["name"]))).Order()];
        int held = rows.Count(r => machine.TrueMm(r["name"]) >= Mm(r, "least_mm") && machine.TrueMm(r["name"]) <= Mm(r, "most_mm"));
        Console.WriteLine(FormattableString.Invariant(
            $"  after {count} names: range ± {halves[halves.Length / 2]:0.0} mm (most {halves[^1]:0.0}), feed ± {rows.Average(r => Mm(r, "feed_mm")):0.0}; error half within {errors[errors.Length / 2]:0.0}, most {errors[^1]:0.0}; {held} of {rows.Count} within their range"));
    }

    private static void Say(MakeReport report, string how)
    {
        if (report.Estimate is not { } estimate || report.Plan is not { } plan)
        {
            Console.WriteLine($"{how}: {string.Join("; ", report.Problems.Select(p => p.Found))}");
            return;
        }

        double machine = estimate.MachineMinutes.Likely, hands = estimate.HandsOnMinutes.Likely;
        Console.WriteLine(FormattableString.Invariant(
            $"{how}: {plan.NameCount} names, letters {plan.LetterHeightMm:0.#} mm, {plan.Hoopings.Length} hoopings or runs; machine {machine:0} min, hands {hands:0} min, in all {(machine + hands) / 60:0.0} h; meets its hem: {plan.MatchesHem}"));
    }

    private static double Mm(Dictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);

    private static List<Dictionary<string, string>> Rows(TemporaryFolder folder)
    {
        var table = CsvFile.Read(folder["out"], "key-in.csv").Value!;
        return [.. table.Rows.Skip(1)
            .Select(r => table.Rows[0].Fields.Zip(r.Fields).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal))];
    }
}
