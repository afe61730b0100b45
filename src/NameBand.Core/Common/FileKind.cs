namespace NameBand.Common;

/// <summary>A kind of file that is often given where a CSV is wanted, known by its first bytes.</summary>
internal sealed record FileKind(Said What, Said Mend)
{
    private static readonly Said FromSpreadsheet = "Open it in your spreadsheet program and save it as .xlsx, or as .csv (UTF-8).";
    private static readonly Said AsText = "Save the list as CSV (UTF-8) and name that file.";

    private static readonly FileKind Spreadsheet = new("a spreadsheet file (or another packed file)", FromSpreadsheet);
    private static readonly FileKind OldSpreadsheet = new("an older spreadsheet or office file", FromSpreadsheet);
    private static readonly FileKind Packed = new("a packed file", "Unpack it first and name the CSV file inside.");
    private static readonly FileKind Picture = new("a picture", AsText);
    private static readonly FileKind Pdf = new("a PDF", "Ask for the list as CSV, or copy the names into a new one.");
    private static readonly FileKind Database = new("a database file", AsText);
    private static readonly FileKind Page = new("a web page or XML file", FromSpreadsheet);
    private static readonly FileKind Document = new("a formatted text document", AsText);

    public static FileKind? OfBytes(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0x50, 0x4B, 0x03, 0x04, ..] or [0x50, 0x4B, 0x05, 0x06, ..] => Spreadsheet,
        [0xD0, 0xCF, 0x11, 0xE0, ..] => OldSpreadsheet,
        [0x1F, 0x8B, ..] => Packed,
        [0x37, 0x7A, 0xBC, 0xAF, ..] => Packed,
        [0x89, 0x50, 0x4E, 0x47, ..] or [0xFF, 0xD8, 0xFF, ..] => Picture,
        [0x47, 0x49, 0x46, 0x38, ..] => Picture,
        [0x25, 0x50, 0x44, 0x46, 0x2D, ..] => Pdf,
        [0x53, 0x51, 0x4C, 0x69, 0x74, 0x65, 0x20, 0x66, 0x6F, 0x72, 0x6D, 0x61, 0x74, 0x20, 0x33, 0x00, ..] => Database,
        _ => null,
    };

    public static FileKind? OfText(string text)
    {
        var start = text.AsSpan(0, Math.Min(text.Length, 200)).TrimStart();
        if (start.StartsWith(@"{\rtf", StringComparison.Ordinal))
        {
            return Document;
        }

        return start.StartsWith("<!doctype", StringComparison.OrdinalIgnoreCase)
            || start.StartsWith("<html", StringComparison.OrdinalIgnoreCase)
            || start.StartsWith("<?xml", StringComparison.OrdinalIgnoreCase) ? Page : null;
    }
}
