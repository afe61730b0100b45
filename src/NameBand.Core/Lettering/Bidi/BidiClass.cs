namespace NameBand.Lettering.Bidi;

/// <summary>Bidi_Class of a character, by the short names of the Unicode Character Database.</summary>
internal enum BidiClass : byte
{
    L,
    R,
    AL,
    EN,
    ES,
    ET,
    AN,
    CS,
    NSM,
    BN,
    B,
    S,
    WS,
    ON,
    LRE,
    LRO,
    RLE,
    RLO,
    PDF,
    LRI,
    RLI,
    FSI,
    PDI,
}
