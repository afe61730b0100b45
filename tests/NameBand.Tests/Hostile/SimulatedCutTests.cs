using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>Power cuts and refusals on a simulated disk; the benchmark "cuts" does the same ten thousand times for each deed.</summary>
public class SimulatedCutTests
{
    private const int Cuts = 24;

    private static readonly CutWork Work = new();

    public static TheoryData<string> Deeds => [.. CutWork.Deeds];

    [Theory]
    [MemberData(nameof(Deeds))]
    public void A_cut_at_any_step_loses_nothing_that_was_said(string deed) =>
        Assert.Empty(Enumerable.Range(0, Cuts).Select(seed => Work.Cut(deed, seed)).OfType<string>());

    /// <summary>One step in so many is refused, once and then with all after it; the benchmark refuses each.</summary>
    [Theory]
    [InlineData("make", 16)]
    [InlineData("sewn", 6)]
    [InlineData("title on the page", 3)]
    public void A_refusal_at_any_step_is_told_and_leaves_all_whole(string deed, int every)
    {
        bool isDone = false;
        for (int step = 0; !isDone; step += every)
        {
            Assert.Null(Work.Refuse(deed, step, andAllAfter: true, out _));
            Assert.Null(Work.Refuse(deed, step, andAllAfter: false, out isDone));
        }
    }
}
