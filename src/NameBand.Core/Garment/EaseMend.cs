using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Garment;

/// <summary>A change that makes a strip attachable whose upper edge cannot be eased.</summary>
public enum EaseMendKind
{
    /// <summary>A narrower strip, whose upper edge has less to lose.</summary>
    Narrower,

    /// <summary>Tapered tucks in the gaps.</summary>
    Tucks,

    /// <summary>A strip cut to the curve of the hem.</summary>
    Curve,

    /// <summary>A strip cut on the bias, which gives more.</summary>
    Bias,
}

/// <summary>A mend that was tried: with it every round can be attached, and nothing else comes to need a decision.</summary>
/// <param name="Edits">What to write in job.json.</param>
/// <param name="Text">The same with its figures, as a sentence for the maker.</param>
/// <param name="FinishedWidthMm">Width of the finished strip then.</param>
public sealed record EaseMend(EaseMendKind Kind, ImmutableArray<JobEdit> Edits, Said Text, double FinishedWidthMm)
{
    /// <summary>Radius of each round’s lower edge where the strip is cut to the curve, lowest first; else none.</summary>
    public ImmutableArray<double> RadiiMm { get; init; } = [];

    /// <summary>Tucks of each round that has some, lowest first; none for other mends.</summary>
    public ImmutableArray<TuckSet> Tucks { get; init; } = [];
}
