using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Lettering;

/// <summary>Says where letters of other faces stand in for ones that the chosen face lacks: nobody should find that out on the cloth.</summary>
internal static class HelpingFaces
{
    private const int MostNamed = 4;

    /// <summary>One note for each face that helps out, in the order in which they are first needed.</summary>
    public static IEnumerable<Problem> Notes(Face chosen, ImmutableArray<LetteredName> names)
    {
        var helped = new List<(string Face, List<LetteredName> Names)>();
        bool isUsed = false;
        foreach (var name in names)
        {
            foreach (string face in name.Pieces.Select(p => p.Piece.Face).Distinct())
            {
                if (face == chosen.Name)
                {
                    isUsed = true;
                    continue;
                }

                if (!helped.Exists(h => h.Face == face))
                {
                    helped.Add((face, []));
                }

                helped.Find(h => h.Face == face).Names.Add(name);
            }
        }

        return helped.Select(h => Problem.Note(
            new Where(Key: "lettering.face"),
            isUsed ? $"{chosen.Name} lacks letters of {Listed(h.Names)}; they are from {h.Face}."
                : $"{chosen.Name} has too few of the letters, and no name is sewn in it: {Listed(h.Names)} {(h.Names.Count == 1 ? "is" : "are")} in {h.Face}.",
            "Look at their proofs; choose a face that has the letters if these do not please."));
    }

    private static string Listed(List<LetteredName> names)
    {
        string[] shown = [.. names.Take(MostNamed).Select(n => $"“{PlainText.Short(n.Name.Text)}”")];
        int more = names.Count - shown.Length;
        return more > 0 ? $"{string.Join(", ", shown)} and {more} more"
            : shown.Length == 1 ? shown[0]
            : string.Join(", ", shown[..^1]) + " and " + shown[^1];
    }
}
