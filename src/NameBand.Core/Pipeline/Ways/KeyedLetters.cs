using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Drift;
using NameBand.Lettering;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Measuring;
using NameBand.Names;
using NameBand.Pipeline.Resume;

namespace NameBand.Pipeline.Ways;

/// <summary>What is known of the machine's letters, and the names it can sew: lays them out at one of its sizes.</summary>
internal sealed class KeyedLetters(
    MeasuredAlphabets alphabets, IReadOnlyDictionary<string, LetteredName> shapes, ImmutableArray<Name> names, double readingErrorMm) : ILetteredWay
{
    private const string LettersName = "the machine’s own letters";

    public NameComposer At(SizeStep step) => new(step, alphabets.At(step.HeightMm), shapes, readingErrorMm);

    public LetteredList Letter(SizeStep step)
    {
        var composer = At(step);
        return new LetteredList(LettersName, [.. names.Select(composer.Compose).OfType<LetteredName>()], []);
    }

    /// <summary>Built-in letters are measured as they come out: nothing is added to their widths.</summary>
    public Fabric On(Fabric fabric) => fabric with { PullCompensationMm = 0 };

    public ImmutableArray<Problem> Doubts(LaidOut made) => [];

    public IPieceSewing Sew(LaidOut made) => new KeyedSewing(made, this);

    /// <summary>The machine has its own letters; a face only draws them.</summary>
    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) => [names.Face];

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel) => names.Lettered;

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf) => 0;

    /// <summary>Lays the names out at the largest setting of the machine at which they fit.</summary>
    public Result<StripPlan> LayOut(NamesRead names, HemPlan hem, Fabric fabric)
    {
        var job = names.Job;
        hem = EarlierEnds.KeepMade(hem, job.Folder);
        var steps = SizeSteps.Of(job.Letters, alphabets);
        if (job.Lettering.Height is { } wished)
        {
            steps = [.. steps.Where(s => Math.Abs(s.HeightMm - wished.Mm) < 0.05)];
            if (steps.IsEmpty)
            {
                return Result.Fail<StripPlan>(Problem.CannotUse(
                    new Where("job.json", Key: "lettering.height"), $"The machine has no letters {wished.InMillimetres()} high.",
                    $"Take one of letters.sizes ({string.Join(", ", job.Letters.Sizes.Select(s => s.InMillimetres()))}), or \"largest\"."));
            }
        }

        var tried = steps.Select(s => (Step: s, Laid: LayAt(job, hem, fabric, s))).ToList();
        int fewestHeld = tried.Min(t => t.Laid.Value!.Held.Length);
        int at = tried.FindIndex(t => t.Laid.Value!.MatchesHem && t.Laid.Value.Held.Length == fewestHeld);
        bool fits = at >= 0;
        at = fits ? at : tried.Count - 1;
        var (step, chosen) = tried[at];
        var problems = chosen.Problems.Where(p => p.Where.Key != "lettering").Select(p => Remended(p, job)).ToList();
        if (fits && at > 0)
        {
            var larger = tried[at - 1];
            problems.Add(Problem.Note(new Where(Key: "letters.sizes"), WhyNotLarger(larger.Step, larger.Laid.Value!, fewestHeld)));
        }

        if (alphabets.BySize.All(a => Math.Abs(a.HeightMm - step.HeightMm) >= 0.05))
        {
            problems.Add(Problem.Note(
                new Where(job.Letters.Alphabet),
                FormattableString.Invariant($"Letters {step.HeightMm:0.##} mm high were not measured: their widths are taken in proportion from the nearest size that was."),
                FormattableString.Invariant($"Run measure with --size \"{step.HeightMm:0.##} mm\" to have them measured.")));
        }

        var plan = chosen.Value! with { SpacingMm = step.GapMm, HasNeedlePaths = false };
        return WithDrift(job.Letters.Hooped ? plan : OneRun.Of(plan), job, problems);
    }

    /// <summary>Sets out anew what is still to be sewn after the ends that were measured.</summary>
    private static Result<StripPlan> WithDrift(StripPlan plan, BandJob job, List<Problem> problems)
    {
        var ends = DriftFile.Read(job.Folder);
        problems.AddRange(ends.Problems);
        if (ends.Value is null || ends.Value.All.IsEmpty)
        {
            return ends.Value is null ? Result.Fail<StripPlan>(problems) : Result.Of(plan, problems);
        }

        var corrected = DriftCorrection.Apply(
            plan, ends.Value.All, SewingDirection.FirstLetterFirst(job.Letters), job.Lettering.Spread);
        problems.AddRange(corrected.Problems);
        if (corrected.Value is null)
        {
            return Result.Fail<StripPlan>(problems);
        }

        problems.AddRange(corrected.Value.Rounds.Where(r => r.Sewn is not null).Select(r => Problem.Note(
            new Where(DriftFile.FileName),
            FormattableString.Invariant($"Round {r.Number}: {r.Sewn!.SewnNames} names are sewn and end {Math.Abs(r.Sewn.OffMm):0.0} mm {(r.Sewn.OffMm < 0 ? "before" : "behind")} their place. The rest is set out anew with gaps of {r.GapMm:0.0} mm."))));
        return Result.Of(corrected.Value, problems);
    }

    private Result<StripPlan> LayAt(BandJob job, HemPlan hem, Fabric fabric, SizeStep step)
    {
        var atStep = job with { Lettering = job.Lettering with { Height = Length.FromMm(step.HeightMm), Least = Length.FromMm(step.HeightMm) } };
        if (!job.Letters.Hooped)
        {
            atStep = OneRun.WithoutField(atStep);
        }

        return LayoutPlanner.Plan(atStep, hem, Letter(step), fabric);
    }

    private static string WhyNotLarger(SizeStep step, StripPlan plan, int fewestHeld)
    {
        string what = FormattableString.Invariant($"Letters {step.HeightMm:0.#} mm high with gaps of {step.GapMm:0.#} mm");
        return plan.Held.Length > fewestHeld
            ? $"{what} are too tall or too wide for some of the names."
            : FormattableString.Invariant($"{what} would need {plan.DifferenceMm:0} mm more strip than there is.");
    }

    /// <summary>What to do about a strip that is too long, in terms of the machine: its sizes are steps.</summary>
    private static Problem Remended(Problem problem, BandJob job) => problem.Where.Key?.StartsWith("round", StringComparison.Ordinal) == true
        ? problem with { Mend = $"This is the smallest setting in letters.sizes{(job.Letters.Spacings.IsEmpty ? "" : " and letters.spacings")}. Use another round, a narrower lettering.gap, or hold the longest names." }
        : problem;
}
