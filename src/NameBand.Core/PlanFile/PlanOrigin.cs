using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Load;
using NameBand.Stitching;

namespace NameBand.PlanFile;

/// <summary>What a hooping's files were made from and what they are, as fingerprints.</summary>
/// <param name="HolesPerMm2">Needle holes in each mm² of its fullest letter, exactly as measured.</param>
/// <param name="IsSewn">Its files are those that were sewn.</param>
/// <param name="IsAgain">It was spoiled and is to be sewn again.</param>
/// <param name="IsPatch">It is to be sewn again on a piece of its own.</param>
internal sealed record HoopingOrigin(
    string MadeFrom, string PathPrint, string ProofPrint, double HolesPerMm2, bool IsSewn = false, bool IsAgain = false,
    bool IsPatch = false)
{
    /// <summary>Where its stitches ask most of the cloth.</summary>
    public WorstSpot Spot { get; init; }

    /// <summary>What it was sewn in, where the rest of the plan has another face, height or cloth.</summary>
    public SewnAs? SewnAs { get; init; }

    /// <summary>What its needle path takes, before anything that depends on other hoopings is added.</summary>
    public required HoopingFigures Figures { get; init; }

    /// <summary>Whether all its letters could be read as strokes; null where they were not looked at, because it is sewn.</summary>
    public bool? LettersRead { get; init; }
}

/// <summary>What a round's proof was made from and what it is, as fingerprints.</summary>
internal sealed record RoundOrigin(string MadeFrom, string ProofPrint);

/// <summary>What a plan was made from.</summary>
internal sealed record PlanOrigin(
    string Face, string Fabric, ImmutableDictionary<int, HoopingOrigin> Hoopings, ImmutableDictionary<int, RoundOrigin> Rounds)
{
    /// <summary>The job as it was laid out; null: the plan says nothing of what she works with.</summary>
    public BandJob? Job { get; init; }

    /// <summary>How names are sewn, by their order.</summary>
    public ImmutableDictionary<int, NameStyle> Styles { get; init; } = ImmutableDictionary<int, NameStyle>.Empty;
}
