using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Output;

namespace NameBand;

/// <summary>What has been sewn of a job so far, and the plan it was sewn from.</summary>
internal sealed record Begun(SewingLog Log, EarlierPlan Plan)
{
    private const string JobFile = "job.json";

    /// <summary>Null inside the result's problems' absence means: nothing has been sewn yet.</summary>
    public static (Begun? Begun, ImmutableArray<Problem> Problems) Read(string jobFolder)
    {
        var log = SewingLogFile.Read(jobFolder);
        if (!log.HasBegun)
        {
            return (null, log.Problems);
        }

        var plan = EarlierPlanFile.Read(SewnFolder.PlanOf(jobFolder), $"{SewnFolder.Name}/{OutPaths.Plan}");
        if (plan.Value is not { } earlier)
        {
            return (null, [.. log.Problems, .. plan.Problems, Problem.CannotUse(
                new Where(SewingLogFile.FileName), "The log says that something is sewn, and the plan it was sewn from cannot be read, so nobody knows where it lies.",
                $"Put the folder “{SewnFolder.Name}” back from a copy. If nothing is sewn after all, move {SewingLogFile.FileName} out of the job's folder.")]);
        }

        var known = earlier.Hoopings.Select(h => h.Number).ToHashSet();
        var strangers = log.Sewn.Where(h => !known.Contains(h)).Select(h => Problem.NeedsPerson(
            new Where(SewingLogFile.FileName), FormattableString.Invariant($"The log says that hooping {h} is sewn, and the plan has no hooping {h}."),
            "Perhaps its number was mistyped: say it again with the right one, and mark this one with --mistake."));
        return (new Begun(log, earlier), [.. log.Problems, .. strangers]);
    }

    public bool IsSewn(int hooping) => Log.IsSewn(hooping);

    /// <summary>The job as the sewn hoopings have settled it: face and cloth are theirs, and so is what was measured.</summary>
    public (BandJob Job, ImmutableArray<Problem> Notes) Settle(BandJob job)
    {
        var notes = ImmutableArray.CreateBuilder<Problem>();
        Tell("lettering.face", $"the face {job.Lettering.Face}", Plan.Face, job.Lettering.Face != Plan.Face);
        Tell("fabric", $"the cloth {job.Fabric}", Plan.Fabric, job.Fabric != Plan.Fabric);
        if (job.Lettering.Height is { } height && Math.Abs(height.Mm - Plan.LetterHeightMm) > 0.001)
        {
            Tell("lettering.height", $"letters {height.InMillimetres()} high", Length.FromMm(Plan.LetterHeightMm).InMillimetres(), true);
        }

        var settled = job with
        {
            Fabric = Plan.Fabric,
            Lettering = job.Lettering with { Face = Plan.Face },
            Strip = job.Strip with { Shortening = MeasuredStrips.Shortening(Log, Plan, job.Strip.Shortening) },
        };
        return (settled, notes.ToImmutable());

        void Tell(string key, string wished, string sewn, bool differs)
        {
            if (differs)
            {
                notes.Add(Problem.NeedsPerson(
                    new Where(JobFile, Key: key), $"The job asks for {wished}, and what is sewn has {sewn}; the rest is planned to match what is sewn.",
                    $"Write in {JobFile} what is sewn, so that the file says what is done."));
            }
        }
    }

    public MatchedList Match(NameList list, GroupSettings groups)
    {
        var hoopingOf = Plan.HoopingOfSegment;
        var sewnNames = Plan.Rounds.SelectMany(r => r.Segments).Where(s => IsSewn(hoopingOf[s.Number])).SelectMany(s => s.Names).ToHashSet();
        return SewnMatching.Match(
            list, Plan, sewnNames.Contains, h => h.Row.Line <= groups.All.Length && groups.All[h.Row.Line - 1].Heading == h.Text);
    }

    public Continuation From(MatchedList matched, ImmutableArray<LetteredName> gone) =>
        new(Plan, [.. Log.Sewn], matched.Before, gone);
}
