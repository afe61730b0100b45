using System.Runtime.CompilerServices;

namespace NameBand.Common;

/// <summary>The cyclic redundancy check of ISO/IEC/IEEE 8802-3, 32 bits, as PNG (ISO/IEC 15948) and zip files use it.</summary>
public static class Crc32
{
    // Eight tables, so that eight bytes go through in one step: pictures are checked whole.
    private static readonly uint[] Table = MakeTable();

    public static uint Of(ReadOnlySpan<byte> bytes) => ~Add(~0u, bytes);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static uint Add(uint crc, ReadOnlySpan<byte> data)
    {
        uint[] t = Table;
        while (data.Length >= 8)
        {
            uint low = crc ^ (data[0] | ((uint)data[1] << 8) | ((uint)data[2] << 16) | ((uint)data[3] << 24));
            crc = t[0x700 + (low & 0xFF)] ^ t[0x600 + ((low >> 8) & 0xFF)] ^ t[0x500 + ((low >> 16) & 0xFF)] ^ t[0x400 + (low >> 24)]
                ^ t[0x300 + data[4]] ^ t[0x200 + data[5]] ^ t[0x100 + data[6]] ^ t[data[7]];
            data = data[8..];
        }

        foreach (byte b in data)
        {
            crc = t[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return crc;
    }

    private static uint[] MakeTable()
    {
        var table = new uint[8 * 256];
        for (uint i = 0; i < 256; i++)
        {
            uint c = i;
            for (int bit = 0; bit < 8; bit++)
            {
                c = (c & 1) != 0 ? 0xEDB88320u ^ (c >> 1) : c >> 1;
            }

            table[i] = c;
        }

        for (int i = 256; i < table.Length; i++)
        {
            uint before = table[i - 256];
            table[i] = table[before & 0xFF] ^ (before >> 8);
        }

        return table;
    }
}
