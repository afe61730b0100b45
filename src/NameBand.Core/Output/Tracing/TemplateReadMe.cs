using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Output.Tracing;

/// <summary>What read-me-first.txt says of names that are traced.</summary>
internal static class TemplateReadMe
{
    /// <param name="mark">The plan's.</param>
    public static ImmutableArray<Said> Parts(string mark) =>
        [$"\nPlan {mark}.\n", Text, ReadMePage.OneRuler, ReadMePage.TakeCare(hooped: false)];

    private static readonly Said Text =
        """

        What lies where
        ---------------
        template-a4.pdf, template-letter.pdf
                                   the strips at true size, in rows to cut out and tape
                                   together; print at 100 % and measure the test square
        proofs/round-01.png …      each strip whole, once round the garment
        proofs/hooping-001.png …   each strip at true size, as the thread will lie
        proofs/cutting-plan.png    how to cut the cloth, drawn to scale, its ends with it
        sheets/work-packet-…pdf    by the command print: what to buy, the cut list, and the
                                   work by hand after sewing with its measures
        plan.json                  every figure, for other programs. Stitches are those of a
                                   line of 2 mm stitches along each stroke: an estimate

        The next run makes all of these again. Your own files in this folder stay.

        How to use the template
        -----------------------
        1. Read every name on the proofs against your list, letter by letter, and let
           somebody else read them too.
        2. Print one page. If the square is not 50 mm each way, turn off “fit to page”.
        3. Tear-away can go through many printers, taped to a sheet of paper by its leading
           edge: then the lines are sewn straight through it. Otherwise lay the paper under a
           thin strip against a window and trace, or pin it on top and sew through it.
        4. To work from the wrong side, set traced.mirrored in job.json: the template is then
           a mirror image.
        5. The scale counts centimetres on the flat strip, before sewing shortens it, from its
           cut left end. Cloth beyond a dashed upright line is turned in, or lies under the
           beginning where the ends meet.

        """;
}
