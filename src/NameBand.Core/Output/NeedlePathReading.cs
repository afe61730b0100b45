using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Reads a needle path of ours back. What a stitch is for is not in the file: those before the first stop are the
/// alignment marks, for which the thread is changed there, and all others come back as of no kind.
/// </summary>
internal static class NeedlePathReading
{
    // A step's number, two coordinates and a word: the list is then rarely made longer as it is read.
    private const int UsualBytesOfRow = 24;

    /// <returns>Null when the bytes are not a whole needle path of ours.</returns>
    public static NeedlePath? Read(ReadOnlySpan<byte> csv)
    {
        if (!csv.StartsWith(Header))
        {
            return null;
        }

        var steps = ImmutableArray.CreateBuilder<NeedleStep>(csv.Length / UsualBytesOfRow);
        var rest = csv[Header.Length..];
        while (!rest.IsEmpty)
        {
            if (!TakeRow(ref rest, steps.Count + 1, out var step))
            {
                return null;
            }

            steps.Add(step);
        }

        return steps.Count > 0 && steps[^1].Action == NeedleAction.End ? new NeedlePath(WithMarks(steps)) : null;
    }

    private static ImmutableArray<NeedleStep> WithMarks(ImmutableArray<NeedleStep>.Builder steps)
    {
        int stop = 0;
        while (stop < steps.Count && steps[stop].Action != NeedleAction.Stop)
        {
            stop++;
        }

        for (int i = 0; i < stop && stop < steps.Count && AreMarks(steps, stop); i++)
        {
            steps[i] = steps[i].Action == NeedleAction.Stitch ? steps[i] with { Kind = StitchKind.Mark } : steps[i];
        }

        return steps.DrainToImmutable();
    }

    /// <summary>
    /// Whether what comes before the first stop are marks, five points each: else the stop is for another thread between names, whose
    /// columns and locks go on for many more.
    /// </summary>
    private static bool AreMarks(ImmutableArray<NeedleStep>.Builder steps, int stop)
    {
        const int mostOfMark = 8; // A cross is sewn in four stitches: a run of more than twice as many is a letter.
        int run = 0;
        for (int i = 0; i < stop; i++)
        {
            run = steps[i].Action == NeedleAction.Stitch ? run + 1 : 0;
            if (run > mostOfMark)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The path with every point where its file has it, to the thousandth of a millimetre.</summary>
    public static NeedlePath AsWritten(NeedlePath path)
    {
        var steps = path.Steps.AsSpan();
        var written = ImmutableArray.CreateBuilder<NeedleStep>(steps.Length);
        foreach (ref readonly var step in steps)
        {
            written.Add(step with { At = new Point(Thousandths.Of(step.At.XMm) / 1000.0, Thousandths.Of(step.At.YMm) / 1000.0) });
        }

        return new NeedlePath(written.MoveToImmutable());
    }

    private static ReadOnlySpan<byte> Header => "step,x_mm,y_mm,action\r\n"u8;

    private static bool TakeRow(ref ReadOnlySpan<byte> rest, int number, out NeedleStep step)
    {
        step = default;
        if (!TakeNumber(ref rest, out double count) || count != number
            || !TakeNumber(ref rest, out double x) || !TakeNumber(ref rest, out double y) || !TakeAction(ref rest, out var action))
        {
            return false;
        }

        step = new NeedleStep(action, StitchKind.None, new Point(x, y));
        return true;
    }

    /// <summary>Takes a decimal number and the comma after it.</summary>
    private static bool TakeNumber(ref ReadOnlySpan<byte> rest, out double number)
    {
        // So many digits and powers of ten are exact as floating-point numbers, and so their quotient is the nearest one.
        const int MostDigits = 15;
        ReadOnlySpan<double> tens = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];
        int at = rest.Length > 0 && rest[0] == (byte)'-' ? 1 : 0;
        bool isNegative = at > 0;
        long value = 0;
        int digits = 0, point = -1;
        for (; at < rest.Length && digits <= MostDigits; at++)
        {
            uint digit = (uint)(rest[at] - '0');
            if (digit <= 9)
            {
                value = (value * 10) + digit;
                digits++;
            }
            else if (rest[at] == (byte)'.' && point < 0 && digits > 0)
            {
                point = digits;
            }
            else
            {
                break;
            }
        }

        bool isNumber = digits is > 0 and <= MostDigits && digits != point && at < rest.Length && rest[at] == (byte)',';
        number = !isNumber ? 0 : (isNegative ? -value : value) / tens[point < 0 ? 0 : digits - point];
        rest = isNumber ? rest[(at + 1)..] : rest;
        return isNumber;
    }

    /// <summary>Takes the word of an action and the end of the line.</summary>
    private static bool TakeAction(ref ReadOnlySpan<byte> rest, out NeedleAction action)
    {
        (action, int length) = rest switch
        {
            _ when rest.StartsWith("stitch\r\n"u8) => (NeedleAction.Stitch, 8),
            _ when rest.StartsWith("jump\r\n"u8) => (NeedleAction.Jump, 6),
            _ when rest.StartsWith("trim\r\n"u8) => (NeedleAction.Trim, 6),
            _ when rest.StartsWith("stop\r\n"u8) => (NeedleAction.Stop, 6),
            _ when rest.StartsWith("end\r\n"u8) => (NeedleAction.End, 5),
            _ => (NeedleAction.End, 0),
        };
        rest = rest[length..];
        return length > 0;
    }
}
