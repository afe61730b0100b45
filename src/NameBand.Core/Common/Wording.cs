namespace NameBand.Common;

/// <summary>Small joints of sentences.</summary>
public static class Wording
{
    /// <summary>Such as “1,200 names”.</summary>
    /// <param name="several">What several are called; null: the same with an s.</param>
    public static Said Count(long count, string one, string? several = null) => Said.Counted(count, "#,0", one, several ?? one + "s");

    /// <summary>So many of something, such as <c>1 hooping</c> or <c>12.5 m</c>; from a hundred on in whole ones.</summary>
    public static Said Amount(double count, string one, string several) => Said.Counted(Told(count), "#,0.#", one, several);

    /// <summary>The same of what work is counted from.</summary>
    /// <param name="several">As the work has it, also one that was read back from a file.</param>
    public static Said Amount(double count, Said several) => CountedThings.Of(count, several) ?? $"{Told(count):#,0.#} {several}";

    /// <summary>Such as <c>160 × 100 mm</c>: along first, in every language.</summary>
    public static Said Size(Said along, Said across) => ((Said)$"{along} × {across} mm").InOrder();

    private static double Told(double count) => count < 100 ? Math.Round(count, 1) : Math.Round(count);

    /// <summary>Such as <c>a, b and c</c>.</summary>
    public static Said List(IReadOnlyList<Said> items) => items.Count switch
    {
        0 => Said.Nothing,
        1 => items[0],
        _ => $"{Said.Join(", ", items.Take(items.Count - 1))} and {items[^1]}",
    };

    /// <summary>Of names and other words that are in no language.</summary>
    public static Said List(IReadOnlyList<string> items) => List([.. items.Select(Said.Plain)]);

    public static Said Capital(Said said) =>
        said.Changed((text, culture) => text.Length == 0 ? text : char.ToUpper(text[0], culture) + text[1..]);

    /// <summary>With a capital at its head and a stop at its end.</summary>
    public static Said AsSentence(Said said) => said.Changed((text, culture) =>
        text.Length == 0 ? text : char.ToUpper(text[0], culture) + text[1..] + (text[^1] is '.' or '?' or '!' ? "" : "."));
}
