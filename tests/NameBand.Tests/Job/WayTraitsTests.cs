using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>What names that go different ways have in common.</summary>
public class WayTraitsTests
{
    [Fact]
    public void Names_of_several_ways_have_what_any_of_them_has()
    {
        var ways = Enum.GetValues<Way>();
        for (int chosen = 1; chosen < 1 << ways.Length; chosen++)
        {
            Way[] some = [.. ways.Where((_, i) => (chosen >> i & 1) == 1)];
            var any = WayTraits.OfAny(some);
            Assert.Equal(some.Contains(WayTraits.FromNeedlePaths), any.FollowsCoordinates);
            Assert.Equal(some.Contains(WayTraits.Typed), any.HasLettersOfItsOwn);
            Assert.Equal(some.Contains(WayTraits.ByHand), any.IsFollowedByHand);
        }
    }
}
