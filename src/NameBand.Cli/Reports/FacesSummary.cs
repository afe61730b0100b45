using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Cli.Reports;

/// <summary>What <c>faces</c> says: each face with the letter height from which it can be sewn as satin throughout.</summary>
internal static class FacesSummary
{
    public static void Print(Page page, Result<FaceReportList> faces)
    {
        var all = faces.Value!.Faces;
        page.Line("Faces to choose from: “face” in the group “lettering” of job.json.", tone: Tone.Heading);
        string cloth = $"on {FaceReport.Cloth.Name} with its usual thread and needle";
        string narrowest = Fabric.NarrowestSatinMm.ToString("0.0#", CultureInfo.InvariantCulture) + Words.Tie + "mm";
        page.Line($"“Satin from” is the height of the capitals at which the thinnest stroke comes out {narrowest} wide as sewn {cloth}: the stroke as drawn and the pull compensation on both sides. Letters made of narrower strokes are sewn as running stitch.");
        page.Line("“Clear from” is the least height at which counters and strokes stay open and firm.");
        page.Gap();
        page.Facts([.. all.Where(IsForMostNames).OrderBy(f => f.LeastHeightMm).ThenBy(f => f.SatinFromMm).Select(f => (f.Name, Text(f), Tone.Plain))]);
        var helpers = all.Where(f => f.HelpsOut && !IsForMostNames(f)).ToList();
        if (helpers.Count > 0)
        {
            page.Gap();
            page.Line("Asked by themselves for letters the chosen face lacks:", tone: Tone.Heading);
            page.Facts([.. helpers.OrderBy(f => f.Name, StringComparer.Ordinal).Select(f => (f.Name, $"{Heights(f)} {f.Reason}", Tone.Plain))]);
        }

        if (!faces.Problems.IsEmpty)
        {
            page.Gap();
            page.Problems(faces.Problems, Tone.Attention);
        }
    }

    private static bool IsForMostNames(FaceReport face) => !face.HelpsOut || face.Scripts.Contains("Latin");

    private static string Heights(FaceReport face) =>
        FormattableString.Invariant($"satin from {face.SatinFromMm:0.0}{Words.Tie}mm, clear from {face.LeastHeightMm:0.0}{Words.Tie}mm.");

    private static string Text(FaceReport face)
    {
        string scripts = face.Scripts.IsEmpty ? "" : $" {Wording.AsSentence(Wording.List(face.Scripts))}";
        return $"{Heights(face)} {face.Reason}{scripts}";
    }
}
