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
        json.WriteNumber("marksApartMm", Rounded(plan.MarksApartMm));
        json.WriteNumber("hoopings", plan.Hoopings.Length);
        json.WriteNumber("stitches", report.Stitches);
        json.WriteNumber("minutes", Rounded(report.Minutes));
        json.WriteStartArray("samples");
        foreach (var sample in plan.Samples)
        {
            json.WriteStartObject();
            json.WriteString("label", sample.Label);
            json.WriteNumber("spacingMm", Rounded(sample.SpacingMm));
            json.WriteNumber("pullCompensationMm", Rounded(sample.PullCompensationMm));
            json.WriteNumber("letterHeightMm", Rounded(sample.LetterHeightMm));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    public static void Write(TextWriter writer, ShorteningReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        json.WriteNumber("apartMm", Rounded(report.ApartMm));
        json.WriteNumber("measuredMm", Rounded(report.MeasuredMm));
        json.WriteNumber("shortening", Math.Round((decimal)report.ShorteningPart, 4));
        json.WriteNumber("before", Math.Round((decimal)report.BeforePart, 4));
        json.WriteBoolean("isSet", report.IsSet);
    });

    private static decimal Rounded(double value) => Math.Round((decimal)value, 3);
}
