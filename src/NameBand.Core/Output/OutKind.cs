using System.Collections.Immutable;

namespace NameBand.Output;

/// <summary>What a folder of ours is known by, so that a folder of another kind, or a stranger's, is never put aside for it.</summary>
/// <param name="File">The file that only such a folder has.</param>
/// <param name="Keys">What that file has in it besides its format.</param>
internal sealed record OutKind(string File, ImmutableArray<string> Keys)
{
    public static OutKind Plan { get; } = new(OutPaths.Plan, ["letterHeightMm", "hoopings", "rows"]);

    /// <summary>The page for supporters.</summary>
    public static OutKind Public { get; } = new(OutPaths.PublicPlaces, ["page", "names"]);

    /// <summary>The asking round, with addresses.</summary>
    public static OutKind Private { get; } = new("asking.json", ["owners", "answerBy"]);

    public static OutKind Swatch { get; } = new(OutPaths.Swatch, ["word", "marksApartMm", "samples"]);
}
