using System.Text.Json;
using NameBand.Estimating;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Reports;

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
            PlanWork.Write(json, estimate.Work);
            ReportJson.WriteFigure(json, "machineMinutes", estimate.MachineMinutes);
            ReportJson.WriteFigure(json, "handsOnMinutes", estimate.HandsOnMinutes);
            ReportJson.WriteFigure(json, "allMinutes", estimate.Work.All);
            ReportJson.WriteNumber(json, "elapsedMinutes", estimate.ElapsedMinutes);
            if (estimate.OwnPace is { } own)
            {
                ReportJson.WriteFigure(json, "machineMinutesAtSetPace", own.AtSetPace.MachineMinutes);
                ReportJson.WriteFigure(json, "handsOnMinutesAtSetPace", own.AtSetPace.HandsOnMinutes);
            }

            if (report.Left is { } left)
            {
                json.WriteNumber("hoopingsLeft", left.Hoopings);
                ReportJson.WriteFigure(json, "machineMinutesLeft", left.MachineMinutes);
                ReportJson.WriteFigure(json, "handsOnMinutesLeft", left.HandsOnMinutes);
                ReportJson.WriteNumber(json, "finishingMinutesLeft", left.FinishingMinutes);
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

    private static void WriteLines(Utf8JsonWriter json, string key, IEnumerable<WorkRow> lines)
    {
        json.WriteStartArray(key);
        foreach (var line in lines)
        {
            json.WriteStartObject();
            json.WriteString("work", line.Act);
            ReportJson.WriteNumber(json, "amount", line.Count);
            json.WriteString("unit", line.CountedFrom);
            ReportJson.WriteNumber(json, "lowMinutes", line.Minutes.Low);
            ReportJson.WriteNumber(json, "likelyMinutes", line.Minutes.Likely);
            ReportJson.WriteNumber(json, "highMinutes", line.Minutes.High);
            json.WriteString("why", line.Cause.Why);
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
        ReportJson.WriteNumber(json, "factor", pace.PaceFactor);
        ReportJson.WriteNumber(json, "leftLowMinutes", pace.Now.Low);
        ReportJson.WriteNumber(json, "leftLikelyMinutes", pace.Now.Likely);
        ReportJson.WriteNumber(json, "leftHighMinutes", pace.Now.High);
        ReportJson.WriteNumber(json, "beforeLowMinutes", pace.Before.Low);
        ReportJson.WriteNumber(json, "beforeLikelyMinutes", pace.Before.Likely);
        ReportJson.WriteNumber(json, "beforeHighMinutes", pace.Before.High);
        json.WriteEndObject();
    }

    private static void WriteShopping(Utf8JsonWriter json, ShoppingList shopping)
    {
        json.WriteStartArray("shopping");
        foreach (var line in shopping.Lines)
        {
            json.WriteStartObject();
            json.WriteString("what", line.What);
            ReportJson.WriteNumber(json, "amount", line.Amount);
            json.WriteString("unit", line.Unit);
            json.WriteString("inShop", line.InShop);
            if (line.Price is { } price)
            {
                ReportJson.WriteNumber(json, "price", price);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("currency", shopping.Currency);
        if (shopping.Total is { } total)
        {
            ReportJson.WriteNumber(json, "total", total);
        }
    }

    private static void WriteEvenings(Utf8JsonWriter json, EveningPlan plan)
    {
        json.WriteNumber("evenings", plan.Evenings);
        json.WriteNumber("leastEvenings", plan.LeastEvenings);
        ReportJson.WriteNumber(json, "leastMinutes", plan.LeastMinutes);
        json.WriteBoolean("isProvenBest", plan.IsProvenBest);
        json.WriteStartArray("sittings");
        foreach (var sitting in plan.Sittings)
        {
            json.WriteStartObject();
            json.WriteNumber("evening", sitting.Evening);
            json.WriteString("machine", sitting.Machine);
            ReportJson.WriteNumber(json, "minutes", sitting.Minutes);
            WriteTasks(json, "before", sitting.Before);
            WriteTasks(json, "after", sitting.After);
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

    private static void WriteTasks(Utf8JsonWriter json, string key, IEnumerable<OtherTask> tasks)
    {
        json.WriteStartArray(key);
        foreach (var task in tasks)
        {
            json.WriteStartObject();
            json.WriteString("act", task.Act);
            ReportJson.WriteNumber(json, "minutes", task.Minutes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
