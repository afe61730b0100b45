using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.PlanFile;

/// <summary>What was found on the way to a plan.</summary>
/// <param name="Rows">Every data row of every list with what finally became of it.</param>
/// <param name="Needs">What needs a person before anything is sewn.</param>
internal sealed record PlanFound(ImmutableArray<ListedRow> Rows, Needs Needs)
{
    /// <summary>What the rooms found of each fact.</summary>
    public ImmutableArray<Verdict> Verdicts { get; init; } = [];

    public PlanFound(ImmutableArray<ListedRow> rows)
        : this(rows, Needs.None)
    {
    }
}
