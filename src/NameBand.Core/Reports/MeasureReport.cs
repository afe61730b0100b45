using System.Collections.Immutable;
using NameBand.Common;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Reports;

/// <summary>What <see cref="Bander.Measure"/> did.</summary>
/// <param name="Sheet">The sheet to fill in, inside the job's folder; null when nothing could be made.</param>
/// <param name="Printed">The printed sheets that were made, inside the job's folder; empty when the sheet was there already.</param>
/// <param name="Lines">Lines on the sheet.</param>
/// <param name="Unfilled">Lines not measured yet.</param>
/// <param name="Alphabet">What came out of the measured lines; null before any is measured.</param>
/// <param name="AlphabetFile">Where the alphabet was written; null when it was not.</param>
/// <param name="ReadingErrorMm">How far a reading is out, as a standard deviation, as the lines themselves show it or as assumed.</param>
public sealed record MeasureReport(
    ExitStatus Status, double HeightMm, string? Sheet, ImmutableArray<string> Printed, int Lines, int Unfilled,
    Alphabet? Alphabet, string? AlphabetFile, double ReadingErrorMm, bool ErrorIsFound, ImmutableArray<Problem> Problems);
