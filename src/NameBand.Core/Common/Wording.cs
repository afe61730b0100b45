namespace NameBand.Common;

/// <summary>Small joints of sentences.</summary>
public static class Wording
{
    /// <summary>Such as “1,200 names”.</summary>
    public static string Count(int count, string one) => FormattableString.Invariant($"{count:#,0} {one}{(count == 1 ? "" : "s")}");

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
