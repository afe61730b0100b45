using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>What is said wherever a machine's own letters are drawn: nobody but the machine knows their shapes.</summary>
internal static class Likeness
{
    /// <summary>On what the maker looks at.</summary>
    public static readonly Said OnProofs = "a likeness: your machine’s own letters will look different";

    /// <summary>On a picture that is sent to the owner of a name.</summary>
    public static readonly Said OnPictures = "a likeness: the sewn letters will look different";

    public static bool IsIn(IEnumerable<PlacedName> names) => names.Any(n => WayTraits.Of(n.Lettered.Way).HasLettersOfItsOwn);

    public static readonly Said OnSheets =
        "The letters are a likeness: your machine’s own letters will look different. Their height, their lengths and their places are as planned.";
}
