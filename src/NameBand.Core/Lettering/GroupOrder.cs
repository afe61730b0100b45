using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;

namespace NameBand.Lettering;

/// <summary>How names stand beside one another: in the order of their groups' places, headings before them, in the size of their
/// group.</summary>
internal sealed class GroupOrder
{
    private readonly Dictionary<string, Standing> _standings = new(StringComparer.Ordinal);

    /// <summary>First ones first, then all without a place, then last ones, then those on rounds of their own; each as the job
    /// lists them.</summary>
    /// <param name="faceOf">Name of the face of a group; null: that of the job, by whatever name.</param>
    /// <param name="usualFace">That of names whose group has none of its own.</param>
    public GroupOrder(GroupSettings groups, Func<NameGroup, string?> faceOf, string? usualFace)
    {
        NameGroup[] Of(GroupPlace place) => [.. groups.All.Where(g => g.Place == place)];

        var (first, last, own) = (Of(GroupPlace.First), Of(GroupPlace.Last), Of(GroupPlace.OwnRound));
        _standings[""] = new Standing(Block: first.Length, Face: usualFace);
        foreach (var group in groups.All)
        {
            int ownRounds = Array.IndexOf(own, group) + 1;
            int block = group.Place switch
            {
                GroupPlace.First => Array.IndexOf(first, group),
                GroupPlace.Last => first.Length + 1 + Array.IndexOf(last, group),
                GroupPlace.OwnRound => first.Length + last.Length + ownRounds,
                _ => first.Length,
            };
            _standings[group.Name] = new Standing(group.HeightFactor, faceOf(group), block, ownRounds) { Group = group.Name };
        }
    }

    public Standing Of(Name name) =>
        _standings[name.Group is { } group && _standings.ContainsKey(group) ? group : ""] with { IsHeading = IsHeading(name) };

    /// <summary>The same names, those of a lower block first.</summary>
    public ImmutableArray<Name> Ordered(IEnumerable<Name> names) => [.. names.OrderBy(n => Of(n).Block)];

    /// <summary>A heading stands in the file of the job and not in a list.</summary>
    public static bool IsHeading(Name name) => IsHeading(name.Row);

    /// <inheritdoc cref="IsHeading(Name)"/>
    public static bool IsHeading(RowRef row) => row.List == JobReader.FileName;

    /// <summary>Headings of the groups that names are in.</summary>
    public static ImmutableArray<Name> Headings(GroupSettings groups, IEnumerable<Name> names)
    {
        var met = names.Select(n => n.Group).ToHashSet();
        return
        [
            .. groups.All.Select((g, i) => (Group: g, Row: new RowRef(JobReader.FileName, i + 1)))
                .Where(g => g.Group.Heading is not null && met.Contains(g.Group.Name))
                .Select(g => new Name(g.Group.Heading!, g.Row) { Group = g.Group.Name }),
        ];
    }

    /// <summary>Says that a heading cannot be sewn, and why.</summary>
    public static Problem HeldHeading(string heading, HeldRow held) => Problem.NeedsPerson(
        new Where(JobReader.FileName, Key: "groups"),
        $"The heading “{PlainText.Short(heading)}” is not sewn: {held.Reason}.",
        "Write another heading, or remove it.");
}
