using System.Globalization;
using System.Text.Json;
using NameBand.Job;
using NameBand.Reports;

namespace NameBand.Web.Machine;

/// <summary>Reads what was said at the machine of a hooping; null: it is not sound.</summary>
internal static class SaidWord
{
    private const double MostMinutes = 24 * 60;
    private const int MostNote = 500;
    private const int MostMark = 20;

    public static SewingWord? Read(JsonElement said)
    {
        if (said.ValueKind != JsonValueKind.Object
            || !said.TryGetProperty("hooping", out var number) || number.ValueKind != JsonValueKind.Number || !number.TryGetInt32(out int hooping) || hooping < 1
            || DeedOf(Text(said, "deed")) is not { } deed
            || !Minutes(said, "minutes", out double? minutes) || !Minutes(said, "hands", out double? hands))
        {
            return null;
        }

        string note = Text(said, "note");
        string machine = Text(said, "machine");
        string mark = Text(said, "mark");
        return note.Length > MostNote || machine.Length > MostNote || mark.Length > MostMark
            ? null
            : new SewingWord(
                hooping, deed, minutes, hands, machine, null, DateTime.Now.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture),
                note)
            {
                Mark = mark,
            };
    }

    private static SewingDeed? DeedOf(string word) => word switch
    {
        "sewn" => SewingDeed.Sewn,
        "again" => SewingDeed.Again,
        "patch" => SewingDeed.Patch,
        "mistake" => SewingDeed.Mistake,
        _ => null,
    };

    private static string Text(JsonElement said, string key) =>
        said.TryGetProperty(key, out var text) && text.ValueKind == JsonValueKind.String ? text.GetString()!.Trim() : "";

    private static bool Minutes(JsonElement said, string key, out double? minutes)
    {
        minutes = null;
        if (!said.TryGetProperty(key, out var value) || value.ValueKind == JsonValueKind.Null)
        {
            return true;
        }

        if (value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out double number) || number is not (>= 0 and <= MostMinutes))
        {
            return false;
        }

        minutes = number;
        return true;
    }
}
