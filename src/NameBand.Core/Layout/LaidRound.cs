using System.Collections.Immutable;

namespace NameBand.Layout;

/// <summary>A round with its names in place from left to right, before it is cut into pieces and segments.</summary>
internal sealed record LaidRound(
    int Number, double LengthMm, double HemMm, double GapMm, ImmutableArray<PlacedName> Names, ImmutableArray<FreeInterval> Stretches);
