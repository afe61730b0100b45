using NameBand.Cli.Terminal;
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
        page.Line("The height is that of the capitals at which the thinnest stroke reaches 1 mm, the narrowest satin column. Below it thin strokes are sewn as running stitch.");
        page.Line("The height after it, “clear from”, is the least at which counters and strokes stay open and firm on quilting cotton with its usual thread and needle.");
        page.Gap();
        page.Facts([.. all.Where(IsForMostNames).OrderBy(f => f.HeightForThinnest1Mm).Select(f => (f.Name, Text(f), Tone.Plain))]);
        var helpers = all.Where(f => f.HelpsOut && !IsForMostNames(f)).ToList();
        if (helpers.Count > 0)
        {
            page.Gap();
            page.Line("Asked by themselves for letters the chosen face lacks:", tone: Tone.Heading);
            page.Facts([.. helpers.OrderBy(f => f.Name, StringComparer.Ordinal).Select(f => (f.Name, $"{Words.Both(f.HeightForThinnest1Mm)}, clear from {Clear(f)}. {f.Reason}", Tone.Plain))]);
        }

        if (!faces.Problems.IsEmpty)
        {
            page.Gap();
            page.Problems(faces.Problems, Tone.Attention);
        }
    }

    private static bool IsForMostNames(FaceReport face) => !face.HelpsOut || face.Scripts.Contains("Latin");

    private static string Clear(FaceReport face) => FormattableString.Invariant($"{face.LeastHeightMm:0.0}\u00A0mm");

    private static string Text(FaceReport face)
    {
        string height = Words.Both(face.HeightForThinnest1Mm);
        string scripts = face.Scripts.IsEmpty ? "" : $" {Wording.AsSentence(Wording.List(face.Scripts))}";
        return $"{height}, clear from {Clear(face)}. {face.Reason}{scripts}";
    }
}
