using NameBand.Common;

namespace NameBand.Output.Drawing;

/// <summary>Breaks a caption's parts into lines; inside a part, at its blanks, only where one is longer than a line.</summary>
internal static class CaptionLines
{
    private const string Between = "   ·   ";

    private const double SideMm = 4; // Clear of the picture's edge.

    /// <summary>Sets a line at the picture's left edge, or at its right one where the language runs from there.</summary>
    public static void Set(ProofCanvas on, string line, double baselinePx, int capPx, int colour)
    {
        var (picture, page, face) = on;
        bool isFromRight = Language.Now is { IsRightToLeft: true };
        double x = isFromRight ? picture.Width - page.Px(SideMm) : page.Px(SideMm);
        face.Set(picture, line, (x, baselinePx), capPx, colour, isFromRight ? 1 : 0);
    }

    /// <summary>Cap height at which a line goes into the picture, at most <paramref name="capPx"/>.</summary>
    public static int FittingPx(ProofCanvas on, string line, int capPx)
    {
        double room = on.Page.WidthPx - (2 * on.Page.Px(SideMm));
        double wide = on.Face.Measure(line, capPx);
        return wide <= room ? capPx : Math.Max(LeastCapPx, (int)(capPx * room / wide));
    }

    private const int LeastCapPx = 7; // As ProofPage has it: smaller is not read on a screen.

    public static IReadOnlyList<string> Wrap(IEnumerable<string> parts, CaptionFace face, int capPx, double widthPx)
    {
        var lines = new List<string>();
        foreach (string part in parts)
        {
            string longer = lines.Count > 0 ? lines[^1] + Between + part : part;
            if (lines.Count > 0 && face.Measure(longer, capPx) <= widthPx)
            {
                lines[^1] = longer;
            }
            else
            {
                lines.AddRange(Broken(part, face, capPx, widthPx));
            }
        }

        return lines;
    }

    private static IEnumerable<string> Broken(string part, CaptionFace face, int capPx, double widthPx)
    {
        string line = "";
        foreach (string word in part.Split(' '))
        {
            if (line.Length > 0 && face.Measure($"{line} {word}", capPx) > widthPx)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = line.Length > 0 ? $"{line} {word}" : word;
            }
        }

        yield return line;
    }
}
