using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline;

/// <summary>What is left of a job, dealt out to evenings; worked out once for the command, the packet and the page.</summary>
/// <param name="Plan">Null for one machine without evenings.</param>
/// <param name="Calendar">The evenings as days; null where the job names no day to be done by, or no evenings are known.</param>
/// <param name="Tonight">What the next evening holds; null where no evening is known, or nothing is left.</param>
/// <param name="Week">Null where no evening is known.</param>
internal sealed record Evenings(EveningPlan? Plan, EveningCalendar? Calendar, Tonight? Tonight, EveningWeek? Week)
{
    /// <param name="eveningMinutes">Length of an evening; null: as the job says, if it does.</param>
    /// <param name="today">Null: evenings are counted and not dated.</param>
    public static Evenings Of(LaidOut made, IPieceSewing sewing, Estimate estimate, double? eveningMinutes = null, DateOnly? today = null)
    {
        var deal = Dealing(made, estimate);
        var week = eveningMinutes is { } each ? EveningWeek.Alike(each) : WeekOf(made.Job);
        var calendar = made.Job.FinishBy is { } day && week is not null && today is { } now && day >= now
            ? EveningCalendar.Of(deal, week, now, day) : null;
        double? evening = eveningMinutes ?? made.Job.EveningMinutes;
        var lengths = week is { People.Length: > 1 } && today is { } first
            ? week.From(first) : evening is { } length ? EveningLengths.Always(length) : null;
        var plan = calendar?.Plan ?? (lengths is null && made.Job.Machine.Names.Length < 2 ? null : deal(lengths));
        var tonight = plan is null || evening is null ? null : Tonight.Of(plan, estimate, made.Plan, Orders(made, sewing));
        return new Evenings(
            plan, calendar, tonight is null ? null : tonight with { Day = calendar?.DayOf(plan!.Sittings.Min(s => s.Evening)) }, week);
    }

    /// <summary>What each of several makers does, as if they began on a Monday: sheets know no day.</summary>
    public static ImmutableArray<PersonShare> Shares(LaidOut made, Estimate estimate) => WeekOf(made.Job) is { People.Length: > 1 } week
        ? PersonShare.Of(Dealing(made, estimate)(week.From(new DateOnly(2001, 1, 1)))) : [];

    /// <summary>
    /// Everybody's evenings, where the workshop tells those of several; a strip that is sewn without a hoop is one whole piece, and
    /// one person's.
    /// </summary>
    private static EveningWeek? WeekOf(BandJob job)
    {
        if (job.WeekMinutes is not { } minutes)
        {
            return null;
        }

        PersonEvenings[] people =
        [
            .. job.Workshop.People.Where(p => p.UsualEveningMinutes is not null)
                .Select(p => new PersonEvenings(p.Name, p.EveningMinutes, p.DoesMachine, p.DoesHands)),
        ];
        bool areTold = job.Workshop.AtTheMachine is { } first && first.EveningMinutes.SequenceEqual(minutes);
        return people.Length < 2 || !areTold || !job.IsHooped || !people.Any(p => p.DoesHands)
            ? new EveningWeek(minutes) : EveningWeek.Of([.. people]);
    }

    private static int[] Orders(LaidOut made, IPieceSewing sewing) => sewing.KeyIns.IsEmpty
        ? [.. made.Plan.Rounds.SelectMany(r => r.Names).Select(n => n.Order)]
        : [.. sewing.KeyIns.Where(n => !n.IsMotif).Select(n => n.Order)
            .Concat(made.Plan.Rounds.SelectMany(r => r.Names).Select(n => n.Order)).Distinct()];

    private static Func<EveningLengths?, EveningPlan> Dealing(LaidOut made, Estimate estimate)
    {
        var names = made.Job.Machine.Names;
        var log = made.Begun?.Log;
        var estimated = LoggedPace.Estimated(estimate);
        SewingMachine[] machines = names.IsEmpty
            ? [new SewingMachine("", LoggedPace.Factor(log, estimated, null))]
            : [.. names.Select(n => new SewingMachine(n, LoggedPace.Factor(log, estimated, n)))];
        return lengths => EveningWork.Plan(estimate, made.Plan, machines, lengths);
    }
}
