using System.Buffers;
using System.IO.Compression;

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
    /// <param name="inWords">What the picture shows, as text; empty for none.</param>
    public PngStream(Stream file, int widthPx, int heightPx, double pixelsPerMm, ReadOnlySpan<int> colours, string inWords = "")
    {
        _file = file;
        PngChunks.WriteOpening(file, widthPx, heightPx, pixelsPerMm, colours);
        if (inWords.Length > 0)
        {
            PngChunks.WriteDescription(file, inWords);
        }

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
        PngChunks.Write(_file, "IEND"u8, []);
    }

    /// <summary>Cuts what is written to it into IDAT chunks.</summary>
    private sealed class ChunkStream(Stream file) : Stream
    {
        // Of one chunk: large enough that few are written, small enough to be rented again and again.
        private const int MostBytes = 64 * 1024;

        // A whole chunk, so that it is written in one piece; its data lie after its length and type.
        private readonly byte[] _chunk = ArrayPool<byte>.Shared.Rent(MostBytes + PngChunks.BytesAround);
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

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            while (buffer.Length > 0)
            {
                int part = Math.Min(buffer.Length, MostBytes - _used);
                buffer[..part].CopyTo(PngChunks.DataOf(_chunk)[_used..]);
                _used += part;
                buffer = buffer[part..];
                if (_used == MostBytes)
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
                ArrayPool<byte>.Shared.Return(_chunk);
            }

            base.Dispose(disposing);
        }

        private void WriteOut()
        {
            if (_used > 0)
            {
                file.Write(PngChunks.Finish(_chunk, "IDAT"u8, _used));
                _used = 0;
            }
        }
    }
}
