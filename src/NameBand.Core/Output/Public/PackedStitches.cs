using System.Buffers.Binary;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Output.Public;

/// <summary>
/// The thread of a name as few bytes: from needle point to needle point two signed bytes, in twentieths of a millimetre; y runs down.
/// −128 begins a farther way: then 0 (the needle is up) or 1 (a stitch) and both lengths as 16 bits, low byte first.
/// </summary>
internal static class PackedStitches
{
    public const double UnitMm = 0.05; // A twentieth, an eighth of a thread's width: no eye sees the rounding, and a byte reaches 6 mm.
    private const int FarthestUnits = 127; // What a signed byte holds; its −128 says that a farther way follows.
    private const sbyte Far = -128; // See above: no way of one byte is that.

    /// <summary>Satin, runs and what is travelled between them; underlay lies under the satin and locks in it.</summary>
    public static byte[] Of(NeedlePath path)
    {
        var bytes = new List<byte>(path.Steps.Length * 2);
        var at = (X: 0, Y: 0);
        var before = (X: 0, Y: 0);
        foreach (var step in path.Steps)
        {
            var to = Unit(step.At);
            if (step.Action == NeedleAction.Stitch && step.Kind is StitchKind.Satin or StitchKind.Running or StitchKind.Travel)
            {
                if (at != before)
                {
                    Go(bytes, before.X - at.X, before.Y - at.Y, isStitch: false);
                }

                Go(bytes, to.X - before.X, to.Y - before.Y, isStitch: true);
                at = to;
            }

            before = to;
        }

        return [.. bytes];
    }

    private static void Go(List<byte> bytes, int x, int y, bool isStitch)
    {
        if (isStitch && Math.Abs(x) <= FarthestUnits && Math.Abs(y) <= FarthestUnits)
        {
            bytes.Add((byte)(sbyte)x);
            bytes.Add((byte)(sbyte)y);
            return;
        }

        bytes.Add(unchecked((byte)Far));
        bytes.Add(isStitch ? (byte)1 : (byte)0);
        Span<byte> two = stackalloc byte[2];
        foreach (int way in new[] { x, y })
        {
            BinaryPrimitives.WriteInt16LittleEndian(two, (short)Math.Clamp(way, short.MinValue, short.MaxValue));
            bytes.AddRange(two);
        }
    }

    private static (int X, int Y) Unit(Point at) => ((int)Math.Round(at.XMm / UnitMm), (int)Math.Round(-at.YMm / UnitMm));
}
