using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;

namespace NameBand.Pipeline;

/// <summary>How a name looks as it is sewn, as a mark to put beside an answer; and whose answer was to another look.</summary>
internal static class ApprovedLooks
{
    /// <summary>Words, face, style of stitches and colours; not where it lies, nor how high its letters are.</summary>
    public static string Of(LaidOut made, IPieceSewing sewing, PlacedName name)
    {
        var own = name.Lettered.Name;
        var group = made.Job.Groups.Of(own.Group);
        return SheetMarks.OfTexts(
            own.Text, own.Wish?.Face ?? group?.Face ?? made.Job.Lettering.Face, sewing.StyleOf(name)?.ToString() ?? "",
                made.Job.Colours.OfCloth.ToString(),
            made.Job.Colours.OfThread(group).ToString());
    }

    /// <summary>Tells of names whose owners agreed to a picture that is no longer what will be sewn. What is sewn already is left
    /// alone.</summary>
    /// <remarks>A wish that is fulfilled is as good as agreed, and its picture is another one of itself.</remarks>
    public static IEnumerable<Problem> Check(LaidOut made, IPieceSewing sewing)
    {
        if (!ApprovalsFile.Exists(made.Job.Folder) || Approvals.Of(made.Job.Folder, made.Rows, Corrections.None) is not { } report)
        {
            yield break;
        }

        var looks = report.In(ApprovalState.Agreed).Where(n => n.Line is { Look.Length: > 0, State: ApprovalState.Agreed })
            .ToDictionary(n => n.Row.Row, n => n.Line!.Look);
        var touched = looks.Count == 0 ? [] : made.Plan.Hoopings.Where(h => !made.IsSewn(h.Number))
            .SelectMany(h => h.Segments.SelectMany(s => s.Segment.Names))
            .Where(n => n.IsOfList && looks.TryGetValue(n.Lettered.Name.Row, out string? seen) && !IsSame(seen, Of(made, sewing, n)))
            .OrderBy(n => n.Order).Select(n => PlainText.Short(n.Lettered.Name.Text, 80)).ToImmutableArray();
        if (!touched.IsEmpty)
        {
            Said more = touched.Length > Few.InNote ? (Said)$" and {touched.Length - Few.InNote} more" : "";
            yield return Problem.NeedsPerson(
                new Where(ApprovalsFile.FileName, Key: ApprovalsFile.LookColumn),
                $"{(Said)$"Agreed to in another face, style or colour than they will be sewn in: {touched.Length}. "}"
                    + $"{string.Join("; ", touched.Take(Few.InNote))}{more}.",
                "Run invite and show them the new pictures; when they agree, write the new mark under “look”. Or set face and colours back.");
        }
    }

    private static bool IsSame(string seen, string now) => SheetMarks.AsWritten(seen) == now;
}
