using System.Text.Encodings.Web;
using System.Text.Json;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>The reports as one JSON object, for other programs. Numbers are rounded to the thousandth.</summary>
internal static class ReportJson
{
    public static void Write(TextWriter writer, MakeReport report) => Write(
        writer, (int)report.Status, Needs.InOrder(report.Names, report.Problems), json =>
    {
        WriteText(json, "title", report.Job?.Title);
        WriteText(json, "outFolder", report.OutFolder);
        if (report.Plan is { } plan && report.Status != ExitStatus.CannotUse)
        {
            WritePlan(json, report.Job?.Lettering.Face, plan);
        }

        if (report.Estimate is { } estimate && report.Status != ExitStatus.CannotUse)
        {
            WriteEstimate(json, estimate);
        }

        ChangesJson.Write(json, report.Changes);
        if (report.Job is { } job && AssumedWorkshop.Of(job) is { } assumed)
        {
            json.WriteStartObject("assumed");
            json.WriteString("text", assumed.Text);
            json.WriteString("line", assumed.Line);
            json.WriteEndObject();
        }

        WriteRows(json, report.Names);
    });

    public static void Write(TextWriter writer, NamesReport report) => Write(
        writer, (int)report.Status, Needs.InOrder(report.Names, report.Problems), json =>
    {
        WriteRows(json, report.Names);
        if (report.Written is { } written)
        {
            json.WriteNumber("written", written);
        }

        json.WriteStartArray("linesToAdd");
        foreach (string line in report.LinesToAdd)
        {
            json.WriteStringValue(line);
        }

        json.WriteEndArray();
        WriteApprovals(json, report.Approvals);
    });

    private static void WriteApprovals(Utf8JsonWriter json, ApprovalReport? report)
    {
        if (report is null)
        {
            return;
        }

        json.WriteStartArray("approvals");
        foreach (var name in report.Names)
        {
            json.WriteStartObject();
            json.WriteString("list", name.Row.Row.List);
            json.WriteNumber("line", name.Row.Row.Line);
            json.WriteString("text", name.Row.Text);
            json.WriteString("state", ApprovalsFile.Word(name.State));
            json.WriteString("date", name.Line?.Date ?? "");
            json.WriteString("wished", name.Line?.Text ?? "");
            json.WriteEndObject();
        }

        json.WriteEndArray();
        foreach (var (key, lines) in new[] { ("approvalLinesToAdd", report.LinesToAdd), ("wishedCorrections", report.Corrections) })
        {
            json.WriteStartArray(key);
            foreach (string line in lines)
            {
                json.WriteStringValue(line);
            }

            json.WriteEndArray();
        }
    }

    public static void Write(TextWriter writer, Result<FaceReportList> faces) => Write(
        writer, (int)(faces.IsUsable ? ExitStatus.AllPlaced : ExitStatus.CannotUse), faces.Problems, json =>
        {
            json.WriteStartArray("faces");
            foreach (var face in faces.Value?.Faces ?? [])
            {
                json.WriteStartObject();
                json.WriteString("name", face.Name);
                json.WriteString("file", face.File);
                json.WriteString("licence", face.Licence);
                json.WriteString("reason", face.Reason);
                json.WriteStartArray("scripts");
                foreach (string script in face.Scripts)
                {
                    json.WriteStringValue(script);
                }

                json.WriteEndArray();
                WriteNumber(json, "thinnestStrokePart", face.ThinnestStrokePart);
                WriteNumber(json, "mainStemPart", face.MainStemPart);
                WriteNumber(json, "heightForThinnest1Mm", 1 / face.ThinnestStrokePart);
                WriteNumber(json, "satinFromMm", face.SatinFromMm);
                if (face.SmallestCounterPart is { } counter)
                {
                    WriteNumber(json, "smallestCounterPart", counter);
                }

                WriteNumber(json, "leastHeightMm", face.LeastHeightMm);
                json.WriteBoolean("helpsOut", face.HelpsOut);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });

    public static void Write(TextWriter writer, int status, IEnumerable<Problem> problems, Action<Utf8JsonWriter>? rest = null)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteNumber("format", 1);
            json.WriteNumber("status", status);
            rest?.Invoke(json);
            WriteProblems(json, problems);
            json.WriteEndObject();
        }

