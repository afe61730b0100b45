namespace NameBand.Output.Drawing;

/// <summary>Breaks a caption's parts into lines, never inside a part.</summary>
internal static class CaptionLines
{
    private const string Between = "   ·   ";

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
                lines.Add(part);
            }
        }

        return lines;
    }
}
