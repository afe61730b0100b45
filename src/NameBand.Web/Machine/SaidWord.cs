using System.Globalization;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;
using NameBand.Reports;

namespace NameBand.Web.Machine;

/// <summary>Reads what was said at the machine of a hooping, a name or a step of finishing; null: it is not sound.</summary>
internal static class SaidWord
{
    // Characters: a note of some lines, and the four signs of a mark with whatever is typed about them. Longer is not sound.
    private const int MostNoteCharacters = 500;
    private const int MostMarkCharacters = 20;

    /// <summary>Longer than any name: what is beyond it is no length at all.</summary>
    private const double MostMm = 10_000;

    public static SewingWord? Read(JsonElement said)
    {
        if (said.ValueKind != JsonValueKind.Object || DeedOf(Text(said, "deed")) is not { } deed
            || !Number(said, "minutes", Duration.MinutesPerDay, out double? minutes)
            || !Number(said, "hands", Duration.MinutesPerDay, out double? hands))
        {
            return null;
        }

        string note = Text(said, "note");
        string machine = Text(said, "machine");
        string mark = Text(said, "mark");
        if (note.Length > MostNoteCharacters || machine.Length > MostNoteCharacters || mark.Length > MostMarkCharacters)
        {
            return null;
        }

        var word = new SewingWord(
            Whole(said, "hooping"), deed, minutes, hands, machine, null,
            DateTime.Now.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture),
            note)
        {
            Mark = mark,
        };
        return deed is SewingDeed.Done or SewingDeed.Undone ? OfStep(said, word)
            : said.TryGetProperty("name", out _) ? OfName(said, word)
            : word.Hooping >= 1 ? word : null;
    }

    /// <summary>What was said of a name that is typed or traced.</summary>
    private static SewingWord? OfName(JsonElement said, SewingWord word)
    {
        if (Whole(said, "name") is not (>= 1 and var number) || word.Hooping != 0
            || !Number(said, "length", MostMm, out double? length) || length is 0
            || !Number(said, "ended", MostMm, out double? ended) || !Number(said, "began", MostMm, out double? began))
        {
            return null;
        }

        bool isScrap = said.TryGetProperty("scrap", out var scrap) && scrap.ValueKind == JsonValueKind.True;
        bool isMeasured = word.Deed == SewingDeed.Sewn && length is not null;
        bool isTakenBack = isScrap && length is null && word is { Deed: SewingDeed.Mistake, Minutes: null, HandMinutes: null };
        return (isScrap && !isMeasured && !isTakenBack) || (length is not null && !isMeasured) || (ended is null) != (began is null)
            || (ended is not null && !isMeasured)
            ? null
            : word with
            {
                Names = (number, number),
                LengthMm = length,
                IsScrap = isScrap,
                Blank = ended is null ? "" : string.Join(", ", Millimetres(ended), Millimetres(began)),
            };
    }

    private static string Millimetres(double? mm) => FormattableString.Invariant($"{mm:0.##} mm");

    /// <summary>What was said of a step of finishing.</summary>
    private static SewingWord? OfStep(JsonElement said, SewingWord word) =>
        FinishingWords.Read(Text(said, "step")) is { } step && word is { Minutes: null, HandMinutes: null, Hooping: 0 }
            && Whole(said, "round") is var round && round >= 0
            ? word with { Step = step, Round = round, Mark = "" } : null;

    /// <summary>0 where it is not said; below it where it is no whole number.</summary>
    private static int Whole(JsonElement said, string key) => !said.TryGetProperty(key, out var value) ? 0
        : value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out int number) ? number : -1;

    private static SewingDeed? DeedOf(string word) => word switch
    {
        "sewn" => SewingDeed.Sewn,
        "again" => SewingDeed.Again,
        "patch" => SewingDeed.Patch,
        "mistake" => SewingDeed.Mistake,
        "done" => SewingDeed.Done,
        "undone" => SewingDeed.Undone,
        _ => null,
    };

    private static string Text(JsonElement said, string key) =>
        said.TryGetProperty(key, out var text) && text.ValueKind == JsonValueKind.String ? text.GetString()!.Trim() : "";

    private static bool Number(JsonElement said, string key, double most, out double? known)
    {
        known = null;
        if (!said.TryGetProperty(key, out var value) || value.ValueKind == JsonValueKind.Null)
        {
            return true;
        }

        if (value.ValueKind != JsonValueKind.Number || !value.TryGetDouble(out double number) || !(number >= 0 && number <= most))
        {
            return false;
        }

        known = number;
        return true;
    }
}
