using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Output.Changes;

/// <summary>What became of a name since the plan before; the words in changes.csv are these in small letters, apart.</summary>
public enum NameFate
{
    /// <summary>It was in no plan before.</summary>
    New,

    /// <summary>Its words are others now.</summary>
    TextChanged,

    /// <summary>The same words in another hooping.</summary>
    MovedHooping,

    /// <summary>The same words in the same hooping, at another place of the strip.</summary>
    MovedAlong,

    /// <summary>No row asks for it any longer.</summary>
    Withdrawn,

    /// <summary>Its row is still there and is not sewn: held, merged or left out.</summary>
    NoLongerSewn,

    /// <summary>Sewn, and the list now says something else.</summary>
    SewnThenChanged,

    /// <summary>Sewn, and no row asks for it any longer.</summary>
    SewnThenWithdrawn,

    /// <summary>The same words at the same place.</summary>
    Unchanged,
}

/// <summary>One name and what became of it since the plan before.</summary>
/// <param name="Text">As it is now; as it was, when it is no longer there.</param>
/// <param name="TextBefore">Empty for a new name.</param>
/// <param name="Hooping">Null when it lies in none now.</param>
/// <param name="Why">In words; null where the fate says all.</param>
public sealed record NameChange(
    NameFate Fate, string Text, string TextBefore, RowRef Row, int? Hooping, int? HoopingBefore, Said? Why = null);

/// <summary>What changed since the plan before, name by name: those of this plan in their order, then those that went.</summary>
public sealed record PlanChanges(ImmutableArray<NameChange> Names)
{
    /// <summary>True when every name stands where it stood, in the same words.</summary>
    public bool IsNothing => Names.All(n => n.Fate is NameFate.Unchanged);

    public IEnumerable<NameChange> Of(NameFate fate) => Names.Where(n => n.Fate == fate);

    /// <summary>The word for a fate in our files.</summary>
    public static string Word(NameFate fate) => InWords(fate).English;

    private static Said InWords(NameFate fate) => fate switch
    {
        NameFate.New => "new",
        NameFate.TextChanged => "text changed",
        NameFate.MovedHooping => "moved hooping",
        NameFate.MovedAlong => "moved along",
        NameFate.Withdrawn => "withdrawn",
        NameFate.NoLongerSewn => "no longer sewn",
        NameFate.SewnThenChanged => "sewn then changed",
        NameFate.SewnThenWithdrawn => "sewn then withdrawn",
        NameFate.Unchanged => "unchanged",
        _ => throw new ArgumentOutOfRangeException(nameof(fate), fate, "No such fate."),
    };
}
