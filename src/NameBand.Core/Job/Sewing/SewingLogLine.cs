using System.Globalization;
using System.IO.Hashing;
using System.Text;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>One line of the sewing log as text, and back. Fields hold no line break, so that a line is a line.</summary>
internal static class SewingLogLine
{
    public static readonly string[] Columns =
        ["hooping", "what", "minutes", "hand_minutes", "machine", "measured_mm", "when", "path", "note", "check"];

    private const char NameSign = 'n';
    private const char RoundSign = 'r';
    private const string AllRounds = "all";
    private const double LongestPieceMm = 100_000; // A hundred metres: no strip is sewn in one piece so long, a unit was mistaken.

    public static string Header => string.Join(',', Columns);

    /// <summary>The line with its check, without a line end.</summary>
    public static string Write(SewingEntry entry)
    {
        string text = string.Join(
            ',', Subject(entry.Of, entry.Hooping), Word(entry.Deed), Number(entry.Minutes), Number(entry.HandMinutes),
            Field(entry.Machine), Number(entry.MeasuredMm), Field(entry.When), Field(entry.Path), Field(entry.Note));
        return text + "," + Check(text);
    }

    /// <summary>The check of a line's text before its last comma; begins with a letter so that a spreadsheet leaves it alone.</summary>
    public static string Check(string text) =>
        "c" + Crc32.HashToUInt32(Encoding.UTF8.GetBytes(text)).ToString("x8", CultureInfo.InvariantCulture);

    /// <summary>Takes a line apart.</summary>
    /// <param name="agrees">Whether the check is there and belongs to the rest of the line.</param>
    /// <returns>The entry, or in words why it cannot be read.</returns>
    public static (SewingEntry? Entry, Said Why) Read(string line, out bool agrees)
    {
        char separator = SeparatorOf(line);
        var fields = Split(line, separator);
        agrees = false;
        if (fields is null)
        {
            return (null, "a quotation mark is opened and not closed");
        }

        if (fields.Count < Columns.Length - 1)
        {
            return (null, $"it has {fields.Count} columns of {Columns.Length}");
        }

        string check = fields.Count >= Columns.Length ? fields[Columns.Length - 1].Trim() : "";
        int end = line.LastIndexOf(separator);
        agrees = separator == ',' && fields.Count == Columns.Length && end > 0 && check == Check(line[..end]);
        return Assemble([.. fields.Select(f => f.Trim())]);
    }

    /// <summary>Such as <c>12</c> for a hooping, <c>n12</c> for a name, <c>r2</c> for a round, <c>all</c> for all rounds.</summary>
    public static string Subject(SewingSubject of, int number) => of switch
    {
        SewingSubject.Name => string.Create(CultureInfo.InvariantCulture, $"{NameSign}{number}"),
        SewingSubject.Round => number == 0 ? AllRounds : string.Create(CultureInfo.InvariantCulture, $"{RoundSign}{number}"),
        _ => number.ToString(CultureInfo.InvariantCulture),
    };

    private static (SewingSubject Of, int Number)? SubjectOf(string text)
    {
        if (text.Equals(AllRounds, StringComparison.OrdinalIgnoreCase))
        {
            return (SewingSubject.Round, 0);
        }

        var of = text.Length == 0 ? SewingSubject.Hooping
            : char.ToLowerInvariant(text[0]) switch
            {
                NameSign => SewingSubject.Name,
                RoundSign => SewingSubject.Round,
                _ => SewingSubject.Hooping
            };
        bool isRead = int.TryParse(
            of == SewingSubject.Hooping ? text : text[1..], NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1;
        return isRead ? (of, number) : null;
    }

    private static (SewingEntry? Entry, Said Why) Assemble(string[] fields)
    {
        if (SubjectOf(fields[0]) is not var (of, hooping))
        {
            return (null,
                $"“{PlainText.Short(fields[0], 30)}” is not the number of a hooping, of a name such as n12 or of a round such as r2");
        }

        if (DeedOf(fields[1]) is not { } deed
            || deed is SewingDeed.Done or SewingDeed.Undone or SewingDeed.Left != (of == SewingSubject.Round))
        {
            return (null, of == SewingSubject.Round
                ? (Said)$"“{PlainText.Short(fields[1], 30)}” is not one of done, undone, left"
                : $"“{PlainText.Short(fields[1], 30)}” is not one of sewn, again, patch, mistake, measured");
        }

        if (of == SewingSubject.Round && deed != SewingDeed.Left && FinishingWords.Read(fields[7]) is null)
        {
            return (null, $"“{PlainText.Short(fields[7], 30)}” is not a step of finishing, such as press or pin");
        }

        if (!TryNumber(fields[2], 0, Duration.MinutesPerDay, out var minutes)
            || !TryNumber(fields[3], 0, Duration.MinutesPerDay, out var hands))
        {
            return (null,
                $"“{PlainText.Short(TryNumber(fields[2], 0, Duration.MinutesPerDay, out _) ? fields[3] : fields[2], 30)}” is not a number of minutes from 0 to {Duration.MinutesPerDay}");
        }

        if (!TryNumber(fields[5], 0, LongestPieceMm, out var measured)
            || (deed is SewingDeed.Measured or SewingDeed.Left && measured is not > 0))
        {
            return (null, $"“{PlainText.Short(fields[5], 30)}” is not a length in millimetres");
        }

        string Text(int column) => CsvText.ReadBack(fields[column]);
        return (new SewingEntry(hooping, deed, minutes, hands, Text(4), measured, Text(6), Text(7), Text(8)) { Of = of }, "");
    }

    private static SewingDeed? DeedOf(string word)
    {
        foreach (var deed in Enum.GetValues<SewingDeed>())
        {
            if (Word(deed).Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                return deed;
            }
        }

        return null;
    }

    public static string Word(SewingDeed deed) => deed switch
    {
        SewingDeed.Sewn => "sewn",
        SewingDeed.Again => "again",
        SewingDeed.Patch => "patch",
        SewingDeed.Mistake => "mistake",
        SewingDeed.Measured => "measured",
        SewingDeed.Done => "done",
        SewingDeed.Undone => "undone",
        SewingDeed.Left => "left",
        _ => throw new ArgumentOutOfRangeException(nameof(deed), deed, "No such deed."),
    };

    private static string Number(double? number) => number?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";

    private static bool TryNumber(string text, double low, double high, out double? number)
    {
        number = null;
        if (text.Length == 0)
        {
            return true;
        }

        // A spreadsheet in a country of decimal commas writes 14,5; there is no other meaning of a comma here.
        bool isRead =
            double.TryParse(
                text.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture,
                out double value);
        number = value;
        return isRead && value >= low && value <= high;
    }

    private static string Field(string text) => CsvText.Field(new([.. text.Select(c => char.IsControl(c) ? ' ' : c)]));

    /// <summary>What parts a line, whoever wrote it: a spreadsheet may save all lines with another sign than the next one is
    /// written with.</summary>
    private static char SeparatorOf(string line) => line.AsSpan().IndexOfAny(",;\t") is >= 0 and var at ? line[at] : ',';

    private static List<string>? Split(string line, char separator)
    {
        var fields = new List<string>();
        var field = new StringBuilder();
        bool isQuoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            if (isQuoted && c == '"' && i + 1 < line.Length && line[i + 1] == '"')
            {
                field.Append('"');
                i++;
            }
            else if (c == '"' && (isQuoted || field.Length == 0))
            {
                isQuoted = !isQuoted;
            }
            else if (c == separator && !isQuoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
            {
                field.Append(c);
            }
        }

        fields.Add(field.ToString());
        return isQuoted ? null : fields;
    }
}
