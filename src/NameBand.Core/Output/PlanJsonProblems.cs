using System.Text.Json;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Output;

/// <summary>Writes what needs a person into plan.json: faults of the whole job first, then the held rows.</summary>
internal static class PlanJsonProblems
{
    public static void Write(Utf8JsonWriter json, Needs needs)
    {
        json.WriteStartArray("problems");
        foreach (var problem in needs.All)
        {
            json.WriteStartObject();
            json.WriteString("severity", ProblemJson.Word(problem.Severity));
            ProblemJson.WriteWhere(json, problem.Where);
            json.WriteString("text", problem.Found);
            json.WriteString("mend", problem.Mend);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
