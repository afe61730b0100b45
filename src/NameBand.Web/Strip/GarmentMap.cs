using System.Text.Json;
using NameBand.Common;
using NameBand.Garment.Hanging;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Pipeline;

namespace NameBand.Web.Strip;

/// <summary>
/// The garment as it hangs, for its picture: lines of its cloth and of its strips as points. Where names lie on a strip stands in the
/// strip's own map; here is how far along the cloth each point is.
/// </summary>
internal static class GarmentMap
{
    /// <summary>Points of a line for each fold.</summary>
    private const int EachFold = 28, Least = 112, Most = 560;

    public static HungPlan Hang(LaidOutJob laid) => HungPlan.Of(laid.Plan, laid.Job.Hem.Skirt);

    public static void Write(Utf8JsonWriter json, long layoutNumber, LaidOutJob laid)
    {
        var (plan, garment) = (laid.Plan, Hang(laid).Garment);
        int points = Math.Clamp(garment.Folds * EachFold, Least, Most);
        json.WriteStartObject();
        json.WriteNumber("layout", layoutNumber);
        json.WriteString("kind", garment.Kind.ToString().ToLowerInvariant());
        json.WriteString("says", InWords(garment, plan).ToString());
        json.WriteBoolean("outside", plan.Hem.Side == GarmentSide.Outside);
        json.WriteBoolean("upright", plan.Hem.ReadBy == Reader.Viewer);
        json.WriteStartArray("body");
        foreach (var line in garment.Body)
        {
            Line(json, line, points);
        }

        json.WriteEndArray();
        json.WriteStartArray("strips");
        foreach (var strip in garment.Strips)
        {
            json.WriteStartObject();
            json.WriteNumber("round", strip.Round);
            json.WriteNumber("length", Math.Round(strip.LengthMm, 3));
            json.WriteBoolean("forward", strip.IsForward);
            json.WriteNumber("begins", Math.Round(strip.BeginsMm, 3));
            json.WritePropertyName("lower");
            Line(json, strip.Lower, points);
            json.WritePropertyName("upper");
            Line(json, strip.Upper, points);
            json.WriteStartArray("along");
            for (int i = 0; i <= points; i++)
            {
                json.WriteNumberValue(Math.Round(strip.Lower.AlongMm(i / (double)points), 3));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("sewn");
        var sewn = laid.SewnRows;
        foreach (var (at, index) in StripMap.SewnOn(plan).Select((s, i) => (s.Name, i)))
        {
            if (at.IsGone || sewn.Contains(at.Lettered.Name.Row))
            {
                json.WriteNumberValue(index);
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>What it is, for those who do not see it.</summary>
    public static Said InWords(HungGarment garment, StripPlan plan)
    {
        Said what = garment.Kind switch
        {
            HangingKind.Cape => "A cape",
            HangingKind.Banner => "A banner",
            HangingKind.Curtain => "A curtain",
            _ => "A skirt",
        };
        Said folds = garment.Folds == 0 ? "without folds" : Said.Plural(garment.Folds, "in one fold", $"in {garment.Folds} folds");
        Said rounds = Said.Plural(plan.Rounds.Length, "one round", $"{plan.Rounds.Length} rounds");
        Said names = Said.Plural(plan.NameCount, "one name", $"{plan.NameCount} names");
        return $"{what}, hanging {folds}, with {names} on {rounds}";
    }

    private static void Line(Utf8JsonWriter json, HungLine line, int points)
    {
        json.WriteStartObject();
        json.WriteNumber("height", Math.Round(line.HeightMm, 2));
        json.WriteNumber("across", Math.Round(line.AcrossMm, 2));
        json.WriteNumber("depth", Math.Round(line.DepthMm, 2));
        json.WriteStartArray("points");
        for (int i = 0; i <= points; i++)
        {
            var (x, y) = line.At(i / (double)points);
            json.WriteNumberValue(Math.Round(x, 2));
            json.WriteNumberValue(Math.Round(y, 2));
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
