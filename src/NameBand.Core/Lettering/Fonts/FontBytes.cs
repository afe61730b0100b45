using System.Buffers.Binary;
using NameBand.Common;

namespace NameBand.Lettering.Fonts;

/// <summary>A stretch of a font file, big-endian; reading outside it throws <see cref="FontFault"/>, never more.</summary>
internal readonly struct FontBytes(ReadOnlyMemory<byte> memory)
{
    private readonly ReadOnlyMemory<byte> _memory = memory;

    public int Length => _memory.Length;

    public ReadOnlySpan<byte> Span => _memory.Span;

    public int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(Read(at, 2));

    public int I16(int at) => BinaryPrimitives.ReadInt16BigEndian(Read(at, 2));

    public uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(Read(at, 4));

    /// <summary>An unsigned number of 1 to 4 bytes.</summary>
    public long Unsigned(int at, int size)
    {
        long value = 0;
        foreach (byte b in Read(at, size))
        {
            value = (value << 8) | b;
        }

        return value;
    }

    public FontBytes Slice(long at, long length) => at >= 0 && length >= 0 && at + length <= Length
        ? new FontBytes(_memory.Slice((int)at, (int)length))
        : throw new FontFault("a part of it points outside the file");

    private ReadOnlySpan<byte> Read(int at, int count) => at >= 0 && at <= Length - count
        ? _memory.Span.Slice(at, count)
        : throw new FontFault("it ends too early");
}

/// <summary>What is wrong with a font file, as the end of a sentence that begins with the file; never leaves the room.</summary>
internal sealed class FontFault(Said what) : Exception(what.English)
{
    public Said What => what;
}
