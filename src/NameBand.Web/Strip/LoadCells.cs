using System.Text.Json;
using NameBand.Cloth;
using NameBand.Load;

namespace NameBand.Web.Strip;

/// <summary>The load map of a name for the browser: the middle of each covered square and its holes as a part of what the cloth
/// bears.</summary>
internal static class LoadCells
{
    public static void Write(Utf8JsonWriter json, LoadMap? map, Fabric fabric)
    {
        json.WriteStartObject();
        json.WriteNumber("cell", LoadMap.CellMm);
        json.WriteNumber("near", LoadMeter.SwatchPart);
        json.WriteStartArray("cells");
        for (int row = 0; row < (map?.Rows ?? 0); row++)
        {
            for (int column = 0; column < map!.Columns; column++)
            {
                if (map.IsCovered(column, row))
                {
                    var spot = map.Spot(column, row);
                    json.WriteNumberValue(Math.Round(spot.At.XMm, 2));
                    json.WriteNumberValue(Math.Round(spot.At.YMm, 2));
                    json.WriteNumberValue(Math.Round(spot.PenetrationsPerMm2 / fabric.MostPenetrationsPerMm2, 3));
                }
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
