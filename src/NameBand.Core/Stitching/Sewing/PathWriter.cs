using System.Runtime.InteropServices;
using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Puts runs of stitches together to a needle path: jumps and trims between them, lock stitches at the start and
/// end of each thread.
/// </summary>
internal sealed class PathWriter(double longestUntrimmedMm)
{
    private readonly List<NeedleStep> _steps = [];
    private bool _threaded;
    private NeedleStep[] _endLock = [];
    private Placing _endOrigin;

    public NeedlePath ToPath() => new([.. _steps]);

    /// <summary>
    /// Sews a run whose points are counted from <paramref name="origin"/>. A thread that is under way is locked, and
    /// cut unless the run starts near by.
    /// </summary>
    /// <param name="sameLetter">
    /// The run is a dot or an accent of the letter under way, or the other way round: an uncut thread between them is
    /// not locked, because a dot has no room for more holes; the satin over its underlay holds it.
    /// </param>
    public void Run(LockedRun run, Placing origin, bool sameLetter)
    {
        var first = origin.Of(run.Steps[0].At);
        bool isUnlocked = _threaded && sameLetter && _steps[^1].At.DistanceTo(first) <= longestUntrimmedMm;
        if (_threaded && !isUnlocked)
        {
            LockAtEnd();
            if (_steps[^1].At.DistanceTo(first) > longestUntrimmedMm)
            {
                Trim(withLock: false);
            }
        }

        JumpTo(first);
        int after = isUnlocked ? 0 : run.StartAfter;
        Sew(run.Steps.AsSpan(1, after), origin);
        Sew(isUnlocked ? [] : run.StartLock, origin);
        Sew(run.Steps.AsSpan(1 + after), origin);
        _threaded = true;
        _endLock = run.EndLock;
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
        Sew(_endLock, _endOrigin);
        _endLock = [];
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
