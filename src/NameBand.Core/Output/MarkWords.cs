using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>What every sheet says of the marks of a hooping, by how they are made.</summary>
internal static class MarkWords
{
    /// <summary>Above the hoopings of the packet.</summary>
    public static Said AboveHoopings(StripPlan plan) => plan.Marks switch
    {
        MarkMethod.Drawn => "Draw both crosses of a hooping in pencil on the ruled line, hoop the cloth, "
            + "and bring the needle over the one and then the other before you start; nothing of them is sewn. ",
        MarkMethod.Paper => (Said)$"Cut out {Template(plan)} for each hooping, lay its crosses on the ruled line, hoop the cloth with it, "
            + $"bring the needle over the one cross and then the other, and remove the paper before you start. ",
        MarkMethod.Sewn => "Marks first, in thread of the cloth’s colour, then the machine stops for the thread of the names. ",
        _ => "",
    };

    /// <summary>The step of the work by hand before the iron.</summary>
    public static Said BeforeHeat(StripPlan plan)
    {
        int segments = plan.OfNeedlePaths.Hoopings.Sum(h => h.Segments.Length);
        return plan.Marks switch
        {
            MarkMethod.Sewn =>
                (Said)$"Take the alignment marks out before any heat: two to each strip in each hooping, {2 * segments:#,0} in all. Heat sets their holes."
                + (plan.HasSeveralWays ? " Brush or wash out what you drew for the others." : ""),
            MarkMethod.Drawn => "The pencilled crosses lie in the turn-in and may stay; "
                + "brush all other lines out before any heat: an iron can set them for good.",
            _ => "Brush or wash out all lines and marks that you drew, before any heat: an iron can set them for good.",
        };
    }

    /// <summary>What the first page to read says of every hooping.</summary>
    public static Said InEveryHooping(StripPlan plan)
    {
        Said below = $"{Math.Abs(plan.MarkYMm):0.0}";
        return plan.Marks switch
        {
            MarkMethod.Drawn => (Said)$"""
                Each hooping has two crosses. Draw them in pencil, not in chalk, on your ruled line,
                {below} mm from the middle of the strip, at the figures of the tape: they lie in the
                turn-in, out of sight. Bring the needle over the one and then over the other before
                you start; one cross alone fixes no angle. Nothing of them is sewn.
                """,
            MarkMethod.Paper => $"""
                Each hooping has a template with two crosses: {Template(plan)}. Lay them on
                your ruled line, {below} mm from the middle of the strip, and on the figures of the
                tape; bring the needle over the one and then over the other, and remove the paper
                before you start. Nothing of them is sewn.
                """,
            _ => $"""
                In every hooping the alignment marks are sewn first, as long loose stitches in the
                colour of the cloth, {below} mm from the middle of the strip. Lay them on your ruled
                line and on the figures at the tape; then the machine stops for the thread of the
                names. Take the marks out before you press.
                """,
        };
    }

    /// <summary>Of the iron, on the packet's front page.</summary>
    public static Said HeatCaution(StripPlan plan) =>
        plan.Marks == MarkMethod.Sewn ? "Iron and steam burn; take the marks out before any heat." : "Iron and steam burn.";

    private static Said Template(StripPlan plan) => plan.Hem.IsCurved
        ? "the hooping’s proof, printed at true size" : "the hooping’s part of the template that the command print makes";
}
