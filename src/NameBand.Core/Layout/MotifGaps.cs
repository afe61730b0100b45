using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Finds the gaps that are wide enough for a motif, and puts one in the middle of each.</summary>
internal sealed class MotifGaps(double pullCompensationMm, double heightMm, LetteredName motif, double alongFactor = 1)
{
    /// <summary>Clear space on each side of a motif, in letter heights: our choice, about the width of a letter.</summary>
    private const double ClearFactor = 0.5;

    private readonly Dictionary<double, LetteredName> _sizes = [];

    /// <summary>Null where there is none.</summary>
    public static MotifGaps? Of(Sizing sizing, double heightMm) => sizing is { Motif: { } motif, AreMotifsLater: false }
        ? new MotifGaps(sizing.ReachMm(heightMm), heightMm, motif, sizing.AlongFactor(heightMm)) : null;

    /// <summary>Narrowest gap between two names that takes a motif.</summary>
    public static double NarrowestMm(LetteredName motif, double heightMm, double pullCompensationMm) =>
        motif.WidthMm(heightMm, pullCompensationMm) + (2 * ClearFactor * heightMm);

    /// <summary>The motif that follows a name; null where the gap to the next has no room, or where the two stand on different
    /// stretches.</summary>
    public PlacedName? Between(PlacedName before, PlacedName after, ImmutableArray<FreeInterval> stretches, bool runsOver)
    {
        var made = Sized(Math.Min(before.Lettered.Standing.HeightFactor, after.Lettered.Standing.HeightFactor));
        double width = made.WidthMm(heightMm, pullCompensationMm) * alongFactor;
        double gap = after.StartMm - before.EndMm;
        double middle = (before.EndMm + after.StartMm) / 2;
        bool isFree = runsOver
            || stretches.Any(s => before.StartMm >= s.StartMm - Tolerance.RoundingMm && after.EndMm <= s.EndMm + Tolerance.RoundingMm);
        bool fits = isFree && !before.IsHeading && !after.IsHeading && gap >= width
            + (2 * ClearFactor * heightMm * made.Standing.HeightFactor) - Tolerance.RoundingMm;
        return fits ? new PlacedName(made, middle - (width / 2), width, before.BaselineYMm, 0) : null;
    }

    private LetteredName Sized(double factor)
    {
        if (!_sizes.TryGetValue(factor, out var made))
        {
            _sizes.Add(factor, made = Sized(motif, factor));
        }

        return made;
    }

    /// <summary>A motif between names whose letters are so many times as high as the job's.</summary>
    public static LetteredName Sized(LetteredName motif, double factor) =>
        motif.KeepsSize ? motif : new ScaledName(factor).Of(motif) with { Standing = new Standing(factor) };
}
