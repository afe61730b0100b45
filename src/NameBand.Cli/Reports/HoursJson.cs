using System.Text.Json;
using NameBand.Estimating;

namespace NameBand.Cli.Reports;

/// <summary>The hours as one JSON object.</summary>
internal static class HoursJson
{
    public static void Write(TextWriter writer, HoursReport report) => ReportJson.Write(writer, (int)report.Status, report.Problems, json =>
    {
        if (report is { Estimate: { } estimate, Shopping: { } shopping })
        {
            WriteLines(json, "machine", estimate.MachineWork);
            WriteLines(json, "hands", estimate.HandWork);
            WriteTotal(json, "machineMinutes", estimate.MachineMinutes);
            WriteTotal(json, "handsOnMinutes", estimate.HandsOnMinutes);
            if (estimate.OwnPace is { } own)
            {
                WriteTotal(json, "machineMinutesAtSetPace", own.AtSetPace.MachineMinutes);
                WriteTotal(json, "handsOnMinutesAtSetPace", own.AtSetPace.HandsOnMinutes);
            }

            if (report.Left is { } left)
            {
                json.WriteNumber("hoopingsLeft", left.Hoopings);
                WriteTotal(json, "machineMinutesLeft", left.MachineMinutes);
            }

            json.WriteNumber("bobbins", estimate.Bobbins);
            json.WriteStartArray("bobbinChanges");
            foreach (var change in estimate.BobbinChanges)
            {
                json.WriteStartObject();
                json.WriteNumber("hooping", change.Hooping);
                json.WriteNumber("beforeName", change.BeforeOrder);
                json.WriteNumber("bobbins", change.Bobbins);
                json.WriteBoolean("past", change.IsPast);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteShopping(json, shopping);
        }

        WriteLearned(json, "machinePace", report.Machine);
        WriteLearned(json, "handsPace", report.Hands);
        if (report.Evenings is { } evenings)
        {
            WriteEvenings(json, evenings);
        }
    });

    private static void WriteTotal(Utf8JsonWriter json, string key, Figure figure)
    {
        json.WriteStartObject(key);
        Number(json, "low", figure.Low);
        Number(json, "likely", figure.Likely);
        Number(json, "high", figure.High);
        json.WriteEndObject();
    }

    private static void WriteLines(Utf8JsonWriter json, string key, IEnumerable<WorkLine> lines)
    {
        json.WriteStartArray(key);
        foreach (var line in lines)
        {
            json.WriteStartObject();
            json.WriteString("work", line.Work);
            Number(json, "amount", line.Amount);
            json.WriteString("unit", line.Unit);
            Number(json, "lowMinutes", line.Minutes.Low);
            Number(json, "likelyMinutes", line.Minutes.Likely);
            Number(json, "highMinutes", line.Minutes.High);
            json.WriteString("why", line.Why);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLearned(Utf8JsonWriter json, string key, LearnedPace? pace)
    {
        if (pace is null)
        {
            return;
        }

        json.WriteStartObject(key);
        json.WriteNumber("timed", pace.Timed);
        Number(json, "factor", pace.PaceFactor);
        Number(json, "leftLowMinutes", pace.Now.Low);
        Number(json, "leftLikelyMinutes", pace.Now.Likely);
        Number(json, "leftHighMinutes", pace.Now.High);
        Number(json, "beforeLowMinutes", pace.Before.Low);
        Number(json, "beforeLikelyMinutes", pace.Before.Likely);
        Number(json, "beforeHighMinutes", pace.Before.High);
        json.WriteEndObject();
    }

    private static void WriteShopping(Utf8JsonWriter json, ShoppingList shopping)
    {
        json.WriteStartArray("shopping");
        foreach (var line in shopping.Lines)
        {
            json.WriteStartObject();
            json.WriteString("what", line.What);
            Number(json, "amount", line.Amount);
            json.WriteString("unit", line.Unit);
            json.WriteString("inShop", line.InShop);
            if (line.Price is { } price)
            {
                Number(json, "price", price);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("currency", shopping.Currency);
        if (shopping.Total is { } total)
        {
            Number(json, "total", total);
        }
    }

    private static void WriteEvenings(Utf8JsonWriter json, EveningPlan plan)
    {
        json.WriteNumber("evenings", plan.Evenings);
        json.WriteNumber("leastEvenings", plan.LeastEvenings);
        Number(json, "leastMinutes", plan.LeastMinutes);
        json.WriteBoolean("isProvenBest", plan.IsProvenBest);
        json.WriteStartArray("sittings");
        foreach (var sitting in plan.Sittings)
        {
            json.WriteStartObject();
            json.WriteNumber("evening", sitting.Evening);
            json.WriteString("machine", sitting.Machine);
            Number(json, "minutes", sitting.Minutes);
            json.WriteStartArray("hoopings");
            foreach (int hooping in sitting.Hoopings)
            {
                json.WriteNumberValue(hooping);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string key, double number) => json.WriteNumber(key, Math.Round((decimal)number, 3));
}
