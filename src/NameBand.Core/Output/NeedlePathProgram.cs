using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Writes a needle path as a program in the words of ISO 6983-1 for a machine its owner built: absolute millimetres, a
/// block for each move, the sequence number of a move being the step of the CSV. What cuts, stops and stitches is said
/// in words that the job can change. In seven-bit letters only, blocks end in LF.
/// </summary>
internal static class NeedlePathProgram
{
    /// <param name="stitchesPerMinute">The pace from which the feed follows: each stitch takes as long as any other.</param>
    public static void Write(Stream stream, Hooping hooping, NeedlePath path, ProgramSettings words, double stitchesPerMinute) =>
        Write(stream, string.Create(CultureInfo.InvariantCulture, $"HOOPING {hooping.Number}"), path, words, stitchesPerMinute);

    /// <param name="title">Capitals, figures and blanks: said in the program's first comment.</param>
    internal static void Write(Stream stream, string title, NeedlePath path, ProgramSettings words, double stitchesPerMinute)
    {
        using var writer = new StreamWriter(stream, Encoding.ASCII, 64 * 1024, leaveOpen: true) { NewLine = "\n" };
        writer.Write(string.Create(CultureInfo.InvariantCulture, $"%\n({title}, {path.Steps.Length} STEPS)\n{words.Start}\n"));
        var at = default(Point);
        long lastFeed = 0;
        for (int i = 0; i < path.Steps.Length; i++)
        {
            var step = path.Steps[i];
            int number = i + 1;
            switch (step.Action)
            {
                case NeedleAction.Jump:
                    Move(writer, number, "G00", step.At);
                    break;
                case NeedleAction.Stitch:
                    long feed = (long)Math.Max(1, Math.Round(words.FeedMmPerMinutes ?? (at.DistanceTo(step.At) * stitchesPerMinute)));
                    Move(writer, number, "G01", step.At);
                    writer.Write(feed == lastFeed ? "\n" : string.Create(CultureInfo.InvariantCulture, $" F{feed}\n"));
                    writer.Write(words.Needle);
                    lastFeed = feed;
                    break;
                default:
                    string word = step.Action switch { NeedleAction.Trim => words.Trim, NeedleAction.Stop => words.Stop, _ => words.End };
                    writer.Write(string.Create(CultureInfo.InvariantCulture, $"N{number} {word}"));
                    break;
            }

            writer.Write('\n');
            at = step.At;
        }

        writer.Write("%\n");
    }

    private static void Move(StreamWriter writer, int number, string how, Point to) =>
        writer.Write(string.Create(CultureInfo.InvariantCulture, $"N{number} {how} X{Mm(to.XMm)} Y{Mm(to.YMm)}"));

    private static string Mm(double mm) => Thousandths.Mm(mm).ToString("0.000", CultureInfo.InvariantCulture);
}
