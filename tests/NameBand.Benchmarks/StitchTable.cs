using System.Diagnostics;
using System.Globalization;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;

namespace NameBand.Benchmarks;

/// <summary>Prints the quality measures of every letter of some faces, and draws the worst.</summary>
internal static class StitchTable
{
    public static int Run(string[] args)
    {
        var heights = new List<double>();
        IReadOnlyList<string> letters = FloorLetters.All;
        bool brief = false;
        bool flow = false;
        string? pictures = null;
        var files = new List<string>();
        for (int i = 0; i < args.Length; i++)
        {
            switch (args[i])
            {
                case "--height":
                    heights.Add(double.Parse(args[++i], CultureInfo.InvariantCulture));
                    break;
                case "--letters":
                    letters = [.. args[++i].EnumerateRunes().Select(r => r.ToString())];
                    break;
                case "--brief":
                    brief = true;
                    break;
                case "--flow":
                    flow = true;
                    break;
                case "--pictures":
                    pictures = args[++i];
                    break;
                default:
                    files.Add(args[i]);
                    break;
            }
        }

        if (heights.Count == 0)
        {
            heights = [8, 12, 20];
        }

        foreach (string file in files)
        {
            foreach (double height in heights)
            {
                if (flow)
                {
                    Flow(file, height, letters);
                    continue;
                }

                One(file, height, letters, brief, pictures);
            }
        }

        return 0;
    }

    /// <summary>How the satin flows where strokes meet, and the worst spots of the letters.</summary>
    private static void Flow(string file, double height, IReadOnlyList<string> letters)
    {
        using var face = new FaceFileReader(file);
        var stitcher = new Stitcher(LetterTrial.Cotton, height);
        var trials = letters.Distinct().Where(face.Has).Select(face.Piece).Select(p => LetterTrial.Of(stitcher, p, height))
            .OfType<LetterTrial>().ToList();
        var all = trials.Select(t =>
            (t.Measure.Letter, t.Measure, Flow: FlowMeasure.Of(t.Outline, t.Path, LetterTrial.Cotton.Thread.DiameterMm))).ToList();
        string Worst(Func<(string Letter, StitchMeasure Measure, FlowMeasure Flow), double> of) =>
            string.Join(' ', all.OrderByDescending(of).Take(6).Select(x => FormattableString.Invariant($"{x.Letter}:{of(x):0.#}")));
        string alike =
            string.Join(
                ' ', all.Where(x => "WMAV".Contains(x.Letter, StringComparison.Ordinal))
                .Select(x => FormattableString.Invariant($"{x.Letter}:{100 * x.Flow.UnlikePart:0.0}")));
        Console.WriteLine(FormattableString.Invariant(
            $"{face.Name,-24} {height,2} n {all.Count} unlike % {alike} | seams mm mean {all.Average(x => x.Flow.SeamMm):0.00} worst {Worst(x => x.Flow.SeamMm)} | nicks mean {all.Average(x => x.Flow.Nicks):0.00} worst {Worst(x => x.Flow.Nicks)} | lapping in 1000 {1000.0 * all.Sum(x => x.Flow.Lapping) / Math.Max(1, all.Sum(x => x.Flow.Stitches)):0.0} worst {Worst(x => x.Flow.Lapping)} | disc {Worst(x => x.Measure.Load)} | layers {Worst(x => x.Measure.Layers)} | longest {Worst(x => x.Measure.LongestMm)} | cov {100 * all.Min(x => x.Measure.Coverage):0.0} hole {Worst(x => x.Measure.HoleMm)}"));
    }

