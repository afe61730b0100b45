using System.Collections.Concurrent;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;

namespace NameBand.Tests.StitchingRoom;

/// <summary>Names in the faces of the shelf.</summary>
internal static class Shelf
{
    private static readonly FaceShelf Faces = new();
    private static readonly ConcurrentDictionary<string, Face> Opened = new();

    public static Face Face(string folder) =>
        Opened.GetOrAdd(folder, f => Faces.Open(Faces.Cards.Single(c => c.Folder == f)).Value!);

    public static LetteredName Name(string folder, string text) => Names(folder, [text])[0];

    public static IReadOnlyList<LetteredName> Names(string folder, IEnumerable<string> texts)
    {
        Name[] names = [.. texts.Select((t, i) => new Name(t, new RowRef("names.csv", i + 2)))];
        return Letterer.Letter(new NameList([], [.. names]), Face(folder), Faces).Value!.Names;
    }
}
