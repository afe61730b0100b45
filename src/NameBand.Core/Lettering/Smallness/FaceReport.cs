using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering.Faces;

namespace NameBand.Lettering.Smallness;

/// <summary>What a maker wants to know of a face before choosing it.</summary>
/// <param name="Reason">One line: why the face is on the shelf.</param>
/// <param name="Scripts">The scripts it covers, in words.</param>
/// <param name="ThinnestStrokePart">Thinnest stroke as a part of the letter height.</param>
/// <param name="MainStemPart">Main stem as a part of the letter height.</param>
/// <param name="SatinFromMm">Letter height in mm from which the thinnest stroke, as it is sewn on <see cref="Cloth"/>, is wide
/// enough for satin.</param>
public sealed record FaceReport(
    string Name, string File, string Licence, Said Reason, ImmutableArray<Said> Scripts,
    double ThinnestStrokePart, double MainStemPart, double SatinFromMm, bool HelpsOut)
{
    /// <summary>The cloth that the heights are calculated for, with its usual thread and needle.</summary>
    public static Fabric Cloth => FabricTable.All[0];

    /// <summary>Smallest closed counter as a part of the letter height; null where no letter has one.</summary>
    public double? SmallestCounterPart { get; init; }

    /// <summary>Letter height in mm from which strokes and counters can be sewn as drawn on <see cref="Cloth"/>.</summary>
    public double LeastHeightMm { get; init; }

    /// <summary>Looks through every face of a shelf; a damaged one is left out and told of in a problem.</summary>
    public static Result<FaceReportList> OfShelf(FaceShelf shelf)
    {
        var opened = shelf.Cards.AsParallel().AsOrdered().Select(card => (Card: card, Face: shelf.Open(card)))
            .Select(o => (Report: o.Face.Value is { } face ? Of(o.Card, face) : null, o.Face.Problems)).ToList();
        return Result.Of(
            new FaceReportList([.. opened.Select(o => o.Report).OfType<FaceReport>()]), opened.SelectMany(o => o.Problems));
    }

    private static FaceReport Of(FaceCard card, Face face)
    {
        // Measuring takes most of a second for the whole shelf; the cards have the figures, and a test measures them anew.
        var figures = LetterFigures.Of(face, card);
        double thinnest = figures.ThinnestStrokePart;
        var rule = new SmallnessRule(Cloth);
        return new FaceReport(
            face.Name, card.File, card.Licence, card.Reason,
            [.. ScriptSample.All.Where(s => s.IsCoveredBy(face)).Select(s => s.Words)],
            thinnest, card.MainStemPart ?? face.MainStemPart, rule.SatinFromMm(figures), card.Fallback is not null)
        {
            SmallestCounterPart = figures.SmallestCounterPart,
            LeastHeightMm = rule.LeastHeightMm(figures),
        };
    }
}

/// <summary>The faces of a shelf, in the shelf's order.</summary>
public sealed record FaceReportList(ImmutableArray<FaceReport> Faces);
