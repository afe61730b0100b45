using System.Text.Json;
using NameBand.Estimating;

namespace NameBand.Output;

/// <summary>Writes the acts of a job into plan.json. Minutes are rounded before they are added up, as lengths are.</summary>
public static class PlanJsonWork
{
    public static void Write(Utf8JsonWriter json, Work work)
    {
        json.WriteStartArray("work");
        foreach (var row in work.Rows)
        {
            json.WriteStartObject();
            json.WriteString("act", row.Act);
            json.WriteString("by", Word(row.By));
            json.WriteString("when", Word(row.When));
            json.WriteString("countedFrom", row.CountedFrom);
            json.WriteNumber("count", Math.Round((decimal)row.Count, 6));
            json.WriteNumber("minutesEach", Math.Round((decimal)row.EachMinutes, 6));
            json.WriteNumber("minutes", Thousandths.Mm(row.Minutes.Likely));
            json.WriteNumber("lowMinutes", Thousandths.Mm(row.Minutes.Low));
            json.WriteNumber("highMinutes", Thousandths.Mm(row.Minutes.High));
            json.WriteBoolean("attended", row.IsAttended);
            json.WriteString("cause", row.Cause.Name);
            json.WriteString("source", row.Source);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Hand work from pressing to sewing down, read back from the rows of a plan.</summary>
    public static double FinishingMinutes(JsonElement work) => work.EnumerateArray()
        .Where(r => r.GetProperty("by").GetString() == Word(Doer.Hands)
            && r.GetProperty("when").GetString() is "each piece" or "each round" or "after")
        .Sum(r => r.GetProperty("minutes").GetDouble());

    /// <summary>The sum of the rows as they stand in the file.</summary>
    public static decimal Minutes(Work work, Doer by) => work.By(by).Sum(r => Thousandths.Mm(r.Minutes.Likely));

    public static string Word(Doer by) => by == Doer.Machine ? "machine" : "hands";

    public static string Word(WorkTime when) => when switch
    {
        WorkTime.Before => "before",
        WorkTime.EachHooping => "each hooping",
        WorkTime.EachName => "each name",
        WorkTime.EachPiece => "each piece",
        WorkTime.EachRound => "each round",
        WorkTime.After => "after",
        _ => throw new ArgumentOutOfRangeException(nameof(when), when, "No such time."),
    };
}
