using System.Text;
using System.Text.Json;
using NameBand.Web.Table;

namespace NameBand.Web.Strip;

/// <summary>
/// What the strip shows first, sent along with the page: the map, and the outlines at the beginning of each round. As JSON
/// in which no sign can end the element it stands in.
/// </summary>
internal static class FirstSight
{
    /// <summary>As far along as the widest window shows letters at first.</summary>
    private const double ReachMm = 700;

    /// <summary>Maps of longer lists are fetched when the page is there.</summary>
    private const int MostNames = 600;

    /// <returns>Null where nothing lies on the table yet.</returns>
    public static string? Of(TableSnapshot now, ShapeShelf shelf)
    {
        if (now.Laid is not { } laid || now.IsLaying || laid.Plan.NameCount > MostNames)
        {
            return null;
        }

        var seen = StripMap.SewnOn(laid.Plan).Select(s => s.Name).Where(n => n.StartMm < ReachMm).ToList();
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WritePropertyName("map");
            StripMap.Write(json, now.LayoutNumber, laid, now.IsInInches, shelf);
            json.WritePropertyName("shapes");
            Shapes.WriteNames(json, seen, shelf);
            json.WritePropertyName("pieces");
            Shapes.WritePieces(
                json, seen.SelectMany(n => n.Lettered.Pieces).Select(p => p.Piece).Distinct().Select(p => (shelf.NumberOf(p), p)));
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
