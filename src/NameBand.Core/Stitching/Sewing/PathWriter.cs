using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Puts runs of stitches together to a needle path: jumps and trims between them, lock stitches at the start and
/// end of each thread.
/// </summary>
internal sealed class PathWriter
{
    /// <summary>A jump longer than this is trimmed; a shorter one leaves a thread that can be clipped by hand.</summary>
    public const double LongestUntrimmedMm = 3;

    private const double LockMm = 0.35;

    private readonly List<NeedleStep> _steps = [];
    private bool _threaded;

    public NeedlePath ToPath() => new([.. _steps]);

    /// <summary>Sews a run whose points are counted from <paramref name="origin"/>.</summary>
    public void Run(ImmutableArray<NeedleStep> run, Point origin)
    {
        var first = run[0].At + origin;
        if (_threaded && _steps[^1].At.DistanceTo(first) > LongestUntrimmedMm)
        {
            Trim();
        }

        JumpTo(first);
        if (!_threaded)
        {
            LockAtStart(run, origin);
            _threaded = true;
        }

        _steps.EnsureCapacity(_steps.Count + run.Length);
        for (int i = 1; i < run.Length; i++)
        {
            var step = run[i];
            _steps.Add(new NeedleStep(NeedleAction.Stitch, step.Kind, step.At + origin));
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

    private void LockAtStart(ImmutableArray<NeedleStep> run, Point origin)
    {
        var first = run[0].At + origin;
        if (run.Length < 2)
        {
            return;
        }

        var ahead = run[1].At + origin;
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
