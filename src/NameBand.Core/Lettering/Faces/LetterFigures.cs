using NameBand.Common;
using NameBand.Lettering.Measuring;

namespace NameBand.Lettering.Faces;

/// <summary>How fine letters are, as parts of the letter height.</summary>
/// <param name="ThinnestStrokePart">0 where nothing could be measured.</param>
/// <param name="SmallestCounterPart">Largest disc in the smallest closed counter; null where there is none.</param>
internal readonly record struct LetterFigures(double ThinnestStrokePart, double? SmallestCounterPart)
{
    /// <summary>What a face's card says, or measured where it does not.</summary>
    public static LetterFigures Of(Face face, FaceCard? card) =>
        card?.ThinnestStrokePart is { } thinnest
            ? new(thinnest, card.SmallestCounterPart) : new(face.ThinnestStrokePart, face.SmallestCounterPart);

    /// <summary>Of letters drawn at a factor of the letter height.</summary>
    public LetterFigures Scaled(double factor) => new(ThinnestStrokePart * factor, SmallestCounterPart * factor);

    /// <param name="outlines">Of letters, at a letter height of 1 mm.</param>
    internal static LetterFigures Measured(IReadOnlyCollection<Outline> outlines) =>
        new(StrokeWidths.Of(outlines).Thinnest, CounterWidths.Smallest(outlines));
}
