using System.Runtime.InteropServices;
using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Puts runs of stitches together to a needle path: short joins, or jumps and trims, between them, lock stitches at the
/// start and end of each thread.
/// </summary>
internal sealed class PathWriter
{
    private readonly List<NeedleStep> _steps = [];
    private bool _threaded;
    private LockedRun? _last;
    private Placing _endOrigin;

    public NeedlePath ToPath() => new([.. _steps]);

    /// <summary>Sews a run. The thread that is under way goes on to it in one short stitch, or is locked and cut.</summary>
    public void Run(LockedRun run, Placing origin, bool isJoined)
    {
        var first = origin.Of(run.Steps[0].At);
        if (_threaded && isJoined)
        {
            if (_steps[^1].At.DistanceTo(first) >= SewnRun.ShortestMm)
            {
                _steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Travel, first));
            }

            Sew(run.Steps.AsSpan(1), origin);
        }
        else
        {
            Trim();
            JumpTo(first);
            Sew(run.Steps.AsSpan(1, run.StartAfter), origin);
            Sew(run.StartLock, origin);
            Sew(run.Steps.AsSpan(1 + run.StartAfter), origin);
        }

        _threaded = true;
        _last = run;
        _endOrigin = origin;
    }

    /// <summary>Jumps, and puts the needle down there.</summary>
    public void JumpTo(Point to, StitchKind kind = StitchKind.Travel)
    {
        _steps.Add(new NeedleStep(NeedleAction.Jump, StitchKind.None, to));
        _steps.Add(new NeedleStep(NeedleAction.Stitch, kind, to));
    }

    public void Stitch(Point to, StitchKind kind)
    {
        _steps.Add(new NeedleStep(NeedleAction.Stitch, kind, to));
        _threaded = true;
    }

    /// <summary>Locks and cuts the thread, where there is one.</summary>
    public void Trim(bool withLock = true)
    {
        if (!_threaded)
        {
            return;
        }

        if (withLock)
        {
            LockAtEnd();
        }

        _steps.Add(new NeedleStep(NeedleAction.Trim, StitchKind.None, _steps[^1].At));
        _threaded = false;
    }

    public void Stop()
    {
        if (_steps.Count > 0)
        {
            _steps.Add(new NeedleStep(NeedleAction.Stop, StitchKind.None, _steps[^1].At));
        }
    }

    public void End()
    {
        if (_steps.Count > 0)
        {
            _steps.Add(new NeedleStep(NeedleAction.End, StitchKind.None, _steps[^1].At));
        }
    }

    private void LockAtEnd()
    {
        if (_last is { } run)
        {
            Sew(run.EndLock, _endOrigin);
            _last = null;
        }
    }

    private void Sew(ReadOnlySpan<NeedleStep> steps, Placing origin)
    {
        int before = _steps.Count;
        CollectionsMarshal.SetCount(_steps, before + steps.Length);
        var moved = CollectionsMarshal.AsSpan(_steps)[before..];
        for (int i = 0; i < steps.Length; i++)
        {
            moved[i] = new NeedleStep(NeedleAction.Stitch, steps[i].Kind, origin.Of(steps[i].At));
        }
    }
}
