using NameBand.Common;

namespace NameBand.Job;

/// <summary>The colours of cloth and thread.</summary>
internal static partial class JobAssembly
{
    public static readonly Said ColourMend =
        "Write three pairs of hexadecimal digits, such as \"#2e4c8e\", or a colour word of CSS, such as \"darkgreen\".";

    private static ColourSettings Colours(JobValues values) =>
        new(Colour(values, ColourKeys.Cloth), Colour(values, ColourKeys.Thread), Colour(values, ColourKeys.Bobbin));

    private static CssColour? Colour(JobValues values, TextKey key)
    {
        if (values.Text(key) is not { } written)
        {
            return null;
        }

        if (CssColour.TryParse(written, out var colour))
        {
            return colour;
        }

        values.Refuse(key, $"“{PlainText.Short(written, 40)}” is no colour.", NearColour(written) + ColourMend);
        return null;
    }

    public static Said NearColour(string written) =>
        NearestWord.Find(written.ToLowerInvariant(), CssColour.KnownWords) is { } near ? (Said)$"Did you mean \"{near}\"? " : "";
}
