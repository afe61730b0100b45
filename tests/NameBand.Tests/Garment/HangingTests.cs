using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Garment.Hanging;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Garment;

/// <summary>The garment as it hangs: as long as its hem, with every name where it is sewn.</summary>
public sealed class HangingTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static BandJob Job(double hemMm, double turn, bool closed, int rounds = 2, Reader reader = Reader.Viewer) => Sample.Job with
    {
        Hem = Sample.Job.Hem with { Lengths = [Length.FromMm(hemMm)], Turn = turn, Closed = closed },
        Strip = Sample.Job.Strip with { Rounds = rounds, ReadBy = reader },
    };

    private static HungGarment Hang(BandJob job, SkirtSettings? skirt = null)
    {
        var hem = Sample.Hem(job);
        return HungGarment.Of(hem, skirt, [.. Enumerable.Range(1, job.Strip.Rounds!.Value).Select(n => (n, hem.RoundMm(n)))]);
    }

    [Theory]
    [InlineData(3660, 1, true, HangingKind.Skirt)]
    [InlineData(3660, 0.75, true, HangingKind.Skirt)]
    [InlineData(2300, 0.5, true, HangingKind.Skirt)]
    [InlineData(3660, 0, true, HangingKind.Skirt)]
    [InlineData(420, 0, true, HangingKind.Skirt)]
    [InlineData(2600, 0.75, false, HangingKind.Cape)]
    [InlineData(1240, 0, false, HangingKind.Banner)]
    [InlineData(5000, 0, false, HangingKind.Curtain)]
    public void It_hangs_as_what_it_is_and_its_hem_and_rounds_are_as_long_as_their_cloth(
        double hemMm, double turn, bool closed, HangingKind kind)
    {
        var job = Job(hemMm, turn, closed);
        var garment = Hang(job);
        var hem = Sample.Hem(job);

        Assert.Equal(kind, garment.Kind);
        Assert.Equal(hemMm, MeasuredMm(garment.Hem), 0.5);
        Assert.All(garment.Strips, s => Assert.Equal(hem.RoundMm(s.Round), MeasuredMm(s.Lower), 0.5));
        Assert.All(garment.Strips, s => Assert.Equal(
            hem.RoundMm(s.Round) - (hem.TurnRad * hem.Strip.FinishedWidthMm), MeasuredMm(s.Upper), 0.5));
        Assert.Equal(3, garment.Strips[0].AboveHemMm);
        Assert.True(garment.Body[0].HeightMm > garment.Strips[^1].Upper.HeightMm && garment.Hem.HeightMm == 0);
        Assert.Equal(!closed || hemMm > 500, garment.Folds > 0);
        // No fold of a circle reaches its middle.
        Assert.All(garment.Body, l => Assert.True(l.IsStraight || l.DepthMm * 1.1 < l.AcrossMm));
    }

    /// <summary>Plane geometry: a circle of r less an opening of a has r·(2π − a) of cloth, and its ends are 2r·sin(a/2) apart.</summary>
    [Theory]
    [InlineData(1.2)]
    [InlineData(0.4)]
    public void Cloth_that_is_open_at_the_front_keeps_its_opening(double openRad)
    {
        var line = HungLine.Round(new FoldWave(0, 0), openRad, 900, 2000, 0);
        var (from, to) = (line.At(0), line.At(1));
        double radius = 2000 / ((2 * Math.PI) - openRad);

        Assert.Equal(2 * radius * Math.Sin(openRad / 2), Math.Sqrt(Math.Pow(from.XMm - to.XMm, 2) + Math.Pow(from.YMm - to.YMm, 2)), 0.01);
        Assert.Equal(radius, Math.Sqrt((from.XMm * from.XMm) + (from.YMm * from.YMm)), 0.01);
    }

    /// <summary>A curtain falls in folds of some fifteen centimetres.</summary>
    [Theory]
    [InlineData(2600, 12)]
    [InlineData(5000, 23)]
    public void A_wider_curtain_has_more_folds(double hemMm, int folds) => Assert.Equal(folds, Hang(Job(hemMm, 0, closed: false)).Folds);

    [Fact]
    public void A_skirt_whose_measures_are_known_has_its_own_waist_and_length()
    {
        var skirt = new SkirtSettings(0.75, Length.FromMm(698.5), Length.FromMm(635), Length.FromMm(38));
        var garment = Hang(Job(HemPlanner.EdgeMm(skirt), 0.75, true), skirt);

        Assert.Equal(635, garment.DropMm, 6);
        // What is taken up at the hem is taken out of the round.
        Assert.Equal(698.5 - 38, garment.Body[0].LengthMm, 0.01);
        Assert.InRange(garment.Folds, 8, 24);
    }

    [Theory]
    [InlineData(0.75, true, Reader.Viewer)]
    [InlineData(0.75, true, Reader.Wearer)]
    [InlineData(0.75, false, Reader.Viewer)]
    [InlineData(0, false, Reader.Wearer)]
    public void Every_name_hangs_once_at_its_length_and_height(double turn, bool closed, Reader reader)
    {
        var job = Job(2400, turn, closed, reader: reader);
        var plan = LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(3, 40)), Cotton).Value!;
        var hung = HungPlan.Of(plan, null);

        var all = plan.Rounds.SelectMany(r => r.NamesAndMotifs.Select(n => (r, n))).ToList();
        Assert.Equal(all.Select(p => (p.r.Number, p.n.Order)), hung.Names.Select(n => (n.Round, n.Name.Order)));
        Assert.Equal(40, hung.Names.Select(n => n.Name.Order).Distinct().Count());
        foreach (var name in hung.Names)
        {
            var strip = hung.Garment.Strips.Single(s => s.Round == name.Round);
            double whole = strip.Lower.LengthMm, scale = whole / strip.LengthMm;
            Assert.Equal(name.Name.StartMm * scale, Way(strip, name.FromPart), 0.05);
            Assert.Equal(name.Name.EndMm * scale, Way(strip, name.ToPart), 0.05);
            double centre = plan.Hem.LiftMm + ((name.Round - 1) * plan.Hem.RoundStepMm) + (plan.Hem.Strip.FinishedWidthMm / 2);
            Assert.Equal(centre + ((reader == Reader.Viewer ? 1 : -1) * name.Name.BaselineYMm), name.AboveHemMm, 9);
        }

        double Way(HungStrip strip, double part)
        {
            double way = (strip.Lower.AlongMm(part) - strip.BeginsMm) * (strip.IsForward ? 1 : -1);
            return way < -0.01 ? way + strip.Lower.LengthMm : way;
        }
    }

    /// <summary>A name's place on a curved strip is wider than its letters: what hangs there is the letters.</summary>
    [Fact]
    public void On_a_curved_strip_a_name_hangs_as_wide_as_its_letters_in_the_middle_of_its_place()
    {
        var job = Job(2400, 0.75, true) with { Layout = Sample.Job.Layout with { IsCurved = true } };
        var plan = LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(3, 20)), Cotton).Value!;
        var hung = HungPlan.Of(plan, null);

        Assert.Equal(20, hung.Names.Length);
        foreach (var name in hung.Names)
        {
            var strip = hung.Garment.Strips.Single(s => s.Round == name.Round);
            double letters = name.Name.Lettered.WidthMm(plan.LetterHeightMm, plan.PullCompensationMm);
            Assert.True(letters < name.Name.WidthMm - 0.1, $"{letters} in {name.Name.WidthMm}");
            double middle = (name.Name.StartMm + name.Name.EndMm) / 2;
            Assert.Equal(strip.AlongPart(middle - (letters / 2)), name.FromPart, 9);
            Assert.Equal(strip.AlongPart(middle + (letters / 2)), name.ToPart, 9);
        }
    }

    /// <summary>Who stands before it reads to her right; the ends meet behind.</summary>
    [Fact]
    public void The_strip_begins_at_the_back_and_runs_to_the_right_of_who_stands_before_it()
    {
        var strip = Hang(Job(3660, 0.75, true)).Strips[0];
        var (backX, backY) = strip.Lower.At(strip.AlongPart(0));
        Assert.True(Math.Abs(backX) < 5 && backY > 100, $"{backX} {backY}");
        var (frontX, frontY) = strip.Lower.At(strip.AlongPart(strip.LengthMm / 2));
        Assert.True(frontY < -100 && Math.Abs(frontX) < 80, $"{frontX} {frontY}");
        Assert.True(strip.Lower.At(strip.AlongPart((strip.LengthMm / 2) + 300)).XMm > frontX);

        var banner = Hang(Job(1240, 0, false)).Strips[0];
        Assert.True(banner.Lower.At(banner.AlongPart(10)).XMm < -500 && banner.Lower.At(banner.AlongPart(1200)).XMm > 500);
        var worn = Hang(Job(1240, 0, false, reader: Reader.Wearer)).Strips[0];
        Assert.True(worn.Lower.At(worn.AlongPart(10)).XMm > 500);
    }

    /// <summary>Whatever a job says, something hangs there, and no number is none.</summary>
    [Theory]
    [InlineData(3660, 0.01, true, 3)]
    [InlineData(3660, 1, true, 40)]
    [InlineData(30, 0.75, true, 1)]
    [InlineData(60, 0, false, 6)]
    [InlineData(420_000, 0, false, 1)]
    [InlineData(36_600, 1, true, 2)]
    public void Odd_measures_hang_too(double hemMm, double turn, bool closed, int rounds)
    {
        var hem = Sample.Hem(Job(3660, 0.75, true)) with { EdgeLengthMm = hemMm, TurnRad = 2 * Math.PI * turn, Closed = closed };
        var skirt = hemMm == 30 ? new SkirtSettings(turn, Length.FromMm(1), Length.FromMm(1), Length.FromMm(0)) : null;
        var garment = HungGarment.Of(hem, skirt, [.. Enumerable.Range(1, rounds).Select(n => (n, hem.RoundMm(n)))]);
        foreach (var line in garment.Body.Concat(garment.Strips.SelectMany(s => new[] { s.Lower, s.Upper })))
        {
            Assert.True(double.IsFinite(line.LengthMm) && line.LengthMm > 0 && double.IsFinite(line.HeightMm));
            var (x, y) = line.At(line.AlongPart(line.LengthMm / 3));
            Assert.True(double.IsFinite(x) && double.IsFinite(y));
        }
    }

    /// <summary>By chords alone, so many that they are as long as the arc.</summary>
    private static double MeasuredMm(HungLine line)
    {
        const int Chords = 60_000;
        double whole = 0;
        var before = line.At(0);
        for (int i = 1; i <= Chords; i++)
        {
            var at = line.At(i / (double)Chords);
            whole += Math.Sqrt(((at.XMm - before.XMm) * (at.XMm - before.XMm)) + ((at.YMm - before.YMm) * (at.YMm - before.YMm)));
            before = at;
        }

        return whole;
    }
}
