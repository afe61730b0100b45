using System.Text.Json;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output.Keying;
using NameBand.Pipeline;
using NameBand.Reports;

namespace NameBand.Web.Machine;

/// <summary>Names that are typed or traced, one after the other in the order of sewing, and how each stands.</summary>
internal static class NamesState
{
    public static void Write(Utf8JsonWriter json, LaidOutJob laid, SewingReport report)
    {
        var keyed = laid.KeyIns;
        var traced = Traced(laid.Plan).ToList();
        if (keyed.IsEmpty && traced.Count == 0)
        {
            return;
        }

        json.WriteStartArray("rules");
        foreach (var rule in Rules(laid))
        {
            json.WriteStringValue(rule.ToString());
        }

        json.WriteEndArray();
        var states = report.Names.ToDictionary(n => n.Number);
        json.WriteStartArray("keys");
        foreach (var name in keyed)
        {
            for (int i = 0; i < name.Parts.Length; i++)
            {
                json.WriteStartObject();
                Named(json, name.With, name.IsMotif ? ((Said)"between the names").ToString() : name.Text, name.Round, name.Hooping, states);
                json.WriteNumber("cloth", name.Ruler.Cloth);
                Part(json, name, i);
                json.WriteBoolean("sewn", name.IsSewn || name.IsLogged);
                json.WriteBoolean("logged", name.IsLogged);
                json.WriteEndObject();
            }
        }

        foreach (var (hooping, hooped, name) in traced)
        {
            json.WriteStartObject();
            Named(json, name.Order, name.Lettered.Name.Text, hooped.Round.Number, hooping.Number, states);
            json.WriteNumber("cloth", hooping.Cloth);
            json.WriteString("part", "");
            json.WriteBoolean("last", true);
            json.WriteNumber("onCloth", Math.Round(laid.Plan.OnClothMm(hooping, hooped, name), 1));
            Mm(json, "length", name.WidthMm);
            bool isSewn = states.GetValueOrDefault(name.Order)?.IsSewn ?? false;
            json.WriteBoolean("sewn", isSewn);
            json.WriteBoolean("logged", isSewn);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static IEnumerable<(Hooping Hooping, HoopedSegment Hooped, PlacedName Name)> Traced(StripPlan plan) =>
        plan.Hoopings.Where(h => WayTraits.Of(h.Way).IsFollowedByHand)
            .SelectMany(h =>
                h.Segments.SelectMany(s => s.Segment.Names.Where(n => !n.IsGone).Select(n => (Hooping: h, Hooped: s, Name: n))))
            .OrderBy(n => n.Hooped.Round.Number).ThenBy(n => n.Name.StartMm);

    private static void Named(Utf8JsonWriter json, int order, string text, int round, int run, Dictionary<int, NameState> states)
    {
        json.WriteNumber("order", order);
        json.WriteString("name", text);
        json.WriteNumber("round", round);
        json.WriteNumber("run", run);
        json.WriteBoolean("again", states.GetValueOrDefault(order)?.IsAgain ?? false);
        if (states.GetValueOrDefault(order) is { Minutes: > 0 and var minutes })
        {
            json.WriteNumber("minutes", Math.Round(minutes, 1));
        }
    }

    private static void Part(Utf8JsonWriter json, KeyInName name, int index)
    {
        var part = name.Parts[index];
        json.WriteString(
            "part", name.IsMotif || name.Parts.Length == 1 ? "" : ((Said)$"part {index + 1} of {name.Parts.Length}").ToString());
        json.WriteBoolean("last", !name.IsMotif && index == name.Parts.Length - 1);
        json.WriteBoolean("measured", !name.IsMotif && name.Parts.Length == 1);
        json.WriteBoolean("parted", name.Text.Trim().Contains(' '));
        json.WriteString("keyed", part.Keyed);
        json.WriteNumber("onCloth", Math.Round(part.OnClothMm, 1));
        Mm(json, "fromLast", part.FromLastMm);
        Mm(json, "length", part.ExpectedMm);
        Mm(json, "least", part.ShortestMm);
        Mm(json, "most", part.LongestMm);
        json.WriteBoolean("estimated", part.IsEstimated);
        if (part.Seconds is { } seconds)
        {
            json.WriteNumber("seconds", Math.Round(seconds));
        }
    }

    /// <summary>What holds for all of them.</summary>
    private static IEnumerable<Said> Rules(LaidOutJob laid)
    {
        var letters = laid.Job.Letters;
        if (laid.Plan.HasSeveralWays)
        {
            foreach (var share in laid.Plan.Ways)
            {
                yield return $"{share.InWords}.";
            }
        }

        if (!laid.KeyIns.IsEmpty)
        {
            yield return SewingDirection.FirstLetterFirst(letters)
                ? "The first letter is sewn first: begin at the strip’s left end."
                : "The last letter is sewn first: begin at the strip’s right end; each name is shown as it is keyed, backwards.";
            foreach (var step in laid.KeyIns.Select(n => n.Step).Distinct())
            {
                Said whose = Wording.List(
                    [.. laid.KeyIns.Where(n => n.Step == step).Select(n => FormattableString.Invariant($"n{n.With}")).Distinct()]);
                yield return laid.Plan.HasSizes
                    ? $"Set the machine to letters {step.HeightMm:0.##} mm high, with a gap of {step.GapMm:0.0} mm for {whose}."
                    : (Said)$"Set the machine to letters {step.HeightMm:0.##} mm high, with a gap of {step.GapMm:0.0} mm.";
            }

            if (letters.Holds is { } holds)
            {
                yield return $"It holds {holds} characters: longer names come in parts.";
            }

            if (letters.ForgetsWhenOff)
            {
                yield return "What was keyed in is gone when the machine is switched off.";
            }

            yield return "Measure a name from its first letter’s left edge to its last one’s right edge, with the backing off, pressed and cold: the start marks after it move with what you measured.";
        }

        if (laid.Plan.Hoopings.Any(h => WayTraits.Of(h.Way).IsFollowedByHand))
        {
            foreach (var line in Following(laid.Job.Traced))
            {
                yield return line;
            }
        }
    }

    /// <summary>How a template is followed.</summary>
    private static IEnumerable<Said> Following(TracedSettings traced)
    {
        yield return traced.AlongOutline
            ? "Follow the outline of each letter on the template." : "Follow the line in the middle of each stroke on the template.";
        yield return traced.ByHand
            ? $"Sewn by hand, at about {traced.PaceMmPerMinute:0} mm of line a minute."
            : (Said)$"Sewn free-motion, at about {traced.PaceMmPerMinute:0} mm of line a minute.";
        if (traced.Mirrored)
        {
            yield return "The template is printed as in a mirror: it lies on the wrong side.";
        }
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
