using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Pipeline.Resume;

namespace NameBand.Pipeline.Ways;

/// <summary>
/// A strip that no hoop holds gets shorter under its stitches, and not in the gaps between names: all of it together by the part that
/// is sewn on. So long strips of few names come out as long as their hem, and start marks lie where they belong.
/// </summary>
internal static class UnderStitches
{
    /// <summary>Lays a job out twice: first to see how much of its strips is sewn on.</summary>
    public static Result<StripPlan> Lay(BandJob job, Func<BandJob, Result<StripPlan>> lay)
    {
        var laid = lay(job);
        if (laid.Value is not { } plan || job.IsHooped || job.Strip.Shortening == 0)
        {
            return laid;
        }

        double sewnMm = plan.Rounds.SelectMany(r => r.NamesAndMotifs).Sum(n => n.WidthMm);
        laid = lay(With(job, Of(job.Strip.Shortening, sewnMm, plan.Rounds.Sum(r => r.LengthMm))));
        return laid with { Value = laid.Value is { } again ? again with { UnderStitchesPart = job.Strip.Shortening } : null };
    }

    /// <summary>
    /// Goes on from an earlier plan: its marks are drawn on the cloth, so its shortening stays as long as the job says the same of it. A
    /// plan that knew nothing of gaps keeps what it had. Where only the stiffening is another one now, what is sewn drew together as it was
    /// calculated then; a shortening that she tells is of all her cloth.
    /// </summary>
    public static Result<StripPlan> GoOn(BandJob job, SewingProgress begun, Func<BandJob, Result<StripPlan>> lay)
    {
        var earlier = begun.Plan;
        if (job.IsHooped)
        {
            return lay(job);
        }

        double asked = job.Strip.Shortening;
        double was = earlier.UnderStitchesPart ?? earlier.Shortening;
        bool isSame = Math.Abs(was - asked) < Tolerance.Rounding;
        double allMm = earlier.Names.Sum(n => n.WidthMm);
        double sewnMm = job.Strip.IsShorteningTold ? 0 : earlier.Names.Where(begun.IsSewn).Sum(n => n.WidthMm);
        double mixed = allMm > 0 ? ((was * sewnMm) + (asked * (allMm - sewnMm))) / allMm : asked;
        double part = isSame ? earlier.Shortening : Of(mixed, allMm, earlier.Rounds.Sum(r => r.LengthMm));
        double? under = isSame && earlier.UnderStitchesPart is null ? null : asked;
        var laid = lay(With(job, part));
        return laid with { Value = laid.Value is { } plan ? plan with { UnderStitchesPart = under } : null };
    }

    private static double Of(double underPart, double sewnMm, double lengthMm) =>
        lengthMm > 0 ? Math.Round(underPart * Math.Min(1, sewnMm / lengthMm), 6) : underPart;

    private static BandJob With(BandJob job, double shorteningPart) => job with { Strip = job.Strip with { Shortening = shorteningPart } };
}
