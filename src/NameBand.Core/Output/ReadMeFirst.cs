using System.Globalization;
using System.Text;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>Writes read-me-first.txt: what lies where, what to do first, and what to take care of.</summary>
public static class ReadMeFirst
{
    public static void Write(Stream stream, string title, StripPlan plan, bool sewnBeforeCutting)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.Write(title + "\n" + new string('=', Math.Min(78, title.Length)) + "\n");
        string runs = plan.Hem.RunsInWords.Replace("; ", ";\n", StringComparison.Ordinal).Replace(" (", "\n(", StringComparison.Ordinal);
        writer.Write($"\nThe names run {runs}.\n");
        writer.Write(WhatLiesWhere);
        writer.Write(BeforeSewing(plan, sewnBeforeCutting));
        writer.Write(TakeCare);
    }

    private const string WhatLiesWhere =
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

        The next run makes all of these anew. Your own files in this folder stay, and so
        does a worksheet you have written in: it is kept beside the new one.

        """;

    private static string BeforeSewing(StripPlan plan, bool sewnBeforeCutting)
    {
        var text = new StringBuilder(
            """

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

            """);
        text.Append(CultureInfo.InvariantCulture, $"   plan reckons with {plan.Shortening * 100:0.0##} % (strip.shortening in job.json). Write your own\n");
        text.Append(
            """
               figure there and run the plan again.
            5. Measure the hem once more, on the garment, after it has hung.

            """);
        text.Append(sewnBeforeCutting
            ? """
              6. Sew all names on the wide cloth first. Cut the strip to its width only when the
                 last hooping is done and pressed.

              """
            : """
              6. The strip is cut before it is sewn: baste it to the backing along both edges so
                 that it cannot slip in the hoop.

              """);
        text.Append(CultureInfo.InvariantCulture, $"""

            In every hooping the alignment marks are sewn first, as long loose stitches in the
            colour of the cloth, {Math.Abs(plan.MarkYMm):0.0} mm from the middle of the strip. Lay them on your ruled
            line and on the figures at the tape; then the machine stops for the thread of the
            names. Take the marks out before you press.

            """);
        return text.ToString();
    }

    private const string TakeCare =
        """

        Take care
        ---------
        What your machine's manual, local rules and people trained for it say comes before
        anything here.
        - Keep fingers, hair, sleeves and cords away from the needle and everything that
          moves. The hoop moves by itself, and farther than the needle.
        - Switch the machine off to change a needle, to thread it, to clear a jam.
        - Before each start see that the hoop can travel its whole field without hitting
          anything. Start slowly.
        - A needle can break: wear glasses, and count the pieces before you go on.
        - Stay with a machine that runs.
        - Iron and steam burn. Stand the iron on its heel, keep hands out of the steam, and
          pull the plug when you leave.
        - Close a rotary cutter each time you lay it down, cut away from yourself, and keep
          pins, needles and blades counted and out of children's reach.
        - Good light, feet on the floor, and a few minutes away from it in every hour: this
          is long work.

        """;
}
