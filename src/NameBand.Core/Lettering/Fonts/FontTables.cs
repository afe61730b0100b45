using System.Text;
using NameBand.Common;

namespace NameBand.Lettering.Fonts;

/// <summary>The tables of a TrueType or OpenType file whose directory has been found sound.</summary>
internal sealed class FontTables
{
    // A count: OpenType knows some fifty kinds (from memory), and each table is looked at before the file is trusted.
    private const int MostTables = 128;
    private const int DirectoryStartBytes = 12; // Bytes of the table directory's head (OpenType).
    private const int RecordBytes = 16; // Bytes of a table's record: tag, checksum, offset and length of four each (OpenType).

    private readonly Dictionary<string, FontBytes> _tables;

    private FontTables(Dictionary<string, FontBytes> tables) => _tables = tables;

    /// <exception cref="FontFault">The file is not a font this program can read.</exception>
    public static FontTables Read(ReadOnlyMemory<byte> file)
    {
        CheckKind(file.Span);
        var bytes = new FontBytes(file);
        int count = bytes.U16(4);
        if (count is 0 or > MostTables)
        {
            throw new FontFault($"it claims to have {count} tables");
        }

        var tables = new Dictionary<string, FontBytes>(count, StringComparer.Ordinal);
        for (int i = 0; i < count; i++)
        {
            int record = DirectoryStartBytes + (i * RecordBytes);
            string tag = Encoding.Latin1.GetString(bytes.Slice(record, 4).Span);
            var table = bytes.Slice(bytes.U32(record + 8), bytes.U32(record + 12));
            if (!tables.TryAdd(tag, table))
            {
                throw new FontFault($"it has the table “{Printable(tag)}” twice");
            }
        }

        return new FontTables(tables);
    }

    public bool Has(string tag) => _tables.ContainsKey(tag);

    public FontBytes? Find(string tag) => _tables.TryGetValue(tag, out var table) ? table : null;

    public FontBytes Need(string tag) => Find(tag) ?? throw new FontFault($"its table “{tag}” is missing");

    private static void CheckKind(ReadOnlySpan<byte> file)
    {
        if (file.Length == 0)
        {
            throw new FontFault("it is empty");
        }

        if (file.Length < DirectoryStartBytes)
        {
            throw new FontFault("it is too short to be a font");
        }

        string magic = Encoding.Latin1.GetString(file[..4]);
        Said? other = magic switch
        {
            "\0\u0001\0\0" or "true" or "OTTO" => null,
            "ttcf" => "it is a collection of several faces, and only single faces can be used",
            "wOFF" or "wOF2" => "it is a web font (WOFF), not a TTF or OTF",
            "typ1" or "%!PS" => "it is a PostScript font, not a TTF or OTF",
            "%PDF" => "it is a PDF, not a font",
            "PK\u0003\u0004" => "it is a ZIP archive; the font inside has to be taken out first",
            _ when magic.TrimStart().StartsWith('<') => "it is a web page, not a font (a download may have gone wrong)",
            _ => "it is not a TTF or OTF font",
        };
        if (other is not null)
        {
            throw new FontFault(other);
        }
    }

    private static string Printable(string tag) => new([.. tag.Select(c => c is >= ' ' and <= '~' ? c : '?')]);
}
