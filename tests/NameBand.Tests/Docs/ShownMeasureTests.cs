using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Resuming;
using NameBand.PlanFile;
using NameBand.Tests.OutputRoom;
using Xunit;

namespace NameBand.Tests.Docs;

/// <summary>A length that a page shows as measured is one that the sample's own hooping comes to.</summary>
public sealed class ShownMeasureTests(PrintedSample printed) : IClassFixture<PrintedSample>
{
    /// <summary>A plain cloth is off by less; the example is not to look like a surprise.</summary>
    private const double UsualPart = 0.01;

    [Theory]
    [InlineData("docs/guide.md")]
    [InlineData("docs/sewing.md")]
    public void A_measured_length_is_that_of_the_sample(string page)
    {
        string[] args = Assert.Single(ShownCommand.On(page), c => c.Args is ["sewn", _, _, "--measured", _, ..]).Args;
        var plan = EarlierPlanFile.Read(Path.GetDirectoryName(printed.FullPath("plan.json"))!, "plan.json").Value!;
        var pieces = SewnStrip.Of(plan, int.Parse(args[2], System.Globalization.CultureInfo.InvariantCulture));
        var piece = args is [.., "--strip", var strip] ? pieces.Single(p => $"{p.Strip}" == strip) : Assert.Single(pieces);
        Assert.True(Length.TryParse(args[4], out var measured, out _));
        Assert.InRange(measured.Mm, piece.ExpectedMm * (1 - UsualPart), piece.ExpectedMm * (1 + UsualPart));
    }
}
