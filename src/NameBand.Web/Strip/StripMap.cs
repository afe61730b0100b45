using System.Text.Json;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Pipeline;
using NameBand.Web.Table;

namespace NameBand.Web.Strip;

/// <summary>
/// Where everything lies, for the strip's picture: no outline and no stitch, which are asked for by what is seen.
/// The picture is drawn in mm along the finished rounds, from their left ends, y above the centre line; what is read on it
/// counts along the flat cloth, from the cut left end of each piece.
/// </summary>
internal static class StripMap
{
    public static void Write(Utf8JsonWriter json, long layoutNumber, LaidOutJob laid, bool inInches, ShapeShelf shelf)
    {
        var plan = laid.Plan;
        var strip = plan.Hem.Strip;
        json.WriteStartObject();
        json.WriteNumber("layout", layoutNumber);
        Number(json, "height", plan.LetterHeightMm);
        Number(json, "pull", plan.PullCompensationMm);
        Number(json, "cut", strip.CutWidthMm);
        Number(json, "finished", strip.FinishedWidthMm);
        Number(json, "markY", plan.MarkYMm);
        Number(json, "shortening", plan.Shortening);
        Number(json, "thread", laid.Fabric.Thread.DiameterMm);
        json.WriteBoolean("closed", plan.Hem.Closed);
        json.WriteBoolean("counterClockwise", plan.Hem.Runs == RunDirection.CounterClockwise);
        json.WriteBoolean("hasPaths", plan.HasNeedlePaths);
        json.WriteBoolean("hooped", laid.IsHooped);
        json.WriteBoolean("inches", inInches);
        Dyes(json, plan);
        Rounds(json, plan);
        Names(json, plan, shelf);
        Hoopings(json, laid);
        json.WriteEndObject();
    }

