using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.MachineLetters.Spelling;

/// <summary>
/// A word whose marks are added by hand, in a similar face at the machine's widths: what of <paramref name="Whole"/> lies outside
/// <paramref name="Plain"/> are the marks. In mm, the origin at the left edge of its first letter on the base line.
/// </summary>
/// <param name="Plain">The letters that are keyed.</param>
/// <param name="Whole">Those with marks as they are to be; without one that no face draws together with its plain letter.</param>
internal sealed record MarkedWord(
    ImmutableArray<Outline> Plain, ImmutableArray<Outline> Whole, ImmutableArray<MarkedLetter> Letters, double LengthMm);