        writer.WriteLine(System.Text.Encoding.UTF8.GetString(bytes.ToArray()));
    }

    private static void WritePlan(Utf8JsonWriter json, string? face, StripPlan plan)
    {
        WriteText(json, "face", face);
        WriteNumber(json, "letterHeightMm", plan.LetterHeightMm);
        json.WriteNumber("names", plan.NameCount);
        json.WriteNumber("hoopings", plan.Hoopings.Length);
        json.WriteBoolean("matchesHem", plan.MatchesHem);
        json.WriteStartArray("rounds");
        foreach (var round in plan.Rounds)
        {
            json.WriteStartObject();
            json.WriteNumber("number", round.Number);
            WriteNumber(json, "lengthMm", round.LengthMm);
            WriteNumber(json, "hemMm", round.HemMm);
            json.WriteNumber("names", round.Names.Count(n => n.IsOfList));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("heightLimits");
        foreach (var limit in plan.Limits)
        {
            json.WriteStartObject();
            json.WriteString("list", limit.Name.Name.Row.List);
            json.WriteNumber("line", limit.Name.Name.Row.Line);
            json.WriteString("text", limit.Name.Name.Text);
            json.WriteString("because", limit.Because);
            WriteNumber(json, "heightWithoutMm", limit.HeightWithoutMm);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteEstimate(Utf8JsonWriter json, Estimate estimate)
    {
        json.WriteNumber("stitches", estimate.Hoopings.Sum(h => h.Stitches));
        WriteFigure(json, "machineMinutes", estimate.MachineMinutes);
        WriteFigure(json, "handsOnMinutes", estimate.HandsOnMinutes);
        WriteNumber(json, "needleThreadM", estimate.NeedleThreadM);
        WriteNumber(json, "bobbinThreadM", estimate.BobbinThreadM);
    }

    private static void WriteRows(Utf8JsonWriter json, NameList? names)
    {
        if (names is null)
        {
            return;
        }

        json.WriteStartObject("rows");
        json.WriteNumber("all", names.Rows.Length);
        WriteCount("placed", RowOutcome.Placed);
        WriteCount("merged", RowOutcome.Merged);
        WriteCount("held", RowOutcome.Held);
        WriteCount("leftOut", RowOutcome.LeftOut);
        json.WriteEndObject();
        json.WriteStartArray("held");
        foreach (var row in names.Rows.Where(r => r.Outcome == RowOutcome.Held))
        {
            json.WriteStartObject();
            json.WriteString("list", row.Row.List);
            json.WriteNumber("line", row.Row.Line);
            json.WriteString("text", row.Text);
            json.WriteString("reason", row.Reason);
            json.WriteEndObject();
        }

        json.WriteEndArray();

        void WriteCount(string key, RowOutcome outcome) => json.WriteNumber(key, names.Rows.Count(r => r.Outcome == outcome));
    }

    private static void WriteProblems(Utf8JsonWriter json, IEnumerable<Problem> problems)
    {
        json.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            json.WriteStartObject();
            json.WriteString("severity", ProblemJson.Word(problem.Severity));
            ProblemJson.WriteWhere(json, problem.Where);
            json.WriteString("found", problem.Found);
            json.WriteString("mend", problem.Mend);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>A figure with its range.</summary>
    internal static void WriteFigure(Utf8JsonWriter json, string key, Figure figure)
    {
        json.WriteStartObject(key);
        WriteNumber(json, "low", figure.Low);
        WriteNumber(json, "likely", figure.Likely);
        WriteNumber(json, "high", figure.High);
        json.WriteEndObject();
    }

    internal static void WriteNumber(Utf8JsonWriter json, string key, double number) =>
        json.WriteNumber(key, Math.Round((decimal)number, 3));

    private static void WriteText(Utf8JsonWriter json, string key, string? text)
    {
        if (text is not null)
        {
            json.WriteString(key, text);
        }
    }
}
