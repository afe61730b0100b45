using System.Text.Json;

namespace NameBand.Cli.Reports;

/// <summary>The choices of <c>fit</c> as one JSON object.</summary>
internal static class FitJson
{
    public static void Write(TextWriter writer, FitReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        json.WriteStartArray("choices");
        foreach (var choice in report.Choices)
        {
            json.WriteStartObject();
            json.WriteString("face", choice.Face);
            json.WriteNumber("rounds", choice.Rounds);
            Number(json, "letterHeightMm", choice.HeightMm);
            json.WriteBoolean("fits", choice.TooLongMm <= 0);
            Number(json, "tooLongMm", choice.TooLongMm);
            Number(json, "leastHeightMm", choice.LeastHeightMm);
            json.WriteBoolean("tooSmall", choice.IsTooSmall);
            json.WriteNumber("held", choice.Held);
            json.WriteNumber("hoopings", choice.Hoopings);
            Number(json, "machineMinutes", choice.MachineMinutes);
            Number(json, "handsOnMinutes", choice.HandsOnMinutes);
            json.WriteNumber("lanes", choice.Lanes);
            json.WriteNumber("laneHoopings", choice.LaneHoopings);
            Number(json, "laneMachineMinutes", choice.LaneMachineMinutes);
            Number(json, "laneHandsOnMinutes", choice.LaneHandsOnMinutes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    private static void Number(Utf8JsonWriter json, string name, double value) => json.WriteNumber(name, Math.Round((decimal)value, 3));
}
