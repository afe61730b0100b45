using System.Text.Json;
using NameBand.Reports;

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
            ReportJson.WriteNumber(json, "letterHeightMm", choice.HeightMm);
            json.WriteBoolean("fits", choice.TooLongMm <= 0);
            ReportJson.WriteNumber(json, "tooLongMm", choice.TooLongMm);
            ReportJson.WriteNumber(json, "leastHeightMm", choice.LeastHeightMm);
            json.WriteBoolean("tooSmall", choice.IsTooSmall);
            json.WriteNumber("held", choice.Held);
            json.WriteNumber("hoopings", choice.Hoopings);
            ReportJson.WriteNumber(json, "machineMinutes", choice.MachineMinutes);
            ReportJson.WriteNumber(json, "handsOnMinutes", choice.HandsOnMinutes);
            json.WriteNumber("lanes", choice.Lanes);
            json.WriteNumber("laneHoopings", choice.LaneHoopings);
            ReportJson.WriteNumber(json, "laneMachineMinutes", choice.LaneMachineMinutes);
            ReportJson.WriteNumber(json, "laneHandsOnMinutes", choice.LaneHandsOnMinutes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });
}
