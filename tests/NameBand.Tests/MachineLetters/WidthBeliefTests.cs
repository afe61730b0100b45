using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Widths;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

public class WidthBeliefTests
{
    private static readonly WidthModel Model = new(LetterLook.Sans, HasSpacings: false, 0.5, 0);

    /// <summary>
    /// Some sixty machines whose letters are those of faces the prior does not know. A benchmark holds a thousand of them to the same:
    /// the figures stand in docs/machine-letters.md.
    /// </summary>
    [Fact]
    public void Names_of_machines_it_does_not_know_are_foretold_as_surely_as_it_says()
    {
        var faces = FaceMetrics.Read(FaceMetrics.File).Where(f => f.IsHeldOut).ToList();
        var outcomes = Enumerable.Range(0, 2 * faces.Count).AsParallel().AsOrdered()
            .SelectMany(i => WidthTrial.Run(faces[i % faces.Count], 1 + i, new(LookKnown: true), 0, 3, 8).ToList()).ToList();
        foreach (int read in new[] { 3, 8 })
        {
            var mine = outcomes.Where(o => o.Read == read).ToList();

            // Fewer machines scatter more than the thousand, whose bounds are 88 to 93 %, 3.6 and 3.0 mm.
            Assert.InRange(mine.SelectMany(o => o.Held).Average(h => h ? 1.0 : 0), 0.86, 0.96);
            double[] errors = [.. mine.Where(o => o.Look != "script").SelectMany(o => o.Errors).Select(Math.Abs).Order()];
            Assert.InRange(errors[(int)(0.95 * errors.Length)], 0.5, read == 3 ? 4.1 : 3.3);
            Assert.All(mine.GroupBy(o => o.Look), g => Assert.InRange(g.SelectMany(o => o.Held).Average(h => h ? 1.0 : 0), 0.8, 1));
        }

        // With nothing measured the ranges are wide, and honest.
        var blind = outcomes.Where(o => o.Read == 0).ToList();
        Assert.InRange(blind.SelectMany(o => o.Held).Average(h => h ? 1.0 : 0), 0.85, 1);
        Assert.True(blind.SelectMany(o => o.HalfRanges).Average() > 10);
    }

    /// <summary>Letters like handwriting vary most: where no look is picked they must not be taken for others too soon.</summary>
    [Fact]
    public void Handwriting_of_which_nobody_said_so_is_held_as_often_as_stated()
    {
        var faces = FaceMetrics.Read(FaceMetrics.File).Where(f => f is { IsHeldOut: true, Look: "script" }).ToList();
        var outcomes = Enumerable.Range(0, 8 * faces.Count).AsParallel().AsOrdered()
            .SelectMany(i => WidthTrial.Run(faces[i % faces.Count], 1 + i, new(LookKnown: false), 3).ToList()).ToList();
        Assert.InRange(outcomes.SelectMany(o => o.Held).Average(h => h ? 1.0 : 0), 0.85, 0.97);
    }

    [Fact]
    public void The_prior_knows_none_of_the_faces_it_is_judged_by()
    {
        var faces = FaceMetrics.Read(FaceMetrics.File);
        Assert.Empty(faces.Where(f => f.IsHeldOut).Select(f => f.Face).Intersect(faces.Where(f => !f.IsHeldOut).Select(f => f.Face)));
        Assert.True(faces.Where(f => !f.IsHeldOut).Select(f => f.Face).Distinct().Count() >= 16);

        // The table that is shipped is what those faces make.
        string made = LetterPriorFit.Table(faces.Where(f => !f.IsHeldOut));
        var (again, shipped) = (LetterPrior.Read(made), LetterPrior.Shipped);
        Assert.Equal(again.Looks.Length, shipped.Looks.Length);
        Assert.All(again.Looks.Zip(shipped.Looks), p => Assert.All(p.First.Letters, l =>
        {
            var theirs = p.Second.Letters[l.Key];
            Assert.Equal(l.Value.Advance.Mean, theirs.Advance.Mean, 0.011);
            Assert.Equal(l.Value.Advance.Own, theirs.Advance.Own, 0.021);
        }));
    }

    [Fact]
    public void A_gross_error_is_pointed_out_and_hardly_counts()
    {
        var machine = new SimulatedMachine(FaceMetrics.Read(FaceMetrics.File).First(f => f.Face == "Cabin-Regular"), 5);
        var names = machine.Names(9);
        var sums = names.Select(Sum).ToList();
        var right = Enumerable.Range(0, 8)
            .Select(i => new WidthReading(sums[i], machine.Read(machine.TrueMm(names[i]), 0.3, 0, hasGross: false), i)).ToList();
        var wrong = right.Select((r, i) => i == 3 ? r with { LengthMm = r.LengthMm + 9 } : r).ToList();
        var sound = new WidthBelief(Model, right);
        var belief = new WidthBelief(Model, wrong);
        Assert.Empty(sound.Doubtful);
        Assert.Equal(3, Assert.Single(belief.Wrong));
        Assert.InRange(belief.Doubtful[0].ExpectedMm, machine.TrueMm(names[3]) - 3, machine.TrueMm(names[3]) + 3);
        Assert.Equal(sound.Foretell(sums[8]).MeanMm, belief.Foretell(sums[8]).MeanMm, 1.5);
    }

