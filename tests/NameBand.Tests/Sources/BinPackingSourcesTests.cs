using Google.OrTools.LinearSolver;
using NameBand.Layout.BestFit;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>The best-fit search against published instances with known optimum, and against an independent solver.</summary>
public class BinPackingSourcesTests
{
    /// <summary>
    /// u120_00: capacity 150, 120 pieces, optimum 48 (first-fit decreasing needs 49). Source: OR-Library, file
    /// binpack1, E. Falkenauer, A hybrid grouping genetic algorithm for bin packing, Journal of Heuristics 2 (1996).
    /// </summary>
    private static readonly int[] U120 =
    [
        42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82, 73,
        49, 70, 59, 23, 57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32, 25, 38,
        82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36, 20, 78, 47, 26, 45, 41, 58, 98, 91, 96, 73, 84,
        37, 93, 91, 43, 73, 85, 81, 79, 71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84, 60, 55, 49, 78,
        73, 62, 36, 44, 94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98, 60, 42, 43, 43, 39,
    ];

    [Fact]
    public void U120_00_is_packed_into_its_48_bins_and_proven()
    {
        var packing = Packed(U120, 150);
        Assert.Equal(48, packing.Bins.Length);
        Assert.Equal(48, packing.Bound);
    }

    /// <summary>
    /// Width 100: 45×97, 36×610, 31×395, 14×211; linear program 452.25, optimum 453. Data: the classic example of
    /// Gilmore and Gomory's method as printed in many lecture notes (Chvátal, Linear Programming, 1983, from memory);
    /// the optimum is proven by the prices ½, ½, ¼, 0.
    /// </summary>
    [Fact]
    public void The_textbook_cutting_stock_needs_453_rolls_where_its_linear_program_says_452_and_a_quarter()
    {
        var packing = Packed(Pieces((45, 97), (36, 610), (31, 395), (14, 211)), 100);
        Assert.Equal(453, packing.Bins.Length);
        Assert.Equal(453, packing.Bound);
        Assert.Equal(452.25, packing.PatternHoopings, 6);
    }

    /// <summary>
    /// 13 widths out of rolls of 5600 mm: 73 rolls with 0.401 % waste. Source: the worked example of the encyclopedia
    /// article "Cutting stock problem"; the widths are from memory, and their total is the published 407,160.
    /// </summary>
    [Fact]
    public void Paper_rolls_of_5600_millimetres_are_cut_from_73()
    {
        int[] pieces = Pieces(
            (1380, 22), (1520, 25), (1560, 12), (1710, 14), (1820, 18), (1880, 18), (1930, 20), (2000, 10), (2050, 12),
            (2100, 14), (2140, 16), (2150, 18), (2200, 20));
        Assert.Equal(407_160, pieces.Sum());
        var packing = Packed(pieces, 5600);
        Assert.Equal(73, packing.Bins.Length);
        Assert.Equal(73, packing.Bound);
        Assert.Equal(0.00401, 1 - (pieces.Sum() / (73 * 5600.0)), 5);
    }

    /// <summary>Against SCIP through Google OR-Tools, solved to the optimum in whole fillings.</summary>
    [Theory]
    [InlineData(1, 14, 20, 100)]
    [InlineData(2, 16, 35, 75)]
    [InlineData(3, 15, 30, 60)]
    [InlineData(4, 18, 40, 110)]
    [InlineData(5, 18, 25, 50)]
    [InlineData(6, 20, 45, 80)]
    public void Random_pieces_are_packed_as_an_exact_model_packs_them(int seed, int count, int least, int most)
    {
        for (int round = 0; round < 5; round++)
        {
            var random = new Random((seed * 100) + round);
            int[] sizes = [.. Enumerable.Range(0, count).Select(_ => random.Next(least, most + 1))];
            var packing = Packed(sizes, 150);
            Assert.Equal(ExactBins(sizes, 150), packing.Bins.Length);
            Assert.True(packing.IsProven);
        }
    }

    /// <summary>
    /// Pieces that the quick fillings, and those taken from the program, leave one bin over: completing bin after bin finds
    /// the fewest that their sum allows, which is the proof.
    /// </summary>
    [Theory]
    [InlineData(1_500, 250, 750, 25_620)]
    [InlineData(16_500, 2_000, 6_500, 25_620)]
    [InlineData(16_500, 2_000, 6_500, 29_620)]
    public void Where_nothing_else_does_bins_are_completed_one_after_another(int capacity, int least, int most, int seed)
    {
        var random = new Random(seed);
        int[] sizes = [.. Enumerable.Range(0, 120).Select(_ => random.Next(least, most + 1))];

        var packing = Packed(sizes, capacity);

        Assert.Equal((int)Math.Ceiling(sizes.Sum() / (double)capacity), packing.Bins.Length);
    }

