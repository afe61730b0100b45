using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Stitching.Sewing;

/// <summary>Asks about names some of whose letters are too thin for satin while the others are not, and cannot be widened unseen.</summary>
internal static class StyleAdvice
{
    /// <summary>One question for each letter, however many names have it.</summary>
    public static IEnumerable<Problem> For(IEnumerable<(LetteredName Name, ReadPiece Letter)> asked, Fabric fabric, double letterHeightMm)
    {
        foreach (var of in asked.GroupBy(a => a.Letter.Piece.Key, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var letter = of.First().Letter;
            string[] names = [.. of.Select(a => a.Name.Name.Text).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
            double needs = letterHeightMm * NameStyling.LeastWidenedMm(fabric) / Math.Max(0.01, letter.StrokeMm);
            double larger = Math.Ceiling(10 * needs) / 10;
            Said text = $"“{letter.Piece.Text}” in the face {letter.Piece.Face} has strokes {letter.StrokeMm:0.00} mm wide at a letter height of {letterHeightMm:0.0} mm, too thin for the satin of the letters beside it in {InWords(names)}. A name is sewn in one style: there each stroke is made thicker by more than {NameStyling.MostWideningMm:0.0} mm on each side, or the whole name is run where most of it is so thin.";
            Said mend = $"Look at the proof. Letters from {larger:0.0} mm up do without (“height” in the group “lettering”), and so does a bolder face (“face” in the group “lettering”).";
            yield return new Verdict(Fact.Letters, null, VerdictKind.NeedsAPerson, text)
                .Told(new Where("job.json", Key: "lettering", Name: names[0]), mend);
        }
    }

    private static Said InWords(string[] names)
    {
        string few = string.Join(", ", names.Take(Few.Examples).Select(n => $"“{n}”"));
        return names.Length > Few.Examples ? (Said)$"{few} and {names.Length - Few.Examples} more" : Said.Plain(few);
    }
}
