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
using NameBand.Reports;

namespace NameBand.Pipeline.Ways;

/// <summary>The first half of the line for names that are keyed into a machine's own letters.</summary>
internal static class KeyedPlanning
{
    /// <summary>What is known of the machine's letters, and the names it can sew.</summary>
    public sealed record Basis(
        MeasuredAlphabets Alphabets, IReadOnlyDictionary<string, LetteredName> Shapes, ImmutableArray<Name> Names, double ReadingErrorMm)
    {
        public NameComposer At(SizeStep step) => new(step, Alphabets.At(step.HeightMm), Shapes, ReadingErrorMm);

        public LetteredList Letter(SizeStep step)
        {
            var composer = At(step);
            return new LetteredList(LettersName, [.. Names.Select(composer.Compose).OfType<LetteredName>()], []);
        }
    }

    private const string LettersName = "the machine’s own letters";

    /// <summary>Sorts the names by what the machine can sew, and gives every letter a width.</summary>
    public static Result<Planning.NamesRead> ReadNames(
        BandJob job, Corrections corrections, Face face, NameList list, FaceShelf shelf)
    {
        double height = job.Letters.Sizes[0].Mm;
        Result<MeasuredAlphabets>? file = InnerFile.IsThere(job.Folder, job.Letters.Alphabet)
            ? AlphabetFile.Read(job.Folder, job.Letters.Alphabet, height, job.Letters.Gap?.Mm, 2 * job.Letters.ReadingError.Mm)
            : null;
        if (file is { IsUsable: false })
        {
            return Result.Fail<Planning.NamesRead>(file.Problems);
        }

        var spelled = MachineSpelling.Check(list.Names, MachineSpelling.Has(job.Letters, file?.Value));
        string[] letters = [.. spelled.Names.SelectMany(n => Letters.Of(n.Text)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var shapes = LetterShapes.Of(letters, face, shelf);
        var alphabets = AlphabetCompletion.Complete(
            file?.Value, letters, height, job.Letters.ReadingError.Mm, l => shapes.TryGetValue(l, out var s) ? s.Ink.WidthMm : null);
        var basis = new Basis(alphabets, shapes, spelled.Names, job.Letters.ReadingError.Mm);
        var first = basis.Letter(SizeSteps.Of(job.Letters, alphabets)[0]);
        var rows = Planning.AlsoForLetters(
            list, spelled.Held, names => first with { Held = MachineSpelling.Check(names.Names, MachineSpelling.Has(job.Letters, file?.Value)).Held });
        var read = new Planning.NamesRead(job, corrections, face, first with { Held = spelled.Held }, Planning.Merge(rows, spelled.Held))
        {
            Keyed = basis,
        };
        return Result.Of(read, [.. file?.Problems ?? [], .. spelled.Problems, .. Doubts(job, file?.Value, letters)]);
    }

    /// <summary>Lays the names out at the largest setting of the machine at which they fit.</summary>
    public static Result<StripPlan> Lay(BandJob job, HemPlan hem, Basis basis, Fabric fabric)
    {
        var steps = SizeSteps.Of(job.Letters, basis.Alphabets);
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

        var tried = steps.Select(s => (Step: s, Laid: LayAt(job, hem, basis, fabric, s))).ToList();
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

        if (basis.Alphabets.BySize.All(a => Math.Abs(a.HeightMm - step.HeightMm) >= 0.05))
        {
            problems.Add(Problem.Note(
                new Where(job.Letters.Alphabet),
                FormattableString.Invariant($"Letters {step.HeightMm:0.##} mm high were not measured: their widths are taken in proportion from the nearest size that was."),
                FormattableString.Invariant($"Run measure with --size \"{step.HeightMm:0.##} mm\" to have them measured.")));
        }

        var plan = chosen.Value! with { SpacingMm = step.GapMm, HasNeedlePaths = false };
        return WithDrift(job.Letters.Hooped ? plan : TracedSewing.InOneRun(plan), job, problems);
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

    private static Result<StripPlan> LayAt(BandJob job, HemPlan hem, Basis basis, Fabric fabric, SizeStep step)
    {
        var atStep = job with { Lettering = job.Lettering with { Height = Length.FromMm(step.HeightMm), Least = Length.FromMm(step.HeightMm) } };
        if (!job.Letters.Hooped)
        {
            atStep = TracedSewing.WithoutField(atStep);
        }

        return LayoutPlanner.Plan(atStep, hem, basis.Letter(step), fabric);
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

    private static IEnumerable<Problem> Doubts(BandJob job, MeasuredAlphabets? file, string[] letters)
    {
        if (file is null)
        {
            yield return Problem.NeedsPerson(
                new Where(job.Letters.Alphabet),
                $"The machine’s letters are not measured yet: all widths are those of {job.Lettering.Face} and may be out by a quarter.",
                "Run measure on this job, sew the lines it writes and measure them.");
            yield break;
        }

        string[] missing = [.. letters.Where(l => file.BySize.Any(a => !a.Has(l))).Select(Letters.Shown)];
        if (missing.Length > 0)
        {
            yield return Problem.Note(
                new Where(job.Letters.Alphabet),
                $"These letters are not measured: {string.Join(" ", missing)}. Their widths are estimated by the proportions of {job.Lettering.Face}.",
                "Names that have them are marked ~ on the key-in sheet; measure these first as they are sewn.");
        }
    }
}
