using System.Collections.Immutable;

namespace NameBand.MachineLetters.Measuring;

/// <summary>A short line to key in, sew and measure.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Text">What is keyed in; it neither begins nor ends with a blank, whose width could not be seen.</param>
/// <param name="LengthMm">From the first letter's left edge to the last one's right edge; null: not measured yet.</param>
/// <param name="Seconds">From the first stitch to the last, of the line or, given once for a run, of the whole run; null: not
/// timed.</param>
internal sealed record KeyInLine(int Number, string Text, double? LengthMm = null, double? Seconds = null)
{
    internal IReadOnlyList<string> Letters => Alphabets.Letters.Of(Text);

    /// <summary>Lines with the same number here are keyed in as one, with blanks between, to save handling; 0: keyed in alone.</summary>
    public int Run { get; init; }

    /// <summary>The machine could not sew it: it has no such letter.</summary>
    public bool CannotBeKeyed { get; init; }

    internal ImmutableSortedDictionary<string, int> Counts => Letters
        .GroupBy(l => l, StringComparer.Ordinal)
        .ToImmutableSortedDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
}
