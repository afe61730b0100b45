using System.Buffers;
using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>What a column is for, by its header.</summary>
internal enum ColumnRole
{
    Unknown,

    /// <summary>The name its owner wants shown.</summary>
    Display,

    /// <summary>A name said to be the whole one.</summary>
    FullName,

    /// <summary>A name; in some languages the same word means only a part of it.</summary>
    Name,

    /// <summary>Another name somebody goes by.</summary>
    OtherName,
    GivenName,
    FamilyName,

    /// <summary>People, without the word name.</summary>
    Person,

    /// <summary>Yes means: do not show.</summary>
    LeaveOut,

    /// <summary>No means: do not show.</summary>
    Public,

    /// <summary>Known, and none of our business: mail, sum, note.</summary>
    Private,
}

/// <summary>Knows the headers of columns in many languages; case, accents, blanks and punctuation are disregarded.</summary>
internal static class HeaderWords
{
    private static readonly FrozenDictionary<string, ColumnRole> Known = Roles()
        .SelectMany(r => r.Words.Split(',').Select(w => (Word: Key(w), r.Role)))
        .DistinctBy(x => x.Word)
        .ToFrozenDictionary(x => x.Word, x => x.Role, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> PrivateWords = HeaderVocabulary.Private
        .SelectMany(line => line.Split(',').Select(w => (Word: Key(w), Meaning: Key(line.Split(',')[0]))))
        .DistinctBy(x => x.Word)
        .ToFrozenDictionary(x => x.Word, x => x.Meaning, StringComparer.Ordinal);

    private static readonly FrozenSet<string> ShowWords = Words(HeaderVocabulary.ShowWords);
    private static readonly FrozenSet<string> GivenWords = Words(HeaderVocabulary.GivenWords);
    private static readonly FrozenSet<string> FamilyWords = Words(HeaderVocabulary.FamilyWords);
    private static readonly FrozenSet<string> WholeWords = Words(HeaderVocabulary.WholeWords);
    private static readonly FrozenSet<string> NotOfAPerson = Words(HeaderVocabulary.NotOfAPerson);
    private static readonly FrozenSet<string> SureNameWords = Words(HeaderVocabulary.SureNameWords);
    private static readonly FrozenSet<string> PerhapsNameWords = Words(HeaderVocabulary.PerhapsNameWords);
    private static readonly FrozenSet<string> FillWords = Words(HeaderVocabulary.FillWords);
    private static readonly string[] AnonymousStarts = [.. HeaderVocabulary.AnonymousStarts.Split(',').Select(Key)];
    private static readonly string[] HideStarts = [.. HeaderVocabulary.HideStarts.Split(',').Select(Key)];
    private static readonly FrozenSet<string> MayWords = Words(HeaderVocabulary.MayWords);
    private static readonly FrozenSet<string> NotWords = Words(HeaderVocabulary.NotWords);
    private static readonly FrozenSet<string> ToShowWords = Words(HeaderVocabulary.ToShowWords);
    private static readonly FrozenSet<string> WebWords = Words(HeaderVocabulary.WebWords);
    private static readonly FrozenSet<string> MediumWords = Words(HeaderVocabulary.MediumWords);
    private static readonly FrozenSet<string> AskingWords = Words(HeaderVocabulary.AskingWords);
    private static readonly FrozenSet<string> TotalWords = Words(HeaderVocabulary.TotalWords);
    private static readonly string[] HintStems = [.. HeaderVocabulary.HintStems.Split(',').Select(Key)];
    private static readonly SearchValues<string> Wishes = SearchValues.Create(
        [.. HeaderVocabulary.Wishes.Split(',').Select(w => string.Join(' ', Split(w)))], StringComparison.Ordinal);

    public static ColumnRole RoleOf(string header)
    {
        string key = Key(header);
        if (key.Length == 0)
        {
            return ColumnRole.Unknown;
        }

        if (Known.TryGetValue(key, out var role))
        {
            return role;
        }

        if (PrivateWords.ContainsKey(key))
        {
            return ColumnRole.Private;
        }

        if (AnonymousStarts.Any(s => key.StartsWith(s, StringComparison.Ordinal))
            || HideStarts.Any(s => key.StartsWith(s, StringComparison.Ordinal)))
        {
            return ColumnRole.LeaveOut;
        }

        return ByWords(Split(header));
    }

    /// <summary>Whether the list of words holds the header as it stands, and not only words of it.</summary>
    public static bool IsKnown(string header) => Known.ContainsKey(Key(header)) || PrivateWords.ContainsKey(Key(header));

    /// <summary>What a header asks that is put together of words about leave and showing: “May we print it?”</summary>
    /// <returns>Public, LeaveOut or Unknown.</returns>
    public static ColumnRole AskedBy(string header)
    {
        var words = Split(header);
        bool isKnown =
            words.TrueForAll(w => MayWords.Contains(w) || NotWords.Contains(w) || ToShowWords.Contains(w) || AskingWords.Contains(w)
            || FillWords.Contains(w) || SureNameWords.Contains(w) || PerhapsNameWords.Contains(w));
        int nots = words.Count(NotWords.Contains);
        return !isKnown || nots > 1 || !words.Any(ToShowWords.Contains) ? ColumnRole.Unknown
            : nots == 1 ? ColumnRole.LeaveOut
            : words.Any(MayWords.Contains) ? ColumnRole.Public
            : ColumnRole.Unknown;
    }

    /// <summary>What a yes says in a column that asks of the web alone: “Show on the web?”, “Not on the website”.</summary>
    /// <returns>True: show it there. False: do not. Null: it is no such column, or it asks of the garment too.</returns>
    public static bool? ShownOnWebByYes(string header, Lazy<ColumnCells> cells)
    {
        var words = Split(header);
        string key = string.Concat(words);
        bool IsOfWeb(string word) => WebWords.Contains(word);
        bool isKnown = words.TrueForAll(w => IsOfWeb(w) || MayWords.Contains(w) || NotWords.Contains(w) || ToShowWords.Contains(w)
            || (AskingWords.Contains(w) && !MediumWords.Contains(w))
                || (FillWords.Contains(w) && w is not ("and" or "or" or "und" or "et" or "y" or "e" or "og" or "och"))
            || SureNameWords.Contains(w) || PerhapsNameWords.Contains(w));
        int nots = words.Count(NotWords.Contains);
        if (!words.Exists(IsOfWeb) || !isKnown || nots > 1 || words.Exists(MediumWords.Contains))
        {
            return null;
        }

        bool asks = nots == 1 || words.Exists(w => MayWords.Contains(w) || ToShowWords.Contains(w));
        var under = cells.Value;
        return under.AreAnswers || (asks && (under.AreBlank || (under.AreFew && !under.AreNumbers)))
            ? nots == 0 && !HideStarts.Any(s => key.StartsWith(s, StringComparison.Ordinal))
            : null;
    }

    /// <summary>Whether a header has to do with showing, hiding or leave, in whatever words.</summary>
    public static bool HintsAtShowing(string header)
    {
        string key = Key(header);
        return HintStems.Any(s => key.Contains(s, StringComparison.Ordinal));
    }

    /// <summary>Whether a header has a word that one about showing might have, and others as well: “list”, “like”.</summary>
    public static bool MayHintAtShowing(string header) => Split(header).Exists(w => ToShowWords.Contains(w) || MayWords.Contains(w));

    /// <summary>Whether a text is a sum below a list, such as “Total: 78” or “60 names”.</summary>
    public static bool IsTotal(string text)
    {
        var words = Split(text);
        bool IsNumber(string word) => word.All(char.IsDigit);
        var named = words.Where(w => !IsNumber(w)).ToList();
        return named.Exists(TotalWords.Contains)
            ? named.TrueForAll(w => TotalWords.Contains(w) || FillWords.Contains(w) || w.Length == 3 || IsOfPeople(w))
                && (words.Count > named.Count || named.TrueForAll(TotalWords.Contains))
            : words.Count > named.Count && named.Count == 1 && IsOfPeople(named[0]);
    }

    private static bool IsOfPeople(string word) => Known.GetValueOrDefault(word) is ColumnRole.Person or ColumnRole.Name;

    /// <summary>Whether a remark may ask that its writer is not shown.</summary>
    public static bool MayAskNotToBeShown(string remark)
    {
        return remark.Any(char.IsLetter) && string.Join(' ', Split(remark, NameText.Longest * 10)).AsSpan().ContainsAny(Wishes);
    }

    /// <summary>Two headers with the same meaning have the same one: known words for mail, sum and note in any language, else the
    /// bare header.</summary>
    public static string MeaningOf(string header) => PrivateWords.GetValueOrDefault(Key(header), Key(header));

    /// <summary>Letters and digits only, small, without accents.</summary>
    public static string Key(string header) => string.Concat(Split(header));

    private static ColumnRole ByWords(List<string> words)
    {
        bool allKnown = words.TrueForAll(w => IsKnownWord(w) || FillWords.Contains(w) || w.All(char.IsAsciiDigit));
        if (!words.Any(SureNameWords.Contains) && !(allKnown && words.Any(PerhapsNameWords.Contains)))
        {
            return allKnown && words.Any(PrivateWords.ContainsKey) ? ColumnRole.Private : ColumnRole.Unknown;
        }

        if (words.Any(NotOfAPerson.Contains))
        {
            return ColumnRole.Private;
        }

        if (words.Any(ShowWords.Contains))
        {
            return ColumnRole.Display;
        }

        bool given = words.Any(GivenWords.Contains);
        bool family = words.Any(FamilyWords.Contains);
        return (given, family, words.Any(WholeWords.Contains)) switch
        {
            (true, true, _) or (_, _, true) => ColumnRole.FullName,
            (true, _, _) => ColumnRole.GivenName,
            (_, true, _) => ColumnRole.FamilyName,
            _ => ColumnRole.Name,
        };
    }

    private static bool IsKnownWord(string word) =>
        PrivateWords.ContainsKey(word) || Known.ContainsKey(word) || PerhapsNameWords.Contains(word) || NotOfAPerson.Contains(word)
        || ShowWords.Contains(word) || GivenWords.Contains(word) || FamilyWords.Contains(word) || WholeWords.Contains(word);

    private static IEnumerable<(ColumnRole Role, string Words)> Roles() =>
    [
        (ColumnRole.Display, HeaderVocabulary.Display),
        (ColumnRole.FullName, HeaderVocabulary.FullName),
        (ColumnRole.Name, HeaderVocabulary.Name),
        (ColumnRole.OtherName, HeaderVocabulary.OtherName),
        (ColumnRole.GivenName, HeaderVocabulary.GivenName),
        (ColumnRole.FamilyName, HeaderVocabulary.FamilyName),
        (ColumnRole.Person, HeaderVocabulary.Person),
        (ColumnRole.LeaveOut, HeaderVocabulary.LeaveOut),
        (ColumnRole.Public, HeaderVocabulary.Public),
    ];

    private static FrozenSet<string> Words(string list) =>
        list.Split(',').Select(Key).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The words of a header: cut at blanks, punctuation and where a capital follows a small letter.</summary>
    private static List<string> Split(string header, int most = NameText.Longest)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        bool afterSmall = false;
        foreach (var rune in PlainText.Normal(header[..Math.Min(header.Length, most)], NormalizationForm.FormKD).EnumerateRunes())
        {
            if (Resemblance.IsAccent(rune.Value) || rune.Value is Joiners.NonJoiner or Joiners.Joiner || Invisible.IsAlways(rune.Value)
                || rune.Value is '\'' or 0x2019 or 0x02BC)
            {
                continue;
            }

            bool part = Rune.IsLetterOrDigit(rune) || Rune.GetUnicodeCategory(rune)
                is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;
            if ((!part || (afterSmall && Rune.IsUpper(rune))) && word.Length > 0)
            {
                words.Add(word.ToString());
                word.Clear();
            }

            if (part)
            {
                word.Append(Resemblance.Fold(rune.ToString()));
            }

            afterSmall = Rune.IsLower(rune);
        }

        if (word.Length > 0)
        {
            words.Add(word.ToString());
        }

        return words;
    }
}
