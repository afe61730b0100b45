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
}
