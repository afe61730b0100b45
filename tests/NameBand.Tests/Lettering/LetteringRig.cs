using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Shaping;
using NameBand.Lettering.Smallness;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.Lettering;

/// <summary>The shelf beside the test program, and short ways to letter a few names.</summary>
internal static class LetteringRig
{
    public static FaceShelf Shelf { get; } = new();

    private static readonly Lazy<ImmutableArray<FaceReport>> Measured = new(() => FaceReport.OfShelf(Shelf).Value!.Faces);

    public static ImmutableArray<FaceReport> Reports => Measured.Value;

    public static Face Face(string name = "Nunito Bold") =>
        Shelf.Open(name, AppContext.BaseDirectory).Value ?? throw new InvalidOperationException($"{name} does not open.");

    public static string PathOf(string faceName)
    {
        var card = Shelf.Cards.Single(c => c.Name == faceName);
        return Path.Combine(AppContext.BaseDirectory, "fonts-open", card.Folder, card.File);
    }

    public static NameList ListOf(params IEnumerable<string> names) =>
        new([], [.. names.Select((n, i) => new Name(n, new RowRef("names.csv", i + 2)))]);

    public static LetteredList Letter(string face, params IEnumerable<string> names) =>
        Letterer.Letter(ListOf(names), Face(face), Shelf).Value!;

    public static LetteredName LetterOne(string name, string face = "Nunito Bold")
    {
        var list = Letter(face, name);
        return list.Names.Length == 1 ? list.Names[0] : throw new InvalidOperationException(list.Held[0].Reason.English);
    }

    public static string HeldReason(string name, string face = "Nunito Bold") => Assert.Single(Letter(face, name).Held).Reason.English;

    public static ShapedName Shape(string text, Face face)
    {
        using var shaper = new NameShaper(new FaceChain(face, Shelf));
        return shaper.Shape(text);
    }
}
