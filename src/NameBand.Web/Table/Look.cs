using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Web.Strip;

namespace NameBand.Web.Table;

/// <summary>Something that can be chosen by how her own names look in it.</summary>
/// <param name="Word">What the key is set to; empty: as usual.</param>
/// <param name="Called">What it is called.</param>
/// <param name="Edits">What choosing it sets.</param>
internal sealed record Look(string Word, Said Called, ImmutableArray<JobEdit> Edits)
{
    /// <summary>Colours change nothing but what is seen: nothing is laid out for them.</summary>
    public Dyes? Colours { get; init; }

    /// <summary>Number of its picture; 0: it is not drawn yet.</summary>
    public int Picture { get; init; }

    /// <summary>Height of the letters; null: not known yet.</summary>
    public double? HeightMm { get; init; }

    /// <summary>Gaps that have this motif, and how many there are; null: it is none, or not known yet.</summary>
    public (int All, int WithMotif)? Gaps { get; init; }

    /// <summary>Names that could not be sewn in it.</summary>
    public int Held { get; init; }

    /// <summary>Minutes at the machine and by hand; null: not counted yet.</summary>
    public (double Machine, double Hands)? Minutes { get; init; }

    /// <summary>A face that draws few of her names: another one would be seen, which draws the rest for it; null: not known yet.</summary>
    public bool? IsHelper { get; init; } = false;

    /// <summary>It cannot be laid out.</summary>
    public bool IsImpossible { get; init; }

    /// <summary>Why it cannot; empty where nothing is known of it.</summary>
    public Said Why { get; init; } = "";
}

/// <summary>What there is to choose from, theme by theme.</summary>
internal static class Looks
{
    public const string Face = "lettering.face", Cloth = "fabric", Motif = "lettering.motif", ClothColour = "colours.cloth",
    ThreadColour = "colours.thread";

    /// <summary>Colours that dyers have had for long, by their CSS words.</summary>
    private static readonly string[] Dyed =
        ["#2e4c8e", "#1c2c5c", "#97282b", "#d0a018", "#3a5c2e", "#6b4a2f", "#7b3f6e", "#2a2a2e", "#fdfbf5"];

    private static readonly string[] Woven = ["#f5efe2", "#ffffff", "#e3d3b1", "#b9c7d6", "#d9b8b0", "#b8c4a2", "#5c6068", "#1f2430"];

    private static readonly (string Word, Said Called)[] Motifs =
        [("", "nothing"), ("dot", "a dot"), ("diamond", "a diamond"), ("smallStar", "a small star")];

    /// <param name="names">Faces or cloths to choose from.</param>
    public static ImmutableArray<Look> Of(string key, ImmutableArray<string> names) => key switch
    {
        Motif => [.. Motifs.Select(m =>
            new Look(m.Word, m.Called, [m.Word.Length == 0 ? JobEdit.Remove(key) : JobEdit.Text(key, m.Word)]))],
        ClothColour =>
            [.. Woven.Select(c => new Look(c, ColourWords.Of(c), [JobEdit.Text(key, c)]) { Colours = new Dyes(Colour(c), null) })],
        ThreadColour =>
            [.. Dyed.Select(c => new Look(c, ColourWords.Of(c), [JobEdit.Text(key, c)]) { Colours = new Dyes(null, Colour(c)) })],
        _ => [.. names.Select(n => new Look(n, Said.Plain(n), [JobEdit.Text(key, n)]) { IsHelper = key == Face ? null : false })],
    };

    private static CssColour Colour(string hex) => CssColour.Of(Convert.ToInt32(hex[1..], 16));
}

/// <summary>Colours as one calls them.</summary>
internal static class ColourWords
{
    private static readonly Dictionary<string, Said> Called = new(StringComparer.Ordinal)
    {
        ["#2e4c8e"] = "indigo",
        ["#1c2c5c"] = "night blue",
        ["#97282b"] = "madder",
        ["#d0a018"] = "weld",
        ["#3a5c2e"] = "moss",
        ["#6b4a2f"] = "walnut",
        ["#7b3f6e"] = "plum",
        ["#2a2a2e"] = "black",
        ["#fdfbf5"] = "bleached",
        ["#f5efe2"] = "undyed",
        ["#ffffff"] = "white",
        ["#e3d3b1"] = "straw",
        ["#b9c7d6"] = "pale blue",
        ["#d9b8b0"] = "rose",
        ["#b8c4a2"] = "sage",
        ["#5c6068"] = "slate",
        ["#1f2430"] = "night",
    };

    public static Said Of(string hex) => Called.GetValueOrDefault(hex) ?? Said.Plain(hex);
}