    /// <summary>The pattern program's value against GLOP on the full list of fillings.</summary>
    [Fact]
    public void The_bound_is_that_of_the_pattern_program_over_all_fillings()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            var random = new Random(seed);
            int[] sizes = [.. Enumerable.Range(0, 18).Select(_ => random.Next(34, 76))];
            var problem = new PackingProblem(sizes, 150);
            var program = new PatternProgram(problem, new PatternKnapsack(problem), []);
            program.Solve(int.MaxValue, long.MaxValue);
            Assert.Equal(FullProgram(problem), program.Bound, 6);
        }
    }

    /// <summary>
    /// The names of an open list, lettered at 9 mm with gaps of 13.5 mm for a field of 150 mm: as few hoopings as the
    /// pattern program over all fillings, solved by GLOP, says there must be. Source: @faker-js/faker 10.6.0 (MIT),
    /// names of its locales.
    /// </summary>
    [Fact]
    public void An_open_list_in_best_fit_order_takes_no_more_hoopings_than_an_independent_bound()
    {
        using var folder = new TemporaryFolder().With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "columns": { "name": "name" }, "hem": { "length": "3.66 m" } }""");
        File.Copy(
            Path.Combine(Repository.Root, "tests", "NameBand.Tests", "Sources", "Data", "names-of-many-locales.csv"), folder["names.csv"]);
        var names = Planning.ReadNames(folder.FullPath, new FaceShelf(), default).Value!.Lettered.Names;
        int[] sizes = [.. names.Select(n => (int)Math.Ceiling((n.WidthMm(9, 0.2) + 13.5) * 100)).Where(s => s <= 16_350)];
        Assert.True(sizes.Length > 350);
        var packing = Packed(sizes, 16_350);
        Assert.Equal((int)Math.Ceiling(FullProgram(new PackingProblem(sizes, 16_350)) - 1e-6), packing.Bins.Length);
        Assert.True(packing.IsProven);
    }

    private static Packing Packed(int[] sizes, int capacity)
    {
        var packing = BinPacker.Pack(new PackingProblem(sizes, capacity));
        Assert.Equal(Enumerable.Range(0, sizes.Length), packing.Bins.SelectMany(b => b).Order());
        Assert.All(packing.Bins, b => Assert.True(b.Sum(i => sizes[i]) <= capacity));
        Assert.True(packing.Bound <= packing.Bins.Length);
        return packing;
    }

    private static int[] Pieces(params (int Size, int Times)[] kinds) =>
        [.. kinds.SelectMany(k => Enumerable.Repeat(k.Size, k.Times))];

    private static int ExactBins(int[] sizes, int capacity) =>
        (int)Math.Round(FullProgram(new PackingProblem(sizes, capacity), whole: true));

    /// <summary>Every filling of a bin there is, as a variable of a program that others solve: in parts (GLOP) or whole (SCIP).</summary>
    private static double FullProgram(PackingProblem problem, bool whole = false)
    {
        using var solver = Solver.CreateSolver(whole ? "SCIP" : "GLOP");
        var rows = problem.Kinds.Select(k => solver.MakeConstraint(k.Pieces.Length, double.PositiveInfinity)).ToArray();
        var objective = solver.Objective();
        objective.SetMinimization();
        Add(0, problem.Capacity, new int[rows.Length]);
        Assert.Equal(Solver.ResultStatus.OPTIMAL, solver.Solve());
        return objective.Value();

        void Add(int kind, int room, int[] counts)
        {
            if (kind == rows.Length)
            {
                var filling = solver.MakeVar(0, double.PositiveInfinity, whole, "");
                objective.SetCoefficient(filling, 1);
                for (int i = 0; i < counts.Length; i++)
                {
                    rows[i].SetCoefficient(filling, counts[i]);
                }

                return;
            }

            var (size, pieces) = (problem.Kinds[kind].Size, problem.Kinds[kind].Pieces.Length);
            for (counts[kind] = 0; counts[kind] <= pieces && counts[kind] * size <= room; counts[kind]++)
            {
                Add(kind + 1, room - (counts[kind] * size), counts);
            }

            counts[kind] = 0;
        }
    }
}
