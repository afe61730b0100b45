using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>What she wants most of the plans that there are.</summary>
public enum PlanWish
{
    /// <summary>As job.json has it.</summary>
    AsSet,

    /// <summary>The fewest hours of hers.</summary>
    FewestHours,

    /// <summary>The fewest hours by the clock.</summary>
    Soonest,

    BiggestLetters,

    /// <summary>Typed into the machine's own letters. Not to be written: it is offered beside the others where a machine may have
    /// letters.</summary>
    TypedLetters,
}

/// <summary>The keys by which plans are put in order.</summary>
internal static class PlanKeys
{
    public static readonly WordKey<PlanWish> Wish = new(
        "plan.wish", ("asSet", PlanWish.AsSet), ("fewestHours", PlanWish.FewestHours), ("soonest", PlanWish.Soonest),
        ("biggestLetters", PlanWish.BiggestLetters));

    public static readonly FlagKey ReadWhileWorn = new("plan.readWhileWorn", false);

    public static readonly ImmutableArray<JobKey> All = [Wish, ReadWhileWorn];
}
