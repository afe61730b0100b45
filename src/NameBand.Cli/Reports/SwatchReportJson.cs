using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>The reports of <c>swatch</c> as one JSON object.</summary>
internal static class SwatchReportJson
{
    public static void Write(TextWriter writer, SwatchReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        json.WriteString("folder", report.Folder);
        if (report.Plan is not { } plan)
        {
            return;
        }

        json.WriteString("word", plan.Word);
        ReportJson.WriteNumber(json, "marksApartMm", plan.MarksApartMm);
        json.WriteNumber("hoopings", plan.Hoopings.Length);
        json.WriteNumber("stitches", report.Stitches);
        ReportJson.WriteNumber(json, "minutes", report.Minutes);
        json.WriteStartArray("samples");
        foreach (var sample in plan.Samples)
        {
            json.WriteStartObject();
            json.WriteString("label", sample.Label);
            ReportJson.WriteNumber(json, "spacingMm", sample.SpacingMm);
            ReportJson.WriteNumber(json, "pullCompensationMm", sample.PullCompensationMm);
            ReportJson.WriteNumber(json, "letterHeightMm", sample.LetterHeightMm);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    public static void Write(TextWriter writer, ShorteningReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        ReportJson.WriteNumber(json, "apartMm", report.ApartMm);
        ReportJson.WriteNumber(json, "measuredMm", report.MeasuredMm);
        json.WriteNumber("shortening", Math.Round((decimal)report.ShorteningPart, 4));
        json.WriteNumber("before", Math.Round((decimal)report.BeforePart, 4));
        json.WriteBoolean("isSet", report.IsSet);
    });
}
