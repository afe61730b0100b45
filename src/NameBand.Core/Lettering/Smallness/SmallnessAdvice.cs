using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;

namespace NameBand.Lettering.Smallness;

/// <summary>
/// Says where letters are too small for the thread and needle, with the nearest height and face that work. A counter that
/// is sewn shut needs a person; the rest is a note, for thin strokes are sewn as running stitch and stay readable.
/// </summary>
internal static class SmallnessAdvice
{
    /// <summary>A 65/9 needle, below which this program's table does not go.</summary>
    private const double FineNeedleMm = 0.65;

    public static IEnumerable<Problem> For(
        Fabric fabric, double heightMm, IEnumerable<LetteredName> names, string chosenFace, FaceShelf shelf)
    {
        var rule = new SmallnessRule(fabric);
        foreach (var letters in FinestLetters.Of(names, chosenFace, shelf))
        {
            if (rule.Bears(letters.Figures, heightMm))
            {
                continue;
            }

            bool shut = rule.BareMm(letters.Figures, heightMm) is <= 0;
            var judged = new Verdict(
                Fact.Letters, null, shut ? VerdictKind.NeedsAPerson : VerdictKind.Note, Found(fabric, rule, letters, heightMm, shut));
            yield return judged.Told(new Where("job.json", Key: "lettering"), Mend(fabric, rule, letters, heightMm, shelf));
        }
    }

    /// <summary>The verdict where nothing else was said of them.</summary>
    public static Verdict LargeEnough(Fabric fabric, Said heights) => new(
        Fact.Letters, null, VerdictKind.Good,
        $"Letters {heights} high are large enough for {fabric.Thread.Name} thread and a {fabric.Needle} needle.");

    /// <summary>The face of the shelf, nearest in its main stem, that has these letters and bears the height; null: none. Faces
    /// kept only to help out with one script are not offered.</summary>
    public static FaceCard? OtherFace(SmallnessRule rule, FinestLetters letters, double heightMm, FaceShelf shelf)
    {
        double stem = letters.Card?.MainStemPart ?? letters.Figures.ThinnestStrokePart;
        return shelf.Cards
            .Where(c => c.Name != letters.Face && (c.Scripts.IsEmpty || c.Scripts.Contains("Latn")) && c.ThinnestStrokePart is not null)
            .Where(c => rule.Bears(
                new LetterFigures(c.ThinnestStrokePart!.Value, c.SmallestCounterPart).Scaled(letters.LeastFactor), heightMm))
            .OrderBy(c => Math.Abs((c.MainStemPart ?? c.ThinnestStrokePart!.Value) - stem)).ThenBy(c => c.Folder, StringComparer.Ordinal)
            .FirstOrDefault(c => shelf.Open(c).Value is { } face && HasAll(face, letters));
    }

    private static bool HasAll(Face face, FinestLetters letters) =>
        letters.Texts.All(t => t.EnumerateRunes().All(r => face.Has(r.Value)));

    private static Said Found(Fabric fabric, SmallnessRule rule, FinestLetters letters, double heightMm, bool shut)
    {
        Said needs = $"with {fabric.Thread.Name} thread and a {fabric.Needle} needle";
        Said height = $"at a letter height of {heightMm:0.0} mm";
        Said strokes = rule.BearsStrokes(letters.Figures, heightMm) ? "" : (Said)$" Thin strokes come out {rule.StrokeMm(letters.Figures, heightMm):0.00} mm wide and should be {rule.LeastStrokeMm:0.00} mm; letters made of such strokes are run, not sewn in satin.";
        Said counters = rule.BearsCounters(letters.Figures, heightMm) ? "" : shut
            ? " The smallest counters are sewn shut: their two sides meet."
            : (Said)$" The smallest counters keep {rule.BareMm(letters.Figures, heightMm):0.00} mm of bare cloth and should keep {rule.LeastBareMm:0.00} mm.";
        return $"{letters.Face} is small {height} {needs}.{strokes}{counters}";
    }

    private static Said Mend(Fabric fabric, SmallnessRule rule, FinestLetters letters, double heightMm, FaceShelf shelf)
    {
        Said larger = $"{letters.Face} works from {rule.LeastHeightMm(letters.Figures):0.0} mm";
        Said other = OtherFace(rule, letters, heightMm, shelf) is { } card
            ? (Said)$"; at {heightMm:0.0} mm {card.Name} works (“face” in the group “lettering”)."
            : $"; no other face here has its letters and works at {heightMm:0.0} mm.";
        return larger + other + (fabric.Thread.Tex > ThreadSize.FortyWeight.Tex - 1 && JobCloth.HoleMm(fabric.Needle) > FineNeedleMm
            ? " Finer thread with its finer needle helps too (“thread” in job.json, such as “60 wt”)."
            : "");
    }
}