    /// <summary>The colours of cloth and threads, where the job says them; else the page has its own.</summary>
    public static void Dyes(Utf8JsonWriter json, StripPlan plan)
    {
        var threads = plan.Threads.Threads;
        bool hasThreads = threads.Any(t => t != ColourSettings.UsualThread) || threads.Length > 1;
        if (plan.Colours.Cloth is null && !hasThreads)
        {
            return;
        }

        json.WriteStartObject("dyes");
        if (plan.Colours.Cloth is { } cloth)
        {
            json.WriteString("cloth", cloth.ToString());
        }

        json.WriteStartArray("threads");
        foreach (var thread in hasThreads ? threads : [])
        {
            json.WriteStringValue(thread.ToString());
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Something sewn on a round.</summary>
    public sealed record OnRound(Round Round, PlacedName Name);

    /// <summary>Names and motifs in the order of the map: by round, then along it. Indices of the map count these.</summary>
    public static IEnumerable<OnRound> SewnOn(StripPlan plan) =>
        plan.Rounds.SelectMany(r => r.NamesAndMotifs.Select(n => new OnRound(r, n)));

    private static void Rounds(Utf8JsonWriter json, StripPlan plan)
    {
        json.WriteStartArray("rounds");
        foreach (var round in plan.Rounds)
        {
            json.WriteStartObject();
            json.WriteNumber("number", round.Number);
            Number(json, "length", round.LengthMm);
            var middles = GarmentMiddles.On(plan.Hem, round.LengthMm);
            Middle(json, "front", middles.FrontMm);
            Middle(json, "back", middles.BackMm);
            if (StripCurve.Of(plan.Hem, round.Number) is { } curve)
            {
                json.WriteStartObject("curve");
                Number(json, "radius", curve.RadiusMm);
                Number(json, "centre", curve.CentreRadiusMm);
                json.WriteBoolean("above", curve.CentreIsAbove);
                json.WriteEndObject();
            }

            json.WriteStartArray("rulers");
            foreach (var ruler in ClothRuler.Of(plan, round))
            {
                json.WriteStartObject();
                json.WriteNumber("cloth", ruler.Cloth);
                Number(json, "start", ruler.StartMm);
                Number(json, "onCloth", ruler.OnClothMm);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("joins");
            foreach (var piece in plan.Cloths.SelectMany(c => c.Pieces).Where(p => p.Round == round.Number && p.StartMm > 0.01))
            {
                Number(json, piece.StartMm);
            }

            json.WriteEndArray();
            json.WriteStartArray("clear");
            foreach (var (from, to) in KeptClear(plan, round))
            {
                Number(json, from);
                Number(json, to);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Places on the edge lie at the same part of a shorter round's length; over the end of a closed one they go on at
    /// its start.</summary>
    private static IEnumerable<(double From, double To)> KeptClear(StripPlan plan, Round round)
    {
        foreach (var zone in plan.Hem.KeepClear)
        {
            double middle = zone.AtMm * round.LengthMm / plan.Hem.EdgeLengthMm;
            double from = middle - (zone.WidthMm / 2);
            double to = middle + (zone.WidthMm / 2);
            yield return (Math.Max(from, 0), Math.Min(to, round.LengthMm));
            if (plan.Hem.Closed && from < 0)
            {
                yield return (from + round.LengthMm, round.LengthMm);
            }

            if (plan.Hem.Closed && to > round.LengthMm)
            {
                yield return (0, to - round.LengthMm);
            }
        }
    }

    private static void Names(Utf8JsonWriter json, StripPlan plan, ShapeShelf shelf)
    {
        var hoopings = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (Hooping: h, Hooped: s)))
            .ToDictionary(p => p.Hooped.Segment.Number);
        json.WriteStartArray("names");
        for (int round = 0; round < plan.Rounds.Length; round++)
        {
            foreach (var segment in plan.Rounds[round].Segments)
            {
                var motifs = segment.Motifs.ToHashSet();
                var (hooping, hooped) = hoopings[segment.Number];
                foreach (var name in segment.NamesAndMotifs)
                {
                    json.WriteStartArray();
                    json.WriteStringValue(name.Lettered.Name.Text);
                    json.WriteNumberValue(round);
                    Number(json, name.StartMm + plan.InsetMm(name));
                    Number(json, name.WidthMm - (2 * plan.InsetMm(name)));
                    Number(json, name.BaselineYMm);
                    Number(json, name.Lettered.Ink.LeftMm);
                    json.WriteNumberValue(name.Order);
                    json.WriteStringValue(name.Lettered.Name.Row.List);
                    json.WriteNumberValue(name.Lettered.Name.Row.Line);
                    json.WriteNumberValue(hooping.Number);
                    json.WriteNumberValue(shelf.NumberOf(name.Lettered));
                    json.WriteNumberValue(name.IsGone ? 1 : 0);
                    json.WriteStringValue(motifs.Contains(name) ? "motif" : name.IsHeading ? "heading" : "name");
                    Number(json, plan.OnClothMm(hooping, hooped, name));
                    json.WriteNumberValue(Math.Max(0, plan.Threads.Threads.IndexOf(ThreadTurns.ThreadOf(plan, name))));
                    json.WriteEndArray();
                }
            }
        }

        json.WriteEndArray();
    }

    private static void Hoopings(Utf8JsonWriter json, LaidOutJob laid)
    {
        var rounds = laid.Plan.Rounds.Select((r, i) => (r.Number, i)).ToDictionary(p => p.Number, p => p.i);
        var sewn = laid.SewnHoopings;
        json.WriteStartArray("hoopings");
        foreach (var hooping in laid.Plan.Hoopings)
        {
            json.WriteStartObject();
            json.WriteNumber("number", hooping.Number);
            json.WriteBoolean("sewn", sewn.Contains(hooping.Number));
            json.WriteStartArray("segments");
            foreach (var hooped in hooping.Segments)
            {
                var segment = hooped.Segment;
                json.WriteStartArray();
                json.WriteNumberValue(rounds[hooped.Round.Number]);
                Number(json, segment.StartMm);
                Number(json, segment.LengthMm);
                var (left, right) = laid.Plan.MarksAlongMm(hooped);
                Number(json, left);
                Number(json, right);
                json.WriteEndArray();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Middle(Utf8JsonWriter json, string key, double? mm)
    {
        if (mm is { } there)
        {
            Number(json, key, there);
        }
    }

    private static void Number(Utf8JsonWriter json, string key, double value) => json.WriteNumber(key, Math.Round(value, 4));

    private static void Number(Utf8JsonWriter json, double value) => json.WriteNumberValue(Math.Round(value, 4));
}
