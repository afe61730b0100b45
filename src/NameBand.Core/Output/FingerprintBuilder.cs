using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.InteropServices;
using NameBand.Common;

namespace NameBand.Output;

/// <summary>Values one after another, numbers to their last bit and texts with their lengths, to take a fingerprint of.</summary>
internal sealed class FingerprintBuilder
{
    private readonly ArrayBufferWriter<byte> _bytes = new(4096);

    public FingerprintBuilder Add(ReadOnlySpan<byte> bytes)
    {
        _bytes.Write(bytes);
        return this;
    }

    public FingerprintBuilder Add(string text) => Add(text.Length).Add(MemoryMarshal.AsBytes(text.AsSpan()));

    public FingerprintBuilder Add(int number)
    {
        BinaryPrimitives.WriteInt32LittleEndian(_bytes.GetSpan(sizeof(int)), number);
        _bytes.Advance(sizeof(int));
        return this;
    }

    public FingerprintBuilder Add(double number)
    {
        BinaryPrimitives.WriteDoubleLittleEndian(_bytes.GetSpan(sizeof(double)), number);
        _bytes.Advance(sizeof(double));
        return this;
    }

    public FingerprintBuilder Add(bool holds) => Add(holds ? 1 : 0);

    public FingerprintBuilder Add(Point at) => Add(at.XMm).Add(at.YMm);

    public FingerprintBuilder Add(Box box) => Add(box.LeftMm).Add(box.BottomMm).Add(box.RightMm).Add(box.TopMm);

    public string Fingerprint() => InputFingerprint.Fingerprint(_bytes.WrittenSpan);
}
