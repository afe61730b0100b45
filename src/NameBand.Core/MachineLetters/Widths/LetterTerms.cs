using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using AnyAscii;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Widths;

/// <summary>What a length is made of.</summary>
internal enum TermKind
{
    Advance,
    Left,
    Right,

    /// <summary>What an accented or foreign letter is wider than the plain one it is likened to.</summary>
    Apart,
    Blank,
    Gap,

    /// <summary>All letters of one height larger or smaller than stated.</summary>
    Size,
}

/// <param name="Letter">Of the prior, or as keyed for <see cref="TermKind.Apart"/>; the height for <see cref="TermKind.Size"/>.</param>
/// <param name="Doubt">Standard deviation in hundredths of the letter height, for <see cref="TermKind.Apart"/>.</param>
internal readonly record struct Term(TermKind Kind, string Letter, double Doubt = 0) : IComparable<Term>
{
    public int CompareTo(Term other) => Kind != other.Kind ? (int)Kind - (int)other.Kind : string.CompareOrdinal(Letter, other.Letter);
}

/// <summary>A length as a sum: so many times each term, in millimetres for a hundredth of the letter height.</summary>
/// <param name="Parts">In the order of the terms, each once.</param>
/// <param name="OffsetMm">What is known of it beforehand.</param>
/// <param name="HeightMm">Of the letters.</param>
internal sealed record WidthSum(ImmutableArray<(Term Term, double Times)> Parts, double OffsetMm, double HeightMm);

/// <summary>Puts down keyed texts as sums of what the model knows of: advances, ends, blanks, gaps.</summary>
internal static class LetterTerms
{
    // An accent hardly changes a letter’s width; an i or a j it may widen. In hundredths of the letter height: our
    // assumption.
    private const double Accented = 1.5;
    private const double Widened = 5;

    // A letter likened to another, such as ø to o; a letter like no other. Our assumption.
    private const double Likened = 6;
    private const double Unlike = 18;

    /// <summary>From the left edge of the first letter to the right edge of the last.</summary>
    /// <param name="spacingMm">The gap the machine is set to; null where it has but one.</param>
    public static WidthSum Length(IReadOnlyList<string> letters, double heightMm, double? spacingMm)
    {
        var sum = new Sum(heightMm);
        foreach (string letter in letters)
        {
            sum.Add(letter, 1, 0, 0);
        }

        sum.Add(letters[0], 0, -1, 0);
        sum.Add(letters[^1], 0, 0, -1);
        sum.Gaps(letters.Count - 1);
        return sum.Made((letters.Count - 1) * (spacingMm ?? 0));
    }

    /// <summary>From the left edge of the first letter to the left edge of the one at <paramref name="to"/>.</summary>
    public static WidthSum Start(IReadOnlyList<string> letters, int to, double heightMm, double? spacingMm)
    {
        var sum = new Sum(heightMm);
        foreach (string letter in letters.Take(to))
        {
            sum.Add(letter, 1, 0, 0);
        }

        sum.Add(letters[0], 0, -1, 0);
        sum.Add(letters[to], 0, 1, 0);
        sum.Gaps(to);
        return sum.Made(to * (spacingMm ?? 0));
    }

    /// <summary>One measure of a letter alone: how far it moves the needle on, or the clear space inside that on either side.</summary>
    public static WidthSum Single(string letter, TermKind measure, double heightMm)
    {
        var sum = new Sum(heightMm);
        sum.Add(letter, measure == TermKind.Advance ? 1 : 0, measure == TermKind.Left ? 1 : 0, measure == TermKind.Right ? 1 : 0);
        return sum.Made(0);
    }

    /// <summary>What the machine leaves between two letters besides their own space.</summary>
    public static WidthSum Gap(double heightMm)
    {
        var sum = new Sum(heightMm);
        sum.Gaps(1);
        return sum.Made(0);
    }

    /// <summary>From one letter to the same one again, as a row of them comes out.</summary>
    public static WidthSum Pitch(string letter, double heightMm)
    {
        var sum = new Sum(heightMm);
        sum.Add(letter, 1, 0, 0);
        sum.Gaps(1);
        return sum.Made(0);
    }

    /// <summary>The clear space between two letters, in the mean of some.</summary>
    public static WidthSum Space(IReadOnlyList<string> letters, double heightMm)
    {
        var sum = new Sum(heightMm);
        foreach (string letter in letters)
        {
            sum.Add(letter, 0, 1.0 / letters.Count, 1.0 / letters.Count);
        }

        sum.Gaps(1);
        return sum.Made(0);
    }

    /// <summary>The letter of the prior that one is likened to, and the doubt of it; a doubt of 0 where it is the same.</summary>
    internal static (string Letter, double Doubt) Alike(string letter)
    {
        if (LetterPrior.Shipped.Looks[0].Letters.ContainsKey(letter))
        {
            return (letter, 0);
        }

        string bare = letter.Normalize(NormalizationForm.FormD)[..1];
        if (bare != letter && LetterPrior.Shipped.Looks[0].Letters.ContainsKey(bare))
        {
            return (bare, bare is "i" or "j" or "I" ? Widened : Accented);
        }

        string near = letter.Transliterate();
        if (near.Length == 1 && char.IsLetter(near[0]) && LetterPrior.Shipped.Looks[0].Letters.ContainsKey(near) && near[0] < 128)
        {
            return (near, Likened);
        }

        bool isLarge = CharUnicodeInfo.GetUnicodeCategory(letter, 0) == UnicodeCategory.UppercaseLetter;
        return (isLarge ? "N" : "n", Unlike);
    }

    private sealed class Sum(double heightMm)
    {
        private readonly SortedDictionary<Term, double> _parts = [];

        public void Add(string letter, double advances, double lefts, double rights)
        {
            if (letter == Letters.Blank)
            {
                Put(new Term(TermKind.Blank, ""), advances);
                return;
            }

            var (alike, doubt) = Alike(letter);
            Put(new Term(TermKind.Advance, alike), advances);
            Put(new Term(TermKind.Left, alike), lefts);
            Put(new Term(TermKind.Right, alike), rights);
            if (doubt > 0)
            {
                Put(new Term(TermKind.Apart, letter, doubt), advances);
            }
        }

        public void Gaps(int count) => Put(new Term(TermKind.Gap, ""), count);

        public WidthSum Made(double offsetMm)
        {
            Put(new Term(TermKind.Size, heightMm.ToString("0.00", CultureInfo.InvariantCulture)), 1);
            return new WidthSum([.. _parts.Where(p => p.Value != 0).Select(p => (p.Key, p.Value))], offsetMm, heightMm);
        }

        private void Put(Term term, double times) => _parts[term] = _parts.GetValueOrDefault(term) + times;
    }
}
