namespace NameBand.Job;

/// <summary>What a swatch has shown of this cloth, and the thread; null: as the table of cloths has it.</summary>
/// <param name="SpacingMm">Distance between neighbouring satin crossings on the same side of a column, in mm.</param>
/// <param name="PullCompensationMm">How far a crossing 2 mm long reaches past the outline on each side, in mm.</param>
/// <param name="Thread">Its size as job.json has it, checked.</param>
public sealed record StitchSettings(double? SpacingMm = null, double? PullCompensationMm = null, ThreadSize? Thread = null)
{
    /// <summary>The part of the compensation that grows with the length of the stitches.</summary>
    public double? PullGrowthPart { get; init; }

    /// <summary>How much more stitches across the strip draw than those along it, as a factor.</summary>
    public double? PullAcrossFactor { get; init; }

    /// <summary>How much shorter a column is sewn at each free end, in mm.</summary>
    public double? PushMm { get; init; }
}
