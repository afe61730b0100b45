using System.Text.Json;
using NameBand.MachineLetters;
using NameBand.Pipeline;

namespace NameBand.Web.Machine;

/// <summary>What is keyed into a machine's own letters, piece by piece in the order of sewing.</summary>
internal static class KeyingState
{
    public static void Write(Utf8JsonWriter json, LaidJob laid)
    {
        if (laid.KeyIns.IsEmpty)
        {
            return;
        }

        var letters = laid.Job.Letters;
        json.WriteStartArray("rules");
        json.WriteStringValue(SewingDirection.FirstLetterFirst(letters)
            ? "The first letter is sewn first: begin at the strip’s left end."
            : "The last letter is sewn first: begin at the strip’s right end; each name is shown as it is keyed, backwards.");
        json.WriteStringValue(FormattableString.Invariant($"Set the machine to letters {laid.Plan.LetterHeightMm:0.##} mm high, with a gap of {laid.Plan.SpacingMm ?? 0:0.0} mm."));
        if (letters.Holds is { } holds)
        {
            json.WriteStringValue(FormattableString.Invariant($"It holds {holds} characters: longer names come in parts."));
        }

        if (letters.ForgetsWhenOff)
        {
            json.WriteStringValue("What was keyed in is gone when the machine is switched off.");
        }

        int sewn = laid.KeyIns.Count(n => n.IsSewn || n.IsLogged);
        json.WriteStringValue(FormattableString.Invariant($"{sewn} of {laid.KeyIns.Length} names are sewn. Say each one as you sew it: sewn JOB n{laid.KeyIns.FirstOrDefault(n => !n.IsLogged)?.Order ?? 1}."));
        json.WriteStringValue("Where names drift off their marks, " + (laid.Job.HasSeveralWays
            ? "start the next one at its own mark all the same."
            : "write where one ended into drift.csv: the rest is then set out anew."));
        json.WriteEndArray();
        json.WriteStartArray("keys");
        foreach (var name in laid.KeyIns)
        {
            for (int i = 0; i < name.Parts.Length; i++)
            {
                var part = name.Parts[i];
                json.WriteStartObject();
                json.WriteNumber("order", name.Order);
                json.WriteString("name", name.Text);
                json.WriteNumber("round", name.Round);
                json.WriteNumber("run", name.Hooping);
                json.WriteString("part", name.Parts.Length == 1 ? "" : FormattableString.Invariant($"part {i + 1} of {name.Parts.Length}"));
                json.WriteString("keyed", part.Keyed);
                json.WriteNumber("cloth", name.Ruler.Cloth);
                json.WriteNumber("onCloth", Math.Round(part.OnClothMm, 1));
                Mm(json, "fromLast", part.FromLastMm);
                Mm(json, "length", part.ExpectedMm);
                Mm(json, "least", part.ShortestMm);
                Mm(json, "most", part.LongestMm);
                if (part.Seconds is { } seconds)
                {
                    json.WriteNumber("seconds", Math.Round(seconds));
                }

                json.WriteBoolean("estimated", part.IsEstimated);
                json.WriteBoolean("sewn", name.IsSewn || name.IsLogged);
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
    }

    /// <summary>To the half millimetre, as a ruler is read.</summary>
    private static void Mm(Utf8JsonWriter json, string key, double? mm)
    {
        if (mm is { } there)
        {
            json.WriteNumber(key, Math.Round(there * 2) / 2);
        }
    }
}
