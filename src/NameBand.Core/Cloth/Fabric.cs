using NameBand.Common;

namespace NameBand.Cloth;

/// <summary>
/// What the stitching needs to know of a cloth with its backing, thread and needle. Every value has its source
/// or the words "common practice, no source" in docs/cloths.md.
/// </summary>
/// <param name="Name">As written in job.json, such as "quilting cotton".</param>
/// <param name="SpacingMm">Distance between neighbouring satin crossings on the same side of a column.</param>
/// <param name="PullCompensationMm">
/// How far a crossing 2 mm long reaches past the outline on each side, in the mean of all directions.
/// </param>
/// <param name="ThicknessMm">Cloth and backing together, for the thread that goes through them.</param>
/// <param name="MostPenetrationsPerMm2">Above this, averaged over a letter's own area, cloth is called overworked: our assumption.</param>
public sealed record Fabric(
    Said Name,
    Said Backing,
    Said Needle,
    double SpacingMm,
    double PullCompensationMm,
    double ThicknessMm,
    double MostPenetrationsPerMm2,
    SewingThread Thread)
{
    /// <summary>A backing that is cut back and stays in the cloth, so that nothing is torn away.</summary>
    public bool BackingStays => Backing.English.StartsWith("cut-away", StringComparison.Ordinal);

    /// <summary>How much shorter a column is sewn at each free end, in mm, because its stitches push the end out: our assumption.</summary>
    public double PushCompensationMm { get; init; } = 0.05;

    /// <summary>How both compensations go with the length and the direction of the stitches.</summary>
    public Pull Pull { get; init; } = Pull.FirmWoven;

    /// <summary>
    /// How far a crossing reaches past an outline of a width, on each side, where it runs in a direction (x along the strip). It is never
    /// less than the stated figure: some holes are moved in for others, and narrow satin would show bare cloth along its edges.
    /// </summary>
    internal double ReachMm(double widthMm, double x, double y) => PullCompensationMm * Math.Max(1, Pull.Factor(widthMm, x, y));

    /// <summary>The farthest that letters of a height are let reach past the box about their ink: the layout leaves room for it.</summary>
    public double LettersReachMm(double heightMm) => PullCompensationMm * Pull.LettersFactor(heightMm);

    /// <summary>Strokes narrower than this, in mm, as sewn, are run, not sewn in satin, whatever the thread: our assumption.</summary>
    public const double NarrowestSatinMm = 0.8;

    /// <summary>Columns at least this wide, in mm, have underlay along both edges besides the centre line: our assumption.</summary>
    public double EdgeUnderlayFromMm { get; init; } = 2.5;
}
