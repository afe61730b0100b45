using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The steps from the last name to the last stitch at the hem, in the order in which they are done.</summary>
public enum FinishingStep
{
    /// <summary>Tearing one long backing away.</summary>
    Tear,

    Press,

    /// <summary>Cutting strips apart and trimming them to width.</summary>
    Cut,

    Join,

    /// <summary>Turning both edges in.</summary>
    Turn,

    /// <summary>Folding tapered tucks.</summary>
    Tuck,

    Pin,

    /// <summary>Sewing the lower edge down.</summary>
    Lower,

    /// <summary>Sewing the upper edge down.</summary>
    Upper,
}

/// <summary>The words that a person, the log and plan.json have for the steps.</summary>
public static class FinishingWords
{
    public static ImmutableArray<FinishingStep> All { get; } = [.. Enum.GetValues<FinishingStep>()];

    public static string Of(FinishingStep step) => step switch
    {
        FinishingStep.Tear => "tear",
        FinishingStep.Press => "press",
        FinishingStep.Cut => "cut",
        FinishingStep.Join => "join",
        FinishingStep.Turn => "turn",
        FinishingStep.Tuck => "tuck",
        FinishingStep.Pin => "pin",
        FinishingStep.Lower => "lower",
        FinishingStep.Upper => "upper",
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, "No such step."),
    };

    /// <summary>As it is told once it is done.</summary>
    public static Said Done(FinishingStep step) => step switch
    {
        FinishingStep.Tear => "freed of its backing",
        FinishingStep.Press => "pressed",
        FinishingStep.Cut => "cut to width",
        FinishingStep.Join => "joined",
        FinishingStep.Turn => "turned in",
        FinishingStep.Tuck => "tucked",
        FinishingStep.Pin => "pinned to the hem",
        FinishingStep.Lower => "sewn down at the lower edge",
        FinishingStep.Upper => "sewn down at both edges",
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, "No such step."),
    };

    /// <summary>Null where it is no such word.</summary>
    public static FinishingStep? Read(string word) =>
        All.Where(s => Of(s).Equals(word.Trim(), StringComparison.OrdinalIgnoreCase)).Select(s => (FinishingStep?)s).FirstOrDefault();
}

/// <summary>
/// How far the rounds are finished. A step that is done takes those before it along: nobody pins what is not turned in;
/// one that is taken back takes back those that come after it.
/// </summary>
public sealed record FinishedSteps
{
    public static FinishedSteps None { get; } = new();

    /// <summary>How many of the steps are done where nothing is said of a round by itself.</summary>
    private int All { get; init; }

    private ImmutableDictionary<int, int> Rounds { get; init; } = ImmutableDictionary<int, int>.Empty;

    /// <param name="lines">Those of the log that speak of finishing, in their order.</param>
    public static FinishedSteps After(IEnumerable<SewingEntry> lines) => lines.Aggregate(None, (state, line) => state.With(line));

    public bool IsAny => All > 0 || Rounds.Values.Any(done => done > 0);

    public bool IsDone(FinishingStep step, int round) => Rounds.GetValueOrDefault(round, All) > (int)step;

    /// <summary>The last step that is done of a round; null for none.</summary>
    public FinishingStep? LastOf(int round) => Rounds.GetValueOrDefault(round, All) is > 0 and var done ? (FinishingStep)(done - 1) : null;

    /// <summary>Part of a step's work that is done, by the lengths of the rounds.</summary>
    internal double DonePart(FinishingStep step, IReadOnlyCollection<(int Round, double LengthMm)> rounds)
    {
        double all = rounds.Sum(r => r.LengthMm);
        return all > 0 ? rounds.Where(r => IsDone(step, r.Round)).Sum(r => r.LengthMm) / all : 0;
    }

    private FinishedSteps With(SewingEntry line)
    {
        if (FinishingWords.Read(line.Path) is not { } step)
        {
            return this;
        }

        int After(int done) => line.Deed == SewingDeed.Done ? Math.Max(done, (int)step + 1) : Math.Min(done, (int)step);
        return line.Hooping == 0
            ? this with { All = After(All), Rounds = Rounds.ToImmutableDictionary(r => r.Key, r => After(r.Value)) }
            : this with { Rounds = Rounds.SetItem(line.Hooping, After(Rounds.GetValueOrDefault(line.Hooping, All))) };
    }
}
