namespace NameBand.Cli.Terminal;

/// <summary>
/// A way out that may be full: what it refuses is remembered and not thrown, since what a command has done is done whether
/// or not it can be told.
/// </summary>
internal sealed class AnswerStream(Stream inner) : Stream
{
    /// <summary>Why something could not be written; null when all was.</summary>
    public string? Refusal { get; private set; }

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
        try
        {
            inner.Write(buffer);
        }
        catch (IOException e)
        {
            Refusal ??= e.Message;
        }
    }

    public override void Flush()
    {
        try
        {
            inner.Flush();
        }
        catch (IOException e)
        {
            Refusal ??= e.Message;
        }
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }
}
