using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Shaping;

namespace NameBand.Lettering;

/// <summary>Says where letters of other faces stand in for ones that the chosen face lacks: nobody should find that out on the
/// cloth.</summary>
internal static class HelpingFaces
{
    /// <summary>Whether a face draws fewer than half of the names: most of them would be seen in another one.</summary>
    public static bool IsMostlyHelped(FaceChain chain, IReadOnlyCollection<string> names) =>
        names.Count(n => Itemiser.HasLetterOfChosen(n, chain)) * 2 < names.Count;

    /// <summary>A note that tells the names with such letters; null when all are from the chosen face.</summary>
    public static Problem? Note(Face chosen, ImmutableArray<LetteredName> names)
    {
        var helped = new List<string>();
        bool isUsed = false;
        foreach (var name in names)
        {
            var others = name.Pieces.Select(p => p.Piece.Face).Where(f => f != chosen.Name).Distinct().ToList();
            isUsed |= name.Pieces.Any(p => p.Piece.Face == chosen.Name);
            if (others.Count > 0)
            {
                helped.Add($"“{PlainText.Short(name.Name.Text)}” ({string.Join(" and ", others)})");
            }
        }

        if (helped.Count == 0)
        {
            return null;
        }

        Said listed = Said.Plain(string.Join(", ", helped.Take(Few.InNote)))
            + (helped.Count > Few.InNote ? (Said)$" and {helped.Count - Few.InNote} more" : "");
        return Problem.Note(
            new Where(Key: "lettering.face"),
            isUsed ? (Said)$"{chosen.Name} lacks some letters. Other faces draw those of {listed}."
                : $"{chosen.Name} has too few of the letters, so every name is sewn in another face: {listed}.",
            "Look at the proofs of these names, and choose a face that has the letters if they do not please.");
    }
}
