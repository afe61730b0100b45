using NameBand.Choosing;
using NameBand.Job;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Plans;

/// <summary>
/// Works typed letters and the plain way out beside the plan as it is set, on a core that would be idle until there is something to
/// stitch. They share nothing but what comes out the same whoever asks first.
/// </summary>
internal sealed class PlainBeside : IDisposable
{
    private readonly PlanTrials _trials;
    private readonly Task _typed;
    private Task<PlanTrial?>? _plain;

    /// <param name="job">As it is written.</param>
    public PlainBeside(BandJob job, JobAsWritten written, PlanTrials trials)
    {
        _trials = trials;
        _typed = Task.Run(() =>
        {
            if (!job.Traits.HasLettersOfItsOwn)
            {
                JitWarmUp.Stitch();
                trials.Of(PlainWay.Typed(new VisibleSteps(written, job), trials));
            }
        });
    }

    public void Begin(LaidOut asSet, VisibleSteps steps) => _plain = Task.Run(async () =>
    {
        await _typed.ConfigureAwait(false);
        return PlainWay.Of(asSet, steps, _trials);
    });

    /// <summary>Null where there is none; asked for once it was begun.</summary>
    public PlanTrial? Plain => _plain!.GetAwaiter().GetResult();

    /// <summary>Nothing goes on reading in the job's folder when the command is done.</summary>
    public void Dispose() => Task.WhenAny(Task.WhenAll(_typed, _plain ?? Task.CompletedTask)).GetAwaiter().GetResult();
}
