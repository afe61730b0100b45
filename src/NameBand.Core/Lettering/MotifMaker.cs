using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Names;

namespace NameBand.Lettering;

/// <summary>Draws what is sewn between names, as a name of one letter: at a letter height of 1 mm, on the base line.</summary>
internal static class MotifMaker
{
    // Of a letter height, so that all look of one weight between names: the more corners, the less of the square they fill. Our choice.
    private const double DotMm = 0.34;
    private const double DiamondMm = 0.46;
    private const double StarMm = 0.72;

    /// <summary>Inner radius of a five-pointed star as a part of its outer one; straight edges from tip to tip have 0.382, ours
    /// is stouter, for thread.</summary>
    private const double StarWaist = 0.5;

    /// <returns>Null for none, or where the face has no such character: then a problem says so.</returns>
    public static Result<LetteredName> Make(BandJob job, Face chosen, FaceShelf shelf)
    {
        switch (job.Motif.Kind)
        {
            case MotifKind.Dot:
                return Drawn("dot", [.. Enumerable.Range(0, 32).Select(i => Around(i / 32.0, DotMm / 2))]);
            case MotifKind.Diamond:
                return Drawn("diamond", [.. Enumerable.Range(0, 4).Select(i => Around((i / 4.0) + 0.25, DiamondMm / 2))]);
            case MotifKind.SmallStar:
                return Drawn(
                    ((Said)"small star").English,
                    [.. Enumerable.Range(0, 10).Select(i => Around((i / 10.0) + 0.25, i % 2 == 0 ? StarMm / 2 : StarWaist * StarMm / 2))]);
            case MotifKind.Letter:
                return OfFace(job, chosen, shelf);
            default:
                return Result.Fail<LetteredName>();
        }
    }

    /// <summary>A point at a part of a full turn from the right, counter-clockwise, about the middle of a capital's height.</summary>
    private static Point Around(double turn, double radius) =>
        new(radius * Math.Cos(2 * Math.PI * turn), 0.5 + (radius * Math.Sin(2 * Math.PI * turn)));

    private static Result<LetteredName> Drawn(string text, ImmutableArray<Point> points)
    {
        var outline = new Outline([new Ring(points)]);
        var ink = outline.Bounds();
        var piece = new LetterPiece($"motif: {text}", "", text, outline, ink);
        return Result.Of(new LetteredName(Named(text), [new PlacedPiece(piece, new Point(0, 0))], ink));
    }

    private static Result<LetteredName> OfFace(BandJob job, Face chosen, FaceShelf shelf)
    {
        var face = job.Motif.Face is { } wished ? shelf.Open(wished, job.Folder) : Result.Of(chosen);
        if (face.Value is not { } opened)
        {
            return Result.Fail<LetteredName>(face.Problems);
        }

        var letter = Letterer.Letter(new NameList([], [Named(job.Motif.Letter!)]), opened, shelf);
        var lettered = letter.Value!;
        return lettered.Names.Length == 1
            ? Result.Of(lettered.Names[0], letter.Problems)
            : Result.Fail<LetteredName>(Problem.NeedsPerson(
                new Where(JobReader.FileName, Key: "lettering.motif"),
                $"No motif is sewn: {lettered.Held.Select(h => h.Reason).FirstOrDefault()?.Changed((text, _) => text.TrimEnd('.'))}.",
                "Choose another character, a face that has it, or \"dot\", \"diamond\" or \"smallStar\"."));
    }

    private static Name Named(string text) => new(text, new RowRef("", 0));
}
