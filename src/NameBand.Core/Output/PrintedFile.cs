using System.Buffers;
using System.Security.Cryptography;

namespace NameBand.Output;

/// <summary>A new file whose fingerprint is taken while it is written, so that it need not stand whole in memory.</summary>
/// <param name="done">Told the whole SHA-256 when the file is closed.</param>
internal sealed class PrintedFile(FileStream file, Action<string> done) : Stream
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private byte[] _buffer = ArrayPool<byte>.Shared.Rent(64 * 1024);
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

    /// <summary>Fingerprint of all that was written.</summary>
    public string Fingerprint()
    {
        Flush();
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        _hash.GetCurrentHash(hash);
        return InputFingerprint.InWords(Convert.ToHexStringLower(hash));
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > _buffer.Length - _used)
        {
            Flush();
        }

        if (bytes.Length > _buffer.Length)
        {
            Put(bytes);
            return;
        }

        bytes.CopyTo(_buffer.AsSpan(_used));
        _used += bytes.Length;
    }

    public override void Flush()
    {
        Put(_buffer.AsSpan(0, _used));
        _used = 0;
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing && _buffer.Length > 0)
        {
            try
            {
                Flush();
                done(Convert.ToHexStringLower(_hash.GetCurrentHash()));
            }
            finally
            {
                ArrayPool<byte>.Shared.Return(_buffer);
                _buffer = [];
                _hash.Dispose();
                file.Dispose();
            }
        }

        base.Dispose(disposing);
    }

    private void Put(ReadOnlySpan<byte> bytes)
    {
        _hash.AppendData(bytes);
        file.Write(bytes);
    }
}
