using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using NameBand.Tests.StitchingRoom;
using Xunit;

namespace NameBand.Tests.ClothRoom;

/// <summary>How far satin reaches past the outline: by the length of its stitches, their angle to the grain, and the cloth.</summary>
public class PullTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    public static TheoryData<string> Cloths => [.. FabricTable.All.Select(f => f.Name.English)];

    [Theory]
    [MemberData(nameof(Cloths))]
    public void It_grows_with_the_stitch_is_largest_aslant_and_vanishes_with_the_figure(string name)
    {
        var cloth = FabricTable.Find(name)!;
        double[] along = [.. new[] { 1.0, 2, 4, 7 }.Select(w => cloth.Pull.Factor(w, 1, 0))];
        Assert.True(along.Zip(along.Skip(1)).All(p => p.Second > 1.15 * p.First), string.Join(", ", along));
        Assert.Equal(cloth.ReachMm(7, 1, 0), cloth.ReachMm(12, 1, 0), 12);
        Assert.True(cloth.ReachMm(7, 1, 0) > 1.6 * cloth.PullCompensationMm && cloth.ReachMm(4, 1, 0) > 1.2 * cloth.PullCompensationMm);
        double aslant = cloth.ReachMm(3, 1, 1), up = cloth.ReachMm(3, 0, 1), level = cloth.ReachMm(3, 1, 0);
        Assert.True(aslant >= Math.Min(up, level) && aslant + 1e-12 >= (up + level) / 2, $"{level}, {aslant}, {up}");
        Assert.Equal(cloth.ReachMm(3, 1, 0), cloth.ReachMm(3, -1, 0), 12);
        Assert.Equal(0, (cloth with { PullCompensationMm = 0 }).ReachMm(5, 1, 1));
    }

    [Fact]
    public void On_wovens_it_is_largest_aslant_and_in_a_strip_cut_on_the_bias_the_other_way_round()
    {
        var bias = JobCloth.Cut(Cotton, isBias: true);
        Assert.True(Cotton.ReachMm(3, 1, 1) > Math.Max(Cotton.ReachMm(3, 1, 0), Cotton.ReachMm(3, 0, 1)));
        Assert.True(bias.ReachMm(3, 1, 0) > bias.ReachMm(3, 1, 1) && bias.ReachMm(3, 0, 1) > bias.ReachMm(3, 1, 1));
        Assert.Equal(Cotton.ReachMm(3, 1, 1), bias.ReachMm(3, 1, 0), 12);
        Assert.True(Cotton.Pull.PushFactor(1, 1) > Cotton.Pull.PushFactor(1, 0));
        Assert.Equal(Cotton.Pull.PushFactor(1, 1), bias.Pull.PushFactor(0, 1), 12);
    }

    /// <summary>The stated figure is that of 2 mm in the mean of all directions.</summary>
    [Theory]
    [MemberData(nameof(Cloths))]
    public void The_stated_figure_is_that_of_the_mean_direction_at_two_millimetres(string name)
    {
        var cloth = FabricTable.Find(name)!;
        double mean = Enumerable.Range(0, 360).Select(d => d * Math.PI / 180)
            .Average(a => cloth.Pull.Factor(Pull.StatedAtMm, Math.Cos(a), Math.Sin(a)));
        Assert.InRange(mean, 0.99, 1.01);
    }

    /// <summary>However little a narrow stroke draws in, it is sewn as wide as before: letters of 8 mm would show bare edges.</summary>
    [Fact]
    public void Narrow_strokes_are_sewn_no_narrower_than_by_the_figure()
    {
        Assert.True(Cotton.Pull.Factor(1, 1, 0) < 0.8);
        Assert.Equal(Cotton.PullCompensationMm, Cotton.ReachMm(1, 1, 0));
    }

    /// <summary>The table of the product is what the sheet of cloth foretells: within a tenth, for directions and widths alike.</summary>
    [Theory]
    [InlineData("quilting cotton", 20, 12, 1.5, 0.15)]
    [InlineData("linen", 14, 8, 0.8, 0.15)]
    [InlineData("felt", 8, 8, 8 / 2.6, 0.3)]
    [InlineData("jersey", 6, 3.5, 1.2, 0.35)]
    public void The_table_is_what_the_sheet_of_cloth_foretells(string name, double warp, double weft, double shear, double poisson)
    {
        var pull = FabricTable.Find(name)!.Pull;
        double Foretold(double widthMm, double degrees) =>
            new Membrane(new MembraneCloth(warp, weft, shear, poisson), degrees * Math.PI / 180, widthMm, 1.14, 3).Solved().NarrowerMm;
        var (along, aslant, across) = (Foretold(2, 0), Foretold(2, 45), Foretold(2, 90));
        double mean = (along + (2 * aslant) + across) / 4;
        Assert.InRange(pull.AlongFactor, 0.95 * along / mean, 1.05 * along / mean);
        Assert.InRange(pull.AslantFactor, 0.95 * aslant / mean, 1.05 * aslant / mean);
        Assert.InRange(pull.AcrossFactor, 0.95 * across / mean, 1.05 * across / mean);
        foreach (double width in new[] { 1.0, 4, 7 })
        {
            double grown = Foretold(width, 90) / across;
            Assert.InRange(Pull.GrownFactor(width), 0.9 * grown, 1.1 * grown);
        }
    }

    /// <summary>What is sewn: a wide column reaches farther past its outline than a narrow one of the same letter shape.</summary>
    [Theory]
    [InlineData(8, 0.19, 0.2)]
    [InlineData(20, 0.21, 0.26)]
    [InlineData(40, 0.31, 0.4)]
    public void The_satin_of_an_upright_stem_reaches_as_far_as_its_width_asks(double heightMm, double least, double most)
    {
        var stem = Shelf.Names("nunito-bold", ["I"])[0];
        var satin = new Stitcher(Cotton, heightMm).SewName(stem).Steps.Where(s => s.Kind == StitchKind.Satin).ToList();
        double sewn = satin.Max(s => s.At.XMm) - satin.Min(s => s.At.XMm);
        double reach = (sewn - (stem.Ink.WidthMm * heightMm)) / 2;
        Assert.InRange(reach, least, most);
    }

    /// <summary>The layout leaves the room that letters of its height are let reach, and no more than before up to 10 mm.</summary>
    [Fact]
    public void The_layout_leaves_the_room_that_large_letters_reach_into()
    {
        Assert.Equal(Cotton.PullCompensationMm, Cotton.LettersReachMm(10), 12);
        Assert.True(Cotton.LettersReachMm(40) > 1.9 * Cotton.PullCompensationMm);
        foreach (double height in new[] { 10.0, 40 })
        {
            var name = Shelf.Name("roboto-slab-bold", "MAX");
            double width = name.WidthMm(height, Cotton.LettersReachMm(height));
            Assert.All(new Stitcher(Cotton, height).SewName(name).Steps, s => Assert.InRange(s.At.XMm, -1e-9, width + 1e-9));
        }
    }

    [Fact]
    public void What_a_swatch_showed_goes_before_the_table()
    {
        var shown = JobCloth.With(Cotton, new StitchSettings(null, 0.3) { PullGrowthPart = 0.8, PullAcrossFactor = 1.5, PushMm = 0.11 });
        Assert.Equal((0.3, 0.8, 0.11), (shown.PullCompensationMm, shown.Pull.GrowingPart, shown.PushCompensationMm));
        Assert.Equal(1.5, shown.Pull.AcrossFactor / shown.Pull.AlongFactor, 9);
        Assert.Equal(Cotton.Pull.AcrossFactor + Cotton.Pull.AlongFactor, shown.Pull.AcrossFactor + shown.Pull.AlongFactor, 9);
        Assert.Equal(Cotton, JobCloth.With(Cotton, new StitchSettings()));
    }

    /// <summary>Columns that came out as the model says are fitted back, and one direction alone keeps the cloth's grain.</summary>
    [Theory]
    [InlineData(0.25, 0.6, 1.4, 0.08)]
    [InlineData(0.4, 1, 0.8, 0)]
    [InlineData(0.2, 0, 1, 0.2)]
    public void Measured_columns_give_back_the_figures_they_came_from(double pullMm, double growing, double across, double pushMm)
    {
        var truth = (Cotton.Pull with { GrowingPart = growing }).WithAcross(across);
        (double Width, bool IsLevel)[] sewn = [(1.5, false), (6, false), (1.5, true), (6, true)];
        MeasuredColumn[] columns = [.. sewn.Select(c => Measured(c.Width, c.IsLevel, pullMm, truth, pushMm))];
        var fit = PullFit.Of(columns, Cotton.Pull);
        Assert.Equal((pullMm, growing, pushMm), (fit.PullCompensationMm, fit.GrowingPart, fit.PushMm));
        Assert.Equal(growing > 0 ? across : null, fit.AcrossFactor);
        Assert.InRange(fit.WorstMm, 0, 0.01);
        var same = Cotton.Pull with { GrowingPart = growing };
        var alone = PullFit.Of([Measured(1.5, false, pullMm, same, pushMm), Measured(6, false, pullMm, same, pushMm)], Cotton.Pull);
        Assert.Equal((pullMm, growing), (alone.PullCompensationMm, alone.GrowingPart));
        Assert.Null(alone.AcrossFactor);
    }

    private static MeasuredColumn Measured(double widthMm, bool isLevel, double pullMm, Pull pull, double pushMm)
    {
        var column = new MeasuredColumn("D", isLevel, widthMm, 12, widthMm, 12 + (2 * pushMm * pull.PushStraightFactor));
        return column with { MeasuredWidthMm = widthMm - (2 * PullFit.ForetoldMm(pullMm, pull, column)) };
    }

    /// <summary>Turned by 45° along and across are both aslant, and aslant is half along and half across.</summary>
    [Fact]
    public void On_the_bias_what_was_straight_is_aslant()
    {
        var woven = new Pull(0.5, 0.9, 1.02, 1.3);
        var bias = woven.OnBias();

        Assert.Equal((woven.AslantFactor, woven.AslantFactor), (bias.AlongFactor, bias.AcrossFactor));
        Assert.Equal((woven.AlongFactor + woven.AcrossFactor) / 2, bias.AslantFactor, 1e-12);
        Assert.Equal((woven.PushAslantFactor, woven.PushStraightFactor), (bias.PushStraightFactor, bias.PushAslantFactor));
    }
}
