using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Writes a needle path as CSV (RFC 4180): <c>step,x_mm,y_mm,action</c>, one row a step, three decimals, a point as the
/// decimal mark, CRLF. Streams through one buffer, with nothing allocated for a row.
/// </summary>
public static class NeedlePathCsv
{
    private const int BufferBytes = 256 * 1024; // Some ten thousand rows: a hooping is written in one or two pieces.

    // Longer than any row: step (10), two coordinates (sign, 12 digits, point, 3 digits each), the action with its line
    // end, commas, and what copying in blocks of 4 and 8 may write past the end.
    private const int MostBytesOfRow = 80;

    private static ReadOnlySpan<byte> Header => "step,x_mm,y_mm,action\r\n"u8;

    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not a finite number of millimetres.</exception>
    public static void Write(Stream stream, NeedlePath path)
    {
        byte[] buffer = ArrayPool<byte>.Shared.Rent(BufferBytes);
        try
        {
            Header.CopyTo(buffer);
            int used = WriteRows(stream, path.Steps.AsSpan(), buffer, Header.Length);
            stream.Write(buffer, 0, used);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static int WriteRows(Stream stream, ReadOnlySpan<NeedleStep> steps, byte[] buffer, int used)
    {
        int full = buffer.Length - MostBytesOfRow;
        ref byte start = ref MemoryMarshal.GetArrayDataReference(buffer);
        for (int i = 0; i < steps.Length; i++)
        {
            if (used > full)
            {
                stream.Write(buffer, 0, used);
                used = 0;
            }

            ref readonly var step = ref steps[i];
            ref byte at = ref Unsafe.Add(ref start, used);
            ref byte end = ref DecimalDigits.Whole(ref at, (ulong)i + 1);
            end = (byte)',';
            end = ref WriteFixed(ref Unsafe.Add(ref end, 1), Thousandths.Of(step.At.XMm));
            end = (byte)',';
            end = ref WriteFixed(ref Unsafe.Add(ref end, 1), Thousandths.Of(step.At.YMm));
            end = ref WriteTail(ref end, step.Action);
            used += (int)Unsafe.ByteOffset(ref at, ref end);
        }

        return used;
    }

    /// <summary>Writes thousandths with three decimals, such as <c>-0.050</c>; zero has no sign. Returns the place after them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ref byte WriteFixed(ref byte at, long thousandths)
    {
        if (thousandths < 0)
        {
            at = (byte)'-';
            at = ref Unsafe.Add(ref at, 1);
            thousandths = -thousandths;
        }

        ulong whole = (ulong)thousandths / 1000;
        at = ref DecimalDigits.Whole(ref at, whole);
        return ref DecimalDigits.PointAndThree(ref at, (int)((ulong)thousandths - (whole * 1000)));
    }

    // Copied as blocks of eight bytes; what lies over is overwritten by the next row.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref byte WriteTail(ref byte at, NeedleAction action)
    {
        if (action == NeedleAction.Stitch)
        {
            Unsafe.WriteUnaligned(ref at, MemoryMarshal.Read<ulong>(",stitch\r"u8));
            Unsafe.Add(ref at, 8) = (byte)'\n';
            return ref Unsafe.Add(ref at, 9);
        }

        var (word, length) = action switch
        {
            NeedleAction.Jump => (MemoryMarshal.Read<ulong>(",jump\r\n "u8), 7),
            NeedleAction.Trim => (MemoryMarshal.Read<ulong>(",trim\r\n "u8), 7),
            NeedleAction.Stop => (MemoryMarshal.Read<ulong>(",stop\r\n "u8), 7),
            NeedleAction.End => (MemoryMarshal.Read<ulong>(",end\r\n  "u8), 6),
            _ => throw new ArgumentOutOfRangeException(nameof(action), action, "No such action."),
        };
        Unsafe.WriteUnaligned(ref at, word);
        return ref Unsafe.Add(ref at, length);
    }
}
