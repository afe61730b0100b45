using System.Buffers.Binary;
using System.IO.Compression;
using NameBand.Common;

namespace NameBand.Output.Drawing;

/// <summary>
/// Writes a PNG (ISO/IEC 15948) of 256 colours row by row, so that a picture need never stand whole in memory, and says
/// in its pHYs chunk how many pixels make a metre.
/// </summary>
internal sealed class PngStream : IDisposable
{
    private readonly Stream _file;
    private readonly ChunkStream _data;
    private readonly ZLibStream _packed;

    /// <param name="colours">256 colours as 0xRRGGBB.</param>
    public PngStream(Stream file, int widthPx, int heightPx, double pixelsPerMm, ReadOnlySpan<int> colours)
    {
        _file = file;
        file.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);

        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, widthPx);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], heightPx);
        header[8] = 8;
        header[9] = 3;
        header[10] = header[11] = header[12] = 0;
        ChunkStream.WriteChunk(file, "IHDR"u8, header);

        ChunkStream.WriteChunk(file, "sRGB"u8, [0]);

        Span<byte> scale = stackalloc byte[9];
        int perMetre = (int)Math.Round(pixelsPerMm * 1000);
        BinaryPrimitives.WriteInt32BigEndian(scale, perMetre);
        BinaryPrimitives.WriteInt32BigEndian(scale[4..], perMetre);
        scale[8] = 1;
        ChunkStream.WriteChunk(file, "pHYs"u8, scale);

        Span<byte> palette = stackalloc byte[256 * 3];
        for (int i = 0; i < 256; i++)
        {
            palette[3 * i] = (byte)(colours[i] >> 16);
            palette[(3 * i) + 1] = (byte)(colours[i] >> 8);
            palette[(3 * i) + 2] = (byte)colours[i];
        }

        ChunkStream.WriteChunk(file, "PLTE"u8, palette);
        _data = new ChunkStream(file);
        _packed = new ZLibStream(_data, CompressionLevel.Fastest, leaveOpen: true);
    }

    /// <summary>Writes whole rows, each one byte of filter (0) and then one byte a pixel.</summary>
    public void WriteRows(ReadOnlySpan<byte> rows) => _packed.Write(rows);

    /// <summary>Ends the picture.</summary>
    public void Dispose()
    {
        _packed.Dispose();
        _data.Dispose();
        ChunkStream.WriteChunk(_file, "IEND"u8, []);
    }

    /// <summary>Cuts what is written to it into IDAT chunks.</summary>
    private sealed class ChunkStream(Stream file) : Stream
    {
        private readonly byte[] _buffer = new byte[32 * 1024];
        private int _used;

        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public static void WriteChunk(Stream file, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
        {
            Span<byte> four = stackalloc byte[4];
            BinaryPrimitives.WriteInt32BigEndian(four, data.Length);
            file.Write(four);
            file.Write(type);
            file.Write(data);
            BinaryPrimitives.WriteUInt32BigEndian(four, Crc32.Of(type, data));
            file.Write(four);
        }

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            while (buffer.Length > 0)
            {
                int part = Math.Min(buffer.Length, _buffer.Length - _used);
                buffer[..part].CopyTo(_buffer.AsSpan(_used));
                _used += part;
                buffer = buffer[part..];
                if (_used == _buffer.Length)
                {
                    WriteOut();
                }
            }
        }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        protected override void Dispose(bool disposing)
        {
            if (disposing)
            {
                WriteOut();
            }

            base.Dispose(disposing);
        }

        private void WriteOut()
        {
            if (_used > 0)
            {
                WriteChunk(file, "IDAT"u8, _buffer.AsSpan(0, _used));
                _used = 0;
            }
        }
    }
}
