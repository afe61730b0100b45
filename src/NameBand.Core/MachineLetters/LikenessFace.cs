using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Widths;

namespace NameBand.MachineLetters;

/// <summary>
/// The face that a machine's letters are drawn in, for nobody but the machine knows their shapes: the one that the job names, else the one
/// on the shelf that is nearest by the look she picked and by the widths that were measured.
/// </summary>
internal static class LikenessFace
{
    /// <summary>Plain letters are what most machines offer first: common practice, no source.</summary>
    private const LetterLook Usual = LetterLook.Sans;

    /// <summary>Letters of the names as that face has them; their heights are those of the job's own face, by which names are
    /// laid out.</summary>
    public static IReadOnlyDictionary<string, LetteredName> Shapes(
        BandJob job, IReadOnlyCollection<string> letters, Face own, FaceShelf shelf, LetterKnowledge known)
    {
        var shapes = LetterShapes.Of(letters, own, shelf);
        if (job.Lettering.IsFaceNamed)
        {
            return shapes;
        }

        var taken = NearestWithShapes(job, letters, own, shelf, known).Shapes;
        return taken.ToDictionary(p => p.Key, p => AsHighAs(shapes.GetValueOrDefault(p.Key), p.Value), StringComparer.Ordinal);
    }

    /// <summary>The face of names that are drawn beside typed ones.</summary>
    public static Face Nearest(BandJob job, IReadOnlyCollection<string> letters, Face own, FaceShelf shelf, LetterKnowledge known) =>
        NearestWithShapes(job, letters, own, shelf, known).Face;

    /// <summary>By widths and, where it was measured, by the width of a stroke; each as the logarithm of how far it is off.</summary>
    private static (Face Face, IReadOnlyDictionary<string, LetteredName> Shapes) NearestWithShapes(
        BandJob job, IReadOnlyCollection<string> letters, Face own, FaceShelf shelf, LetterKnowledge known)
    {
        var candidates = Candidates(job.Letters.Look, own, shelf).Select(f => (Face: f, Shapes: LetterShapes.Of(letters, f, shelf)));
        return known.IsMeasured || job.Letters.Stroke is not null
            ? candidates.OrderBy(c =>
                (known.IsMeasured ? OffPart(c.Shapes, known, job.Letters.Sizes[0].Mm) : 0) + StrokeOff(c.Face, job.Letters, shelf)).First()
            : candidates.First();
    }

    private static double StrokeOff(Face face, LettersSettings letters, FaceShelf shelf)
    {
        double? part = shelf.Cards.Where(c => c.Name == face.Name).Select(c => c.MainStemPart).FirstOrDefault();
        return letters.Stroke is { } stroke && part is > 0 ? Math.Pow(Math.Log(stroke.Mm / letters.Sizes[0].Mm / part.Value), 2) : 0;
    }

    private static LetteredName AsHighAs(LetteredName? usual, LetteredName letter) => usual is null
        ? letter : letter with { Ink = letter.Ink with { BottomMm = usual.Ink.BottomMm, TopMm = usual.Ink.TopMm } };

    /// <summary>Faces of the look, the job's own first where it has it.</summary>
    internal static IReadOnlyList<Face> Candidates(LetterLook look, Face own, FaceShelf shelf)
    {
        // On a typewriter narrow letters have wide feet.
        var wanted = look switch { LetterLook.Unknown => Usual, LetterLook.Monospaced => LetterLook.Slab, _ => look };
        var faces = shelf.Cards.Where(c => c.Look == wanted).Select(c => c.Name == own.Name ? own : shelf.Open(c).Value).OfType<Face>()
            .OrderByDescending(f => f == own).ToList();
        return faces.Count > 0 ? faces : [own];
    }

    /// <summary>How far letters have to be stretched to the widths that are known: the mean square of the logarithm.</summary>
    internal static double OffPart(IReadOnlyDictionary<string, LetteredName> shapes, LetterKnowledge known, double heightMm)
    {
        double[] offs =
        [
            .. shapes.OrderBy(s => s.Key, StringComparer.Ordinal).Where(s => s.Value.Ink.WidthMm > 0).Select(s =>
            {
                double Mean(TermKind kind) => known.Belief.Mean(LetterTerms.Single(s.Key, kind, heightMm));
                double ink = Math.Max(0.02 * heightMm, Mean(TermKind.Advance) - Mean(TermKind.Left) - Mean(TermKind.Right));
                return Math.Log(ink / heightMm / s.Value.Ink.WidthMm);
            }),
        ];
        return offs.Length == 0 ? double.PositiveInfinity : offs.Average(o => o * o);
    }
}
