using NameBand.Common;

namespace NameBand.Job;

/// <summary>The colours that a job is sewn in; null where it does not say.</summary>
/// <param name="Bobbin">Bought so; it lies on the wrong side, and no picture shows it.</param>
public sealed record ColourSettings(CssColour? Cloth = null, CssColour? Thread = null, CssColour? Bobbin = null)
{
    /// <summary>Undyed cotton.</summary>
    public static CssColour UsualCloth { get; } = CssColour.Of(0xF5EFE2);

    /// <summary>Indigo as a dyer has it: lighter than the colour that CSS calls so.</summary>
    public static CssColour UsualThread { get; } = CssColour.Of(0x2E4C8E);

    public CssColour OfCloth => Cloth ?? UsualCloth;

    /// <param name="group">Null: of no group, or of one without a thread of its own.</param>
    public CssColour OfThread(NameGroup? group) => group?.Thread ?? Thread ?? UsualThread;
}
