namespace NameBand.Common;

/// <summary>Small joints of sentences.</summary>
public static class Wording
{
    /// <summary>Such as <c>a, b and c</c>.</summary>
    public static string List(IReadOnlyList<string> items) => items.Count switch
    {
        0 => "",
        1 => items[0],
        _ => string.Join(", ", items.Take(items.Count - 1)) + " and " + items[^1],
    };
}
