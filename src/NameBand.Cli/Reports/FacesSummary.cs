using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>faces</c> says: each face with the letter height from which it can be sewn as satin throughout.</summary>
internal static class FacesSummary
{
    public static void Print(Page page, FacesAnswer answer)
    {
        var all = answer.Faces;
        page.Line("Faces to choose from: “face” in the group “lettering” of job.json.", tone: Tone.Heading);
        Said cloth = $"on {answer.Cloth} with its usual thread and needle";
        page.Line(
            $"“Satin from” is the height of the capitals at which the thinnest stroke comes out {answer.NarrowestSatinMm:0.0#}{Words.Tie}mm wide as sewn {cloth}: "
            + $"the stroke as drawn and the pull compensation on both sides. Letters made of narrower strokes are sewn as running stitch.");
        page.Line("“Clear from” is the least height at which counters and strokes stay open and firm.");
        page.Gap();
        var main = all.Where(IsForMostNames).OrderBy(f => f.LeastHeightMm).ThenBy(f => f.SatinFromMm);
        page.Facts([.. main.Select(f => (Said.Plain(f.Name), Text(f), Tone.Plain))]);
        var helpers = all.Where(f => f.HelpsOut && !IsForMostNames(f)).ToList();
        if (helpers.Count > 0)
        {
            page.Gap();
            page.Line("Asked by themselves for letters the chosen face lacks:", tone: Tone.Heading);
            var named = helpers.OrderBy(f => f.Name, StringComparer.Ordinal);
            page.Facts([.. named.Select(f => (Said.Plain(f.Name), (Said)$"{Heights(f)} {f.Reason}", Tone.Plain))]);
        }

        if (answer.Problems.Count > 0)
        {
            page.Gap();
            page.Problems(answer.Problems, Tone.Attention);
        }
    }

    private static bool IsForMostNames(ToldFace face) => !face.HelpsOut || face.Scripts.Contains("Latin");

    private static Said Heights(ToldFace face) =>
        $"satin from {face.SatinFromMm:0.0}{Words.Tie}mm, clear from {face.LeastHeightMm:0.0}{Words.Tie}mm.";

    private static Said Text(ToldFace face)
    {
        Said scripts = face.Scripts.Count == 0 ? "" : (Said)$" {Wording.AsSentence(Wording.List([.. face.Scripts]))}";
        return $"{Heights(face)} {face.Reason}{scripts}";
    }
}
