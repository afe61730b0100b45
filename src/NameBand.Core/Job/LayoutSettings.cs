using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>A place on the hem that names and joins keep out of, such as a seam or a placket.</summary>
/// <param name="At">Its middle, measured along the hem from the strip's starting end.</param>
public sealed record ClearPlace(Length At, Length Width);

/// <summary>What the job says of the way names are laid along the hem and strips on the cloth.</summary>
public sealed record LayoutSettings
{
    public ImmutableArray<ClearPlace> KeepClear { get; init; } = [];

    /// <summary>Where on the hem the list begins, measured like <see cref="ClearPlace.At"/>.</summary>
    public Length Start { get; init; } = Length.FromMm(0);

    /// <summary>Where on the hem the middle of the garment's front lies, measured like <see cref="ClearPlace.At"/>; null when not
    /// said.</summary>
    public Length? CentreFront { get; init; }

    /// <summary>Where on the hem the middle of the garment's back lies; null when not said.</summary>
    public Length? CentreBack { get; init; }

    /// <summary>Part of its length by which a strip's upper edge may be shorter and still lie flat by itself.</summary>
    public double LiesFlatPart { get; init; } = JobDefaults.LiesFlatPart;

    /// <summary>Part of its whole length by which it may be shorter when it is eased; null: only the gaps are asked.</summary>
    public double? EasedPart { get; init; }

    /// <summary>Part by which the gaps between names may be eased, where the job names one.</summary>
    public double? GivenEaseLimitPart { get; init; }

    /// <summary>Part by which the gaps between names may be eased: more on the bias.</summary>
    public double EaseLimitPart => GivenEaseLimitPart ?? (IsBias ? JobDefaults.EaseLimitBiasPart : JobDefaults.EaseLimitStraightPart);

    /// <summary>Whether tapered tucks in the gaps take up what easing cannot.</summary>
    public bool HasTucks { get; init; }

    /// <summary>Widest gap between two names; null for any.</summary>
    public Length? MostGap { get; init; }

    /// <summary>How many strips lie side by side on the cloth; null for as many as the field holds.</summary>
    public int? Lanes { get; init; } = 1;

    /// <summary>The job leaves it to the program: strips lie side by side where that costs less work, and no join is made for it.</summary>
    public bool AreLanesFree { get; init; }

    /// <summary>Lines of names on one strip, one above the other.</summary>
    public int Lines { get; init; } = 1;

    /// <summary>Longest piece a round is sewn in; null for the whole round.</summary>
    public Length? Piece { get; init; }

    /// <summary>Whether strips are cut at 45° to the selvedge, where cloth gives.</summary>
    public bool IsBias { get; init; }

    /// <summary>Whether strips are cut as pieces of a ring, so that they lie flat on a round hem.</summary>
    public bool IsCurved { get; init; }

    /// <summary>Whether pieces are joined by seams at 45° across the strip, which show less and lie flatter.</summary>
    public bool IsJoinedDiagonally { get; init; }

    /// <summary>Clear of names on each side of a diagonal seam.</summary>
    public Length JoinClear { get; init; } = JobDefaults.JoinClear;

    /// <summary>Blank where the strip's ends meet; null: none, or what a diagonal join needs.</summary>
    public Length? ClosingBlank { get; init; }

    /// <summary>Cloth beyond a piece's end that goes into the seam of a join.</summary>
    public Length JoinAllowance { get; init; } = JobDefaults.JoinAllowance;

    /// <summary>Cloth left free beyond the first and the last hooping, for the hoop to hold.</summary>
    public Length EndCloth { get; init; } = JobDefaults.EndCloth;
}
