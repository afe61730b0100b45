using System.Collections.Immutable;
using NameBand.Lettering;

namespace NameBand.Pipeline.Ways;

/// <summary>The job's own face, and those of the shelf that are made for most names.</summary>
internal static class DrawnFaces
{
    /// <summary>More would make the choice longer than anybody reads.</summary>
    private const int MostFaces = 12;

    public static ImmutableArray<Face> Of(NamesRead names, FaceShelf shelf) =>
    [
        .. shelf.Cards.Where(c => c.Fallback is null && c.Name != names.Face.Name)
            .Select(c => shelf.Open(c).Value).OfType<Face>()
            .OrderBy(f => f.Name, StringComparer.Ordinal)
            .Prepend(names.Face)
            .Take(MostFaces),
    ];
}
