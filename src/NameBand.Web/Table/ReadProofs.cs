using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Web.Table;

/// <summary>Which names of a plan were read on their proofs: one that is written otherwise since is to be read once more.</summary>
internal static class ReadProofs
{
    /// <summary>The names that nobody has read yet, in the order in which they are sewn.</summary>
    public static ImmutableArray<PlacedName> Unread(string folder, StripPlan plan)
    {
        var read = ReadProofsFile.Read(folder);
        return [.. OfList(plan).Where(n => !read.Contains(Of(n)))];
    }

    public static IEnumerable<PlacedName> OfList(StripPlan plan) =>
        plan.Rounds.SelectMany(r => r.Names).Where(n => n.IsOfList).OrderBy(n => n.Order);

    /// <summary>Writes down that names are right as they stand.</summary>
    public static ImmutableArray<Problem> Write(string folder, IEnumerable<PlacedName> right) =>
        ReadProofsFile.Add(folder, right.Select(Of));

    private static ReadProof Of(PlacedName name) => new(name.Lettered.Name.Row, name.Lettered.Name.Text);
}
