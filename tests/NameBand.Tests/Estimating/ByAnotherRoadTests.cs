using System.Collections.Immutable;
using NameBand.Estimating;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>Ranges, elapsed time and evenings, each worked out once more by a road that shares nothing with the program's.</summary>
public class ByAnotherRoadTests
{
    /// <summary>In a normal distribution one case of ten lies below this many standard deviations under the mean.</summary>
    private const double TenthInSd = 1.2815515655446004;

    private const int Draws = 200_000;

    [Fact]
    public void Where_every_cause_strays_as_far_down_as_up_the_range_is_that_of_many_drawn_jobs()
    {
        var (hands, sewing, breaks) = (Even("hands", 0.2), Even("sewing", 0.1), Even("breaks", 0.6));
        WorkRow[] rows =
            [Row(hands, 40, 3), Row(hands, 10, 1), Row(sewing, 12, 5), Row(breaks, 3, 4), Row(hands, 2, 25), Row(sewing, 1, 30)];
        var stated = Work.Sum(rows);
        double[] drawn = Drawn(rows, new Random(11));
        Assert.Equal(40 * 3 + 10 + 60 + 12 + 50 + 30, stated.Likely, 9);
        Assert.InRange(stated.Low / drawn[Draws / 10], 0.997, 1.003);
        Assert.InRange(stated.High / drawn[Draws * 9 / 10], 0.997, 1.003);

        // In closed form: the rows of one cause as one, the causes by their squares.
        double reach = Math.Sqrt(Math.Pow((120 + 10 + 50) * 0.2, 2) + Math.Pow((60 + 30) * 0.1, 2) + Math.Pow(12 * 0.6, 2));
        Assert.Equal((stated.Likely - reach, stated.Likely + reach), (stated.Low, stated.High), Near);

        // Were all rows one cause the range would be wider, were each its own, narrower: neither is what is stated.
        double together = rows.Sum(r => r.Minutes.High - r.Minutes.Likely),
        apart = Math.Sqrt(rows.Sum(r => Math.Pow(r.Minutes.High - r.Minutes.Likely, 2)));
        Assert.True(apart < reach - 1 && reach < together - 1);
    }

