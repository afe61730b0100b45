using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace NameBand.Output;

/// <summary>Decimal digits as bytes, four at a time from tables. Up to three bytes past the digits may be written over.</summary>
internal static class DecimalDigits
{
    private const int Group = 10_000; // Four digits: a table of ten thousand stays in a processor's cache.

    // For 0–9999: its digits without leading zeros, its digits with them, how many the first are.
    private static readonly byte[] Bare = new byte[4 * Group];
    private static readonly byte[] Padded = new byte[4 * Group];
    private static readonly byte[] Length = new byte[Group];

    // For 0–999: the decimal point and three digits.
    private static readonly byte[] Fraction = new byte[4 * 1000];

    static DecimalDigits()
    {
        Span<byte> digits = stackalloc byte[4];
        for (int n = 0; n < Group; n++)
        {
            for (int i = 3, rest = n; i >= 0; i--, rest /= 10)
            {
                digits[i] = (byte)('0' + (rest % 10));
            }

            int length = n >= 1000 ? 4 : n >= 100 ? 3 : n >= 10 ? 2 : 1;
            digits.CopyTo(Padded.AsSpan(4 * n));
            digits[(4 - length)..].CopyTo(Bare.AsSpan(4 * n));
            Length[n] = (byte)length;
            if (n < 1000)
            {
                digits[0] = (byte)'.';
                digits.CopyTo(Fraction.AsSpan(4 * n));
            }
        }
    }

    /// <summary>Writes a whole number; returns the place after it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ref byte Whole(ref byte at, ulong number)
    {
        if (number < Group)
        {
            Copy(ref at, Bare, (int)number);
            return ref Unsafe.Add(ref at, Length[(int)number]);
        }

        return ref Long(ref at, number);
    }

    /// <summary>Writes a point and three digits; returns the place after them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ref byte PointAndThree(ref byte at, int thousandths)
    {
        Copy(ref at, Fraction, thousandths);
        return ref Unsafe.Add(ref at, 4);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static ref byte Long(ref byte at, ulong number)
    {
        ulong high = number / Group;
        ref byte low = ref Whole(ref at, high);
        Copy(ref low, Padded, (int)(number - (high * Group)));
        return ref Unsafe.Add(ref low, 4);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Copy(ref byte at, byte[] table, int entry) => Unsafe.WriteUnaligned(
        ref at, Unsafe.ReadUnaligned<uint>(ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(table), 4 * entry)));
}
