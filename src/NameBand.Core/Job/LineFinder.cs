using System.Text;

namespace NameBand.Job;

/// <summary>Turns a byte's place in a UTF-8 file into line and column, both from 1; columns count characters.</summary>
internal sealed class LineFinder(ReadOnlyMemory<byte> text)
{
    private readonly int[] _starts = [0, .. Starts(text.Span)];

    public (int Line, int Column) Of(int offset)
    {
        int found = Array.BinarySearch(_starts, offset);
        int line = found >= 0 ? found : ~found - 1;
        int column = Encoding.UTF8.GetString(text.Span[_starts[line]..Math.Min(offset, text.Length)]).EnumerateRunes().Count();
        return (line + 1, column + 1);
    }

    /// <summary>Where a line (from 1) begins.</summary>
    public int Start(int line) => _starts[line - 1];

    private static List<int> Starts(ReadOnlySpan<byte> text)
    {
        var starts = new List<int>();
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && !(i + 1 < text.Length && text[i + 1] == '\n')))
            {
                starts.Add(i + 1);
            }
        }

        return starts;
    }
}
