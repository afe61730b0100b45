using System.Collections.Immutable;

namespace NameBand.Layout.BestFit;

/// <summary>
/// Fills as few bins as it can and says how few there must be at least: quick fillings first, then the pattern
/// linear program for the bound, then fillings taken from that program, piece by piece.
/// </summary>
internal static class BinPacker
{
    /// <summary>
    /// Cells the linear program may work on in all. Counted, never timed, so that the answer is the same on any machine;
    /// some seconds' work on a slow one.
    /// </summary>
    public const long Budget = 4_000_000_000;

    // A count of steps and not a time, so that giving up is the same on every machine. Our choice.
    private const long CompletionSteps = 400_000;

    public static Packing Pack(PackingProblem problem, long budget = Budget)
    {
        if (problem.Sizes.Length == 0)
        {
            return new Packing([], 0, 0);
        }

        var best = Fewer(Filler.BestFitDecreasing(problem), Filler.LeastSlack(problem));
        double volume = problem.Sizes.Sum(s => (double)s) / problem.Capacity;
        int bound = problem.VolumeBound();
        if (best.Length == bound)
        {
            return new Packing(best, bound, volume);
        }

        var program = new PatternProgram(problem, new PatternKnapsack(problem), best.Select(b => Counts(problem, b)));
        program.Solve(best.Length, budget);
        double pattern = Math.Max(volume, program.Bound);
        bound = Math.Max(bound, (int)Math.Ceiling(pattern - 1e-6));
        if (best.Length > bound)
        {
            best = Fewer(best, BinCompletion.Find(problem, bound, CompletionSteps) ?? Dive(problem, program, bound, budget - program.Work));
        }

        return new Packing(best, bound, pattern);
    }

    private static ImmutableArray<ImmutableArray<int>> Fewer(
        ImmutableArray<ImmutableArray<int>> one, ImmutableArray<ImmutableArray<int>> other) =>
        other.Length < one.Length ? other : one;

    private static int[] Counts(PackingProblem problem, ImmutableArray<int> bin)
    {
        var sizes = bin.Select(p => problem.Sizes[p]).ToList();
        return [.. problem.Kinds.Select(k => sizes.Count(s => s == k.Size))];
    }

    /// <summary>
    /// Takes over the fillings that the program uses wholly, or most nearly so, and solves it again for the pieces
    /// that are left, until a quick filling does for the rest or nothing is left.
    /// </summary>
    private static ImmutableArray<ImmutableArray<int>> Dive(PackingProblem problem, PatternProgram program, int wanted, long budget)
    {
        var done = new List<ImmutableArray<int>>();
        int[] pieces = [.. Enumerable.Range(0, problem.Sizes.Length)];
        var current = problem;
        ImmutableArray<ImmutableArray<int>>? best = null;
        while (true)
        {
            var (taken, left) = Take(current, program, wanted - done.Count);
            done.AddRange(taken.Select(bin => bin.Select(p => pieces[p]).ToImmutableArray()));
            int[] remaining = [.. left.Select(p => pieces[p])];
            if (remaining.Length == 0)
            {
                return best is { } earlier ? Fewer(earlier, [.. done]) : [.. done];
            }

            var fillings = Project(program, current, remaining, problem);
            pieces = remaining;
            current = new PackingProblem([.. pieces.Select(p => problem.Sizes[p])], problem.Capacity);
            var rest = Fewer(Filler.BestFitDecreasing(current), Filler.LeastSlack(current));
            ImmutableArray<ImmutableArray<int>> whole = [.. done, .. rest.Select(bin => bin.Select(p => pieces[p]).ToImmutableArray())];
            best = best is { } known ? Fewer(known, whole) : whole;
            if (whole.Length > wanted && BinCompletion.Find(current, wanted - done.Count, CompletionSteps) is { } completed)
            {
                best = [.. done, .. completed.Select(bin => bin.Select(p => pieces[p]).ToImmutableArray())];
            }

            if (best.Value.Length <= wanted || budget <= 0)
            {
                return best.Value;
            }

            program = new PatternProgram(current, new PatternKnapsack(current), fillings.Concat(rest.Select(b => Counts(current, b))));
            program.Solve(int.MaxValue, budget);
            budget -= program.Work;
        }
    }

    /// <summary>
    /// The fillings used once or oftener, and of those used in part the ones nearest to whole; at least one, and none
    /// that wastes more than <paramref name="bins"/> bins can spare, unless there is no other.
    /// </summary>
    private static (List<List<int>> Taken, List<int> Left) Take(PackingProblem problem, PatternProgram program, int bins)
    {
        var stock = problem.Kinds.Select(k => new Stack<int>(k.Pieces.Reverse())).ToArray();
        long spare = ((long)bins * problem.Capacity) - problem.Sizes.Sum(s => (long)s);
        var fillings = program.Fillings().OrderByDescending(f => Part(f.Times)).ToList();
        var taken = new List<List<int>>();
        foreach (var (filling, times) in fillings)
        {
            for (int i = 1; i <= times + 1e-6; i++)
            {
                TryTake(filling, spare);
            }
        }

        foreach (var (filling, _) in fillings.Where(f => Part(f.Times) > 0.8))
        {
            TryTake(filling, spare);
        }

        for (int i = 0; taken.Count == 0; i++)
        {
            TryTake(fillings[i % fillings.Count].Filling, i < fillings.Count ? spare : long.MaxValue);
        }

        return (taken, [.. stock.SelectMany(s => s).Order()]);

        static double Part(double times) => times - Math.Floor(times + 1e-6);

        void TryTake(int[] filling, long most)
        {
            var kinds = new List<int>();
            int room = problem.Capacity;
            var left = stock.Select(s => s.Count).ToArray();
            for (int kind = 0; kind < filling.Length; kind++)
            {
                for (int i = 0; i < filling[kind]; i++)
                {
                    // A place that the program keeps for a larger piece may hold a smaller one.
                    int held = Array.FindIndex(left, kind, n => n > 0);
                    if (held >= 0)
                    {
                        left[held]--;
                        kinds.Add(held);
                        room -= problem.Kinds[held].Size;
                    }
                }
            }

            var more = Filler.FullestSubset(problem, [.. stock.SelectMany((s, k) => s.Take(left[k]))], room);
            room -= more.Sum(p => problem.Sizes[p]);
            if (kinds.Count == 0 || room > most)
            {
                return;
            }

            spare -= room;
            var bin = kinds.Select(k => stock[k].Pop()).ToList();
            foreach (int piece in more)
            {
                bin.Add(stock[problem.KindOf(piece)].Pop());
            }

            taken.Add(bin);
        }
    }

    /// <summary>The program's fillings as far as their pieces are still to be placed, in the kinds of what is left.</summary>
    private static List<int[]> Project(PatternProgram program, PackingProblem from, int[] remaining, PackingProblem whole)
    {
        var sizes = remaining.Select(p => whole.Sizes[p]).GroupBy(s => s).OrderByDescending(g => g.Key).ToList();
        var place = sizes.Select((g, i) => (g.Key, i)).ToDictionary(e => e.Key, e => e.i);
        var projected = new List<int[]>();
        foreach (var (filling, _) in program.Fillings())
        {
            var counts = new int[sizes.Count];
            for (int kind = 0; kind < filling.Length; kind++)
            {
                if (filling[kind] > 0 && place.TryGetValue(from.Kinds[kind].Size, out int at))
                {
                    counts[at] = Math.Min(filling[kind], sizes[at].Count());
                }
            }

            if (counts.Any(c => c > 0))
            {
                projected.Add(counts);
            }
        }

        return projected;
    }
}
