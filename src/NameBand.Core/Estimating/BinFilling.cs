using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>
/// Puts jobs that cannot be split into bins of given sizes. The largest jobs go first, each into the bin it fills best;
/// where that fails, other bins are tried in turn, up to a set number of tries, so that the answer is the same on every machine.
/// </summary>
internal sealed class BinFilling
{
    public const int UsualTries = 200_000; // A count of tries and not a time, so that giving up is the same on every machine. Our choice.

    private readonly double[] _jobs;
    private readonly double[] _left;
    private readonly double[] _toCome;
    private readonly int[] _bin;
    private int _tries;

    private BinFilling(double[] jobs, double[] sizes, int tries)
    {
        _jobs = jobs;
        _left = [.. sizes];
        _bin = new int[jobs.Length];
        _tries = tries;
        _toCome = new double[jobs.Length + 1];
        for (int i = jobs.Length - 1; i >= 0; i--)
        {
            _toCome[i] = _toCome[i + 1] + jobs[i];
        }
    }

    /// <param name="jobs">Sizes, in any order.</param>
    /// <param name="provenNot">True when every way was tried and none fits: nobody can do it.</param>
    /// <returns>The bin of each job, or null when none was found.</returns>
    public static int[]? TryFill(IReadOnlyList<double> jobs, IReadOnlyList<double> sizes, out bool provenNot, int tries = UsualTries)
    {
        int[] order = [.. Enumerable.Range(0, jobs.Count).OrderByDescending(i => jobs[i]).ThenBy(i => i)];
        var filling = new BinFilling([.. order.Select(i => jobs[i])], [.. sizes], tries);
        bool found = filling.Place(0);
        provenNot = !found && filling._tries > 0;
        if (!found)
        {
            return null;
        }

        int[] bins = new int[jobs.Count];
        for (int i = 0; i < order.Length; i++)
        {
            bins[order[i]] = filling._bin[i];
        }

        return bins;
    }

    private bool Place(int job)
    {
        if (job == _jobs.Length)
        {
            return true;
        }

        if (_tries-- <= 0 || UsefulRoom(_jobs[^1]) + Tolerance.Rounding < _toCome[job])
        {
            return false;
        }

        int[] bins = [.. Enumerable.Range(0, _left.Length).Where(b => _left[b] + Tolerance.Rounding >= _jobs[job]).OrderBy(b => _left[b])
            .ThenBy(b => b)];
        double tried = double.NaN;
        foreach (int bin in bins)
        {
            // Two bins with the same room left lead to the same end.
            if (Math.Abs(_left[bin] - tried) < Tolerance.Rounding)
            {
                continue;
            }

            tried = _left[bin];
            _left[bin] -= _jobs[job];
            _bin[job] = bin;
            if (Place(job + 1))
            {
                return true;
            }

            _left[bin] += _jobs[job];
            if (_tries <= 0 || Math.Abs(_left[bin] - _jobs[job]) < Tolerance.Rounding)
            {
                // A job that fills its bin to the brim could not lie better.
                return false;
            }
        }

        return false;
    }

    /// <summary>Room left in bins that can still take the smallest job.</summary>
    private double UsefulRoom(double smallest)
    {
        double room = 0;
        foreach (double left in _left)
        {
            room += left + Tolerance.Rounding >= smallest ? left : 0;
        }

        return room;
    }
}