    private static void One(string file, double height, IReadOnlyList<string> letters, bool brief, string? pictures)
    {
        using var face = new FaceFileReader(file);
        var stitcher = new Stitcher(LetterTrial.Cotton, height);
        var pieces = letters.Distinct().Where(face.Has).Select(face.Piece).ToList();
        var clock = Stopwatch.StartNew();
        foreach (var piece in pieces)
        {
            stitcher.Sewn(piece);
        }

        double cold = clock.Elapsed.TotalSeconds;
        var trials = pieces.Select(p => LetterTrial.Of(stitcher, p, height)).OfType<LetterTrial>().ToList();
        var m = trials.Select(t => t.Measure).ToList();
        if (brief)
        {
            var satin = m.Where(x => !x.IsRun).ToList();
            double Part(double part, Func<StitchMeasure, double> of) => satin.Select(of).Order().ElementAt((int)(part * (satin.Count - 1)));
            if (satin.Count == 0)
            {
                Console.WriteLine($"{face.Name} {height} mm: all run");
                return;
            }

            string Percents(Func<StitchMeasure, double> of, params double[] parts) =>
                string.Join('/', parts.Select(p => (100 * Part(p, of)).ToString("0.00", CultureInfo.InvariantCulture)));
            string Numbers(Func<StitchMeasure, double> of, params double[] parts) =>
                string.Join('/', parts.Select(p => Part(p, of).ToString("0.0", CultureInfo.InvariantCulture)));
            string[] cells =
            [
                FormattableString.Invariant($"{face.Name,-20} {height,2} n {m.Count} run {m.Count - satin.Count}"),
                $"pr {stitcher.Problems.Length}",
                $"cov {Percents(x => x.Coverage, 0.05, 0)} thin {Percents(x => x.ThinCoverage, 0.05)}",
                FormattableString.Invariant($"spill {100 * Part(0.95, x => x.Spill):0.00} hole {Part(1, x => x.HoleMm):0.00}"),
                $"crowd {Percents(x => x.Crowded, 0.5, 0.95)} load {Numbers(x => x.Load, 0.95)}",
                $"square {Numbers(x => x.Square95, 0.5, 0.95)} by path {Numbers(x => x.Angle95, 0.5, 0.95)}",
                FormattableString.Invariant($"cross {1000.0 * m.Sum(x => x.CrossedOver) / Math.Max(1, m.Sum(x => x.Crossings)):0.00}"),
                FormattableString.Invariant($"seen {100 * Part(0.95, x => x.TravelInSight):0.00}"),
                $"over {Percents(x => x.OverSatin, 0.5, 0.95, 1)}",
                FormattableString.Invariant($"len {Part(0, x => x.ShortestMm):0.00}-{Part(1, x => x.LongestMm):0.00}"),
                $"extra {Part(1, x => x.ExtraJumps)}",
                FormattableString.Invariant($"{pieces.Count / cold:0}/s {m.Average(x => x.Stitches):0.0} st"),
            ];
            Console.WriteLine(string.Join(' ', cells));
            string[] worst =
            [
                Worst("coverage", satin, x => -x.Coverage), Worst("hole", satin, x => x.HoleMm), Worst("cross", satin, x => x.CrossedOver),
                Worst("spill", satin, x => x.Spill), Worst("load", satin, x => x.Load), Worst("over", satin, x => 100 * x.OverSatin),
            ];
            Console.WriteLine("    worst: " + string.Join("  ", worst));
            Pictures(face, height, trials, pictures);
            return;
        }

        Console.WriteLine(FormattableString.Invariant(
            $"{face.Name} {height} mm  letters {m.Count} run {m.Count(x => x.IsRun)} problems {stitcher.Problems.Length}  {pieces.Count / cold:0} letters/s  {m.Average(x => x.Stitches):0} stitches/letter"));
        Row("coverage %", m, x => 100 * x.Coverage, false);
        Row("coverage .28 %", m, x => 100 * x.ThinCoverage, false);
        Row("spill %", m, x => 100 * x.Spill, true);
        Row("hole mm", m, x => x.HoleMm, true);
        Row("crowded %", m, x => 100 * x.Crowded, true);
        Row("load /mm²", m, x => x.Load, true);
        Row("layers", m, x => x.Layers, true);
        Row("square median °", m, x => x.SquareMedian, true);
        Row("square 95 °", m, x => x.Square95, true);
        Row("by path 95 °", m, x => x.Angle95, true);
        Row("travel seen %", m, x => 100 * x.TravelInSight, true);
        Row("over satin %", m, x => 100 * x.OverSatin, true);
        Row("shortest mm", m, x => x.ShortestMm, false);
        Row("longest mm", m, x => x.LongestMm, true);
        Row("crossed over", m, x => x.CrossedOver, true);
        Row("extra jumps", m, x => x.ExtraJumps, true);
        Row("run off mm", m.Where(x => x.IsRun).ToList(), x => x.RunDeviationMm, true);
        Console.WriteLine(FormattableString.Invariant(
            $"  crossed over {1000.0 * m.Sum(x => x.CrossedOver) / Math.Max(1, m.Sum(x => x.Crossings)):0.00} in 1000"));
        Pictures(face, height, trials, pictures);
    }

    private static void Pictures(FaceFileReader face, double height, List<LetterTrial> trials, string? pictures)
    {
        if (pictures is not null)
        {
            Directory.CreateDirectory(pictures);
            var drawn = trials.OrderBy(t => t.Measure.Coverage).Take(10)
                .Select(t => (t.Measure.Letter + FormattableString.Invariant($" {100 * t.Measure.Coverage:0.0}"), t)).ToList();
            ThreadPicture.Save(
                Path.Combine(pictures, FormattableString.Invariant($"{face.Name}-{height}-worst.png")), drawn, 5, 24, 0.4, true);
            var slanted = trials.OrderByDescending(t => t.Measure.Square95).Take(20)
                .Select(t => (t.Measure.Letter + FormattableString.Invariant($" {t.Measure.Square95:0}°"), t)).ToList();
            ThreadPicture.Save(
                Path.Combine(pictures, FormattableString.Invariant($"{face.Name}-{height}-slanted.png")), slanted, 5, 24, 0.12, true);
            var all = trials.Select(t => (t.Measure.Letter, t)).ToList();
            ThreadPicture.Save(
                Path.Combine(pictures, FormattableString.Invariant($"{face.Name}-{height}-all.png")), all, 9, (float)(16 * 12 / height),
                0.36, false);
        }
    }

    private static string Worst(string name, List<StitchMeasure> satin, Func<StitchMeasure, double> of) =>
        name + " " + string.Join(
            " ", satin.OrderByDescending(of).Take(4).Select(x => FormattableString.Invariant($"{x.Letter}:{Math.Abs(of(x)):0.###}")));

    private static void Row(string name, List<StitchMeasure> m, Func<StitchMeasure, double> of, bool highIsBad)
    {
        if (m.Count == 0)
        {
            return;
        }

        var sorted = m.OrderBy(x => highIsBad ? of(x) : -of(x)).ToList();
        double median = of(sorted[sorted.Count / 2]);
        double edge = of(sorted[(int)(0.95 * (sorted.Count - 1))]);
        string worst =
            string.Join(' ', sorted.AsEnumerable().Reverse().Take(8).Select(x => FormattableString.Invariant($"{x.Letter}:{of(x):0.##}")));
        Console.WriteLine(FormattableString.Invariant($"  {name,-16} median {median,7:0.00}  95th {edge,7:0.00}  worst {worst}"));
    }
}
