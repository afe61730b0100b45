namespace NameBand.Output.Drawing;

/// <summary>Breaks a caption's parts into lines; inside a part, at its blanks, only where one is longer than a line.</summary>
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
