using NameBand.Common;

namespace NameBand.Cli.Commands;

/// <summary>Widths and lengths as they are typed: <c>1.3x12.1 5.6x12.2</c>, in millimetres unless they say otherwise.</summary>
internal static class SwatchSizes
{
    /// <returns>Null when it cannot be read so.</returns>
    public static IReadOnlyList<(Length Width, Length Length)>? Parse(string text)
    {
        var sizes = new List<(Length, Length)>();
        foreach (string size in text.Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries))
        {
            string[] sides = size.Split('x', '×', 'X');
            if (sides.Length != 2 || !IsMm(sides[0], out var width) || !IsMm(sides[1], out var length))
            {
                return null;
            }

            sizes.Add((width, length));
        }

        return sizes.Count == 0 ? null : sizes;
    }

    private static bool IsMm(string text, out Length length) => Length.TryParse(text + " mm", out length, out _) && length.Mm > 0;
}
