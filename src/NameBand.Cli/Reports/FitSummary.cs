using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Job;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>What <c>fit</c> says: a table of rounds and faces, each with its letters, hoopings and hours.</summary>
internal static class FitSummary
{
    /// <summary>Blanks between two columns.</summary>
    private const int Between = 3;

    public static void Print(Page page, FitReport report)
    {
        page.Line(report.Job!.Title, tone: Tone.Heading);
        page.Gap();
        int lanes = report.Choices.Select(c => c.Lanes).DefaultIfEmpty(1).Max();
        page.Line(
            "What the names come to on one round or more, in "
            + (report.Choices.Any(c => c.Face != report.Choices[0].Face) ? "the job's own face and the others of the shelf." : report.Choices.Select(c => c.Face).FirstOrDefault("the job's own face") + ".")
            + (lanes > 1 ? $" After the stroke: {Words.Count(lanes, "strip")} side by side on wider cloth (“lanes” in the group “strip”)." : ""));
        string[] head = ["Rounds", "Letters", IsHooped(report.Job) ? "Hoopings" : "Runs", "At the machine", "By hand"];
        int[] widths = [.. head.Select((h, i) => Between + report.Choices.Select(c => Cells(c)[i].Length).Append(h.Length).Max())];
        foreach (var face in report.Choices.GroupBy(c => c.Face))
        {
            page.Gap();
            page.Line(face.Key, tone: Tone.Heading);
            page.Verbatim(Row(head, widths));
            foreach (var choice in face)
            {
                page.Verbatim(Row(Cells(choice), widths));
            }

            Say(page, face);
        }

        page.Gap();
        page.Line(
            report.Choices.IsEmpty
                ? "On no number of rounds that was tried can this job be laid out; the command make says why."
                : report.Choices.Any(c => c.TooLongMm > 0)
                ? "A height in brackets is the least the job allows, and the names still run over the hem by the length beside it."
                : "All of these fit the hem.");
        page.Line(report.Job.Traits.HasLettersOfItsOwn
            ? "Choose with “rounds” in the group “strip” of job.json, then run make."
            : "Choose with “face” in the group “lettering” and “rounds” in the group “strip” of job.json, then run make.");
    }

    private static bool IsHooped(BandJob job) => job.IsHooped;

    private static void Say(Page page, IEnumerable<FitChoice> face)
    {
        if (face.Any(c => c.IsTooSmall))
        {
            string least = FormattableString.Invariant($"{face.First().LeastHeightMm:0.0} mm");
            page.Line($"Under {least} some strokes or counters of these names are too small for the thread and needle.", 2, Tone.Attention);
        }

        int held = face.Max(c => c.Held);
        if (held > 0)
        {
            page.Line($"{Words.Count(held, "name")} would have to wait for a decision in this face.", 2, Tone.Attention);
        }
    }

    private static string[] Cells(FitChoice choice)
    {
        bool hasLanes = choice.Lanes > 1;
        string height = choice.HeightMm.ToString("0.0", CultureInfo.InvariantCulture) + " mm";
        return
        [
            choice.Rounds.ToString(CultureInfo.InvariantCulture),
            choice.TooLongMm > 0 ? $"({height}) +{Length.FromMm(choice.TooLongMm).InMetres()}" : height,
            choice.Hoopings.ToString(CultureInfo.InvariantCulture) + (hasLanes ? FormattableString.Invariant($" / {choice.LaneHoopings}") : ""),
            Plain(choice.MachineMinutes) + (hasLanes ? " / " + Plain(choice.LaneMachineMinutes) : ""),
            Plain(choice.HandsOnMinutes) + (hasLanes ? " / " + Plain(choice.LaneHandsOnMinutes) : ""),
        ];
    }

    /// <summary>Hours and minutes as on a clock, for a table: <c>6:10 h</c>.</summary>
    private static string Plain(double minutes)
    {
        int rounded = (int)(Math.Round(minutes / 5) * 5);
        return string.Create(CultureInfo.InvariantCulture, $"{rounded / 60}:{rounded % 60:00} h");
    }

    private static string Row(string[] cells, int[] widths) =>
        string.Concat(cells.Select((c, i) => c.PadRight(widths[i]))).TrimEnd();
}
