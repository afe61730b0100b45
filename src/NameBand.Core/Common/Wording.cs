namespace NameBand.Common;

/// <summary>Small joints of sentences.</summary>
public static class Wording
{
    /// <summary>Such as “1,200 names”.</summary>
    public static string Count(int count, string one) => FormattableString.Invariant($"{count:#,0} {one}{(count == 1 ? "" : "s")}");

    /// <summary>So many of something, such as <c>1 hooping</c> or <c>12.5 m</c>; from a hundred on in whole ones.</summary>
    /// <param name="many">What it is when there are several, such as hoopings; a unit of measure has no other word for one.</param>
    public static string Amount(double count, string many)
    {
        double told = count < 100 ? Math.Round(count, 1) : Math.Round(count);
        string one = many == "stitches" ? "stitch" : many.EndsWith('s') ? many[..^1] : many;
        return FormattableString.Invariant($"{told:#,0.#} {(count == 1 ? one : many)}");
    }

    /// <summary>Such as <c>a, b and c</c>.</summary>
    public static string List(IReadOnlyList<string> items) => items.Count switch
    {
        0 => "",
        1 => items[0],
        _ => string.Join(", ", items.Take(items.Count - 1)) + " and " + items[^1],
    };

    /// <summary>With a capital at its head and a stop at its end.</summary>
    public static string AsSentence(string text) =>
        text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..] + (text[^1] is '.' or '?' or '!' ? "" : ".");
}
