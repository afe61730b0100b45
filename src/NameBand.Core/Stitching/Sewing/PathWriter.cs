using System.Runtime.InteropServices;
using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Puts runs of stitches together to a needle path: jumps and trims between them, lock stitches at the start and
/// end of each thread.
/// </summary>
internal sealed class PathWriter(double longestUntrimmedMm)
{
    private const double LockMm = 0.35;

    private readonly List<NeedleStep> _steps = [];
    private bool _threaded;

    public NeedlePath ToPath() => new([.. _steps]);

    /// <summary>
    /// Sews a run whose points are counted from <paramref name="origin"/>. A thread that is under way is locked, and
    /// cut unless the run starts near by.
    /// </summary>
    /// <param name="sameLetter">
    /// The run is a dot or an accent of the letter under way, or the other way round: an uncut thread between them is
    /// not locked, because a dot has no room for more holes; the satin over its underlay holds it.
    /// </param>
    public void Run(ReadOnlySpan<NeedleStep> run, Placing origin, bool sameLetter)
    {
        var first = origin.Of(run[0].At);
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
        if (!isUnlocked)
        {
            LockAtStart(run, origin);
        }

        _threaded = true;
        int before = _steps.Count;
        CollectionsMarshal.SetCount(_steps, before + run.Length - 1);
        var moved = CollectionsMarshal.AsSpan(_steps)[before..];
        for (int i = 1; i < run.Length; i++)
        {
            moved[i - 1] = new NeedleStep(NeedleAction.Stitch, run[i].Kind, origin.Of(run[i].At));
        }
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

    private void LockAtStart(ReadOnlySpan<NeedleStep> run, Placing origin)
    {
        var first = origin.Of(run[0].At);
        if (run.Length < 2)
        {
            return;
        }

        var ahead = origin.Of(run[1].At);
        _steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Lock, Towards(first, ahead, 2 * LockMm)));
        _steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Lock, Towards(first, ahead, LockMm)));
    }

    /// <summary>Two small stitches back along the last one, each in a hole of its own.</summary>
    private void LockAtEnd()
    {
        var last = _steps[^1].At;
        var before = _steps[^2].At;
        _steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Lock, Towards(last, before, 2 * LockMm)));
        _steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Lock, Towards(last, before, LockMm)));
    }

    private static Point Towards(Point from, Point to, double by)
    {
        double length = from.DistanceTo(to);
        return length < 1e-6 ? from : from + ((to - from) * (Math.Min(by, length) / length));
    }
}
