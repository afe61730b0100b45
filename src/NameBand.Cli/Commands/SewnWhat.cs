using System.Globalization;

namespace NameBand.Cli.Commands;

/// <summary>What was sewn: a hooping by its number, or names from the first to the last.</summary>
internal sealed record SewnWhat(int Hooping, (int First, int Last)? Names)
{
    /// <summary>Null where it is no such thing.</summary>
    public static SewnWhat? Read(string? text)
    {
        if (text is null)
        {
            return null;
        }

        if (!text.StartsWith('n') && !text.StartsWith('N'))
        {
            return Number(text) is { } hooping ? new SewnWhat(hooping, null) : null;
        }

        string[] ends = text.Split('-', 2);
        int? first = Number(ends[0][1..]);
        int? last = ends.Length == 1 ? first : Number(ends[1].TrimStart('n', 'N'));
        return first <= last ? new SewnWhat(0, (first!.Value, last!.Value)) : null;
    }

    private static int? Number(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 ? number : null;
}
