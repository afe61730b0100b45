using System.Globalization;
using System.Text;
using UtfUnknown;

namespace NameBand.Common;

/// <summary>Turns the bytes of a list into text: by byte order mark, as UTF-8, as UTF-16, else by a guess that is told.</summary>
internal static class CsvEncoding
{
    private static readonly UTF8Encoding StrictUtf8 = new(false, throwOnInvalidBytes: true);

    private const string Western = "windows-1252";

    /// <summary>Below this confidence of a guess a person is asked to look.</summary>
    private const float SureEnough = 0.5f;

    public static Result<string> Decode(byte[] bytes, Where where)
    {
        if (FileKind.OfBytes(bytes) is { } kind)
        {
            return Fail(where, $"This is {kind.What}, not a list as text.", kind.Mend);
        }

        if (ByMark(bytes) is { } marked)
        {
            return Checked(marked, where, []);
        }

        if (Array.IndexOf(bytes, (byte)0) >= 0)
        {
            return Utf16WithoutMark(bytes) is { } wide ? Checked(wide, where, []) : Binary(where);
        }

        try
        {
            return Checked(StrictUtf8.GetString(bytes), where, []);
        }
        catch (ArgumentException)
        {
            return Guessed(bytes, where);
        }
    }

    private static string? ByMark(byte[] b) => b switch
    {
        [0xEF, 0xBB, 0xBF, ..] => Encoding.UTF8.GetString(b, 3, b.Length - 3),
        [0xFF, 0xFE, 0, 0, ..] => Encoding.UTF32.GetString(b, 4, b.Length - 4),
        [0, 0, 0xFE, 0xFF, ..] => new UTF32Encoding(bigEndian: true, byteOrderMark: false).GetString(b, 4, b.Length - 4),
        [0xFF, 0xFE, ..] => Encoding.Unicode.GetString(b, 2, b.Length - 2),
        [0xFE, 0xFF, ..] => Encoding.BigEndianUnicode.GetString(b, 2, b.Length - 2),
        _ => null,
    };

    /// <summary>Of the two byte orders the one that gives more ASCII (line ends, separators) and no character that text never
    /// has.</summary>
    private static string? Utf16WithoutMark(byte[] bytes)
    {
        if (bytes.Length % 2 != 0)
        {
            return null;
        }

        string? best = null;
        int bestAscii = 0;
        foreach (var encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            string text = encoding.GetString(bytes);
            int ascii = text.Count(c => c is (>= ' ' and <= '~') or '\t' or '\r' or '\n');
            if (ascii > bestAscii && !text.Any(c => c is '\0' or '\uFFFD' or '\uFFFE' or '\uFFFF'))
            {
                (best, bestAscii) = (text, ascii);
            }
        }

        return best;
    }

    private static Result<string> Guessed(byte[] bytes, Where where)
    {
        string asUtf8 = Encoding.UTF8.GetString(bytes);
        int broken = asUtf8.Count(c => c == '\uFFFD');
        int whole = asUtf8.Count(c => c > '\u007F') - broken;
        if (whole > 4 * broken)
        {
            return Checked(asUtf8, where, [Problem.NeedsPerson(where,
                "This file is UTF-8 with some broken characters in it.",
                "Save the list again from where it comes; rows with a broken character are held.")]);
        }

        var guess = CharsetDetector.DetectFromBytes(bytes).Detected;
        string name = guess?.EncodingName ?? Western;
        string western = Known(Western)!.GetString(bytes);
        string? text = Known(name)?.GetString(bytes);

        // The detector knows how languages use letters, not names; what no name looks like shows a wrong guess.
        if (text is null || name == "iso-8859-1" || Oddness(text) > Oddness(western))
        {
            (name, text) = (Western, western);
        }

        Said told = $"This file does not say how its letters are stored; it was read as {name}, which is a guess.";
        Said mend = "If accents come out wrong, save the list as “CSV UTF-8”.";
        bool sure = guess is not null && guess.Confidence >= SureEnough;
        return Checked(text, where, [sure ? Problem.Note(where, told, mend) : Problem.NeedsPerson(where, told, mend)]);
    }

    /// <summary>Counts what a wrong encoding makes of letters: signs between letters, a capital after a small letter, characters
    /// that are not text.</summary>
    private static int Oddness(string text)
    {
        int odd = 0;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            bool afterLetter = i > 0 && char.IsLetter(text[i - 1]);
            bool beforeLetter = i + 1 < text.Length && char.IsLetter(text[i + 1]);
            if (c < '\u0080')
            {
                continue;
            }

            bool sign = !char.IsLetter(c) && !char.IsSurrogate(c) && !char.IsWhiteSpace(c)
                && CharUnicodeInfo.GetUnicodeCategory(c) is not (UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark);
            odd += c is '\uFFFD' or (>= '\u0080' and <= '\u009F') ? 3
                : sign && (afterLetter || beforeLetter) && c is not ('’' or '‘' or '“' or '”') ? 1
                : char.IsUpper(c) && afterLetter && char.IsLower(text[i - 1]) ? 1
                : 0;
        }

        return odd;
    }

    private static Encoding? Known(string name)
    {
        try
        {
            return CodePagesEncodingProvider.Instance.GetEncoding(name) ?? Encoding.GetEncoding(name);
        }
        catch (Exception e) when (e is ArgumentException or NotSupportedException)
        {
            // Of UTF-7, which a mark at the beginning may look like, .NET says that it is not supported.
            return null;
        }
    }

    private static Result<string> Checked(string text, Where where, IEnumerable<Problem> notes)
    {
        // A Ctrl-Z at the end is how old systems closed a text file.
        text = text.TrimStart('\uFEFF').TrimEnd('\u001A');
        int controls = text.Count(c => char.IsControl(c) && c is not ('\t' or '\r' or '\n' or '\v' or '\f'));
        if (text.Contains('\0') || (controls >= 10 && controls > text.Length / 50))
        {
            return Binary(where);
        }

        if (FileKind.OfText(text) is { } kind)
        {
            return Fail(where, $"This is {kind.What}, not a list as text.", kind.Mend);
        }

        return text.AsSpan().Trim().Length == 0
            ? Fail(where, "This file holds only blanks.", "Save the list again as CSV; it needs at least one row with a name.")
            : Result.Of(text, notes);
    }

    private static Result<string> Binary(Where where) => Fail(where,
        "This file is not text: it holds characters that no list has.", "Save the list as CSV (UTF-8) and name that file.");

    private static Result<string> Fail(Where where, Said found, Said mend) =>
        Result.Fail<string>(Problem.CannotUse(where, found, mend));
}
