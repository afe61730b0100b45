using System.Globalization;

namespace NameBand.Names;

/// <summary>Reads what an owner answers to the three offers of the letter.</summary>
internal static class AnswerWords
{
    /// <summary>Dates that mean one day everywhere; slashes do not.</summary>
    private static readonly string[] Days = ["yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "d.M.yyyy"];

    /// <returns>Not asked: nothing stands there. Unclear: something else does.</returns>
    public static ApprovalState Read(string cell)
    {
        string text = NameText.Clean(cell).Text;
        return text.Length == 0 ? ApprovalState.NotAsked
            : Offered(text) is { } offered ? offered
            : YesNo.Read(text) switch
            {
                Answer.Yes => ApprovalState.Agreed,
                Answer.No or Answer.Hide => ApprovalState.No,
                _ => ApprovalState.Unclear,
            };
    }

    /// <summary>Whether it is one of the letter's own words and not only a yes or a no.</summary>
    public static bool IsOurs(string cell) => Offered(NameText.Clean(cell).Text) is ApprovalState.Agreed or ApprovalState.ChangeWished;

    /// <summary>With a time after it or without: what comes after the first blank is passed over.</summary>
    public static DateOnly? Day(string date) =>
        DateOnly.TryParseExact(date.Split(' ', 'T')[0], Days, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <summary>The letter has “agreed: it is right, letter by letter.”; a form may keep all of it.</summary>
    private static ApprovalState? Offered(string text) => string.Concat(text.Split(':')[0].Where(char.IsLetter)).ToLowerInvariant() switch
    {
        "agreed" or "agree" or "iagree" => ApprovalState.Agreed,
        "changewished" or "change" => ApprovalState.ChangeWished,
        "no" when text.Contains(':') || text.Length <= 3 => ApprovalState.No,
        _ => null,
    };
}
