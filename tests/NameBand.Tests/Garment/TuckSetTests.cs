using System.Collections.Immutable;
using NameBand.Garment;
using Xunit;

namespace NameBand.Tests.Garment;

/// <summary>Tapered tucks: enough of them, none wider than its gap bears, spread evenly.</summary>
public sealed class TuckSetTests
{
    private static ImmutableArray<OpenGap> Gaps(int count, double widthMm) =>
        [.. Enumerable.Range(0, count).Select(i => new OpenGap(i, 120.0 * (i + 1), widthMm))];

    [Fact]
    public void The_narrowest_are_taken_and_so_the_most()
    {
        var tucks = TuckSet.For(40, 60, Gaps(30, 16))!;
        Assert.Equal((2.0, 20), (tucks.WidthMm, tucks.Count));
    }

    [Fact]
    public void Where_gaps_are_few_the_tucks_are_wider()
    {
        var tucks = TuckSet.For(40, 60, Gaps(9, 16))!;
        Assert.Equal((4.5, 9), (tucks.WidthMm, tucks.Count));
    }

    /// <summary>A gap of 16 mm bears 7 mm: 3.5 mm on each side of its middle, the fold beneath it as deep again, and 1 mm clear
    /// of the satin.</summary>
    [Fact]
    public void None_is_wider_than_its_gap_bears()
    {
        Assert.Equal(7, TuckSet.MostInMm(16), 9);
        Assert.Equal(7, TuckSet.For(70, 90, Gaps(10, 16))!.WidthMm);
        Assert.Null(TuckSet.For(70.1, 90, Gaps(10, 16)));
        Assert.Null(TuckSet.For(20, 90, Gaps(10, 5.9)));
        Assert.Equal(TuckSet.MostMm, TuckSet.MostInMm(200), 9);
    }

    [Fact]
    public void They_lie_evenly_over_the_gaps_that_hold_them()
    {
        var gaps = Gaps(12, 16).SetItem(3, new OpenGap(3, 480, 4)).SetItem(7, new OpenGap(7, 960, 4));
        var tucks = TuckSet.For(10, 30, gaps)!;
        Assert.Equal([1, 4, 6, 9, 11], tucks.Gaps.Select(g => g.After));
    }

    [Fact]
    public void They_take_up_what_they_must_and_hardly_more_than_there_is()
    {
        var random = new Random(20260);
        int found = 0;
        for (int i = 0; i < 2000; i++)
        {
            double most = 1 + (random.NextDouble() * 150);
            double least = most * random.NextDouble();
            ImmutableArray<OpenGap> gaps =
                [.. Enumerable.Range(0, random.Next(1, 40)).Select(k => new OpenGap(k, 100.0 * k, 3 + (random.NextDouble() * 30)))];
            if (TuckSet.For(least, most, gaps) is not { } tucks)
            {
                // Not even the widest each gap bears would do, or all alike they cannot come out near enough.
                continue;
            }

            found++;
            Assert.True(tucks.TakesMm >= least - 1e-6);
            Assert.True(tucks.TakesMm <= most + TuckSet.LeastMm + 1e-6);
            Assert.InRange(tucks.WidthMm, TuckSet.LeastMm, TuckSet.MostMm);
            Assert.Equal(tucks.Count, tucks.Gaps.Select(g => g.After).Distinct().Count());
            Assert.Equal(tucks.Gaps.Select(g => g.After).Order(), tucks.Gaps.Select(g => g.After));
            Assert.All(tucks.Gaps, g => Assert.True((2 * tucks.WidthMm) + (2 * TuckSet.ClearMm) <= g.WidthMm + 1e-6));
        }

        Assert.InRange(found, 1000, 2000);
    }
}
