using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>What read-me-first.txt says of names sewn from needle paths: what lies where, what to do first, and what to take care
/// of.</summary>
internal static class ReadMeFirst
{
    public static ImmutableArray<Said> Parts(StripPlan plan, bool sewnBeforeCutting)
    {
        Said runs = plan.Hem.RunsInWords.Changed((text, _) =>
            text.Replace("; ", ";\n", StringComparison.Ordinal).Replace(" (", "\n(", StringComparison.Ordinal));
        return
        [
            $"\nPlan {SheetMarks.Of(plan)}. The names run {runs}.\n", WhatLiesWhere, BeforeSewing(plan),
            sewnBeforeCutting ? CutAfterSewing : CutBeforeSewing, $"\n{MarkWords.InEveryHooping(plan)}\n", plan.Hem.IsCurved ? Curved : "",
            ReadMePage.OneRuler, ReadMePage.TakeCare(hooped: true),
        ];
    }

    private static readonly Said WhatLiesWhere =
        """

        What lies where
        ---------------
        proofs/hooping-001.png …   a picture of each hooping at true size, to check and to
                                   lay under the hoop; printed at 100 % a centimetre on its
                                   tape is a centimetre
        proofs/round-01.png …      each strip whole, once round the garment
        proofs/cutting-plan.png    how to cut the cloth, drawn to scale
        needle-paths/              the needle's way for each hooping, for a machine or a
                                   program that can follow coordinates
        worksheet.csv              one line for each hooping, to tick off; opens in any
                                   spreadsheet
        plan.json                  every figure, for other programs

        The next run makes all of these again. Your own files in this folder stay, and so
        does a worksheet you have written in: it is kept beside the new one.

        """;

    private static Said BeforeSewing(StripPlan plan) =>
        $"""

        Before you sew on the real cloth
        --------------------------------
        1. Read every name on the proofs against your list, letter by letter, and let
           somebody else read them too.
        2. Print one hooping at 100 % and lay a ruler on its tape. If ten centimetres are
           not ten centimetres, the printer has scaled it.
        3. Sew one hooping on a scrap of the same cloth with the same backing, thread and
           needle. Take the backing off, if it is of that kind, press it, and look: does
           cloth show between the stitches, does it pucker, can you read it at arm's length?
        4. Measure how long that hooping came out. Cloth gets shorter as it is sewn; this
           plan allows for {plan.Shortening * 100:0.0##} % (strip.shortening in job.json). Write your own
           figure there and run the plan again.
        5. Measure the hem once more, on the garment, after it has hung.

        """;

    private static readonly Said CutAfterSewing =
        """
        6. Sew all names on the wide cloth first. Cut the strip to its width only when the
           last hooping is done and pressed.

        """;

    private static readonly Said CutBeforeSewing =
        """
        6. The strip is cut before it is sewn: baste it to the backing along both edges so
           that it cannot slip in the hoop.

        """;

    private static readonly Said Curved = """

        This strip is curved. Cut the cloths by proofs/cutting-plan.png: pieces of rings, the
        long edge towards the hem. For each hooping rule the straight line through the places
        of its two marks; worksheet.csv says how far the strip's arc is from that line at its
        middle (arc_off_line_mm). Towards the ends of a piece the cloth gives like bias: press
        it, never pull it. To press the edges under, clip the upper one and ease in the lower.

        """;
}
