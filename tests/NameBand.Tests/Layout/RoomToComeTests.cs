using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Room for names that come later, odd long names, joins where they show least, and cloth as it is used.</summary>
public class RoomToComeTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static StripPlan Lay(BandJob job, LetteredList names) => LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton).Value!;

    private static LetteredList Usual(int seed, int count) => Sample.Lettered(Sample.RandomWidths(seed, count, 4, 7));

    private static LetteredList With(LetteredList list, double width, bool isKept = false)
    {
        var name = Sample.Boxed("the long one", width, line: 900);
        return list with { Names = list.Names.Add(name with { Name = name.Name with { IsKept = isKept } }) };
    }

    [Fact]
    public void A_tenth_of_every_round_stays_free_where_more_names_are_to_come()
    {
        var job = Sample.Job.WithRounds(2) with { HasMoreToCome = true, Hem = Sample.Job.Hem with { Turn = 0.75 } };
        var plan = Lay(job, Usual(1, 60));
        Assert.Equal(2, plan.Rounds.Length);
        Assert.All(plan.Rounds, r => Assert.True(r.Names.Max(n => n.EndMm) <= (0.9 * r.HemMm) - (r.GapMm / 2) + 1e-6));
        Assert.All(plan.Rounds, r => Assert.True(r.Names.Max(n => n.EndMm) > 0.85 * r.HemMm));
        Assert.True(plan.MatchesHem);

        var more = Lay(job with { KeepFree = Length.FromMm(600) }, Usual(1, 60));
        Assert.All(more.Rounds, r => Assert.True(r.Names.Max(n => n.EndMm) <= r.HemMm - 600 - (r.GapMm / 2) + 1e-6));
        Assert.All(
            Lay(job with { HasMoreToCome = false }, Usual(1, 60)).Rounds, r => Assert.True(r.Names.Max(n => n.EndMm) > 0.95 * r.HemMm));
    }

    [Fact]
    public void A_name_that_alone_costs_over_a_tenth_of_the_letters_is_held_with_what_it_costs_unless_it_is_kept()
    {
        // 148.5 mm of field: 17 letter heights wide it is no more than 8.7 mm high, and without it the letters are larger.
        var plan = Lay(Sample.Job, With(Usual(2, 30), 17));
        var held = Assert.Single(plan.Held);
        Assert.Equal(900, held.Row.Line);
        Assert.Equal(30, plan.NameCount);

        var kept = Lay(Sample.Job, With(Usual(2, 30), 17, isKept: true));
        Assert.Empty(kept.Held);
        Assert.Equal(31, kept.NameCount);
        Assert.True(kept.LetterHeightMm < 0.9 * plan.LetterHeightMm);
        Assert.Contains(
            FormattableString.Invariant($"all letters {kept.LetterHeightMm:0.0} mm high"), held.Reason.English, StringComparison.Ordinal);

        // What is said to be without it is what a name of the usual length in its place would allow.
        double usual = Usual(2, 30).Names.Add(Sample.Boxed("", 17)).Select(n => n.Ink.WidthMm).Order().ElementAt(15);
        double without = Lay(Sample.Job, With(Usual(2, 30), usual)).LetterHeightMm;
        Assert.Contains(FormattableString.Invariant($"would be {without:0.0} mm without it"), held.Reason.English, StringComparison.Ordinal);
    }

    [Fact]
    public void What_every_name_costs_holds_none_and_neither_does_a_tenth_or_a_height_that_is_written()
    {
        var few = Sample.Job.WithHem(700, closed: false);
        Assert.Empty(Lay(few, Sample.Lettered(6, 6, 6, 6, 6, 6)).Held);
        Assert.Empty(Lay(few, Sample.Lettered(6, 6, 6, 6, 6, 7)).Held);
        Assert.Empty(Lay(Sample.Job.WithHeight(7), With(Usual(2, 30), 17)).Held);
        for (double width = 7; width < 24; width += 0.25)
        {
            var names = With(Usual(3, 30), width, isKept: true);
            double with = Lay(Sample.Job, names).LetterHeightMm;
            double usual = names.Names.Select(n => n.Ink.WidthMm).Order().ElementAt(15);
            double without = Lay(Sample.Job, With(Usual(3, 30), usual)).LetterHeightMm;
            bool isHeld = !Lay(Sample.Job, With(Usual(3, 30), width)).Held.IsEmpty;
            Assert.Equal(with < (0.9 * without) - 1e-6, isHeld);
        }
    }

    [Fact]
    public void A_long_name_waits_in_the_list_until_it_is_kept()
    {
        using var folder = new TemporaryFolder();
        const string Long = "Bartholomew Featherstone";
        folder.With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""");
        folder.With(
            "names.csv", "Name\nBo Reed\nIlse Varga\nJo Marsh\nNia Yeo\nRafe Holm\nPiran Jago\nZofia Kay\nUna Larch\n" + Long + "\n");
        var waiting = Planning.Run(folder.FullPath, new FaceShelf(), default).Value!;
        var row = waiting.Rows.Rows.Single(r => r.Row.Line == 10);
        Assert.Equal((RowOutcome.Held, HeldFor.Size), (row.Outcome, row.HeldFor));
        Assert.Equal(8, waiting.Plan.NameCount);

        folder.With("corrections.csv", "list,line,was,decision,text,why\nnames.csv,10," + Long + ",keep,,\n");
        var kept = Planning.Run(folder.FullPath, new FaceShelf(), default).Value!;
        Assert.Equal(9, kept.Plan.NameCount);
        Assert.Contains(
            FormattableString.Invariant($"all letters {kept.Plan.LetterHeightMm:0.0} mm high"), row.Reason.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2000)]
    [InlineData(1000)]
    [InlineData(700)]
    public void Joins_lie_in_gaps_and_never_at_centre_front(double piece)
    {
        for (int seed = 0; seed < 8; seed++)
        {
            var job = Sample.Job.WithHeight(8) with { Layout = Sample.Job.Layout with { Piece = Length.FromMm(piece) } };
            var plan = Lay(job, Usual(seed, 40));
            var round = Assert.Single(plan.Rounds);
            double[] joins = [.. plan.Cloths.SelectMany(c => c.Pieces).Where(p => p.StartMm > 0).Select(p => p.StartMm)];
            // As few as can be: from each join to the farthest gap that a piece reaches and that is not at the front.
            double[] gaps = [.. round.Names.Zip(round.Names.Skip(1)).Select(p => (p.First.EndMm + p.Second.StartMm) / 2)
                .Where(g => Math.Abs(g - 1830) >= GarmentMiddles.AtFrontMm)];
            int least = 0;
            for (double at = 0; 3660 - at > piece; at = gaps.Last(g => g <= at + piece))
            {
                least++;
            }

            Assert.Equal(least, joins.Length);
            Assert.All(joins, j => Assert.True(Math.Abs(j - 1830) >= GarmentMiddles.AtFrontMm, $"{j}"));
            Assert.All(joins, j => Assert.DoesNotContain(round.Names, n => n.StartMm < j && n.EndMm > j));
            Assert.All(plan.Cloths.SelectMany(c => c.Pieces), p => Assert.True(p.LengthMm <= piece + 1e-6));
        }
    }

    [Fact]
    public void Diagonal_joins_keep_out_of_centre_front_too_and_ends_that_meet_there_are_told_of()
    {
        var job = Sample.Job.WithHeight(7) with
        {
            Layout =
            Sample.Job.Layout with { Piece = Length.FromMm(2000), IsJoinedDiagonally = true }
        };
        var joins = Lay(job, Usual(1, 20)).Cloths.SelectMany(c => c.Pieces).Where(p => p.StartMm > 0).ToList();
        Assert.All(joins, p => Assert.True(Math.Abs(p.StartMm - 1830) >= GarmentMiddles.AtFrontMm));
        Assert.NotEmpty(joins);

        var front = job with { Layout = job.Layout with { CentreFront = Length.FromMm(0) } };
        Assert.Contains(HemPlanner.Plan(front).Problems, p => p.Severity == Severity.Note && p.Where.Key == "hem.centreFront");
        Assert.DoesNotContain(HemPlanner.Plan(job).Problems, p => p.Where.Key == "hem.centreFront");
    }

    /// <summary>A round whose cloth is added once something is sewn: even pieces of the closed hem would be joined right at its
    /// front.</summary>
    [Theory]
    [InlineData(2000, 2, null)]
    [InlineData(1840, 3, null)]
    [InlineData(1300, 3, 1220.0)]
    [InlineData(5000, 1, null)]
    public void The_cloth_of_a_round_that_is_added_later_is_not_joined_at_centre_front_either(double piece, int pieces, double? front)
    {
        var job = Sample.Job with
        {
            Layout = Sample.Job.Layout with { Piece = Length.FromMm(piece), CentreFront = front is { } mm ? Length.FromMm(mm) : null },
        };
        var hem = Sample.Hem(job);
        var sizing = new Sizing("", hem, 160, 100, 5, 0.2, 0.01, null);
        var cut = AddedCloths.For(job, sizing, [hem.RoundMm(1)], []).SelectMany(c => c.Pieces).ToList();
        Assert.Equal(pieces, cut.Count);
        Assert.Equal(0, cut[0].StartMm);
        Assert.Equal(hem.RoundMm(1), cut[^1].EndMm, 9);
        Assert.All(cut, p => Assert.InRange(p.LengthMm, 1, piece + 1e-6));
        Assert.All(cut.Zip(cut.Skip(1)), p => Assert.Equal(p.First.EndMm, p.Second.StartMm, 9));
        Assert.All(cut.Skip(1), p => Assert.True(Math.Abs(p.StartMm - (front ?? 1830)) >= GarmentMiddles.AtFrontMm - 1e-9, $"{p.StartMm}"));
    }

    [Fact]
    public void Cloth_is_said_as_it_is_used_and_pieces_that_are_proposed_take_no_more_than_is_said()
    {
        for (int rounds = 1; rounds <= 2; rounds++)
        {
            var job = Sample.Job.WithRounds(rounds) with { Hem = Sample.Job.Hem with { Turn = 0.75 } };
            var (whole, needed) = Cloth(job, rounds);
            Assert.Contains(
                FormattableString.Invariant($": {rounds * 0.18:0.00} m of the 1.1 m that the cloth is wide"), needed,
                StringComparison.Ordinal);
            double piece = Number(needed, "at most ");
            double said = Number(needed, "seen) ");
            var (inPieces, _) = Cloth(job with { Layout = job.Layout with { Piece = Length.FromMm(piece) } }, rounds);
            Assert.True(inPieces <= said + 1e-9, $"{inPieces} {said}");
            Assert.True(said <= whole - 0.5);
        }

        static (double Amount, string Needed) Cloth(BandJob job, int rounds)
        {
            var plan = Lay(job, Usual(rounds, 30 * rounds));
            var line = Shopping.For(job, plan, new Estimate([], new Work([]), 1, 1)).Lines.Single(l => l.What == "cloth");
            return (line.Amount, line.Needed.English);
        }

        static double Number(string text, string after)
        {
            string rest = text[(text.IndexOf(after, StringComparison.Ordinal) + after.Length)..];
            return double.Parse(rest[..rest.IndexOf(' ', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
        }
    }
}
