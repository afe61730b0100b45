namespace NameBand.Common;

/// <summary>The cyclic redundancy check of ISO/IEC/IEEE 8802-3, 32 bits, as PNG (ISO/IEC 15948) and zip files use it.</summary>
public static class Crc32
{
    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n => Entry((uint)n))];

    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        uint crc = 0xFFFFFFFF;
        foreach (byte b in bytes)
        {
            crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return ~crc;
    }

    private static uint Entry(uint n)
    {
        for (int bit = 0; bit < 8; bit++)
        {
            n = (n & 1) == 1 ? 0xEDB88320 ^ (n >> 1) : n >> 1;
        }

        return n;
    }
}
