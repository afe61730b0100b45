using Google.OrTools.Sat;
using NameBand.Estimating;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Dealing hoopings out, against the constraint solver of Google.OrTools, which proves its answers.</summary>
public class MakespanOracleTests
{
    [Theory]
    [InlineData(1, 9, 2)]
    [InlineData(2, 12, 3)]
    [InlineData(3, 14, 3)]
    [InlineData(4, 16, 4)]
    public void Several_machines_are_done_as_soon_as_the_solver_proves_possible(int seed, int hoopings, int machines)
    {
        var random = new Random(seed);
        int[] minutes = [.. Enumerable.Range(0, hoopings).Select(_ => random.Next(5, 40))];
        var model = new CpModel();
        var longest = model.NewIntVar(0, minutes.Sum(), "longest");
        var on = Assigned(model, hoopings, machines);
        for (int j = 0; j < machines; j++)
        {
            model.Add(LinearExpr.WeightedSum(Column(on, j), minutes.Select(m => (long)m)) <= longest);
        }

        model.Minimize(longest);
        Assert.Equal(Proven(model), Plan(minutes, machines, null).Minutes, 6);
    }

    [Theory]
    [InlineData(5, 10, 1)]
    [InlineData(6, 12, 2)]
    [InlineData(7, 14, 1)]
    public void Evenings_are_as_few_as_the_solver_proves_possible_along_the_cloth(int seed, int hoopings, int machines)
    {
        const int Evening = 60;
        var random = new Random(seed);
        int[] minutes = [.. Enumerable.Range(0, hoopings).Select(_ => random.Next(11, 31))];
        var model = new CpModel();
        var on = Assigned(model, hoopings, hoopings * machines);
        var used = Enumerable.Range(0, hoopings).Select(e => model.NewBoolVar($"evening {e}")).ToArray();
        for (int b = 0; b < hoopings * machines; b++)
        {
            model.Add(LinearExpr.WeightedSum(Column(on, b), minutes.Select(m => (long)m)) <= Evening * used[b / machines]);
        }

        // Along the cloth: nothing is sewn on an earlier evening, or at an earlier machine of it, than what lies before it.
        var bin = Enumerable.Range(0, hoopings * machines).Select(b => (long)b).ToArray();
        for (int i = 1; i < hoopings; i++)
        {
            model.Add(LinearExpr.WeightedSum(Row(on, i - 1), bin) <= LinearExpr.WeightedSum(Row(on, i), bin));
        }

        model.Minimize(LinearExpr.Sum(used));
        Assert.Equal(Proven(model), Plan(minutes, machines, Evening).Evenings);
    }

    private static BoolVar[,] Assigned(CpModel model, int jobs, int bins)
    {
        var on = new BoolVar[jobs, bins];
        for (int i = 0; i < jobs; i++)
        {
            for (int j = 0; j < bins; j++)
            {
                on[i, j] = model.NewBoolVar($"{i} on {j}");
            }

            model.AddExactlyOne(Enumerable.Range(0, bins).Select(j => on[i, j]));
        }

        return on;
    }

    private static IEnumerable<BoolVar> Column(BoolVar[,] on, int bin) => Enumerable.Range(0, on.GetLength(0)).Select(i => on[i, bin]);

    private static IEnumerable<BoolVar> Row(BoolVar[,] on, int job) => Enumerable.Range(0, on.GetLength(1)).Select(b => on[job, b]);

    private static long Proven(CpModel model)
    {
        var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1" };
        Assert.Equal(CpSolverStatus.Optimal, solver.Solve(model));
        return (long)Math.Round(solver.ObjectiveValue);
    }

    private static EveningPlan Plan(int[] minutes, int machines, double? evening) => EveningPlanner.Plan(
        [.. minutes.Select((m, i) => new HoopingTime(i + 1, m))],
        [.. Enumerable.Range(1, machines).Select(m => new SewingMachine("machine " + m))], evening);
}
