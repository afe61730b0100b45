using System.Buffers;
using System.Buffers.Binary;
using System.IO.Hashing;
using System.Text;

namespace NameBand.Output.Drawing;

/// <summary>The pieces a PNG is made of (ISO/IEC 15948; Portable Network Graphics, third edition, W3C).</summary>
internal static class PngChunks
{
    /// <summary>Bytes of a chunk besides its data: length and type before them, the check after them.</summary>
    public const int BytesAround = 12;

    private const int BytesBefore = 8; // Length and type, four each.

    /// <summary>Where a chunk that is put together in a buffer has its data.</summary>
    public static Span<byte> DataOf(Span<byte> chunk) => chunk[BytesBefore..];

    /// <summary>Puts length, type and check around the data of a chunk, and returns the whole of it.</summary>
    public static ReadOnlySpan<byte> Finish(Span<byte> chunk, ReadOnlySpan<byte> type, int dataBytes)
    {
        BinaryPrimitives.WriteInt32BigEndian(chunk, dataBytes);
        type.CopyTo(chunk[4..]);
        BinaryPrimitives.WriteUInt32BigEndian(chunk[(BytesBefore + dataBytes)..], Crc32.HashToUInt32(chunk.Slice(4, 4 + dataBytes)));
        return chunk[..(dataBytes + BytesAround)];
    }

    /// <summary>Length, type, data, and the check of type and data.</summary>
    public static void Write(Stream file, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        byte[] chunk = ArrayPool<byte>.Shared.Rent(data.Length + BytesAround);
        data.CopyTo(DataOf(chunk));
        file.Write(Finish(chunk, type, data.Length));
        ArrayPool<byte>.Shared.Return(chunk);
    }

    /// <summary>Text that describes the picture: an iTXt chunk, not packed, in no named language.</summary>
    public static void WriteDescription(Stream file, string text) =>
        Write(file, "iTXt"u8, [.. "Description"u8, 0, 0, 0, 0, 0, .. Encoding.UTF8.GetBytes(text)]);

    /// <summary>All that comes before the pixels of a picture of 256 colours: signature, size, colours, pixels in a metre.</summary>
    /// <param name="colours">256 colours as 0xRRGGBB.</param>
    public static void WriteOpening(Stream file, int widthPx, int heightPx, double pixelsPerMm, ReadOnlySpan<int> colours)
    {
        file.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);

        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, widthPx);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], heightPx);
        header[8] = 8;
        header[9] = 3;
        header[10] = header[11] = header[12] = 0;
        Write(file, "IHDR"u8, header);

        Write(file, "sRGB"u8, [0]);

        Span<byte> scale = stackalloc byte[9];
        int perMetre = (int)Math.Round(pixelsPerMm * 1000);
        BinaryPrimitives.WriteInt32BigEndian(scale, perMetre);
        BinaryPrimitives.WriteInt32BigEndian(scale[4..], perMetre);
        scale[8] = 1;
        Write(file, "pHYs"u8, scale);

        Span<byte> palette = stackalloc byte[256 * 3];
        for (int i = 0; i < 256; i++)
        {
            palette[3 * i] = (byte)(colours[i] >> 16);
            palette[(3 * i) + 1] = (byte)(colours[i] >> 8);
            palette[(3 * i) + 2] = (byte)colours[i];
        }

        Write(file, "PLTE"u8, palette);
    }
}
