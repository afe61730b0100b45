using NameBand.Common;
using NameBand.Job;

namespace NameBand.Choosing;

/// <summary>What a plan comes to, as far as a wish asks for it.</summary>
/// <param name="HersMinutes">Of hands, and of the machine that she sits by.</param>
/// <param name="ElapsedMinutes">By the clock.</param>
/// <param name="Changes">Keys of job.json that would be written otherwise.</param>
internal sealed record PlanFigures(double HersMinutes, double ElapsedMinutes, double LetterHeightMm, int Changes)
{
    /// <summary>Larger letters may take so many times her hours as it is set: our choice, or there would be no end of it.</summary>
    private const double MostHours = 1.5;

    /// <summary>Part of the hours that each key which is changed has to save: our choice, or plans would differ by a minute.</summary>
    private const double WorthPart = 0.01;

    /// <summary>How much larger each key which is changed has to make the letters: our choice.</summary>
    private const double WorthMm = 0.2;

    /// <summary>Whether it answers a wish so much better than another plan that it is worth the keys it changes.</summary>
    public bool IsWorth(PlanWish wish, PlanFigures than)
    {
        int keys = Math.Max(1, Changes - than.Changes);
        return wish switch
        {
            PlanWish.Soonest => than.ElapsedMinutes - ElapsedMinutes >= keys * WorthPart * than.ElapsedMinutes,
            PlanWish.BiggestLetters => LetterHeightMm - than.LetterHeightMm >= (keys * WorthMm) - Tolerance.Rounding,
            _ => than.HersMinutes - HersMinutes >= keys * WorthPart * than.HersMinutes,
        };
    }

    /// <summary>Less is better: what is wished for, then what leaves more as she wrote it, then her hours.</summary>
    public (double Wished, int Changes, double HersMinutes) Rank(PlanWish wish) => (
        wish switch
        {
            PlanWish.Soonest => Math.Round(ElapsedMinutes),
            PlanWish.BiggestLetters => -Math.Round(LetterHeightMm * 10),
            PlanWish.AsSet => Changes,
            _ => Math.Round(HersMinutes),
        },
        Changes, HersMinutes);

    /// <summary>Whether a wish may cost as much beside the plan as it is set.</summary>
    public bool IsWithin(PlanWish wish, PlanFigures asSet) =>
        wish != PlanWish.BiggestLetters || HersMinutes <= MostHours * asSet.HersMinutes;
}
