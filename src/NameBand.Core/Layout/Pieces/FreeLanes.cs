using System.Collections.Immutable;

namespace NameBand.Layout.Pieces;

/// <summary>Shares pieces of strip out to cloths on which they lie side by side.</summary>
internal static class FreeLanes
{
    /// <summary>
    /// Each hooping goes across all lanes, so a cloth takes as many as its longest piece: pieces of like length lie together,
    /// the longest ones first, which makes the sum of the longest the least. Cloths and lanes keep the order of the rounds.
    /// </summary>
    public static List<List<RoundPart>> Share(ImmutableArray<RoundPart> parts, int lanes)
    {
        var longestFirst = Enumerable.Range(0, parts.Length).OrderByDescending(i => parts[i].LengthMm).ThenBy(i => i);
        var cloths = longestFirst.Chunk(lanes).Select(c => c.Order().ToList()).OrderBy(c => c[0]);
        return [.. cloths.Select(c => c.Select(i => parts[i]).ToList())];
    }
}