    [Fact]
    public void Covariance_is_kept_so_a_long_line_is_known_better_than_its_letters()
    {
        var machine = new SimulatedMachine(FaceMetrics.Read(FaceMetrics.File).First(f => f.Face == "Cabin-Regular"), 6);
        var names = machine.Names(8);
        var belief = new WidthBelief(Model, names.Select((n, i) => new WidthReading(Sum(n), machine.TrueMm(n), i)));
        var letters = Letters.Of(names[0]);
        double apart = letters.Sum(l => belief.Covariance(LetterTerms.Pitch(l, 9), LetterTerms.Pitch(l, 9)));
        Assert.True(belief.Foretell(Sum(names[0])).SdMm < Math.Sqrt(apart) / 2, "the covariance between letters is thrown away");
    }

    /// <summary>What the feed did to a sewn name is in every reading of it: a second one does not average it out, another sewing
    /// does.</summary>
    [Fact]
    public void Readings_of_one_sewn_name_share_what_the_feed_did_to_it()
    {
        var uneven = Model with { ReadingErrorMm = 0.1, FeedPart = 0.03 };
        double Doubt(int other) =>
            new WidthBelief(uneven, [new(Sum("Marsh"), 50, 0), new(Sum("Marsh"), 50, other)]).Foretell(Sum("Marsh")).SdMm;
        Assert.True(Doubt(other: 0) > 1.15 * Doubt(other: 1), $"{Doubt(0)} {Doubt(1)}");
    }

    [Fact]
    public void Letters_that_no_face_of_the_prior_has_are_likened_and_doubted()
    {
        Assert.Equal(("e", 1.5), LetterTerms.Alike("é"));
        Assert.Equal(("o", 6.0), LetterTerms.Alike("ø"));
        var belief = new WidthBelief(Model, []);
        Assert.True(belief.Foretell(Sum("Жанна")).SdMm > belief.Foretell(Sum("Hanna")).SdMm);
    }

    [Theory]
    [InlineData(1, 9, 2)]
    [InlineData(2, 10, 3)]
    [InlineData(3, 12, 3)]
    [InlineData(4, 8, 4)]
    public void The_names_to_read_first_are_the_best_of_all_choices(int seed, int count, int read)
    {
        var machine = new SimulatedMachine(FaceMetrics.Read(FaceMetrics.File).First(f => f.Face == "Cabin-Regular"), seed);
        var sums = machine.Names(count).Select(Sum).ToList();
        var chosen = NameDesign.Choose(Model, sums, read);
        var criterion = new NameDesign.Criterion(Model, [.. sums]);
        double best = Subsets(count, read).Min(s => criterion.Of(s));
        Assert.Equal(read, chosen.Distinct().Count());
        Assert.InRange(criterion.Of(chosen), best * (1 - 1e-9), best * 1.005);

        // What the criterion says is what reading them leaves.
        var plain = Plain(chosen).ToList();
        double left = sums.Average(s => plain.Sum(p => p.Weight * p.Variance(s))) / plain.Sum(p => p.Weight);
        Assert.Equal(left, criterion.Of(chosen), left * 1e-6);

        IEnumerable<(double Weight, Func<WidthSum, double> Variance)> Plain(IReadOnlyList<int> places) => Model.Hypotheses()
            .Where(h => h.Hypothesis.IsPlain).Select(h =>
            {
                var seen = places.Select(i => h.Hypothesis.See(sums[i])).ToList();
                var given = GaussianReadings.Of(new double[seen.Count], (i, j) => seen[i].Covariance(seen[j]) + (i == j ? 0.25 : 0));
                return (h.Weight, (Func<WidthSum, double>)(s =>
                {
                    var asked = h.Hypothesis.See(s);
                    double[] with = [.. seen.Select(asked.Covariance)];
                    return asked.Covariance(asked) - given.Explained(with, with);
                }));
            });
    }

    private static WidthSum Sum(string name) => LetterTerms.Length(Letters.Of(name), SimulatedMachine.HeightMm, null);

    private static IEnumerable<List<int>> Subsets(int all, int count, int from = 0)
    {
        if (count == 0)
        {
            yield return [];
            yield break;
        }

        for (int i = from; i < all; i++)
        {
            foreach (var rest in Subsets(all, count - 1, i + 1))
            {
                yield return [i, .. rest];
            }
        }
    }
}
