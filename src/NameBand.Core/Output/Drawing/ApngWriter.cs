using System.Buffers.Binary;
using System.IO.Compression;

namespace NameBand.Output.Drawing;

/// <summary>
/// Writes an animated PNG (Portable Network Graphics, third edition, W3C, 11.3.6) of 256 colours. The picture that is
/// shown where nothing moves is not one of the frames. Each frame holds only the box that changed since the one before,
/// which is laid over it, so nothing but the frame before is kept.
/// </summary>
internal sealed class ApngWriter : IDisposable
{
    private const int FrameControlBytes = 26; // The fcTL chunk's (11.3.6.2).
    private readonly Stream _file;
    private readonly int _width;
    private readonly int _height;
    private readonly byte[] _before;
    private uint _sequence;
    private int _framesLeft;
    private bool _isFirst = true;

    /// <param name="still">The rows of the picture that does not move, one byte a pixel.</param>
    /// <param name="frames">How many frames will follow; the form wants it said beforehand.</param>
    public ApngWriter(Stream file, ProofPage page, int frames, ReadOnlySpan<byte> still)
    {
        var (widthPx, heightPx) = (page.WidthPx, page.HeightPx);
        _file = file;
        _width = widthPx;
        _height = heightPx;
        _framesLeft = frames;
        _before = new byte[widthPx * heightPx];
        PngChunks.WriteOpening(file, widthPx, heightPx, page.PixelsPerMm, page.Palette.Colours);

        // Played once: what moves for long should not move for ever.
        Span<byte> control = stackalloc byte[8];
        BinaryPrimitives.WriteInt32BigEndian(control, frames);
        BinaryPrimitives.WriteInt32BigEndian(control[4..], 1);
        PngChunks.Write(file, "acTL"u8, control);
        PngChunks.Write(file, "IDAT"u8, Packed(still, 0, 0, widthPx, heightPx, 0));
    }

    /// <param name="pixels">The whole frame, one byte a pixel, row after row.</param>
    /// <param name="milliseconds">How long it is shown; at most 65,535.</param>
    public void Add(ReadOnlySpan<byte> pixels, int milliseconds)
    {
        var (left, top, right, bottom) = _isFirst ? (0, 0, _width, _height) : Changed(pixels);
        Span<byte> control = stackalloc byte[FrameControlBytes];
        BinaryPrimitives.WriteUInt32BigEndian(control, _sequence++);
        BinaryPrimitives.WriteInt32BigEndian(control[4..], right - left);
        BinaryPrimitives.WriteInt32BigEndian(control[8..], bottom - top);
        BinaryPrimitives.WriteInt32BigEndian(control[12..], left);
        BinaryPrimitives.WriteInt32BigEndian(control[16..], top);
        BinaryPrimitives.WriteUInt16BigEndian(control[20..], (ushort)Math.Clamp(milliseconds, 0, ushort.MaxValue));
        BinaryPrimitives.WriteUInt16BigEndian(control[22..], 1000);

        // 24: dispose of nothing; 25: the box replaces what was there.
        control[24] = control[25] = 0;
        PngChunks.Write(_file, "fcTL"u8, control);

        byte[] data = Packed(pixels, left, top, right, bottom, sizeof(uint));
        BinaryPrimitives.WriteUInt32BigEndian(data, _sequence++);
        PngChunks.Write(_file, "fdAT"u8, data);
        pixels.CopyTo(_before);
        _isFirst = false;
        _framesLeft--;
    }

    /// <exception cref="InvalidOperationException">Not as many frames came as were said: a bug.</exception>
    public void Dispose()
    {
        PngChunks.Write(_file, "IEND"u8, []);
        if (_framesLeft != 0)
        {
            throw new InvalidOperationException("The animation has another number of frames than was said.");
        }
    }

    /// <summary>The box that changed; one pixel where nothing did, for a frame cannot be empty.</summary>
    private (int Left, int Top, int Right, int Bottom) Changed(ReadOnlySpan<byte> pixels)
    {
        int left = _width, right = 0, top = _height, bottom = 0;
        for (int y = 0; y < _height; y++)
        {
            var now = pixels.Slice(y * _width, _width);
            var then = _before.AsSpan(y * _width, _width);
            int first = now.CommonPrefixLength(then);
            if (first == _width)
            {
                continue;
            }

            int last = _width - 1;
            while (now[last] == then[last])
            {
                last--;
            }

            left = Math.Min(left, first);
            right = Math.Max(right, last + 1);
            top = Math.Min(top, y);
            bottom = y + 1;
        }

        return right == 0 ? (0, 0, 1, 1) : (left, top, right, bottom);
    }

    /// <param name="ahead">Bytes left free before the packed ones.</param>
    private byte[] Packed(ReadOnlySpan<byte> pixels, int left, int top, int right, int bottom, int ahead)
    {
        using var packed = new MemoryStream();
        packed.Write(stackalloc byte[ahead]);
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            for (int y = top; y < bottom; y++)
            {
                zlib.WriteByte(0);
                zlib.Write(pixels.Slice((y * _width) + left, right - left));
            }
        }

        return packed.ToArray();
    }
}
