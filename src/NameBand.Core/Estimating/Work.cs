using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>
/// Every act of a job, from washing the cloth to the last stitch at the hem. All hours that are told are sums of its rows.
/// </summary>
public sealed record Work(ImmutableArray<WorkRow> Rows)
{
    public Figure Machine => Sum(By(Doer.Machine));

    public Figure Hands => Sum(By(Doer.Hands));

    /// <summary>Hands and machine together.</summary>
    public Figure All => Sum(Rows);

    /// <summary>What it costs her: hands, the machine that she sits by, and half of what it sews alone.</summary>
    public double CostMinutes => Rows.Sum(r => r.Minutes.Likely * (r.By == Doer.Machine && !r.IsAttended ? 0.5 : 1));

    /// <summary>Minutes of hers: hands, and the machine that she sits by.</summary>
    public double HersMinutes => Rows.Where(r => r.By == Doer.Hands || r.IsAttended).Sum(r => r.Minutes.Likely);

    public IEnumerable<WorkRow> By(Doer doer) => Rows.Where(r => r.By == doer);

    /// <summary>Hand work that comes when all names are sewn.</summary>
    public Figure Finishing => Sum(By(Doer.Hands).Where(r => r.When is WorkTime.EachPiece or WorkTime.EachRound or WorkTime.After));

    /// <summary>
    /// A sum with its range. What rows of one cause stray from the likely time adds up; what different causes do to it are
    /// independent, so that their squares add up.
    /// </summary>
    public static Figure Sum(IEnumerable<WorkRow> rows)
    {
        double likely = 0;
        double below = 0;
        double above = 0;
        foreach (var together in rows.GroupBy(r => r.Cause.Name))
        {
            double low = together.Sum(r => r.Minutes.Likely - r.Minutes.Low);
            double high = together.Sum(r => r.Minutes.High - r.Minutes.Likely);
            likely += together.Sum(r => r.Minutes.Likely);
            below += low * low;
            above += high * high;
        }

        return new Figure(Math.Max(0, likely - Math.Sqrt(below)), likely, likely + Math.Sqrt(above));
    }

    /// <summary>
    /// Likely minutes by the clock: hands and machine one after the other, but for hand work on one piece that is done while
    /// the machine sews the next one and nobody has to watch it.
    /// </summary>
    /// <param name="pieces">Hoopings, or runs.</param>
    public double ElapsedMinutes(int pieces)
    {
        double unwatched = By(Doer.Machine).Where(r => !r.IsAttended).Sum(r => r.Minutes.Likely);
        double meanwhile = By(Doer.Hands).Where(r => r.IsMeanwhile).Sum(r => r.Minutes.Likely);
        return All.Likely - (pieces > 1 ? Math.Min(unwatched, meanwhile) * (pieces - 1) / pieces : 0);
    }
}
