using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Output.Keying;

/// <summary>What read-me-first.txt says of names that are keyed into a machine's own letters.</summary>
internal static class KeyInReadMe
{
    /// <param name="mark">The plan's.</param>
    /// <param name="setsOut">Whether the rest of a strip is set out anew after what was measured.</param>
    public static ImmutableArray<Said> Parts(string mark, bool setsOut) =>
        [$"\nPlan {mark}.\n", Text, setsOut ? WhileYouSew : BesideOthers, ReadMePage.OneRuler, ReadMePage.TakeCare(hooped: false)];

    private static readonly Said Text =
        """

        What lies where
        ---------------
        key-in-a4.pdf, key-in-letter.pdf
                                   the sheet to sew by: what to key in, where each name starts
                                   and how long it must come out; print it at 100 %
        key-in.csv                 the same for a spreadsheet
        proofs/round-01.png …      each strip whole. The letters are those of a similar face,
                                   each stretched to the width of your machine's own: places
                                   and lengths are right, the shapes are not your machine's
        proofs/cutting-plan.png    how to cut the cloth, drawn to scale, its ends with it
        sheets/work-packet-…pdf    by the command print: what to buy, the cut list, and the
                                   work by hand after sewing with its measures
        proofs/hooping-001.png …   each run of sewing at true size, to lay beside the strip
        plan.json                  every figure, for other programs. Stitches and thread are
                                   those of the similar face: only an estimate

        The next run makes all of these again. Your own files in this folder stay.

        Before you sew on the real cloth
        --------------------------------
        1. Read every name on the proofs against your list, letter by letter, and let
           somebody else read them too.
        2. Without a hoop the cloth must be firm: starch it or iron interfacing on, as the cut
           list says. Limp cloth draws together two to four per cent under the stitches, firm
           cloth a half to one and a half (common practice, no source); between names it keeps
           its length. One long backing lies under each strip; tear it away when all is sewn.
           Measure names when the backing is off and they are pressed and cold.
        3. Sew the first three names on a scrap with the same backing and thread and measure
           them. They should come out within the limits on the sheet.
        4. Rule the base line along the strip, and draw all start marks from the cloth's cut
           left end.
        5. Measure the hem once more, on the garment, after it has hung.

        """;

    private static readonly Said WhileYouSew =
        """

        While you sew
        -------------
        Tear-away backing under the whole strip takes the place of a hoop. If names begin to
        end before or behind their places, measure where one ends from the strip's end, add it
        to drift.csv in the job's folder (number,name,end_mm) and run make again: the names
        after it are set out again, so that the strip still ends at the hem.

        """;

    private static readonly Said BesideOthers =
        """

        While you sew
        -------------
        Tear-away backing under each run takes the place of a hoop. Leave the places of the
        other names blank. If names begin to end before or behind their places, start the
        next one at its own mark all the same: what is hooped has its place beside it.

        """;
}
