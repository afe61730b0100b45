using NameBand.Common;

namespace NameBand.Layout.Drift;

/// <summary>Gaps take up what names come out longer or shorter; only beyond these parts of what was planned a person is told.</summary>
internal static class GapBounds
{
    // Half and twice: our assumption of what still looks even beside its neighbours (docs/layout.md).
    private const double LeastPart = 0.5;
    private const double MostPart = 2;

    /// <summary>Null where the gaps that are left are sound.</summary>
    /// <param name="after">The last sewn name.</param>
    /// <param name="isKept">The marks after it stay where they are.</param>
    public static Problem? Objection(Where where, string after, double gapMm, double plannedMm, bool isKept = false)
    {
        Said left =
            $"After “{PlainText.Short(after)}” {(gapMm < plannedMm ? (Said)"only " : "")}{gapMm:0.0} mm are left between names, where {plannedMm:0.0} mm were planned.";
        if (isKept)
        {
            return gapMm >= plannedMm * LeastPart && gapMm <= plannedMm * MostPart ? null : Problem.NeedsPerson(
                where, left, (Said)"The marks after it stay, for names of another line or way stand beside them: sew the next one at its mark. "
                    + (gapMm < plannedMm ? "If that is too near, unpick this one and sew it again, its letters closer together."
                        : "Check whether you like it."));
        }

        return gapMm < plannedMm * LeastPart
            ? Problem.NeedsPerson(where, left, "Move the last names to another round, or sew them smaller.")
            : gapMm > plannedMm * MostPart
                ? Problem.NeedsPerson(
                    where, left, "Check whether you like it. Otherwise key in a motif between the names, or let latecomers in.")
                : null;
    }
}
