using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Output.Drawing;
using NameBand.Stitching.Sewing;

namespace NameBand.Pipeline;

/// <summary>
/// Letters, stitches and draws one letter for nothing while the lists are read: what .NET loads and compiles at the first
/// use of each takes a fifth of a second, which a second core has to spare just then.
/// </summary>
internal static class JitWarmUp
{
    private const int HeightMm = 10; // The usual size: so the same code is warmed that the job will use.

    public static Task<PreviousOutput> Run(string outFolder, CancellationToken cancel) => Task.Run(
        () =>
        {
            var letter = Environment.ProcessorCount > 1 ? Letter() : null;
            var earlier = new PreviousOutput(outFolder);
            if (letter is not null && !cancel.IsCancellationRequested)
            {
                Draw(letter);
            }

            return earlier;
        },
        cancel);

    /// <summary>Letters and stitches one letter.</summary>
    public static void Stitch()
    {
        if (Environment.ProcessorCount > 1 && Letter() is { } letter)
        {
            new Stitcher(FabricTable.All[0], HeightMm).SewName(letter);
        }
    }

    private static LetteredName? Letter()
    {
        var shelf = new FaceShelf();
        var list = new NameList([], [new Name("n", new RowRef("", 1))]);
        return shelf.Cards.IsEmpty || shelf.Open(shelf.Cards[0]).Value is not { } face
            ? null : Letterer.Letter(list, face, shelf).Value?.Names.FirstOrDefault();
    }

    private static void Draw(LetteredName letter)
    {
        var path = new Stitcher(FabricTable.All[0], HeightMm).SewName(letter);
        var page = new ProofPage(0, 2 * HeightMm, HeightMm, 2 * HeightMm, 1);
        page.Write(Stream.Null, picture => ThreadLayer.Draw(
            picture, path.Steps.AsSpan(), (page.X(0), page.Y(0)), ThreadKinds.Names, (Palette.ThreadAt, Palette.ThreadShades),
            FabricTable.All[0].Thread.DiameterMm));
    }
}
