using System.Text.Json;
using NameBand.Layout;
using NameBand.Lettering;

namespace NameBand.Web.Strip;

/// <summary>Outlines at a letter height of 1 mm, base line at 0, for the names and pieces that are asked for.</summary>
internal static class Shapes
{
    /// <summary>A ten-thousandth of the letter height: finer than a screen shows at the closest look.</summary>
    public const double UnitsPerMm = 10_000;

    /// <summary>Which pieces stand where in each name.</summary>
    public static void WriteNames(Utf8JsonWriter json, IEnumerable<PlacedName> names, ShapeShelf shelf)
    {
        json.WriteStartObject();
        foreach (var name in names.Select(n => n.Lettered).DistinctBy(shelf.NumberOf))
        {
            json.WriteStartArray(shelf.NumberOf(name).ToString(System.Globalization.CultureInfo.InvariantCulture));
            foreach (var placed in name.Pieces)
            {
                json.WriteNumberValue(shelf.NumberOf(placed.Piece));
                json.WriteNumberValue(Units(placed.At.XMm));
                json.WriteNumberValue(Units(placed.At.YMm));
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    /// <summary>Each piece as a list of rings, each ring its points one after another.</summary>
    public static void WritePieces(Utf8JsonWriter json, IEnumerable<(int Number, LetterPiece Piece)> pieces)
    {
        json.WriteStartObject();
        foreach (var (number, piece) in pieces)
        {
            json.WriteStartArray(number.ToString(System.Globalization.CultureInfo.InvariantCulture));
            foreach (var ring in piece.Outline.Rings)
            {
                json.WriteStartArray();
                foreach (var point in ring.Points)
                {
                    json.WriteNumberValue(Units(point.XMm));
                    json.WriteNumberValue(Units(point.YMm));
                }

                json.WriteEndArray();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static int Units(double mm) => (int)Math.Round(mm * UnitsPerMm);
}
