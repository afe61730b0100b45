namespace NameBand.Common;

/// <summary>What work is counted from, with a number before it.</summary>
internal static class CountedThings
{
    private static readonly (Said Several, Func<double, Said> InWords)[] All =
    [
        ("bobbins", n => Wording.Amount(n, "bobbin", "bobbins")),
        ("breaks", n => Wording.Amount(n, "break", "breaks")),
        ("changes", n => Wording.Amount(n, "change", "changes")),
        ("characters", n => Wording.Amount(n, "character", "characters")),
        ("cloth", n => Wording.Amount(n, "cloth", "cloth")),
        ("cuts", n => Wording.Amount(n, "cut", "cuts")),
        ("hoopings", n => Wording.Amount(n, "hooping", "hoopings")),
        ("joins", n => Wording.Amount(n, "join", "joins")),
        ("jumps", n => Wording.Amount(n, "jump", "jumps")),
        ("letters", n => Wording.Amount(n, "letter", "letters")),
        ("m", n => Wording.Amount(n, "m", "m")),
        ("m of line", n => Wording.Amount(n, "m of line", "m of line")),
        ("marks", n => Wording.Amount(n, "mark", "marks")),
        ("names", n => Wording.Amount(n, "name", "names")),
        ("pieces", n => Wording.Amount(n, "piece", "pieces")),
        ("runs", n => Wording.Amount(n, "run", "runs")),
        ("stitches", n => Wording.Amount(n, "stitch", "stitches")),
        ("stops", n => Wording.Amount(n, "stop", "stops")),
        ("swatch", n => Wording.Amount(n, "swatch", "swatch")),
        ("threads", n => Wording.Amount(n, "thread", "threads")),
        ("tucks", n => Wording.Amount(n, "tuck", "tucks")),
    ];

    /// <summary>Null where it is none of them.</summary>
    public static Said? Of(double count, Said several) => Array.Find(All, t => t.Several == several).InWords?.Invoke(count);
}
