using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.MachineLetters;

/// <summary>The settings a machine offers.</summary>
public static class SizeSteps
{
    /// <summary>Largest letters first, and for each height the widest gap first.</summary>
    public static ImmutableArray<SizeStep> Of(LettersSettings letters, MeasuredAlphabets alphabets)
    {
        var steps = letters.Sizes.Select(s => s.Mm).Distinct().SelectMany(
            height => letters.Spacings.IsEmpty
                ? [new SizeStep(height, alphabets.At(height).Gap.WidthMm)]
                : letters.Spacings.Select(g => new SizeStep(height, g.Mm)));
        return [.. steps.OrderByDescending(s => s.HeightMm).ThenByDescending(s => s.GapMm)];
    }
}
