using NameBand.MachineLetters;

namespace NameBand.Cli.Reports;

/// <summary>The report of <c>measure</c> as one JSON object.</summary>
internal static class MeasureJson
{
    public static void Write(TextWriter writer, MeasureReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        json.WriteNumber("heightMm", Rounded(report.HeightMm));
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
            json.WriteNumber("gapMm", Rounded(alphabet.Gap.WidthMm));
            json.WriteNumber("readingErrorMm", Rounded(report.ReadingErrorMm));
            json.WriteStartArray("letters");
            foreach (var letter in alphabet.Letters.Values)
            {
                json.WriteStartObject();
                json.WriteString("letter", letter.Letter);
                json.WriteNumber("widthMm", Rounded(letter.WidthMm));
                json.WriteNumber("lowMm", Rounded(letter.LowMm));
                json.WriteNumber("highMm", Rounded(letter.HighMm));
                json.WriteBoolean("estimated", letter.Origin == WidthOrigin.Estimated);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }
    });

    private static decimal Rounded(double value) => Math.Round((decimal)value, 3);
}
