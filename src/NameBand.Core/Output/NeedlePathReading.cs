using System.Buffers.Text;
using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Reads a needle path of ours back. What a stitch is for is not in the file: those before the first stop are the
/// alignment marks, for which the thread is changed there, and all others come back as of no kind.
/// </summary>
public static class NeedlePathReading
{
    /// <returns>Null when the bytes are not a whole needle path of ours.</returns>
    public static NeedlePath? Read(ReadOnlySpan<byte> csv)
    {
        int header = csv.IndexOf("\r\n"u8);
        if (header < 0 || !csv[..header].SequenceEqual("step,x_mm,y_mm,action"u8))
        {
            return null;
        }

        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        csv = csv[(header + 2)..];
        while (!csv.IsEmpty)
        {
            int end = csv.IndexOf("\r\n"u8);
            if (end < 0 || Row(csv[..end], steps.Count + 1) is not { } step)
            {
                return null;
            }

            steps.Add(step);
            csv = csv[(end + 2)..];
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

        for (int i = 0; i < stop && stop < steps.Count; i++)
        {
            steps[i] = steps[i].Action == NeedleAction.Stitch ? steps[i] with { Kind = StitchKind.Mark } : steps[i];
        }

        return steps.ToImmutable();
    }

    /// <summary>The path with every point where its file has it, to the thousandth of a millimetre.</summary>
    public static NeedlePath AsWritten(NeedlePath path) => new(
        [.. path.Steps.Select(s => s with { At = new Point(Thousandths.Of(s.At.XMm) / 1000.0, Thousandths.Of(s.At.YMm) / 1000.0) })]);

    private static NeedleStep? Row(ReadOnlySpan<byte> row, int number)
    {
        if (!Utf8Parser.TryParse(row, out int step, out int used) || step != number || !TakeComma(ref row, used)
            || !Utf8Parser.TryParse(row, out double x, out used, 'F') || !TakeComma(ref row, used)
            || !Utf8Parser.TryParse(row, out double y, out used, 'F') || !TakeComma(ref row, used)
            || Action(row) is not { } action)
        {
            return null;
        }

        return new NeedleStep(action, StitchKind.None, new Point(x, y));
    }

    private static bool TakeComma(ref ReadOnlySpan<byte> row, int used)
    {
        bool isThere = used < row.Length && row[used] == (byte)',';
        row = isThere ? row[(used + 1)..] : row;
        return isThere;
    }

    private static NeedleAction? Action(ReadOnlySpan<byte> word) =>
        word.SequenceEqual("stitch"u8) ? NeedleAction.Stitch
        : word.SequenceEqual("jump"u8) ? NeedleAction.Jump
        : word.SequenceEqual("trim"u8) ? NeedleAction.Trim
        : word.SequenceEqual("stop"u8) ? NeedleAction.Stop
        : word.SequenceEqual("end"u8) ? NeedleAction.End
        : null;
}
