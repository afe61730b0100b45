using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.Tests.StitchingRoom;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>The face that a machine's letters are drawn in follows the look she picked and what was measured.</summary>
public class LikenessFaceTests
{
    private const double HeightMm = 9;
    private static readonly string[] Used = ["A", "M", "W", "a", "e", "i", "l", "m", "n", "o", "r", "s", "t"];
    private static readonly string[] Sewn =
    [
        "Martin", "Alma Storm", "Willa Moss", "Ernestine", "Miles Ware", "Anton Lister", "Mirella", "Amelia Rowe", "Wilmot", "Stella Marsh",
        "Rosa Winter", "Milton", "Ansel", "Warren Mills", "Este", "Malina",
    ];

    private static readonly FaceShelf Faces = new();
    private static readonly Face Own = Shelf.Face("nunito-bold");

    [Theory]
    [InlineData(LetterLook.Unknown, "Nunito Bold")]
    [InlineData(LetterLook.Sans, "Nunito Bold")]
    [InlineData(LetterLook.Serif, "Vollkorn Bold")]
    [InlineData(LetterLook.Slab, "Roboto Slab Bold")]
    [InlineData(LetterLook.Monospaced, "Roboto Slab Bold")]
    [InlineData(LetterLook.Script, "Grand Hotel")]
    public void With_nothing_measured_the_look_tells(LetterLook look, string face) =>
        Assert.Equal(face, FaceOf(look, Known(null)));

    [Theory]
    [InlineData("noto-sans-bold", "Noto Sans Bold", LetterLook.Sans)]
    [InlineData("lato-bold", "Lato Bold", LetterLook.Unknown)]
    [InlineData("pacifico", "Pacifico", LetterLook.Script)]
    [InlineData("noto-sans-bold", "Vollkorn Bold", LetterLook.Serif)]
    public void Measured_widths_tell_faces_of_one_look_apart(string machine, string face, LetterLook look) =>
        Assert.Equal(face, FaceOf(look, Known(machine)));

    [Fact]
    public void A_face_that_the_job_names_is_hers()
    {
        var job = Job(LetterLook.Serif);
        job = job with { Lettering = job.Lettering with { IsFaceNamed = true } };
        Assert.Equal("Nunito Bold", LikenessFace.Shapes(job, Used, Own, Faces, Known("lato-bold"))["a"].Pieces[0].Piece.Face);
    }

    /// <summary>Names are laid out by the heights of the usual face, so that no base line moves when more is measured.</summary>
    [Fact]
    public void Heights_stay_those_of_the_jobs_own_face()
    {
        var own = LetterShapes.Of(Used, Own, Faces);
        var shapes = LikenessFace.Shapes(Job(LetterLook.Serif), Used, Own, Faces, Known(null));
        Assert.All(Used, l => Assert.Equal((own[l].Ink.BottomMm, own[l].Ink.TopMm), (shapes[l].Ink.BottomMm, shapes[l].Ink.TopMm)));
        Assert.NotEqual(own["m"].Ink.WidthMm, shapes["m"].Ink.WidthMm);
    }

    private static string FaceOf(LetterLook look, LetterKnowledge known) =>
        LikenessFace.Shapes(Job(look), Used, Own, Faces, known)["a"].Pieces[0].Piece.Face;

    private static BandJob Job(LetterLook look) => Sample.Job with
    {
        Ways = [Way.MachineLetters],
        Letters = LettersSettings.Usual with { Sizes = [Length.FromMm(HeightMm)], Look = look },
    };

    /// <param name="machine">Folder of the face in whose letters names were sewn and measured; null: nothing was.</param>
    private static LetterKnowledge Known(string? machine)
    {
        var lengths = machine is null ? SewnLengths.None : new SewnLengths([.. Shelf.Names(machine, Sewn).Select((n, i) => new SewnLength(
            null, n.Name.Text, [.. Letters.Of(n.Name.Text)], n.Ink.WidthMm * HeightMm, null, HeightMm, null, IsScrap: true, i + 2))]);
        return LetterKnowledge.Of(Job(LetterLook.Unknown).Letters, null, [], lengths, new SizeStep(HeightMm, 0)).Value!;
    }
}
