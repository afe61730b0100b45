using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;
using NameBand.Names;

namespace NameBand.MachineLetters;

/// <summary>Single letters as a similar face draws them.</summary>
internal static class LetterShapes
{
    /// <summary>Each letter lettered as a name of its own; letters no face has, and the blank, are missing.</summary>
    public static IReadOnlyDictionary<string, LetteredName> Of(IEnumerable<string> letters, Face face, FaceShelf shelf)
    {
        var names = letters.Where(l => l != Letters.Blank).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select((l, i) => new Name(l, new RowRef("letters", i + 1))).ToList();
        var lettered = Letterer.Letter(new NameList([], [.. names]), face, shelf).Value;
        return lettered is null
            ? new Dictionary<string, LetteredName>(StringComparer.Ordinal)
            : lettered.Names.ToDictionary(n => n.Name.Text, StringComparer.Ordinal);
    }
}
