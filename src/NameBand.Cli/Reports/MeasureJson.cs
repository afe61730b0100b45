using NameBand.MachineLetters;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>The report of <c>measure</c> as one JSON object.</summary>
internal static class MeasureJson
{
    public static void Write(TextWriter writer, MeasureReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        ReportJson.WriteNumber(json, "heightMm", report.HeightMm);
        json.WriteString("sheet", report.Sheet);
        json.WriteStartArray("printed");
        foreach (string name in report.Printed)
        {
            json.WriteStringValue(name);
        }

        json.WriteEndArray();
        json.WriteNumber("lines", report.Lines);
        json.WriteNumber("unfilled", report.Unfilled);
        json.WriteString("alphabet", report.AlphabetFile);
        if (report.Alphabet is { } alphabet)
        {
            ReportJson.WriteNumber(json, "gapMm", alphabet.Gap.WidthMm);
            ReportJson.WriteNumber(json, "readingErrorMm", report.ReadingErrorMm);
            json.WriteStartArray("letters");
            foreach (var letter in alphabet.Letters.Values)
            {
                json.WriteStartObject();
                json.WriteString("letter", letter.Letter);
                ReportJson.WriteNumber(json, "widthMm", letter.WidthMm);
                ReportJson.WriteNumber(json, "lowMm", letter.LowMm);
                ReportJson.WriteNumber(json, "highMm", letter.HighMm);
                json.WriteBoolean("estimated", letter.Origin == WidthOrigin.Estimated);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }
    });
}
