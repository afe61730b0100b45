using System.Collections.Immutable;

namespace NameBand.MachineLetters.Alphabets;

/// <summary>Where a letter's width comes from.</summary>
public enum WidthOrigin
{
    /// <summary>Measured on sewn cloth.</summary>
    Measured,

    /// <summary>From the measured letters, by the proportions of a similar face.</summary>
    Estimated,
}

/// <summary>One of the machine's built-in letters as it comes out on cloth.</summary>
/// <param name="LowMm">Lower end of the range that holds the true width 19 times in 20.</param>
/// <param name="HighMm">Upper end of that range.</param>
/// <param name="Seconds">Time the machine takes to sew it; null when it was not timed.</param>
public sealed record MachineLetter(
    string Letter, double WidthMm, double LowMm, double HighMm, double? Seconds, WidthOrigin Origin)
{
    internal double HalfRangeMm => (HighMm - LowMm) / 2;
}

/// <summary>A machine's built-in letters at one size.</summary>
/// <param name="HeightMm">Height of its capitals.</param>
/// <param name="Gap">What the machine leaves between two letters, under the name of an empty text.</param>
/// <param name="Letters">By letter, ordinal order; a blank is a letter with a width of its own.</param>
/// <param name="Lacking">Letters that the machine was found not to have.</param>
/// <param name="StartSeconds">Locking and starting, once for each piece keyed in.</param>
public sealed record Alphabet(
    double HeightMm, MachineLetter Gap, ImmutableSortedDictionary<string, MachineLetter> Letters,
    ImmutableSortedSet<string> Lacking, double StartSeconds = 0)
{
    public bool Has(string letter) => Letters.ContainsKey(letter);
}
