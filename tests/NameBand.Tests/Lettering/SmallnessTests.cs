using System.Globalization;
using CsCheck;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Measuring;
using NameBand.Lettering.Smallness;
using Xunit;

namespace NameBand.Tests.Lettering;

public class SmallnessTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static readonly Fabric[] Threaded =
    [
        .. FabricTable.All.SelectMany(c => new[] { 120 / 9.0, 26.7, 40 }
            .Select(tex => JobCloth.With(c, new StitchSettings { Thread = new ThreadSize("a thread", tex) }))),
    ];

    private static IEnumerable<Problem> Advice(string face, double heightMm, Fabric? cloth = null, string name = "Bea Aldego") =>
        SmallnessAdvice.For(cloth ?? Cotton, heightMm, [LetteringRig.LetterOne(name, face)], face, LetteringRig.Shelf);

    /// <summary>Whatever the letters, cloth and thread: nothing is said at the offered height, and something a tenth below.</summary>
    [Fact]
    public void The_offered_height_is_borne_and_a_tenth_less_is_not()
    {
        var letters =
            Gen.Select(
                Gen.Double[0.02, 0.3], Gen.Double[0.04, 0.4], Gen.Bool,
                (stroke, counter, has) => new LetterFigures(stroke, has ? counter : null));
        Gen.Select(letters, Gen.Int[0, Threaded.Length - 1]).Sample(
            (figures, cloth) =>
            {
                var rule = new SmallnessRule(Threaded[cloth]);
                double least = rule.LeastHeightMm(figures);
                Assert.Equal(Math.Round(least * 10), least * 10, 1e-9);
                Assert.True(rule.Bears(figures, least));
                Assert.False(rule.Bears(figures, (Math.Round(least * 10) - 1) / 10));
            },
            seed: "0000SmallFac", iter: 2000);
    }

    [Theory]
    [InlineData("Nunito Bold")]
    [InlineData("Pacifico")]
    [InlineData("Vollkorn Bold")]
    [InlineData("Bebas Neue Bold")]
    public void A_face_is_warned_of_below_its_offered_height_only(string face)
    {
        var card = LetteringRig.Shelf.Cards.Single(c => c.Name == face);
        double least = new SmallnessRule(Cotton).LeastHeightMm(LetterFigures.Of(LetteringRig.Face(face), card));
        Assert.Empty(Advice(face, least));
        var said = Assert.Single(Advice(face, (Math.Round(least * 10) - 1) / 10));
        Assert.Contains(least.ToString("0.0", CultureInfo.InvariantCulture) + " mm", said.Mend.English, StringComparison.Ordinal);
    }

    /// <summary>The face that is offered bears the height and has the letters, and none that does so is nearer in its main stem.</summary>
    [Fact]
    public void The_offered_face_works_at_the_height()
    {
        const double HeightMm = 8;
        var said = Assert.Single(Advice("Pacifico", HeightMm));
        var rule = new SmallnessRule(Cotton);
        var stem = LetteringRig.Shelf.Cards.Single(c => c.Name == "Pacifico").MainStemPart!.Value;
        var working = LetteringRig.Shelf.Cards.Where(c => (c.Scripts.IsEmpty || c.Scripts.Contains("Latn")) && c.Name != "Pacifico")
            .Where(c => rule.Bears(new LetterFigures(c.ThinnestStrokePart!.Value, c.SmallestCounterPart), HeightMm))
            .Where(c => "BeaAldgo ".All(letter => LetteringRig.Face(c.Name).Has(letter))).ToList();
        var offered = working.Single(c => said.Mend.English.Contains($"at 8.0 mm {c.Name} works", StringComparison.Ordinal));
        Assert.All(working, c => Assert.True(Math.Abs(c.MainStemPart!.Value - stem) >= Math.Abs(offered.MainStemPart!.Value - stem)));
        Assert.Empty(Advice(offered.Name, HeightMm));
    }

    [Fact]
    public void Shut_counters_need_a_person_and_narrow_ones_are_a_note()
    {
        Assert.Equal(Severity.Note, Assert.Single(Advice("Pacifico", 8)).Severity);
        var shut = Assert.Single(Advice("Pacifico", 5));
        Assert.Equal(Severity.NeedsPerson, shut.Severity);
        Assert.Contains("sewn shut", shut.Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void Finer_thread_with_its_needle_bears_smaller_letters()
    {
        var fine = JobCloth.With(Cotton, new StitchSettings { Thread = new ThreadSize("60 wt", 150 / 9.0) });
        var figures = new LetterFigures(0.136, 0.178);
        Assert.True(new SmallnessRule(fine).LeastHeightMm(figures) < new SmallnessRule(Cotton).LeastHeightMm(figures));
    }

    /// <summary>A face that no card speaks of is judged by the letters that are used: an I has no counter and an e has a small
    /// one.</summary>
    [Fact]
    public void Without_a_card_only_the_letters_used_are_measured()
    {
        var none = new FaceShelf(Path.Combine(AppContext.BaseDirectory, "no-such-shelf"));
        IEnumerable<Problem> Of(string name) => SmallnessAdvice.For(Cotton, 5, [LetteringRig.LetterOne(name)], "Nunito Bold", none);
        Assert.Empty(Of("III"));
        Assert.Contains("bare cloth", Assert.Single(Of("III e")).Found.English, StringComparison.Ordinal);
    }

    /// <summary>Plane geometry: the disc in a square hole is as wide as the square, that in a long hole as wide as the hole.</summary>
    [Theory]
    [InlineData(0.3, 0.3)]
    [InlineData(0.15, 0.6)]
    public void The_disc_in_a_rectangular_counter_is_as_wide_as_its_short_side(double width, double height)
    {
        static Ring Box(double w, double h) => new([new(-w / 2, -h / 2), new(w / 2, -h / 2), new(w / 2, h / 2), new(-w / 2, h / 2)]);
        var letter = new Outline([Box(1, 1), new Ring([.. Box(width, height).Points.Reverse()])]);
        Assert.Equal(Math.Min(width, height), CounterWidths.Smallest([letter])!.Value, 0.006);
        Assert.Null(CounterWidths.Smallest([new Outline([Box(1, 1)])]));
    }
}
