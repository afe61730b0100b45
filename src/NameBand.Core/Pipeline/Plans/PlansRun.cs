using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Reports.Answers;

namespace NameBand.Pipeline.Plans;

/// <summary>Finds the plans there are for a job, and writes one of them into job.json where it is told to.</summary>
internal static class PlansRun
{
    private const int MostPlans = 5; // One for each wish and the one as it is set (docs/plans.md): they fit one screen, a line each.

    /// <param name="why">Mark of the plan whose work is to stand beside another's; null: of none.</param>
    public static PlansReport Run(string jobFolder, string? why, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var (report, _, _) = Find(jobFolder, progress, cancel);
        return why is null || report.AsSet is null ? report
            : Known(report, why) is { } plan ? report with { Why = plan.Mark } : Stale(report, why);
    }

    /// <summary>Writes what a plan changes into job.json, whole or not at all.</summary>
    /// <exception cref="IOException">The machine could not write; job.json is as it was.</exception>
    public static PlansReport Take(string jobFolder, string mark, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var (report, before, _) = Find(jobFolder, progress, cancel);
        if (report.AsSet is null)
        {
            return report;
        }

        if (Known(report, mark) is not { } plan)
        {
            return Stale(report, mark);
        }

        if (!plan.Edits.IsEmpty)
        {
            byte[] file = JobEditing.Apply(before.Bytes.AsSpan(), plan.Edits)!;
            var saved = JobStore.Save(jobFolder, JobReader.FileName, KeptFile.Of(file), before);
            if (saved.Value is null)
            {
                return report with { Status = ExitStatus.CannotUse, Problems = saved.Problems };
            }
        }

        return report with { Taken = plan.Mark };
    }

    /// <summary>
    /// Makes a job of its own for the names that came when the garment was finished, and takes them out of the garment's plan.
    /// </summary>
    /// <param name="place">One of the words by which an offer is taken.</param>
    /// <exception cref="IOException">The machine could not write; the names are where they were.</exception>
    public static PlansReport TakeLate(string jobFolder, string place, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var (report, before, laid) = Find(jobFolder, progress, cancel);
        if (laid is null)
        {
            return report;
        }

        if (report.Late is not { } late)
        {
            return Refuse("Nobody came after the garment was finished, so there is nothing to take.",
                "Log what is sewn down first: nameband sewn JOB --done lower.");
        }

        if (late.Offers.FirstOrDefault(o => o.Kind.ToString().Equals(place, StringComparison.OrdinalIgnoreCase)) is not { } offer)
        {
            return Refuse($"“{PlainText.Short(place)}” is not one of the offers.",
                $"Take one of: {string.Join(", ", late.Offers.Select(o => ToldLate.WordOf(o.Kind)))}.");
        }

        if (offer.Kind == LateKind.Room)
        {
            return Refuse("Nothing has to be written for this: make puts them into the blank room by itself.",
                "Open the strip there, sew them as make has them, and log them.");
        }

        var made = LateJob.Make(laid, offer, before);
        return made.Value is { } taken ? report with { TakenLate = taken }
            : report with { Status = ExitStatus.CannotUse, Problems = made.Problems };

        PlansReport Refuse(Said found, Said mend) =>
            report with
            {
                Status = ExitStatus.CannotUse,
                Problems = [Problem.CannotUse(new Where(Key: "--late"), found, $"{mend} Nothing was written.")],
            };
    }

    private static (PlansReport Report, KeptFile JobFile, LaidOut? Laid) Find(string jobFolder, IProgress<Progress>? progress,
        CancellationToken cancel)
    {
        progress?.Report(new Progress("reading the list and laying it out", 0, 0));
        var shelf = new FaceShelf();
        var before = Directory.Exists(jobFolder) ? JobStore.Read(jobFolder, JobReader.FileName) : KeptFile.None;
        if (!before.IsThere || JobReader.Read(jobFolder) is not { IsUsable: true, Value: { } asWritten })
        {
            // Whatever keeps the job from being laid out is said as make says it.
            return (Refused(Planning.Run(jobFolder, shelf, cancel).Problems), before, null);
        }

        string folder = Path.GetFullPath(jobFolder);
        var written = new JobAsWritten(before.Bytes);
        var trials = new PlanTrials(folder, written, shelf, cancel);
        using var beside = new PlainBeside(asWritten, written, trials);
        var first = trials.Of(VisibleChoice.AsSet);
        if (first.Laid is not { Job: var job } laid)
        {
            return (Refused(first.Problems), before, null);
        }

        var steps = new VisibleSteps(written, job);
        beside.Begin(laid, steps);
        var stitching = new PlanStitching(cancel);
        var asSet = stitching.Of(first);
        var notes = ImmutableArray.CreateBuilder<Problem>();
        notes.AddRange(first.Problems.Except(first.OfPlan).Where(p => p.Severity != Severity.Note));
        ImmutableArray<(PlanWish Wish, StitchedPlan Plan)> found;
        if (laid.Begun is not null)
        {
            found = [(PlanWish.AsSet, asSet)];
            notes.Add(Problem.Note(
                new Where(JobReader.FileName), "Something is sewn already, so what can be seen is settled: there is one plan.",
                "What only costs work is chosen as ever; the command hours says what is left."));
        }
        else
        {
            var search = new PlanSearch(trials, steps, asSet, stitching, shelf);
            found = search.Run(progress);
            notes.AddRange(search.Notes);
            if (asSet.Against.IsEmpty && found.All(f => f.Plan.Laid.Plan.NameCount == 0))
            {
                found = [];
                notes.Add(Problem.NeedsPerson(
                    new Where(), "No name is to be sewn yet, so there are no plans to hold against each other.",
                    "Settle what waits, or add names to the list."));
            }
        }

        notes.AddRange(Waiting([.. found.Select(f => f.Plan.Laid.Rows), laid.Rows]));
        var plain = beside.Plain;
        var plans = InOrder(found, job.Wish, asSet, steps);
        if (plans.IsEmpty)
        {
            notes.AddRange(asSet.Against);
        }

        return (
            new PlansReport(
                plans.IsEmpty ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced, Offered(asSet, [PlanWish.AsSet], asSet, steps), plans,
                plain is null ? null : Offered(stitching.Measure(plain), [], asSet, steps), notes.ToImmutable())
            {
                Late = Latecomers.For(laid, asSet.Estimate),
            },
            before, laid);
    }

