using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using Xunit;

namespace NameBand.Tests.Layout;

public class LayoutPlannerTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static (StripPlan Plan, IReadOnlyList<Problem> Problems) Lay(BandJob job, LetteredList names)
    {
        var result = LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton);
        return (result.Value!, result.Problems);
    }

    /// <summary>One name has tall accents, the other deep tails: each fits by itself, and both not on one base line.</summary>
    [Theory]
    [InlineData(1.3, -0.8)]
    [InlineData(1.4, -0.6)]
    [InlineData(0.9, -0.9)]
    public void Ink_that_reaches_past_the_sewing_zone_is_told_with_how_far_and_the_height_that_fits(double top, double bottom)
    {
        var (plan, problems) = Lay(
            Sample.Job.WithHeight(10),
            new LetteredList("boxes", [Sample.Boxed("Ada", 4, top, -0.1), Sample.Boxed("Bo", 4, 0.7, bottom, 3)], []));
        double zoneMm = plan.Hem.Strip.SewingZoneMm;
        double InkMm(double heightMm) => ((top - bottom) * heightMm) + (2 * plan.PullCompensationMm);

        var told = Assert.Single(problems, p => p.Found.English.Contains("sewing zone", StringComparison.Ordinal));
        Assert.Contains(
            FormattableString.Invariant($"reaches {(InkMm(10) - zoneMm) / 2:0.0#} mm past"), told.Found.English, StringComparison.Ordinal);
        double fits = double.Parse(told.Mend.English.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(zoneMm - InkMm(fits), -0.05, 0.4);
    }

    [Fact]
    public void Names_that_fit_make_a_strip_exactly_as_long_as_the_hem()
    {
        var (plan, problems) = Lay(Sample.Job, Sample.Lettered(Sample.RandomWidths(1, 30)));
        Assert.True(plan.MatchesHem);
        Assert.Equal(0, plan.DifferenceMm, 9);
        Assert.Equal(30, plan.NameCount);
        Assert.Empty(problems);
    }

    [Fact]
    public void On_a_closed_edge_n_names_have_n_equal_gaps_half_a_gap_at_each_end()
    {
        var (plan, _) = Lay(Sample.Job, Sample.Lettered(Sample.RandomWidths(2, 20)));
        var round = plan.Rounds[0];
        var names = round.Names.ToList();
        Assert.Equal(round.GapMm / 2, names[0].StartMm, 6);
        Assert.Equal(round.GapMm / 2, round.LengthMm - names[^1].EndMm, 6);
        Assert.All(names.Zip(names.Skip(1)), p => Assert.Equal(round.GapMm, p.Second.StartMm - p.First.EndMm, 6));
        Assert.True(round.GapMm >= 1.5 * plan.LetterHeightMm - 1e-9);
    }

    [Fact]
    public void On_an_open_edge_n_names_have_one_gap_less_and_no_ink_lies_within_the_margin_of_its_ends()
    {
        var (plan, _) = Lay(Sample.Job.WithHem(2000, closed: false), Sample.Lettered(Sample.RandomWidths(3, 12)));
        var round = plan.Rounds[0];
        var names = round.Names.ToList();
        Assert.Equal(4, names[0].StartMm, 9);
        Assert.Equal(2000 - 4, names[^1].EndMm, 6);
        Assert.All(names.Zip(names.Skip(1)), p => Assert.Equal(round.GapMm, p.Second.StartMm - p.First.EndMm, 6));
        Assert.Equal(2000, round.LengthMm, 6);
        var piece = Assert.Single(plan.Cloths.SelectMany(c => c.Pieces));
        Assert.Equal((12.7, 12.7), (Math.Round(piece.StartAllowanceMm, 6), Math.Round(piece.EndAllowanceMm, 6)));
    }

    [Fact]
    public void On_an_open_edge_with_a_place_kept_clear_its_ends_keep_their_margin_too()
    {
        var job = Sample.Job.WithHem(2000, closed: false)
            .WithHeight(8) with
        { Layout = new LayoutSettings { KeepClear = [new ClearPlace(Length.FromMm(1000), Length.FromMm(40))] } };
        var (plan, _) = Lay(job, Sample.Lettered(Sample.RandomWidths(3, 12)));
        var names = plan.Rounds[0].Names.ToList();
        Assert.InRange(names[0].StartMm, 4 + 6, 100);
        Assert.InRange(names[^1].EndMm, 1900, 1996 - 6);
    }

    [Fact]
    public void Slack_that_is_not_spread_stays_blank_at_the_end()
    {
        var job = Sample.Job with { Lettering = Sample.Job.Lettering with { Spread = false } };
        var (plan, _) = Lay(job.WithHeight(8), Sample.Lettered(Sample.RandomWidths(4, 10)));
        Assert.Equal(12, plan.Rounds[0].GapMm, 9);
        Assert.True(plan.MatchesHem);
        Assert.True(plan.Rounds[0].LengthMm - plan.Rounds[0].Names.Last().EndMm > 100);
    }

    [Fact]
    public void The_next_tenth_of_a_millimetre_would_not_fit()
    {
        foreach (int seed in Enumerable.Range(0, 25))
        {
            var list = Sample.Lettered(Sample.RandomWidths(seed, 25 + (seed * 2)));
            var job = Sample.Job.WithRounds(1 + (seed % 3));
            var (plan, _) = Lay(job, list);
            Assert.Equal(Math.Round(plan.LetterHeightMm, 1), plan.LetterHeightMm, 12);
            Assert.True(Fits(plan, list, plan.LetterHeightMm) || plan.LetterHeightMm == 6);
            Assert.False(Fits(plan, list, plan.LetterHeightMm + 0.1));
        }

        // A second, plain statement of the rules, written apart from the search.
        static bool Fits(StripPlan plan, LetteredList list, double h)
        {
            double Width(LetteredName n) => (n.Ink.WidthMm * h) + 0.4;
            if (list.Names.Any(n => Width(n) / 0.99 > 150 + 1e-9)
                || (list.Names.Max(n => n.Ink.TopMm) - list.Names.Min(n => n.Ink.BottomMm)) * h + 0.4 > 17.4 + 1e-6)
            {
                return false;
            }

            int round = 1;
            double used = 0;
            foreach (var name in list.Names)
            {
                double need = Width(name) + (1.5 * h);
                if (used + need > plan.Hem.RoundMm(round) + 1e-6)
                {
                    round++;
                    used = 0;
                }

                used += need;
                if (round > plan.Rounds.Length || used > plan.Hem.RoundMm(round) + 1e-6)
                {
                    return false;
                }
            }

            return true;
        }
    }

    [Fact]
    public void One_long_name_is_named_with_what_would_be_won_without_it()
    {
        var list = Sample.Lettered([.. Sample.RandomWidths(5, 12), 24.0]);

        // A person has kept it: else it would be held for what it costs.
        list = list with { Names = [.. list.Names.Select(n => n with { Name = n.Name with { IsKept = true } })] };
        var (plan, _) = Lay(Sample.Job, list);
        Assert.Equal(HeightBound.SewingField, plan.Bound);
        Assert.Same(list.Names[^1], plan.Limits[0].Name);
        var (without, _) = Lay(Sample.Job, list with { Names = list.Names.RemoveAt(12) });
        Assert.Equal(without.LetterHeightMm, plan.Limits[0].HeightWithoutMm, 9);
        Assert.True(plan.Limits[0].HeightWithoutMm > plan.LetterHeightMm + 1);
    }

    [Fact]
    public void A_name_too_wide_for_the_field_even_at_the_least_height_is_held_and_the_rest_laid_out()
    {
        var (plan, _) = Lay(Sample.Job, Sample.Lettered(8, 40, 9));
        Assert.Equal(2, plan.NameCount);
        var held = Assert.Single(plan.Held);
        Assert.Equal(3, held.Row.Line);
        Assert.Contains("the field holds 148.5 mm once sewn", held.Reason.English, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_that_do_not_fit_run_over_and_the_number_of_rounds_that_would_do_is_said()
    {
        var (plan, problems) = Lay(Sample.Job, Sample.Lettered(Sample.RandomWidths(6, 90)));
        Assert.Equal(6, plan.LetterHeightMm);
        Assert.False(plan.MatchesHem);
        Assert.True(plan.Rounds[0].LengthMm > plan.Rounds[0].HemMm + 100);
        var problem = Assert.Single(problems);
        Assert.Contains("With 2 rounds", problem.Mend.English, StringComparison.Ordinal);
        var (mended, none) = Lay(Sample.Job.WithRounds(2), Sample.Lettered(Sample.RandomWidths(6, 90)));
        Assert.True(mended.MatchesHem);
        Assert.Empty(none);
        Assert.Contains(FormattableString.Invariant($"{mended.LetterHeightMm:0.0} mm"), problem.Mend.English, StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_under_six_millimetres_are_called_too_small()
    {
        var (_, problems) = Lay(Sample.Job.WithHeight(4), Sample.Lettered(8, 9));
        Assert.Contains(problems, p => p.Found.English.Contains("too small for 40-weight thread", StringComparison.Ordinal));
    }

    [Fact]
    public void A_given_height_at_which_ink_leaves_the_zone_is_told_with_the_height_that_fits()
    {
        var names = new LetteredList("boxes", [Sample.Boxed("Å", 5, 1.3, 0), Sample.Boxed("g", 4, 0.7, -0.4)], []);
        var (_, problems) = Lay(Sample.Job.WithHeight(11), names);
        var (largest, none) = Lay(Sample.Job, names);
        var problem = Assert.Single(problems);
        Assert.Equal(Severity.NeedsPerson, problem.Severity);
        Assert.Contains(
            FormattableString.Invariant($"Letters {largest.LetterHeightMm:0.0} mm high fit"), problem.Mend.English, StringComparison.Ordinal);
        Assert.Empty(none);
    }

    [Fact]
    public void As_many_rounds_as_needed_are_laid_and_the_last_keeps_the_gap_of_the_one_before()
    {
        var (plan, _) = Lay(Sample.Job.WithRounds(null).WithHeight(10), Sample.Lettered(Sample.RandomWidths(7, 70)));
        Assert.True(plan.Rounds.Length >= 2);
        Assert.Equal(plan.Rounds[^2].GapMm, plan.Rounds[^1].GapMm, 9);
        Assert.True(plan.MatchesHem);
        Assert.Equal(70, plan.NameCount);
    }

    [Theory]
    [InlineData(160, 5)]
    [InlineData(130, 0)]
    [InlineData(300, 10)]
    [InlineData(90, 2)]
    public void Segments_hold_whole_names_within_the_field_and_are_the_fewest(double along, double spare)
    {
        var job = Sample.Job with { Hoop = new HoopSettings(Length.FromMm(along), Length.FromMm(100), Length.FromMm(spare)) };
        foreach (int seed in Enumerable.Range(10, 10))
        {
            var (plan, _) = Lay(job, Sample.Lettered(Sample.RandomWidths(seed, 40)));
            foreach (var round in plan.Rounds)
            {
                Assert.All(round.Segments, s =>
                {
                    Assert.True(s.LengthMm / 0.99 <= along - (2 * spare) + 1e-6);
                    Assert.True(s.StartMm <= s.Names[0].StartMm + 1e-9 && s.StartMm + s.LengthMm >= s.Names[^1].EndMm - 1e-9);
                    Assert.True(s.StartMm >= -1e-9 && s.StartMm + s.LengthMm <= round.LengthMm + 1e-6);
                    Assert.Equal(s.StartMm / 0.99, s.ClothStartMm, 6);
                    Assert.True(s.RightMarkMm - s.LeftMarkMm >= Math.Min(100, ((along - (2 * spare)) * 0.99) - 6) - 1e-6);
                });
                Assert.Equal(Fewest(round.Names.ToList(), along - (2 * spare)), round.Segments.Length);
            }
        }

        // Shortest path over cut places: the fewest pieces, found another way.
        static int Fewest(List<PlacedName> names, double longest)
        {
            int[] best = [0, .. Enumerable.Repeat(int.MaxValue - 1, names.Count)];
            for (int to = 1; to <= names.Count; to++)
            {
                for (int from = 0; from < to; from++)
                {
                    if ((names[to - 1].EndMm - names[from].StartMm) / 0.99 <= longest + 1e-6)
                    {
                        best[to] = Math.Min(best[to], best[from] + 1);
                    }
                }
            }

            return best[names.Count];
        }
    }

    [Fact]
    public void All_ink_lies_in_the_sewing_zone_and_the_marks_outside_the_finished_width()
    {
        var names = new LetteredList("boxes", [Sample.Boxed("Åg", 5, 1.3, -0.3), Sample.Boxed("a", 4, 0.7, 0)], []);
        var (plan, _) = Lay(Sample.Job, names);
        Assert.Equal(HeightBound.SewingZone, plan.Bound);
        Assert.True((1.3 * plan.LetterHeightMm) + 0.2 + plan.BaselineYMm <= 8.7 + 1e-6);
        Assert.True((-0.3 * plan.LetterHeightMm) - 0.2 + plan.BaselineYMm >= -8.7 - 1e-6);
        Assert.True(plan.MarkYMm + 2 < -12.7);
    }

    [Fact]
    public void A_name_of_another_script_moves_rather_than_making_everyones_letters_smaller()
    {
        var deep = Sample.Boxed("deep", 5, 0.8, -0.75) with
        {
            Pieces = [new PlacedPiece(new LetterPiece("k", "another face", "d", Outline.Empty, Box.Empty), default)],
        };
        var plain = Sample.Boxed("Ag", 5, 1.05, -0.3);
        var (without, _) = Lay(Sample.Job, new LetteredList("boxes", [plain], []));
        var (plan, _) = Lay(Sample.Job, new LetteredList("boxes", [plain, deep], []));
        double h = plan.LetterHeightMm;
        Assert.True(h > 10.5 && h <= without.LetterHeightMm);
        Assert.True(((0.8 + 0.75) * (h + 0.1)) + 0.4 > 17.4);
        var (common, own) = (plan.Rounds[0].Names.First(), plan.Rounds[0].Names.Last());
        Assert.Equal(plan.BaselineYMm, common.BaselineYMm, 9);
        Assert.True(own.BaselineYMm > common.BaselineYMm);
        Assert.True((-0.75 * h) - 0.2 + own.BaselineYMm >= -8.7 - 1e-9 && (0.8 * h) + 0.2 + own.BaselineYMm <= 8.7 + 1e-9);
    }

    [Fact]
    public void Alphabetical_order_follows_the_alphabet_of_the_named_locale()
    {
        string[] texts = ["Zoe", "Åsa", "Anna", "Örjan", "Bo"];
        var list = new LetteredList("boxes", [.. texts.Select((t, i) => Sample.Boxed(t, 5, line: i + 2))], []);
        var job = Sample.Job with { Lettering = Sample.Job.Lettering with { Order = NameOrder.Alphabetical } };
        string Names(BandJob j) => string.Join(' ', Lay(j, list).Plan.Rounds[0].Names.Select(n => n.Lettered.Name.Text));
        Assert.Equal("Anna Åsa Bo Örjan Zoe", Names(job));
        Assert.Equal("Anna Bo Zoe Åsa Örjan", Names(job with { Lettering = job.Lettering with { Collation = "sv" } }));
    }

    [Fact]
    public void A_list_of_which_nothing_is_left_gives_an_empty_strip_of_the_right_length()
    {
        var (plan, _) = Lay(Sample.Job, Sample.Lettered());
        Assert.Equal(0, plan.NameCount);
        Assert.True(plan.MatchesHem);
        Assert.Empty(plan.Hoopings);
    }
}
