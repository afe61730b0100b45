using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>fit</c> says: a table of rounds and faces, each with its letters, hoopings and hours.</summary>
internal static class FitSummary
{
    /// <summary>Blanks between two columns.</summary>
    private const int Between = 3;

    public static void Print(Page page, FitAnswer answer)
    {
        page.Line(answer.Title, tone: Tone.Heading);
        page.Gap();
        var choices = answer.Choices;
        int lanes = choices.Select(c => c.Lanes).DefaultIfEmpty(1).Max();
        string faces = choices.Any(c => c.Face != choices[0].Face)
            ? "the job's own face and the others of the shelf" : choices.Select(c => c.Face).FirstOrDefault("the job's own face");
        string beside = lanes > 1
            ? $" After the stroke: {Words.Count(lanes, "strip")} side by side on wider cloth (“lanes” in the group “strip”)."
            : "";
        page.Line($"What the names come to on one round or more, in {faces}.{beside}");
        string[] head = ["Rounds", "Letters", answer.Hooped ? "Hoopings" : "Runs", "At the machine", "By hand"];
        int[] widths = [.. head.Select((h, i) => Between + choices.Select(c => Cells(c)[i].Length).Append(h.Length).Max())];
        foreach (var face in choices.GroupBy(c => c.Face))
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
            choices.Count == 0
                ? "On no number of rounds that was tried can this job be laid out; the command make says why."
                : choices.Any(c => c.TooLongMm > 0)
                ? "A height in brackets is the least the job allows, and the names still run over the hem by the length beside it."
                : "All of these fit the hem.");
        page.Line(answer.OwnLetters
            ? "Choose with “rounds” in the group “strip” of job.json, then run make."
            : "Choose with “face” in the group “lettering” and “rounds” in the group “strip” of job.json, then run make.");
    }

    private static void Say(Page page, IEnumerable<ToldChoice> face)
    {
        if (face.Any(c => c.TooSmall))
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

    private static string[] Cells(ToldChoice choice)
    {
        bool hasLanes = choice.Lanes > 1;
        string height = choice.LetterHeightMm.ToString("0.0", CultureInfo.InvariantCulture) + " mm";
        return
        [
            choice.Rounds.ToString(CultureInfo.InvariantCulture),
            choice.TooLongMm > 0 ? $"({height}) +{Length.FromMm(choice.TooLongMm).InMetres()}" : height,
            FormattableString.Invariant($"{choice.Hoopings}") + (hasLanes ? FormattableString.Invariant($" / {choice.LaneHoopings}") : ""),
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
