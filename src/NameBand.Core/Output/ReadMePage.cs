using System.Text;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Output;

/// <summary>What the pages to read first have in common: their form, and the cautions.</summary>
internal static class ReadMePage
{
    /// <summary>The cautions in one line, for a sheet that has no room for more.</summary>
    public static readonly Said CareInOneLine =
        "Take care: fingers, hair and sleeves away from the needle and all that moves; machine off to change a needle; iron, steam and blades hurt; good light and a break every hour. Your machine's manual, local rules and trained people come before this sheet.";

    /// <summary>From where every figure of a place counts, and what the four signs are for.</summary>
    public static readonly Said OneRuler =
        """

        One ruler for all
        -----------------
        Every tape and every place, on proofs, sheets and screens, counts along the flat cloth
        from the cut left end of its piece. Only what is measured on the finished strip, on the
        garment, counts along it: the hem, the eighths to pin, where a name is found.
        The four signs after the word mark name a hooping or a run as it is now, those after
        the word plan the whole plan: a sheet with others is an old one.

        """;

    public static void Write(Stream stream, string title, Needs? needs, params IEnumerable<Said> parts)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.Write(title + "\n" + new string('=', Math.Min(78, title.Length)) + "\n");
        writer.Write(ReadMeNeeds.Text(needs ?? Needs.None));
        foreach (var part in parts)
        {
            writer.Write(part.ToString());
        }
    }

    /// <param name="hooped">Whether a hoop carries the cloth; else it is fed under the foot or moved by hand.</param>
    public static Said TakeCare(bool hooped)
    {
        Said machine = hooped
            ? """
              - Keep fingers, hair, sleeves and cords away from the needle and everything that
                moves. The hoop moves by itself, and farther than the needle.
              - Switch the machine off to change a needle, to thread it, to clear a jam.
              - Before each start see that the hoop can travel its whole field without hitting
                anything. Start slowly.
              """
            : """
              - Keep fingers, hair, sleeves and cords away from the needle and everything that
                moves. Guide the cloth beside the foot, never before the needle.
              - Switch the machine off to change a needle, to thread it, to clear a jam.
              - Start slowly.
              """;
        return $"""

            Take care
            ---------
            What your machine's manual, local rules and people trained for it say comes before
            anything here.
            {machine}
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
}
