using System.Text.Json;
using NameBand.Output.Changes;

namespace NameBand.Cli.Reports;

/// <summary>What changed since the plan before, for other programs; the unchanged names only counted.</summary>
internal static class ChangesJson
{
    public static void Write(Utf8JsonWriter json, PlanChanges? changes)
    {
        if (changes is null)
        {
            return;
        }

        json.WriteStartObject("changes");
        json.WriteNumber("unchanged", changes.Of(NameFate.Unchanged).Count());
        json.WriteStartArray("names");
        foreach (var name in changes.Names.Where(n => n.Fate != NameFate.Unchanged))
        {
            json.WriteStartObject();
            json.WriteString("change", PlanChanges.Word(name.Fate));
            json.WriteString("text", name.Text);
            json.WriteString("textBefore", name.TextBefore);
            json.WriteString("list", name.Row.List);
            json.WriteNumber("line", name.Row.Line);
            if (name.Hooping is { } hooping)
            {
                json.WriteNumber("hooping", hooping);
            }

            if (name.HoopingBefore is { } before)
            {
                json.WriteNumber("hoopingBefore", before);
            }

            json.WriteString("why", name.Why);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
