using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using Xunit;

namespace NameBand.Tests.Lettering;

public sealed class FaceShelfTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("face-shelf-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("Nunito Bold", "Nunito Bold")]
    [InlineData("nunito bold", "Nunito Bold")]
    [InlineData("nunito-bold", "Nunito Bold")]
    [InlineData("Nunito", "Nunito Bold")]
    [InlineData("Nunito_700Bold.ttf", "Nunito Bold")]
    [InlineData("Lato-Bold", "Lato Bold")]
    [InlineData("RobotoSlab-Bold.otf", "Roboto Slab Bold")]
    [InlineData("pacifico", "Pacifico")]
    public void A_face_is_found_by_its_name_its_family_or_its_file(string asked, string found) =>
        Assert.Equal(found, LetteringRig.Shelf.Open(asked, _folder).Value?.Name);

    [Theory]
    [InlineData("Nunito Bald", "Did you mean “Nunito Bold”?")]
    [InlineData("Pacifco", "Did you mean “Pacifico”?")]
    [InlineData("Volkorn", "Did you mean “Vollkorn Bold”?")]
    public void A_near_name_is_offered(string asked, string mend)
    {
        var problem = Problem(asked);
        Assert.Equal(Severity.CannotUse, problem.Severity);
        Assert.Equal("lettering.face", problem.Where.Key);
        Assert.Contains(asked, problem.Found.English, StringComparison.Ordinal);
        Assert.Contains(mend, problem.Mend.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("Zzzz")]
    public void An_unknown_name_is_refused(string asked) => Assert.Equal(Severity.CannotUse, Problem(asked).Severity);

    [Fact]
    public void A_font_file_in_the_job_folder_is_opened_and_called_by_the_name_inside_it()
    {
        Copy("Lato Bold", "fonts/own.ttf");
        var face = LetteringRig.Shelf.Open("fonts/own.ttf", _folder).Value!;
        Assert.Equal(("Lato Bold", "own.ttf"), (face.Name, face.File));
        Assert.Equal(LetteringRig.Face("Lato Bold").Hash, face.Hash);
        Assert.Equal(64, face.Hash.Length);
    }

    [Theory]
    [InlineData("../outside.ttf")]
    [InlineData("fonts/../../outside.ttf")]
    [InlineData("/etc/fonts/outside.ttf")]
    [InlineData("nul\0.ttf")]
    public void A_path_that_leads_out_of_the_folder_is_refused(string asked)
    {
        var problem = Problem(asked);
        Assert.Contains("outside the job's folder", problem.Found.English, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void A_link_is_refused()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs the right to make symbolic links");
        File.CreateSymbolicLink(Path.Combine(_folder, "link.ttf"), LetteringRig.PathOf("Lato Bold"));
        Assert.Contains("“link.ttf” is a link", Problem("link.ttf").Found.English, StringComparison.Ordinal);

        Directory.CreateSymbolicLink(Path.Combine(_folder, "fonts"), Path.GetDirectoryName(LetteringRig.PathOf("Lato Bold"))!);
        Assert.Contains("“fonts” is a link", Problem("fonts/Lato-Bold.ttf").Found.English, StringComparison.Ordinal);

        File.CreateSymbolicLink(Path.Combine(_folder, "ring.ttf"), Path.Combine(_folder, "ring.ttf"));
        Assert.Equal(Severity.CannotUse, Problem("ring.ttf").Severity);
    }

    [Fact]
    public void A_missing_file_is_named() =>
        Assert.Contains("“mine.otf”", Problem("mine.otf").Found.English, StringComparison.Ordinal);

    [Fact]
    public void A_program_without_its_faces_says_so()
    {
        var opened = new FaceShelf(Path.Combine(_folder, "nothing")).Open("Nunito Bold", _folder);
        Assert.Null(opened.Value);
        Assert.Contains("fonts-open", Assert.Single(opened.Problems).Found.English, StringComparison.Ordinal);
    }

    private Problem Problem(string asked)
    {
        var opened = LetteringRig.Shelf.Open(asked, _folder);
        Assert.Null(opened.Value);
        var problem = Assert.Single(opened.Problems);
        Assert.NotEqual("", problem.Mend);
        return problem;
    }

    private void Copy(string face, string to)
    {
        string path = Path.Combine(_folder, to);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.Copy(LetteringRig.PathOf(face), path);
    }
}