    [Fact]
    public void Of_a_whole_job_eight_cases_of_ten_lie_within_what_is_stated()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nOrla Penhale\nBram Sedgewick\nTuva Lind\nIlse Quill\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "900 mm", "turn": 0 } }""");
        var work = Bander.Hours(folder.FullPath).Estimate!.Work;
        Assert.True(work.Rows.Select(r => r.Cause.Name).Distinct().Count() >= 5);
        foreach (var rows in new[] { work.Rows.ToArray(), [.. work.By(Doer.Machine)], [.. work.By(Doer.Hands)] })
        {
            var stated = Work.Sum(rows);
            double[] drawn = Drawn(rows, new Random(7));
            double within = drawn.Count(m => m >= stated.Low && m <= stated.High) / (double)Draws;
            Assert.InRange(within, 0.76, 0.84);
        }
    }

    [Theory]
    [InlineData(1, 5, 7, 3)]
    [InlineData(2, 5, 7, 3)]
    [InlineData(4, 4.5, 6, 2.25)]
    [InlineData(4, 2, 3, 8)]
    [InlineData(3, 1.5, 4, 4)]
    public void By_the_clock_it_takes_what_the_best_of_all_orders_of_hand_work_takes(
        int pieces, double hooping, double machine, double clipping)
    {
        WorkRow[] rows =
        [
            Row(WorkCause.HerPace, pieces, hooping),
            Row(WorkCause.MachinePace, pieces, machine) with { By = Doer.Machine, IsAttended = false },
            Row(WorkCause.HerPace, pieces, clipping) with { IsMeanwhile = true },
        ];
        Assert.Equal(Soonest(pieces, hooping, machine, clipping), new Work([.. rows]).ElapsedMinutes(pieces), 9);

        // With the machine watched nothing overlaps.
        var watched = new Work([.. rows.Select(r => r with { IsAttended = true })]);
        Assert.Equal(pieces * (hooping + machine + clipping), watched.ElapsedMinutes(pieces), 9);
    }

    [Fact]
    public void No_way_of_dealing_hoopings_out_in_their_order_takes_fewer_evenings()
    {
        var random = new Random(5);
        for (int i = 0; i < 400; i++)
        {
            double[] minutes = [.. Enumerable.Range(0, random.Next(1, 8)).Select(_ => Math.Round(random.NextDouble() * 30, 1) + 1)];
            double evening = 32 + random.Next(0, 60), before = random.Next(0, 80), after = random.Next(0, 80);
            var plan = EveningPlanner.Plan(
                [.. minutes.Select((m, h) => new HoopingTime(h + 1, m))], [new SewingMachine("")], evening,
                new OtherWork([new OtherTask("before", before)], [new OtherTask("after", after)]));
            int fewest = Fewest(minutes, evening, before, after);
            string what =
                FormattableString.Invariant($"case {i}: {string.Join(' ', minutes)} in {evening}, {before} before and {after} after");
            Assert.True(fewest == plan.Evenings, $"{what}: {plan.Evenings} evenings, and {fewest} do");
            Assert.True(plan.LeastEvenings <= fewest, what);
            Assert.Equal(minutes.Sum() + before + after, plan.Sittings.Sum(s => s.Minutes), 6);
            Assert.Equal(Enumerable.Range(1, minutes.Length), plan.Sittings.OrderBy(s => s.Evening).SelectMany(s => s.Hoopings));
        }
    }

    private static IEqualityComparer<(double, double)> Near { get; } = EqualityComparer<(double Low, double High)>.Create(
        (a, b) => Math.Abs(a.Low - b.Low) < 1e-9 && Math.Abs(a.High - b.High) < 1e-9, _ => 0)!;

    private static WorkCause Even(string name, double part) => new(name, 1 - part, 1 + part, "");

    private static WorkRow Row(WorkCause cause, double count, double each) =>
        new("act", Doer.Hands, WorkTime.EachHooping, "pieces", count, each, cause);

    /// <summary>
    /// The minutes of many jobs, ascending: each cause strays once for all its rows, as a normal deviate, so far that in one
    /// case of ten they are under the low and in one over the high.
    /// </summary>
    private static double[] Drawn(WorkRow[] rows, Random random)
    {
        var causes = rows.GroupBy(r => r.Cause.Name)
            .Select(g => (Likely: g.Sum(r => r.Count * r.EachMinutes), g.First().Cause.Low, g.First().Cause.High)).ToArray();
        double[] jobs = new double[Draws];
        for (int i = 0; i < jobs.Length; i++)
        {
            foreach (var (likely, low, high) in causes)
            {
                double deviate = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
                jobs[i] += likely * (1 + (deviate / TenthInSd * (deviate < 0 ? 1 - low : high - 1)));
            }
        }

        Array.Sort(jobs);
        return jobs;
    }

    /// <summary>One pair of hands, one hoop, one machine that sews by itself: every order of hooping and clipping is tried.</summary>
    private static double Soonest(int pieces, double hooping, double machine, double clipping)
    {
        double best = double.MaxValue;
        Try(0, 0, 0, 0, []);
        return best;

        // A piece can be hooped when the hoop is free again, and clipped when it has been sewn.
        void Try(int hooped, int clipped, double hands, double sewn, ImmutableArray<double> ready)
        {
            if (hooped == pieces && clipped == pieces)
            {
                best = Math.Min(best, Math.Max(hands, sewn));
                return;
            }

            if (hooped < pieces)
            {
                double start = Math.Max(hands, sewn);
                Try(hooped + 1, clipped, start + hooping, start + hooping + machine, ready.Add(start + hooping + machine));
            }

            if (clipped < hooped)
            {
                Try(hooped, clipped + 1, Math.Max(hands, ready[clipped]) + clipping, sewn, ready);
            }
        }
    }

    /// <summary>Evenings of the best of all ways to cut the row of hoopings into evenings; other work is laid down and taken up
    /// where one ends.</summary>
    private static int Fewest(double[] minutes, double evening, double before, double after)
    {
        int best = int.MaxValue;
        for (int cuts = 0; cuts < 1 << minutes.Length; cuts++)
        {
            // Bit i: hooping i begins an evening of its own.
            int evenings = (int)Math.Ceiling((before / evening) - 1e-9);
            double used = before - (Math.Max(0, evenings - 1) * evening);
            bool fits = true;
            for (int i = 0; i < minutes.Length && fits; i++)
            {
                if (evenings == 0 || (cuts >> i & 1) == 1)
                {
                    (evenings, used) = (evenings + 1, 0);
                }

                used += minutes[i];
                fits = used <= evening + 1e-9;
            }

            if (fits)
            {
                best = Math.Min(best, evenings + Math.Max(0, (int)Math.Ceiling(((after - (evening - used)) / evening) - 1e-9)));
            }
        }

        return best;
    }
}
