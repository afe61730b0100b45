using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering.Smallness;

namespace NameBand.Reports.Answers;

/// <summary>What <c>faces</c> answers: each face with the letter height from which it can be sewn.</summary>
public sealed record FacesAnswer : CommandAnswer
{
    /// <summary>The cloth that the heights are calculated for, with its usual thread and needle.</summary>
    public required Said Cloth { get; init; }

    /// <summary>The least width of a stroke that is sewn as satin.</summary>
    public required double NarrowestSatinMm { get; init; }

    public required IReadOnlyList<ToldFace> Faces { get; init; }

    internal static FacesAnswer Of(FacesReport report) => new()
    {
        Status = (int)report.Status,
        Problems = report.Problems,
        Cloth = FaceReport.Cloth.Name,
        NarrowestSatinMm = Fabric.NarrowestSatinMm,
        Faces = [.. report.Faces.Select(Face)],
    };

    private static ToldFace Face(FaceReport face) => new()
    {
        Name = face.Name,
        File = face.File,
        Licence = face.Licence,
        Reason = face.Reason,
        Scripts = face.Scripts,
        ThinnestStrokePart = Telling.Thousandth(face.ThinnestStrokePart),
        MainStemPart = Telling.Thousandth(face.MainStemPart),
        HeightForThinnest1Mm = Telling.Thousandth(1 / face.ThinnestStrokePart),
        SatinFromMm = Telling.Thousandth(face.SatinFromMm),
        SmallestCounterPart = face.SmallestCounterPart is { } counter ? Telling.Thousandth(counter) : null,
        LeastHeightMm = Telling.Thousandth(face.LeastHeightMm),
        HelpsOut = face.HelpsOut,
    };
}

public sealed record ToldFace
{
    public required string Name { get; init; }

    public required string File { get; init; }

    public required string Licence { get; init; }

    /// <summary>Why it is on the shelf.</summary>
    public required Said Reason { get; init; }

    public required IReadOnlyList<Said> Scripts { get; init; }

    public required double ThinnestStrokePart { get; init; }

    public required double MainStemPart { get; init; }

    public required double HeightForThinnest1Mm { get; init; }

    public required double SatinFromMm { get; init; }

    /// <summary>Null where no letter has a closed counter.</summary>
    public double? SmallestCounterPart { get; init; }

    public required double LeastHeightMm { get; init; }

    /// <summary>Whether it is asked by itself for letters that a chosen face lacks.</summary>
    public required bool HelpsOut { get; init; }
}
