namespace NameBand.Load;

/// <summary>What the stitches do to the cloth, in words a maker acts on.</summary>
public enum LoadVerdict
{
    /// <summary>The cloth bears it.</summary>
    Fine,

    /// <summary>Near the limit: sew a swatch first.</summary>
    SewSwatch,

    /// <summary>More holes than the cloth bears: other cloth or backing, larger letters, wider spacing, a lighter face.</summary>
    Overworked,
}

/// <summary>Load of one hooping or one name. Alignment marks are not counted: they are loose and come out again.</summary>
/// <param name="Penetrations">Needle holes, locks included.</param>
/// <param name="SewnMm2">Cloth under thread, in mm².</param>
/// <param name="WorstLetterPerMm2">Holes over the cloth under thread, for the letter, or part of one, where that is greatest; at
/// least that of the whole.</param>
public sealed record ClothLoad(int Penetrations, double SewnMm2, double WorstLetterPerMm2, LoadVerdict Verdict)
{
    public WorstSpot Spot { get; init; }
}
