using NameBand.Common;
using NameBand.Job;

namespace NameBand.Garment;

/// <summary>Checks a wish for strips cut to the curve of the hem.</summary>
internal static class CurvedStrips
{
    private const string File = "job.json";

    public static void Check(BandJob job, HemPlan hem, List<Problem> problems)
    {
        if (!hem.IsCurved)
        {
            return;
        }

        var shape = new Where(File, Key: "strip.shape");
        if (job.HasSeveralWays || job.Traits.IsFollowedByHand || (job.Traits.HasLettersOfItsOwn && job.IsHooped))
        {
            Said what = job.HasSeveralWays
                ? "names that go several ways"
                : job.Traits.IsFollowedByHand ? "names that are traced" : "names that are keyed in on hooped cloth";
            problems.Add(Problem.CannotUse(
                shape, $"Curved strips are laid out for a machine that follows coordinates, and for names keyed in on a strip that is fed without a hoop; {what} stand in a straight row.",
                job.Traits.HasLettersOfItsOwn && job.IsHooped && !job.HasSeveralWays
                    ? "Write \"shape\": \"straight\", or take \"hooped\" out of “letters” and the hold out of “hoop”."
                    : "Write \"shape\": \"straight\", or \"way\": \"needlePath\"."));
        }

        if (hem.TurnRad <= 0)
        {
            problems.Add(Problem.CannotUse(
                shape, "The job asks for a curved strip, but does not say that the edge is curved. A straight edge takes a straight strip.",
                "Say what part of a full circle the skirt is, such as \"circlePart\": 0.75 in the group “hem”. "
                + "Or write \"shape\": \"straight\"."));
            return;
        }

        if (job.Layout.IsBias)
        {
            problems.Add(Problem.CannotUse(
                shape, "A strip cut to the curve already runs across the grain at its ends; it cannot be cut on the bias as well.",
                "Write \"grain\": \"straight\" with \"shape\": \"curved\", or \"shape\": \"straight\" with \"grain\": \"bias\"."));
        }

        double least = 2 * hem.Strip.CutWidthMm;
        for (int k = 1; k <= (hem.FixedRounds ?? 1); k++)
        {
            if (hem.RadiusMm(k) < least)
            {
                problems.Add(Problem.CannotUse(
                    shape, $"Round {k} would have a radius of {hem.RadiusMm(k):0} mm, too tight for a strip {hem.Strip.CutWidthMm:0.#} mm wide.",
                    $"Cut the strip at most {Math.Floor(hem.RadiusMm(k) / 2):0} mm wide, or put it lower on the garment."));
                return;
            }
        }
    }
}
