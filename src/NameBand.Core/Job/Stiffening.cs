namespace NameBand.Job;

/// <summary>What makes a strip that no hoop holds firm enough to be sewn on.</summary>
public enum Stiffening
{
    /// <summary>Left limp; or a hoop holds the cloth.</summary>
    None,

    /// <summary>Two coats of spray starch, ironed dry; it washes out.</summary>
    Starch,

    /// <summary>Light interfacing, ironed on; it stays.</summary>
    Interfacing,
}

/// <summary>What stiffening takes, and what cloth does with it and without. All of it common practice, no source.</summary>
internal static class StiffeningValues
{
    private const double StarchMinutesPerMetre = 3.5; // Two coats, dried and ironed.
    private const double InterfacingMinutesPerMetre = 2; // Cut to the strip and ironed on.

    /// <summary>Between 2 and 4 %: limp cloth without a hoop draws together under its stitches.</summary>
    public const double LimpShorteningPart = 0.03;

    /// <summary>Strip of usual width that one can gives two coats.</summary>
    public const double StarchedMPerCan = 10;

    public static double MinutesPerMetre(Stiffening stiffening) => stiffening switch
    {
        Stiffening.Starch => StarchMinutesPerMetre,
        Stiffening.Interfacing => InterfacingMinutesPerMetre,
        _ => 0,
    };
}
