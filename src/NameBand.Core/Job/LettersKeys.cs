using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>The keys of the ways without a file: the machine's own letters, and templates to trace.</summary>
internal static class LettersKeys
{
    private static readonly LettersSettings L = LettersSettings.Usual;

    public static readonly TextKey Alphabet = new("letters.alphabet", L.Alphabet);
    public static readonly LengthKey Sizes = new("letters.sizes", null, 2, 100, "required for machineLetters", Many: true, Each: "size");
    public static readonly LengthKey Spacings = new("letters.spacings", null, 0, 50, "the gap as measured", Many: true, Each: "setting");
    public static readonly LengthKey Gap = new("letters.gap", null, 0, 50, "as measured");
    public static readonly TextKey Has = new("letters.has", L.Has);
    public static readonly NumberKey Holds = new("letters.holds", null, 1, 1000, "\"any\"", Word: "any", IsWhole: true);
    public static readonly FlagKey KeepsLeadingBlanks = new("letters.keepsLeadingBlanks", L.KeepsLeadingBlanks);
    public static readonly FlagKey ForgetsWhenOff = new("letters.forgetsWhenOff", L.ForgetsWhenOff);

    public static readonly WordKey<StripFeed> Feed = new(
        "letters.feed", ("lengthwise", StripFeed.Lengthwise), ("fromRight", StripFeed.FromRight), ("fromLeft", StripFeed.FromLeft));

    public static readonly WordKey<bool> Tops = new("letters.tops", ("right", true), ("left", false));
    public static readonly FlagKey Mirrored = new("letters.mirrored", L.Mirrored);
    public static readonly FlagKey Hooped = new("letters.hooped", L.Hooped);
    public static readonly LengthKey ReadingError = new("letters.readingError", L.ReadingError, 0.05, 5);
    public static readonly NumberKey FeedVariation = new("letters.feedVariation", L.FeedVariationPart, 0, 0.2);

    public static readonly WordKey<LetterLook> Look = new(
        "letters.look", ("unknown", LetterLook.Unknown), ("sans", LetterLook.Sans), ("serif", LetterLook.Serif), ("slab", LetterLook.Slab),
        ("script", LetterLook.Script), ("monospaced", LetterLook.Monospaced));

    public static readonly LengthKey Stroke = new("letters.stroke", null, 0.2, 20, "not measured");

    public static readonly WordKey<bool> Lacking = new("letters.lacking", ("ask", false), ("byHand", true));

    public static readonly NumberKey SecondsPerKey = new("letters.secondsPerKey", L.SecondsPerKey, 0, 600);
    public static readonly NumberKey PositioningMinutes = new("letters.positioningMinutes", L.PositioningMinutes, 0, 60);

    public static readonly FlagKey TracedMirrored = new("traced.mirrored", false);
    public static readonly WordKey<bool> TracedSewn = new("traced.sewn", ("freeMotion", false), ("byHand", true));
    public static readonly WordKey<bool> TracedFollow = new("traced.follow", ("centreline", false), ("outline", true));
    public static readonly NumberKey TracedPace = new("traced.mmPerMinute", null, 1, 10_000, "250 free-motion, 25 by hand");

    public static readonly ImmutableArray<JobKey> All =
    [
        Alphabet, Sizes, Spacings, Gap, Has, Holds, KeepsLeadingBlanks, ForgetsWhenOff, Feed, Tops, Mirrored, Hooped,
        Look, Stroke, Lacking, ReadingError, FeedVariation, SecondsPerKey, PositioningMinutes, TracedMirrored, TracedSewn, TracedFollow,
        TracedPace,
    ];
}
