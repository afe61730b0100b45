using System.Runtime.CompilerServices;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Writes a needle path as CSV (RFC 4180): <c>step,x_mm,y_mm,action</c>, one row a step, three decimals, a point as the
/// decimal mark, CRLF. Streams through one buffer, with nothing allocated for a row.
/// </summary>
public static class NeedlePathCsv
{
    private const int BufferBytes = 64 * 1024;

    // Step (10), two coordinates (sign, 12 digits, point, 3 digits), the longest action (6), three commas, CRLF.
    private const int LongestRow = 10 + (2 * 17) + 6 + 3 + 2;

    private static ReadOnlySpan<byte> Header => "step,x_mm,y_mm,action\r\n"u8;

    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not a finite number of millimetres.</exception>
    public static void Write(Stream stream, NeedlePath path)
    {
        byte[] buffer = System.Buffers.ArrayPool<byte>.Shared.Rent(BufferBytes);
        try
        {
            Header.CopyTo(buffer);
            int used = WriteRows(stream, path.Steps.AsSpan(), buffer, Header.Length);
            stream.Write(buffer, 0, used);
        }
        finally
        {
            System.Buffers.ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static int WriteRows(Stream stream, ReadOnlySpan<NeedleStep> steps, byte[] buffer, int used)
    {
        for (int i = 0; i < steps.Length; i++)
        {
            if (buffer.Length - used < LongestRow)
            {
                stream.Write(buffer, 0, used);
                used = 0;
            }

            ref readonly var step = ref steps[i];
            var row = buffer.AsSpan(used, LongestRow);
            int at = WriteWhole(row, 0, (ulong)(i + 1));
            row[at++] = (byte)',';
            at = WriteFixed(row, at, Thousandths.Of(step.At.XMm));
            row[at++] = (byte)',';
            at = WriteFixed(row, at, Thousandths.Of(step.At.YMm));
            row[at++] = (byte)',';
            var action = Word(step.Action);
            action.CopyTo(row[at..]);
            at += action.Length;
            row[at++] = (byte)'\r';
            row[at++] = (byte)'\n';
            used += at;
        }

        return used;
    }

    /// <summary>Writes thousandths with three decimals, such as <c>-0.050</c>; nought has no sign.</summary>
    internal static int WriteFixed(Span<byte> target, int at, long thousandths)
    {
        if (thousandths < 0)
        {
            target[at++] = (byte)'-';
            thousandths = -thousandths;
        }

        ulong value = (ulong)thousandths;
        ulong whole = value / 1000;
        uint part = (uint)(value - (whole * 1000));
        at = WriteWhole(target, at, whole);
        target[at + 3] = (byte)('0' + (part % 10));
        target[at + 2] = (byte)('0' + (part / 10 % 10));
        target[at + 1] = (byte)('0' + (part / 100));
        target[at] = (byte)'.';
        return at + 4;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int WriteWhole(Span<byte> target, int at, ulong value)
    {
        if (value < 10)
        {
            target[at] = (byte)('0' + value);
            return at + 1;
        }

        int digits = value < 100 ? 2 : value < 1000 ? 3 : value < 10_000 ? 4 : CountDigits(value);
        for (int i = at + digits - 1; i >= at; i--)
        {
            ulong tenth = value / 10;
            target[i] = (byte)('0' + (value - (tenth * 10)));
            value = tenth;
        }

        return at + digits;
    }

    private static int CountDigits(ulong value)
    {
        int digits = 4;
        for (ulong limit = 10_000; value >= limit && digits < 20; limit *= 10)
        {
            digits++;
        }

        return digits;
    }

    private static ReadOnlySpan<byte> Word(NeedleAction action) => action switch
    {
        NeedleAction.Stitch => "stitch"u8,
        NeedleAction.Jump => "jump"u8,
        NeedleAction.Trim => "trim"u8,
        NeedleAction.Stop => "stop"u8,
        NeedleAction.End => "end"u8,
        _ => throw new ArgumentOutOfRangeException(nameof(action), action, "No such action."),
    };
}
