using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Where the names of a group stand.</summary>
public enum GroupPlace
{
    /// <summary>Among the others, where the order puts them.</summary>
    Among,

    /// <summary>Before all others.</summary>
    First,

    /// <summary>After all others.</summary>
    Last,

    /// <summary>On rounds that hold no other names.</summary>
    OwnRound,
}

/// <summary>Names that are lettered and placed alike. Only its own name ever leaves the job, never what the list's column holds.</summary>
/// <param name="Values">What stands in the column for one of the group; empty where it goes by numbers.</param>
/// <param name="From">Least number in the column, or null for any.</param>
/// <param name="Below">The number in the column is less than this; null for any.</param>
/// <param name="IsRest">Everybody who is in no other group.</param>
/// <param name="HeightFactor">Its letter height as a multiple of the job's, 0.3 to 3.</param>
/// <param name="Face">Null: the job's face.</param>
/// <param name="Heading">Sewn before its names; null for none.</param>
public sealed record NameGroup(
    string Name, ImmutableArray<string> Values, double? From, double? Below, bool IsRest, double HeightFactor, string? Face,
    GroupPlace Place, string? Heading)
{
    /// <summary>Colour of its thread; null: the job's.</summary>
    public CssColour? Thread { get; init; }

    public bool GoesByNumber => From is not null || Below is not null;
}

/// <summary>The groups of a job, in their order.</summary>
/// <param name="Column">Header of the column that says who is in which group; null when there are no groups.</param>
public sealed record GroupSettings(string? Column, ImmutableArray<NameGroup> All)
{
    public static GroupSettings None { get; } = new(null, []);

    /// <summary>The group of all who are in no other, if there is one.</summary>
    public NameGroup? Rest => All.FirstOrDefault(g => g.IsRest);

    /// <summary>Null for a name that is in none.</summary>
    public NameGroup? Of(string? name) => name is null ? null : All.FirstOrDefault(g => g.Name == name);
}
