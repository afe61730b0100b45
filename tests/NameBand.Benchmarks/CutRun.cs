using System.Diagnostics;
using System.Globalization;
using NameBand.Tests.Hostile;

namespace NameBand.Benchmarks;

/// <summary>Cuts the power of a simulated disk again and again in each deed that writes, and has it refuse each of its steps.</summary>
internal static class CutRun
{
    private const int Cuts = 10_000;

    public static int Run(string[] args)
    {
        int cuts = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : Cuts;
        int first = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 0;
        int wrong = 0;
        foreach (string deed in args.Length > 2 ? args[2..] : [.. CutWork.Deeds])
        {
            using var work = new CutWork();
            var clock = Stopwatch.StartNew();
            string[] faults = [.. Enumerable.Range(first, cuts).Select(seed => work.Cut(deed, seed)).OfType<string>()];
            int steps = 0;
            string[] refusals = [.. Refusals(work, deed, s => steps = s)];
            foreach (string fault in faults.Take(5).Concat(refusals.Take(5)))
            {
                Console.WriteLine(fault);
            }

            wrong += faults.Length + refusals.Length;
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{deed,-22} {cuts,6} cuts left {work.DisksLeft(deed),5} different disks, {faults.Length} wrong; " +
                $"{steps,4} steps refused, once and for good, {refusals.Length} wrong; {clock.Elapsed.TotalSeconds:0} s"));
        }

        return wrong == 0 ? 0 : 1;
    }

    private static IEnumerable<string> Refusals(CutWork work, string deed, Action<int> count)
    {
        bool isDone = false;
        for (int step = 0; !isDone; step++)
        {
            string? once = work.Refuse(deed, step, andAllAfter: false, out isDone);
            string? forGood = work.Refuse(deed, step, andAllAfter: true, out _);
            count(step);
            foreach (string fault in new[] { once, forGood }.OfType<string>())
            {
                yield return fault;
            }
        }
    }
}
