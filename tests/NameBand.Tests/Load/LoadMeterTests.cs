using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Load;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchingRoom;
using Xunit;

namespace NameBand.Tests.LoadRoom;

public class LoadMeterTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    /// <summary>A zigzag 2 mm wide with 0.4 mm between crossings on a side has 5 holes a millimetre.</summary>
    private static NeedlePath Zigzag(double lengthMm, double spacingMm, double widthMm = 2)
    {
        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        steps.Add(new NeedleStep(NeedleAction.Jump, StitchKind.None, new Point(0, 0)));
        int count = (int)Math.Round(lengthMm / (spacingMm / 2));
        for (int i = 0; i <= count; i++)
        {
            steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(i * spacingMm / 2, i % 2 * widthMm)));
        }

        return new NeedlePath(steps.ToImmutable());
    }

    [Fact]
    public void A_plain_zigzag_has_the_load_that_arithmetic_gives()
    {
        var load = LoadMeter.Measure(Zigzag(20, 0.4), Cotton);

        Assert.Equal(101, load.Penetrations);
        Assert.InRange(load.SewnMm2, 38, 44);
        Assert.InRange(load.WorstLetterPerMm2, 101 / 44.0, 101 / 38.0);
        Assert.Equal(LoadVerdict.Fine, load.Verdict);
    }

    [Fact]
    public void Closer_crossings_load_the_cloth_more()
    {
        double last = 0;
        foreach (double spacing in new[] { 0.8, 0.6, 0.4, 0.3, 0.2 })
        {
            double worst = LoadMeter.Measure(Zigzag(20, spacing), Cotton).WorstLetterPerMm2;
            Assert.True(worst > last);
            last = worst;
        }
    }

    [Fact]
    public void Marks_do_not_count()
    {
        var path = new NeedlePath(
        [
            new NeedleStep(NeedleAction.Jump, StitchKind.None, new Point(0, 0)),
            new NeedleStep(NeedleAction.Stitch, StitchKind.Mark, new Point(0, 0)),
            new NeedleStep(NeedleAction.Stitch, StitchKind.Mark, new Point(6, 0)),
        ]);

        var load = LoadMeter.Measure(path, Cotton);

        Assert.Equal(0, load.Penetrations);
        Assert.Equal(0, load.SewnMm2);
        Assert.Equal(LoadVerdict.Fine, load.Verdict);
    }

    [Fact]
    public void An_empty_path_loads_nothing() =>
        Assert.Equal(LoadVerdict.Fine, LoadMeter.Measure(new NeedlePath([]), Cotton).Verdict);

    /// <summary>
    /// Common practice, no source: names work sheer organza and ribbon hard, or too hard, and are held on cotton.
    /// </summary>
    [Fact]
    public void Small_satin_names_work_organza_hard_and_not_cotton()
    {
        var name = Shelf.Name("nunito-bold", "Maren Aldous");
        LoadVerdict On(string cloth)
        {
            var fabric = FabricTable.Find(cloth)!;
            return LoadMeter.Measure(new Stitcher(fabric, 8).SewName(name), fabric).Verdict;
        }

        Assert.Equal(LoadVerdict.Fine, On("quilting cotton"));
        Assert.NotEqual(LoadVerdict.Fine, On("organza"));
        Assert.NotEqual(LoadVerdict.Fine, On("satin ribbon"));
        Assert.NotEqual(LoadVerdict.Fine, On("grosgrain ribbon"));
    }
}
