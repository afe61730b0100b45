namespace NameBand.Output.Sheets;

/// <summary>A paper size, upright, in millimetres.</summary>
/// <param name="Word">How it stands in a file's name.</param>
public sealed record Paper(string Word, double WidthMm, double HeightMm)
{
    /// <summary>ISO 216.</summary>
    public static Paper A4 { get; } = new("a4", 210, 297);

    /// <summary>ANSI/ASME Y14.1, size A: 8 1/2 by 11 inches.</summary>
    public static Paper Letter { get; } = new("letter", 8.5 * 25.4, 11 * 25.4);

    /// <summary>Every sheet is made for both: makers do not choose what is in their printers.</summary>
    public static IReadOnlyList<Paper> Both { get; } = [A4, Letter];

    public Paper OnItsSide => new(Word, HeightMm, WidthMm);
}
