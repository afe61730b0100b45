using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering.Faces;

namespace NameBand.Lettering.Smallness;

/// <summary>The letters that names take from one face, with their figures at the job's letter height.</summary>
/// <param name="Texts">The characters, for looking them up in another face.</param>
/// <param name="Card">The face's card where its figures are those of the card; null where the letters used were measured.</param>
internal sealed record FinestLetters(string Face, LetterFigures Figures, ImmutableArray<string> Texts, FaceCard? Card)
{
    /// <summary>The least multiple of the job's letter height at which they stand; <see cref="Figures"/> are at that already.</summary>
    public double LeastFactor { get; init; } = 1;

    /// <summary>Ink boxes, in squares of the letter height, that are measured at most: the most used letters come first.</summary>
    private const double MostArea = 120;

    /// <summary>Face by face, the most used first. Faces made for most names are known by their cards; of others the letters used
    /// are measured.</summary>
    public static ImmutableArray<FinestLetters> Of(IEnumerable<LetteredName> names, string chosenFace, FaceShelf shelf)
    {
        var used = names.SelectMany(n => n.Pieces.Select(p => (p.Piece, Factor: n.Standing.HeightFactor))).ToList();
        return
        [
            .. used.Where(u => u.Piece.Face.Length > 0).GroupBy(u => u.Piece.Face, StringComparer.Ordinal)
                .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => Of(g.Key, [.. g.Select(u => u.Piece)], g.Min(u => u.Factor), chosenFace, shelf)),
        ];
    }

    private static FinestLetters Of(string face, ImmutableArray<LetterPiece> pieces, double leastFactor, string chosenFace, FaceShelf shelf)
    {
        var card = shelf.Cards.FirstOrDefault(c =>
            c.Name == face && c.ThinnestStrokePart is not null && (c.Fallback is null || face == chosenFace));
        var counted = pieces.GroupBy(p => p).OrderByDescending(g => g.Count()).ThenBy(g => g.Key.Key, StringComparer.Ordinal)
            .Select(g => g.Key).ToList();
        var figures = card is null
            ? shelf.FiguresOf(string.Join('\n', counted.Select(p => p.Key)), () => LetterFigures.Measured(Most(counted)))
            : new LetterFigures(card.ThinnestStrokePart!.Value, card.SmallestCounterPart).Scaled(leastFactor);
        return new FinestLetters(
            face, figures, [.. counted.Select(p => p.Text).Distinct(StringComparer.Ordinal)], card)
        { LeastFactor = leastFactor };
    }

    private static List<Outline> Most(List<LetterPiece> pieces)
    {
        var outlines = new List<Outline>();
        double area = 0;
        foreach (var piece in pieces)
        {
            area += piece.Ink.WidthMm * piece.Ink.HeightMm;
            if (area > MostArea && outlines.Count > 0)
            {
                break;
            }

            outlines.Add(piece.Outline);
        }

        return outlines;
    }
}