    /// <summary>What she wishes for first; each plan once, with all that it answers.</summary>
    private static ImmutableArray<OfferedPlan> InOrder(
        ImmutableArray<(PlanWish Wish, StitchedPlan Plan)> found, PlanWish wish, StitchedPlan asSet, VisibleSteps steps) =>
    [
        .. found.OrderBy(f => f.Wish == wish ? 0 : 1).ThenBy(f => f.Wish).GroupBy(f => f.Plan.Mark)
            .Select(g => Offered(g.First().Plan, [.. g.Select(f => f.Wish)], asSet, steps)).Take(MostPlans),
    ];

    private static OfferedPlan Offered(StitchedPlan plan, ImmutableArray<PlanWish> wishes, StitchedPlan asSet, VisibleSteps steps)
    {
        bool isMended = wishes.Contains(PlanWish.AsSet) && !plan.Trial.Choice.IsAsSet;
        return new OfferedPlan(plan.Mark, plan.Trial.Choice.Edits, plan.Laid.Job, plan.Laid.Plan, plan.Estimate)
        {
            Wishes = wishes,
            Asks = [.. Asks(plan, asSet)],
            BoundCostMinutes = FreeBound.CostMinutes(plan.Laid.Job, plan.Laid.Plan, plan.Estimate),
            Mends = isMended ? asSet.Against.FirstOrDefault()?.Found ?? "" : "",
            InTheWay = isMended ? steps.AsWritten(plan.Trial.Choice) : [],
        };
    }

    /// <summary>Rows that wait for a person in whichever plan: hours and letters are without their names.</summary>
    private static IEnumerable<Problem> Waiting(IReadOnlyList<NameList> plans)
    {
        int waiting = plans.Select(p => p.Rows.Where(r => r.Outcome == RowOutcome.Held).Select(r => r.Row))
            .Aggregate((one, other) => one.Intersect(other)).Count();
        if (waiting > 0)
        {
            yield return Problem.Note(
                new Where(), $"{Wording.Count(waiting, "row waits", "rows wait")} for your decision, and no plan counts what waits.",
                "The command names tells of each.");
        }
    }

    /// <summary>What its lists and its machine need that those of the plan as it is set do not.</summary>
    private static IEnumerable<Said> Asks(StitchedPlan plan, StitchedPlan asSet) => plan.Trial.Problems.Except(plan.Trial.OfPlan)
        .Where(p => p.Severity == Severity.NeedsPerson && !asSet.Trial.Problems.Contains(p)).Select(p => p.Mend);

    private static OfferedPlan? Known(PlansReport report, string mark) =>
        report.Plans.FirstOrDefault(p => p.Mark == SheetMarks.AsWritten(mark));

    private static PlansReport Stale(PlansReport report, string mark)
    {
        string typed = PlainText.Short(mark);
        string asMark = SheetMarks.AsWritten(mark);
        return report with
        {
            Status = ExitStatus.CannotUse,
            Problems =
            [
                Problem.CannotUse(
                    new Where(Key: "MARK"),
                    SheetMarks.IsMark(asMark)
                        ? (Said)($"No plan has the mark {asMark} now: the list, the job or the workshop has changed since, or the mark was "
                            + $"misread.")
                        : $"“{typed}” is not a mark: a mark has four signs, such as K7Q4.",
                    "Run plans once more and take a mark from its list. Nothing was written."),
            ],
        };
    }

    private static PlansReport Refused(IEnumerable<Problem> problems) => new(ExitStatus.CannotUse, null, [], null, [.. problems]);
}
