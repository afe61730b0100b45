using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text;
using NameBand.Common;

namespace NameBand.MachineLetters.Spelling;

/// <summary>A letter that a machine lacks as a plain one that it has, and what is added to that by hand.</summary>
/// <param name="Marks">Such as “acute accent”, from the letter outwards.</param>
internal sealed record MarkedLetter(string Letter, string Plain, ImmutableArray<Said> Marks)
{
    /// <summary>What the sheet says, such as <c>é: acute accent on e</c>.</summary>
    public Said InWords => TakesDotOut ? (Said)$"{Letter}: {Wording.List([.. Marks])} on {Plain}, its dot taken out"
        : $"{Letter}: {Wording.List([.. Marks])} on {Plain}";

    /// <summary>The dot of an i or a j stands where the mark comes.</summary>
    public bool TakesDotOut { get; init; }
}

/// <summary>Finds the letters that can be made of plain ones by hand: Latin, Greek and Cyrillic ones with marks.</summary>
internal static class MarksByHand
{
    /// <summary>
    /// Letters with a stroke are the plain letter and one line through it, but Unicode takes none of them apart. Letters such as ð, æ
    /// or ß are no plain letter with a mark, and are not here.
    /// </summary>
    private static readonly FrozenDictionary<string, string> Stroked = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["ø"] = "o",
        ["Ø"] = "O",
        ["ł"] = "l",
        ["Ł"] = "L",
        ["đ"] = "d",
        ["Đ"] = "D",
        ["ħ"] = "h",
        ["Ħ"] = "H",
        ["ŧ"] = "t",
        ["Ŧ"] = "T",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Names of the combining marks of Latin, Greek and Cyrillic letters; those that are not here are not offered.</summary>
    private static readonly FrozenDictionary<char, Said> Words = new Dictionary<char, Said>
    {
        ['\u0300'] = "grave accent",
        ['\u0301'] = "acute accent",
        ['\u0302'] = "circumflex",
        ['\u0303'] = "tilde",
        ['\u0304'] = "bar above",
        ['\u0306'] = "breve",
        ['\u0307'] = "dot above",
        ['\u0308'] = "two dots",
        ['\u0309'] = "hook above",
        ['\u030A'] = "ring above",
        ['\u030B'] = "double acute accent",
        ['\u030C'] = "caron",
        ['\u030F'] = "double grave accent",
        ['\u0311'] = "arch above",
        ['\u0313'] = "comma above",
        ['\u0314'] = "turned comma above",
        ['\u031B'] = "horn",
        ['\u0323'] = "dot below",
        ['\u0324'] = "two dots below",
        ['\u0325'] = "ring below",
        ['\u0326'] = "comma below",
        ['\u0327'] = "cedilla",
        ['\u0328'] = "hook below",
        ['\u032D'] = "circumflex below",
        ['\u032E'] = "breve below",
        ['\u0330'] = "tilde below",
        ['\u0331'] = "bar below",
        ['\u0342'] = "curved accent",
        ['\u0345'] = "small iota below",
    }.ToFrozenDictionary();

    /// <summary>Null where the machine has the letter, or has no plain one of it.</summary>
    public static MarkedLetter? Of(string letter, Func<string, bool> has)
    {
        if (has(letter))
        {
            return null;
        }

        // Marks come off one after the other, the last first: ấ is â and an accent where the machine has â.
        string apart = letter.Normalize(NormalizationForm.FormD);
        var marks = new List<Said>();
        int keep = apart.Length;
        while (keep > 1 && Words.TryGetValue(apart[keep - 1], out var mark))
        {
            marks.Insert(0, mark);
            keep--;
            string plain = apart[..keep].Normalize(NormalizationForm.FormC);
            if (plain.Length == 1 && IsOfScript(plain[0]) && has(plain))
            {
                return Made(letter, plain, apart[keep..], marks);
            }
        }

        string bare = apart[..keep];
        return Stroked.TryGetValue(bare, out string? through) && has(through)
            ? Made(letter, through, apart[keep..], ["stroke", .. marks]) : null;
    }

    private static MarkedLetter Made(string letter, string plain, string marks, List<Said> words) => new(letter, plain, [.. words])
    {
        TakesDotOut = plain is "i" or "j" && marks.Any(IsAbove),
    };

    private static bool IsAbove(char mark) => mark is < '\u0315' or '\u0342';

    /// <summary>Latin, Greek or Cyrillic.</summary>
    private static bool IsOfScript(char letter) =>
        char.IsLetter(letter) && letter is < '\u0530' or (>= '\u1C80' and < '\u1C90') or (>= '\u1E00' and < '\u2000');
}
