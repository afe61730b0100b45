using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Load;

namespace NameBand.Reports;

/// <summary>What a laid out job takes, hooping by hooping in the plan's order, and what its stitches do to the cloth.</summary>
/// <param name="Loads">Hooping by hooping, null where one has no needle path; empty where none has.</param>
public sealed record JobFigures(Estimate Estimate, ImmutableArray<ClothLoad?> Loads, ImmutableArray<Problem> Problems)
{
    /// <summary>What is still to do, as the command hours has it.</summary>
    public WorkLeft Left => Estimate.WorkLeft;

    /// <summary>The evenings of what is left, as the command hours has them; null for one machine without evenings.</summary>
    public EveningPlan? Evenings { get; init; }

    /// <summary>The same as days; null where the job names no day to be done by, or no evenings are known.</summary>
    public EveningCalendar? Calendar { get; init; }

    /// <summary>What the next evening holds; null where no evening is known, or nothing is left.</summary>
    public Tonight? Tonight { get; init; }
}
