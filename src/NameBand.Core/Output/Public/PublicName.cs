using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Packet;
using NameBand.Output.Sending;
using NameBand.Stitching;

namespace NameBand.Output.Public;

/// <summary>A name whose owner wants it to be found on the web: all that the page knows of it.</summary>
/// <param name="Thread">Colour of its thread.</param>
/// <param name="Stitches">As <see cref="PackedStitches"/> has them.</param>
internal sealed record PublicName(FoundName Found, CssColour Thread, byte[] Stitches)
{
    public int Number => Found.Placed.Order;

    public string Text => PlainText.OneLine(Found.Text);

    public static PublicName Of(FoundName found, CssColour thread, NeedlePath sewn) => new(found, thread, PackedStitches.Of(sewn));

    /// <summary>Such as “round 1 of 2 (the lowest), 58 mm (2 5/16 in) to the right of centre back”.</summary>
    public static Said PlaceInWords(StripPlan plan, FoundName found) => plan.Rounds.Length == 1 ? ThanksWords.Place(found)
        : $"{ThanksWords.Round(found.Round, plan.Rounds.Length)}, {ThanksWords.Place(found)}";
}

/// <summary>What the page for supporters is made of: nothing of anybody who did not say yes.</summary>
/// <param name="Names">As the alphabet has them.</param>
internal sealed record PublicMatter(string Title, StripPlan Plan, CssColour Cloth, double ThreadMm, IReadOnlyList<PublicName> Names)
{
    /// <summary>Only those on which every owner said yes.</summary>
    public ImmutableArray<PublicPhoto> Photos { get; init; } = [];
}
