using System.Runtime.InteropServices;
using HbBlob = HarfBuzzSharp.Blob;
using HbFace = HarfBuzzSharp.Face;

namespace NameBand.Lettering.Fonts;

/// <summary>
/// A face with the letters of a sheet alone, for a file that carries it: HarfBuzz's own subsetter (hb-subset), which HarfBuzzSharp
/// brings but does not name. Glyphs keep their numbers.
/// </summary>
internal static partial class FontSubset
{
    private const string Library = "libHarfBuzzSharp";

    /// <summary>Of hb-subset.h: no hints, for sheets are drawn without; glyphs keep their numbers.</summary>
    private const uint Flags = 0x1 | 0x2;

    private const int DropTables = 3; // HB_SUBSET_SETS_DROP_TABLE_TAG of hb-subset.h.

    /// <summary>Text comes shaped to a sheet: what shapes it need not be carried, nor the letters it might take.</summary>
    private static readonly uint[] ShapingTables = [Tag("GSUB"), Tag("GPOS"), Tag("GDEF"), Tag("kern")];

    /// <param name="file">A face that has been checked.</param>
    /// <param name="glyphs">Their numbers; the characters they stand for are carried with them.</param>
    /// <returns>A font file; null where none could be made.</returns>
    public static unsafe byte[]? Of(byte[] file, IEnumerable<uint> glyphs)
    {
        nint input = hb_subset_input_create_or_fail();
        if (input == 0)
        {
            return null;
        }

        nint part = 0;
        try
        {
            hb_subset_input_set_flags(input, Flags);
            Add(hb_subset_input_glyph_set(input), glyphs);
            Add(hb_subset_input_set(input, DropTables), ShapingTables);
            fixed (byte* start = file)
            {
                using var blob = new HbBlob((nint)start, file.Length, HarfBuzzSharp.MemoryMode.ReadOnly);
                using var whole = new HbFace(blob, 0);
                part = hb_subset_or_fail(whole.Handle, input);
                return part == 0 ? null : Bytes(part);
            }
        }
        finally
        {
            hb_face_destroy(part);
            hb_subset_input_destroy(input);
        }
    }

    private static byte[] Bytes(nint face)
    {
        nint blob = hb_face_reference_blob(face);
        nint start = hb_blob_get_data(blob, out uint length);
        byte[] bytes = new byte[length];
        Marshal.Copy(start, bytes, 0, bytes.Length);
        hb_blob_destroy(blob);
        return bytes;
    }

    private static void Add(nint set, IEnumerable<uint> numbers)
    {
        foreach (uint number in numbers)
        {
            hb_set_add(set, number);
        }
    }

    private static uint Tag(string name) => ((uint)name[0] << 24) | ((uint)name[1] << 16) | ((uint)name[2] << 8) | name[3];

    [LibraryImport(Library)]
    private static partial nint hb_subset_input_create_or_fail();

    [LibraryImport(Library)]
    private static partial void hb_subset_input_destroy(nint input);

    [LibraryImport(Library)]
    private static partial void hb_subset_input_set_flags(nint input, uint flags);

    [LibraryImport(Library)]
    private static partial nint hb_subset_input_glyph_set(nint input);

    [LibraryImport(Library)]
    private static partial nint hb_subset_input_set(nint input, int kind);

    [LibraryImport(Library)]
    private static partial nint hb_subset_or_fail(nint face, nint input);

    [LibraryImport(Library)]
    private static partial void hb_set_add(nint set, uint number);

    [LibraryImport(Library)]
    private static partial nint hb_face_reference_blob(nint face);

    [LibraryImport(Library)]
    private static partial void hb_face_destroy(nint face);

    [LibraryImport(Library)]
    private static partial nint hb_blob_get_data(nint blob, out uint length);

    [LibraryImport(Library)]
    private static partial void hb_blob_destroy(nint blob);
}
