using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Output.Drawing;
using NameBand.Pipeline.Stages;
using NameBand.Pipeline.Ways;
using NameBand.Stitching.Sewing;

namespace NameBand.Pipeline;

/// <summary>
/// Letters, lays out, stitches and draws a letter for nothing while the lists are read: what .NET loads and compiles at the first
/// use of each takes a fifth of a second and more, which a second core has to spare just then. Each is done once in a process,
/// and nothing that it comes to is kept.
/// </summary>
internal static class JitWarmUp
{
    private const int HeightMm = 10; // The usual size: so the same code is warmed that the job will use.

    private static readonly NameList TwoLetters = new([], [new Name("n", new RowRef("", 1)), new Name("m", new RowRef("", 2))]);

    private static int _layouts;
    private static int _stitchings;
    private static int _drawings;

    /// <summary>Reads what lies in the folder <c>out</c>, and draws a letter.</summary>
    public static Task<PreviousOutput> Run(string outFolder, CancellationToken cancel) => Task.Run(
        () =>
        {
            var earlier = new PreviousOutput(outFolder);
            if (IsFirst(ref _drawings) && Letter() is { } letter && !cancel.IsCancellationRequested)
            {
                Draw(letter);
            }

            return earlier;
        },
        cancel);

    /// <summary>Lays two letters out as a job asks whose lists are still being read, and then stitches one. What is wrong with
    /// the job is told by whoever lays out its names.</summary>
    /// <returns>The laying out, which reads in the job's folder.</returns>
    public static Task LayOut(BandJob job)
    {
        if (!IsFirst(ref _layouts))
        {
            return Task.CompletedTask;
        }

        var laying = Task.Run(() => LayTwoLettersOut(job));
        laying.ContinueWith(_ => Stitch(), TaskScheduler.Default);
        return laying;
    }

    private static void LayTwoLettersOut(BandJob job)
    {
        var shelf = new FaceShelf();
        if (shelf.Open(job.Lettering.Face, job.Folder).Value is { } face)
        {
            var list = new CheckedList(job, Corrections.None, face, TwoLetters, null, null);
            Planning.Lay(WayChoice.Of(job.Ways).Letter(list, shelf, default), () => null, findsMends: false);
        }
    }

    /// <summary>Letters and stitches one letter.</summary>
    public static void Stitch()
    {
        if (IsFirst(ref _stitchings) && Letter() is { } letter)
        {
            new Stitcher(FabricTable.All[0], HeightMm).SewName(letter);
        }
    }

    private static bool IsFirst(ref int times) => Environment.ProcessorCount > 1 && Interlocked.Increment(ref times) == 1;

    private static LetteredName? Letter()
    {
        var shelf = new FaceShelf();
        return shelf.Cards.IsEmpty || shelf.Open(shelf.Cards[0]).Value is not { } face
            ? null : Letterer.Letter(TwoLetters, face, shelf).Value?.Names.FirstOrDefault();
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
