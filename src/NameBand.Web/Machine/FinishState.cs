using System.Text.Json;
using NameBand.Job;
using NameBand.Reports;

namespace NameBand.Web.Machine;

/// <summary>The steps from the last name to the last stitch at the hem, and how far each round has come.</summary>
internal static class FinishState
{
    public static void Write(Utf8JsonWriter json, SewingReport report)
    {
        if (report.Steps.IsEmpty)
        {
            return;
        }

        json.WriteStartObject("finish");
        json.WriteStartArray("rounds");
        foreach (var round in report.Rounds)
        {
            json.WriteStartObject();
            json.WriteNumber("number", round.Number);
            json.WriteBoolean("sewn", round.IsSewn);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("steps");
        foreach (var step in report.Steps)
        {
            json.WriteStartObject();
            json.WriteString("step", FinishingWords.Of(step));
            json.WriteString("words", FinishingWords.Done(step).ToString());
            json.WriteStartArray("done");
            foreach (var round in report.Rounds.Where(r => r.Last >= step))
            {
                json.WriteNumberValue(round.Number);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
