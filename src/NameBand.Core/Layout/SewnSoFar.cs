namespace NameBand.Layout;

/// <summary>How far a strip is sewn, and how it came out.</summary>
/// <param name="SewnNames">Names sewn, from the end that is sewn first.</param>
/// <param name="SewnToMm">Where the last of them ended, from that end.</param>
/// <param name="OffMm">That less where it was planned to end when it was sewn.</param>
/// <param name="PlannedMm">What was sewn so far as it was first planned, before any drift was known.</param>
/// <param name="Factor">How much longer than first planned the rest is expected to come out, as a factor near 1.</param>
public sealed record SewnSoFar(int SewnNames, double SewnToMm, double OffMm, double PlannedMm, double Factor);
