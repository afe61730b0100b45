using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.MachineLetters;

/// <summary>The settings a machine offers.</summary>
internal static class SizeSteps
{
    /// <summary>Largest letters first, and for each height the widest gap first.</summary>
    /// <param name="used">Letters of the names.</param>
    internal static ImmutableArray<SizeStep> Of(LettersSettings letters, LetterKnowledge known, IReadOnlyList<string> used)
    {
        var steps = letters.Sizes.Select(s => s.Mm).Distinct().SelectMany(
            height => letters.Spacings.IsEmpty
                ? [new SizeStep(height, known.GapMm(height, used))]
                : letters.Spacings.Select(g => new SizeStep(height, g.Mm)));
        return [.. steps.OrderByDescending(s => s.HeightMm).ThenByDescending(s => s.GapMm)];
    }
}
