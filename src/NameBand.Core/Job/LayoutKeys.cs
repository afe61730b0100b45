using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>The keys of the way names are laid along the hem and strips on the cloth; what they mean: docs/layout.md.</summary>
internal static class LayoutKeys
{
    public static readonly TextsKey KeepClear = new("hem.keepClear", "40 mm at 400 mm", "nothing");
    public static readonly LengthKey Start = new("hem.start", Common.Length.FromMm(0), 0, 1_000_000);
    public static readonly LengthKey CentreFront = new("hem.centreFront", null, 0, 1_000_000, "opposite centre back");
    public static readonly LengthKey CentreBack = new("hem.centreBack", null, 0, 1_000_000, "where the strip's ends meet");
    public static readonly NumberKey LiesFlat = new("strip.liesFlat", JobDefaults.LiesFlatPart, 0, 1);
    public static readonly NumberKey Eased = new("strip.eased", null, 0, 1, "any: the gaps decide");
    public static readonly NumberKey EaseLimit = new("strip.easeLimit", null, 0, 1, "0.1, or 0.2 on the bias");
    public static readonly FlagKey Tucks = new("strip.tucks", false);
    public static readonly NumberKey Lanes = new(
        "strip.stripsSideBySide", null, 1, 20, "free: as many as cost least work", Word: "asManyAsFit", IsWhole: true);
    public static readonly NumberKey Lines = new("strip.lines", 1, 1, 2, IsWhole: true);
    public static readonly LengthKey Piece = new("strip.piece", null, 200, 1_000_000, "a whole round");
    public static readonly LengthKey JoinAllowance = new("strip.joinAllowance", JobDefaults.JoinAllowance, 0, 200);
    public static readonly LengthKey EndCloth = new("strip.endCloth", JobDefaults.EndCloth, 0, 1000);
    public static readonly WordKey<bool> Grain = new("strip.grain", ("straight", false), ("bias", true));
    public static readonly WordKey<Stiffening> Stiffening = new(
        "strip.stiffening", ("starch", Job.Stiffening.Starch), ("interfacing", Job.Stiffening.Interfacing), ("none", Job.Stiffening.None))
    {
        Otherwise = "starch where a machine sews without a hoop, else none",
    };

    public static readonly WordKey<bool> Join = new("strip.join", ("straight", false), ("diagonal", true));
    public static readonly LengthKey JoinClear = new("strip.joinClear", JobDefaults.JoinClear, 0, 200);
    public static readonly LengthKey ClosingBlank =
        new("strip.closingBlank", null, 0, 1000, "none; with diagonal joins what such a join needs");
    public static readonly WordKey<bool> Shape = new("strip.shape", ("straight", false), ("curved", true));
    public static readonly NumberKey ClothShrinkage = new("shop.clothShrinkage", 0, 0, 0.3);
    public static readonly LengthKey MostGap = new("lettering.mostGap", null, 0.5, 10_000, "any");

    public static readonly TextKey GroupColumn = new("columns.group", null, "no groups");
    public static readonly FormKey Groups = new("groups", "a list of groups in { }", "no groups");
    public static readonly FormKey Names = new("names", "a list of names in { }, each with what is wished for it", "no wishes");
    public static readonly FormKey Motif = new(
        "lettering.motif", "\"none\" or \"dot\" or \"diamond\" or \"smallStar\" or { \"letter\": …, \"face\": …, \"width\": … }",
        "\"none\"");

    public static readonly ImmutableArray<JobKey> All =
    [
        KeepClear, Start, CentreFront, CentreBack, LiesFlat, Eased, EaseLimit, Tucks, Lanes, Lines, Piece, JoinAllowance, EndCloth, Grain,
        Stiffening, Join, JoinClear, ClosingBlank, Shape, ClothShrinkage, MostGap,
        GroupColumn, Groups, Names, Motif,
    ];
}
