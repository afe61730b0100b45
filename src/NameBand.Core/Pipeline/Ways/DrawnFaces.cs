using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Ways;

/// <summary>The job's own face, and those of the shelf that are made for most names.</summary>
internal static class DrawnFaces
{
    /// <summary>More would make the choice longer than anybody reads.</summary>
    private const int MostFaces = 12;

    /// <summary>The rows of those names whose letters a face here has.</summary>
    public static Result<ImmutableHashSet<RowRef>> Able(CheckedList list, FaceShelf shelf, CancellationToken cancel)
    {
        var lettered = Letterer.Letter(new NameList([], list.InOrder.Names), list.Face, shelf, cancel);
        return lettered.Value is { } letters
            ? Result.Of<ImmutableHashSet<RowRef>>([.. letters.Names.Select(n => n.Name.Row)])
            : Result.Fail<ImmutableHashSet<RowRef>>(lettered.Problems);
    }

    public static ImmutableArray<Face> Of(NamesRead names, FaceShelf shelf) =>
    [
        .. shelf.Cards.Where(c => c.Fallback is null && c.Name != names.Face.Name)
            .Select(c => shelf.Open(c).Value).OfType<Face>()
            .OrderBy(f => f.Name, StringComparer.Ordinal)
            .Prepend(names.Face)
            .Take(MostFaces),
    ];
}
