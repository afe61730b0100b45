using System.Collections.Immutable;
using NameBand.Names;

namespace NameBand.PlanFile;

/// <summary>What was found on the way to a plan.</summary>
/// <param name="Rows">Every data row of every list with what finally became of it.</param>
/// <param name="Needs">What needs a person before anything is sewn.</param>
public sealed record PlanFound(ImmutableArray<ListedRow> Rows, Needs Needs)
{
    public PlanFound(ImmutableArray<ListedRow> rows)
        : this(rows, Needs.None)
    {
    }
}
