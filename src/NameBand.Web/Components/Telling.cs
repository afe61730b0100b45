using Microsoft.AspNetCore.Components;
using NameBand.Common;

namespace NameBand.Web.Components;

/// <summary>
/// Texts in markup: <c>@T("…")</c> is a text in the language of whoever reads, and <c>@M($"… {A} …", @&lt;bdi&gt;…&lt;/bdi&gt;)</c>
/// one with markup in it, which may stand at another place of the sentence in another language.
/// </summary>
internal static class Telling
{
    // Characters that no font and no list has a sign for: what stands in a hole is found by it in the text that is said.
    public static readonly string A = "\uE0A1", B = "\uE0A2", C = "\uE0A3", D = "\uE0A4", E = "\uE0A5", F = "\uE0A6", G = "\uE0A7", H = "\uE0A8";
    private const char First = '\uE0A1';
    private const string Stops = ",.:;،؛";

    public static string T(Said text) => text.ToString();

    /// <param name="parts">What stands for the holes A, B, C and so on.</param>
    public static RenderFragment M(Said text, params RenderFragment[] parts) => Of(text, parts, isKept: false);

    /// <summary>The same; a full stop or a comma after a part stays on its line.</summary>
    public static RenderFragment Kept(Said text, params RenderFragment[] parts) => Of(text, parts, isKept: true);

    private static RenderFragment Of(Said text, RenderFragment[] parts, bool isKept)
    {
        string said = text.ToString();
        var pieces = new List<(string, RenderFragment?, string)>();
        int begin = 0;
        for (int at = 0; at < said.Length; at++)
        {
            if (said[at] - First is >= 0 and var part && part < parts.Length)
            {
                bool hasStop = isKept && at + 1 < said.Length && Stops.Contains(said[at + 1], StringComparison.Ordinal);
                pieces.Add((said[begin..at], parts[part], hasStop ? said.Substring(at + 1, 1) : ""));
                begin = at + (hasStop ? 2 : 1);
            }
        }

        pieces.Add((said[begin..], null, ""));
        return Pieces.Of(pieces);
    }
}
