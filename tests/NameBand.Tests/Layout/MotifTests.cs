using System.Collections.Immutable;
using CsCheck;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Motifs in the gaps between names.</summary>
public class MotifTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static LetteredName Drawn(MotifKind kind) =>
        MotifMaker.Make(Sample.Job with { Motif = new MotifSettings(kind) }, null!, null!).Value!;

    [Fact]
    public void Each_motif_lies_in_the_middle_of_a_gap_and_in_one_segment_that_the_field_holds_and_no_hooping_is_added() =>
        Gen.Select(Gen.Int[0, 1000], Gen.Int[2, 40], Gen.Double[8, 60], Gen.Bool).Sample((seed, count, gap, closed) =>
        {
            var job = Sample.Job.WithHem(4000, closed)
                .WithHeight(8) with
            { Lettering = Sample.Job.Lettering with { Height = Length.FromMm(8), Gap = Length.FromMm(gap) } };
            var names = Sample.Lettered(Sample.RandomWidths(seed, count));
            var bare = LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton).Value!;
            var plan = LayoutPlanner.Plan(job, Sample.Hem(job), names with { Motif = Drawn(MotifKind.Diamond) }, Cotton).Value!;
            Assert.Equal(bare.Hoopings.Length, plan.Hoopings.Length);
            Assert.Equal(bare.Rounds[0].Names.Select(n => n.StartMm), plan.Rounds[0].Names.Select(n => n.StartMm));
            var all = plan.Rounds[0].Names.ToList();
            double width = (Drawn(MotifKind.Diamond).Ink.WidthMm * 8) + (2 * Cotton.PullCompensationMm);
            Assert.All(plan.Rounds[0].Segments.SelectMany(s => s.Motifs), m => Assert.Equal(width, m.WidthMm, 1e-6));
            foreach (var segment in plan.Rounds[0].Segments)
            {
                Assert.True(segment.LengthMm / 0.99 <= 150 + 1e-6);
                foreach (var item in segment.NamesAndMotifs)
                {
                    Assert.InRange(item.StartMm, segment.StartMm - 1e-6, segment.StartMm + segment.LengthMm);
                    Assert.InRange(item.EndMm, segment.StartMm, segment.StartMm + segment.LengthMm + 1e-6);
                }

                foreach (var motif in segment.Motifs)
                {
                    var before = all.Last(n => n.StartMm < motif.StartMm);
                    var after = all.First(n => n.StartMm > motif.StartMm);
                    Assert.Equal(motif.StartMm - before.EndMm, after.StartMm - motif.EndMm, 1e-6);
                    Assert.True(motif.StartMm - before.EndMm >= 4 - 1e-6);
                }
            }

            // Inside a segment every gap that is wide enough has one.
            double narrowest = width + 8;
            int inside = plan.Rounds[0].Segments.Sum(s =>
                s.Names.Zip(s.Names.Skip(1)).Count(p => p.Second.StartMm - p.First.EndMm >= narrowest + 1e-6));
            Assert.True(plan.Rounds[0].Segments.Sum(s => s.Motifs.Length) >= inside);
        }, iter: 200, seed: "0N0XIzNsQ0O2");

    /// <summary>How strips lie beside each other costs only work, so it takes none of what is seen.</summary>
    [Fact]
    public void The_same_motifs_are_sewn_however_many_strips_lie_side_by_side()
    {
        int beside = 0, curved = 0, apart = 0;
        Gen.Select(Gen.Int[0, 1000], Gen.Int[8, 30], Gen.Double[14, 40], Gen.Int[2, 3], Gen.Bool).Sample((seed, count, gap, most, bent) =>
        {
            var job = Sample.Job.WithHem(bent ? 2000 : 1500) with
            {
                Lettering = Sample.Job.Lettering with { Height = Length.FromMm(8), Gap = Length.FromMm(gap) },
                Hoop = new HoopSettings(Length.FromMm(160), Length.FromMm(100 + (51 * (most - 2)) + (bent ? 100 : 0)), Length.FromMm(5)),
                Layout = Sample.Job.Layout with { Lanes = null, AreLanesFree = true, IsCurved = bent },
            };
            job = job.WithRounds(3) with { Hem = job.Hem with { Turn = bent ? 0.25 : 0, Closed = !bent } };
            var names = Sample.Lettered(Sample.RandomWidths(seed, count)) with { Motif = Drawn(MotifKind.Dot) };
            var one = Plan(1);
            var many = Plan(most);
            Assert.Equal(Motifs(one), Motifs(many));
            Assert.All(many.Hoopings.SelectMany(h => h.Segments), s => Assert.NotEmpty(s.Segment.Names));
            foreach (var segment in many.Rounds.SelectMany(r => r.Segments))
            {
                var inOrder = segment.NamesAndMotifs.ToList();
                apart += segment.Motifs.Contains(inOrder[0]) ? 1 : 0;
            }

            beside += many.Hoopings.Any(h => h.Segments.Length > 1) ? 1 : 0;
            curved += bent && many.Hoopings.Any(h => h.Segments.Length > 1) ? 1 : 0;

            StripPlan Plan(int lanes) => LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton, new LaneChoice(lanes, _ => 0)).Value!;
        }, iter: 60, seed: "0N0XIzNsQ0O3");
        Assert.True(beside > 30 && curved > 5 && apart > 30, $"{beside} {curved} {apart}");

        static List<(int, double)> Motifs(StripPlan plan) => [.. plan.Rounds.SelectMany(r =>
            r.Segments.SelectMany(s => s.Motifs).Select(m => (r.Number, m.StartMm)).Order())];
    }

    /// <summary>One that a long name leaves no room for is sewn with the name behind it.</summary>
    [Fact]
    public void A_motif_that_the_hooping_on_its_left_does_not_hold_goes_to_the_one_on_its_right()
    {
        var job = Sample.Job.WithHem(2000, closed: false).WithHeight(8);
        job = job with { Lettering = job.Lettering with { Gap = Length.FromMm(40), Spread = false } };
        var names = Sample.Lettered(17, 5, 5) with { Motif = Drawn(MotifKind.Dot) };
        var segments = LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton).Value!.Rounds[0].Segments;
        Assert.Equal([0, 2], segments.Select(s => s.Motifs.Length));
        Assert.Equal(segments[1].Motifs[0], segments[1].NamesAndMotifs.First());
    }

    [Fact]
    public void Without_a_gap_of_its_own_the_job_keeps_room_for_the_motif_on_both_sides()
    {
        var wide = Drawn(MotifKind.SmallStar) with { Ink = new Box(-1, 0, 1, 1) };
        var plan = LayoutPlanner.Plan(
            Sample.Job, Sample.Hem(Sample.Job), Sample.Lettered(Sample.RandomWidths(3, 60)) with { Motif = wide }, Cotton).Value!;
        Assert.True(plan.Rounds[0].GapMm >= (3 * plan.LetterHeightMm) + (2 * Cotton.PullCompensationMm) - 1e-9);
        Assert.True(plan.MatchesHem);
    }

    [Fact]
    public void A_gap_too_narrow_for_it_is_told_with_the_gap_that_would_do()
    {
        var job = Sample.Job with
        {
            Lettering =
            Sample.Job.Lettering with { Height = Length.FromMm(8), Gap = Length.FromMm(6), Spread = false }
        };
        var names = Sample.Lettered(Sample.RandomWidths(3, 20)) with { Motif = Drawn(MotifKind.Dot) };
        var laid = LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton);
        Assert.All(laid.Value!.Rounds[0].Segments, s => Assert.Empty(s.Motifs));
        string mend = Assert.Single(laid.Problems, p => p.Where.Key == "lettering.motif").Mend.English;
        double said = double.Parse(mend.Split("\"gap\": \"")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        var wider = job with { Lettering = job.Lettering with { Gap = Length.FromMm(said) } };
        Assert.Contains(LayoutPlanner.Plan(wider, Sample.Hem(wider), names, Cotton).Value!.Rounds[0].Segments, s => !s.Motifs.IsEmpty);
    }

    [Theory]
    [InlineData(MotifKind.Dot, 0.0908)]
    [InlineData(MotifKind.Diamond, 0.1058)]
    [InlineData(MotifKind.SmallStar, 0.1905)]
    public void Motifs_have_the_area_that_plane_geometry_gives_them_and_are_sewn(MotifKind kind, double area)
    {
        // Disc π·d²/4, square with diagonal d: d²/2, star of ten triangles: 10·½·R·r·sin 36°.
        var motif = Drawn(kind);
        Assert.Equal(area, motif.Pieces[0].Piece.Outline.AreaMm2(), 0.001);
        var path = new Stitcher(Cotton, 10).SewName(motif);
        Assert.InRange(path.Stitches, 15, 200);
        Assert.All(path.Steps, s => Assert.InRange(s.At.XMm, -0.001, motif.WidthMm(10, Cotton.PullCompensationMm) + 0.001));
    }

    [Theory]
    [InlineData("\"dots\"", "Did you mean \"dot\"")]
    [InlineData("5", "lettering.motif takes")]
    [InlineData("{ }", "lettering.motif takes")]
    [InlineData("{ \"letter\": \"\" }", "lettering.motif takes")]
    [InlineData("{ \"letter\": 5 }", "lettering.motif takes")]
    [InlineData("{ \"letter\": \"x\", \"size\": 3 }", "lettering.motif takes")]
    [InlineData("{ \"letter\": \"a very long text\" }", "lettering.motif takes")]
    public void What_is_no_motif_is_refused(string motif, string says)
    {
        var read = JobRoom.JobReaderTests.ReadAll(
            $$"""{ "lists": ["n.csv"], "hem": { "length": "3 m" }, "lettering": { "motif": {{motif}} } }""");
        Assert.Contains(
            read.Problems, p => p.Severity == Severity.CannotUse && $"{p.Found} {p.Mend}".Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void A_character_of_a_face_is_a_motif_and_one_that_no_face_has_is_told()
    {
        var shelf = new FaceShelf();
        var face = shelf.Open("Nunito Bold", "").Value!;
        Assert.Equal(
            "&", MotifMaker.Make(Sample.Job with { Motif = new MotifSettings(MotifKind.Letter, "&") }, face, shelf).Value!.Name.Text);
        var none = MotifMaker.Make(Sample.Job with { Motif = new MotifSettings(MotifKind.Letter, "\U0001F600") }, face, shelf);
        Assert.Null(none.Value);
        Assert.Equal("lettering.motif", Assert.Single(none.Problems).Where.Key);
    }
}
