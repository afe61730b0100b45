using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Google.OrTools.Sat;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.BestFit;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;

namespace NameBand.Benchmarks;

/// <summary>Layout against shaping, layout as the list grows, and the best-fit order beside an independent solver.</summary>
internal static class LayoutFigures
{
    private const int SolverSeconds = 60;
    private static readonly string[] Parts =
        ["Ada", "Mor", "wen", "Tre", "gear", "Ilse", "Var", "ga", "Quill", "Pel", "Jo", "ry", "Sa", "enz", "Ny", "Lin"];

    public static int Run()
    {
        LayAgainstShaping();
        BestFit();
        return 0;
    }

    private static void LayAgainstShaping()
    {
        var shelf = new FaceShelf();
        var face = shelf.Open(JobDefaults.Face, ".").Value ?? throw new InvalidOperationException("The face is not there.");
        Shape(100, face, shelf);
        foreach (int count in new[] { 1000, 10_000 })
        {
            var watch = Stopwatch.StartNew();
            var lettered = Shape(count, face, shelf);
            double shaping = watch.Elapsed.TotalMilliseconds;
            var job = Job(NameOrder.Listed, rounds: count / 25);
            var hem = HemPlanner.Plan(job).Value!;
            LayoutPlanner.Plan(job, hem, lettered, FabricTable.Find(JobDefaults.Fabric)!);
            long before = GC.GetAllocatedBytesForCurrentThread();
            watch.Restart();
            var plan = LayoutPlanner.Plan(job, hem, lettered, FabricTable.Find(JobDefaults.Fabric)!).Value!;
            double laying = watch.Elapsed.TotalMilliseconds;
            double megabytes = (GC.GetAllocatedBytesForCurrentThread() - before) / 1e6;
            Say($"{count} names, listed, largest: shaped in {shaping:0} ms, laid out in {laying:0} ms ({laying / shaping:0.00} ×), {megabytes:0.0} MB allocated, letters {plan.LetterHeightMm:0.0} mm, {plan.Hoopings.Length} hoopings");
        }
    }

    private static void BestFit()
    {
        foreach (var (count, words, least, most) in new[]
        {
            (60, "two or three to a hooping", 4500, 10_500),
            (500, "two or three to a hooping", 4500, 10_500),
            (500, "one or two to a hooping", 5500, 14_500),
        })
        {
            var random = new Random(7);
            int[] sizes = [.. Enumerable.Range(0, count).Select(_ => random.Next(least, most))];
            var problem = new PackingProblem(sizes, 16_500);
            BinPacker.Pack(new PackingProblem([.. sizes.Take(50)], 16_500));
            var watch = Stopwatch.StartNew();
            var packing = BinPacker.Pack(problem);
            double own = watch.Elapsed.TotalSeconds;
            watch.Restart();
            string solver = Solve(sizes, 16_500, packing.Bins.Length);
            double theirs = watch.Elapsed.TotalSeconds;
            Say($"{count} names, {words}: {packing.Bins.Length} hoopings, bound {packing.Bound} in {own:0.00} s; OR-Tools CP-SAT {solver} in {theirs:0.0} s ({own / theirs:0.000} ×)");
        }
    }

    /// <summary>The plain exact model: each piece in one bin, bins opened in order, the largest pieces spread first.</summary>
    private static string Solve(int[] sizes, int capacity, int mostBins)
    {
        var model = new CpModel();
        var open = Enumerable.Range(0, mostBins).Select(b => model.NewBoolVar("")).ToArray();
        var load = Enumerable.Range(0, mostBins).Select(_ => LinearExpr.NewBuilder()).ToArray();
        foreach (int size in sizes.OrderDescending())
        {
            var places = Enumerable.Range(0, mostBins).Select(_ => model.NewBoolVar("")).ToArray();
            model.AddExactlyOne(places);
            for (int b = 0; b < mostBins; b++)
            {
                load[b].AddTerm(places[b], size);
            }
        }

        for (int b = 0; b < mostBins; b++)
        {
            model.Add(load[b] <= open[b] * capacity);
            if (b > 0)
            {
                model.AddImplication(open[b], open[b - 1]);
            }
        }

        model.Minimize(LinearExpr.Sum(open));
        var solver = new CpSolver
        {
            StringParameters =
            string.Create(CultureInfo.InvariantCulture, $"max_time_in_seconds:{SolverSeconds},num_workers:2")
        };
        var status = solver.Solve(model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? string.Create(CultureInfo.InvariantCulture, $"{solver.ObjectiveValue:0}, bound {solver.BestObjectiveBound:0} ({status})")
            : $"nothing ({status})";
    }

    private static LetteredList Shape(int count, Face face, FaceShelf shelf)
    {
        var random = new Random(count);
        string Word() => string.Concat(Enumerable.Range(0, random.Next(1, 4)).Select(_ => Parts[random.Next(Parts.Length)]));
        var names = Enumerable.Range(0, count).Select(i => new Name($"{Word()} {Word()}", new RowRef("names.csv", i + 2)))
            .ToImmutableArray();
        var rows = names.Select(n => new ListedRow(n.Row, RowOutcome.Placed, n.Text, "", [])).ToImmutableArray();
        return Letterer.Letter(new NameList(rows, names), face, shelf).Value!;
    }

    private static BandJob Job(NameOrder order, int rounds) => new(
        Folder: "", Title: "", Ways: [Way.NeedlePath], Lists: ["names.csv"], Columns: new ColumnChoice(),
        Hem: new HemSettings([Length.FromMm(3660)], null, 0, Closed: true, JobDefaults.Overlap, JobDefaults.Tolerance),
        Strip: new StripSettings(
            JobDefaults.CutWidth, JobDefaults.TurnIn, JobDefaults.Margin, SewnBeforeCutting: true, JobDefaults.ShorteningPart, rounds,
            JobDefaults.Lift, null, GarmentSide.Outside, Reader.Viewer),
        Lettering: new LetteringSettings(JobDefaults.Face, null, JobDefaults.Least, null, Spread: true, order, "und"),
        Hoop: new HoopSettings(JobDefaults.Along, JobDefaults.Across, JobDefaults.Spare),
        JobDefaults.Fabric, JobDefaults.Machine, JobDefaults.Hands);

    private static void Say(FormattableString text) => Console.WriteLine(FormattableString.Invariant(text));
}
