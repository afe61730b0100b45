using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>How the sewing stands, as one JSON object.</summary>
internal static class SewnJson
{
    public static void Write(TextWriter writer, SewingReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        json.WriteString("title", report.Title);
        json.WriteBoolean("written", report.Said is not null);
        json.WriteStartArray("hoopings");
        foreach (var hooping in report.Hoopings)
        {
            json.WriteStartObject();
            json.WriteNumber("number", hooping.Number);
            json.WriteString("state", hooping.IsSewn ? "sewn" : hooping.IsAgain ? "again" : "open");
            json.WriteNumber("minutes", Math.Round((decimal)hooping.Minutes, 1));
            if (hooping.Last?.Minutes is { } took)
            {
                ReportJson.WriteNumber(json, "tookMinutes", took);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (report.FinishingMinutes is { } finishing)
        {
            ReportJson.WriteNumber(json, "finishingMinutes", finishing);
        }
    });
}
