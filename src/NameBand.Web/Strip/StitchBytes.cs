using System.Buffers.Binary;
using NameBand.Stitching;

namespace NameBand.Web.Strip;

/// <summary>
/// A needle path for the browser, little-endian: the number of steps (int32), then x and y of each in mm (float32), then
/// one byte each: the kind of stitch in the low four bits, the action in the high four.
/// </summary>
internal static class StitchBytes
{
    public static byte[] Of(NeedlePath path)
    {
        var steps = path.Steps;
        var bytes = new byte[4 + (9 * steps.Length)];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, steps.Length);
        int kinds = 4 + (8 * steps.Length);
        for (int i = 0; i < steps.Length; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(4 + (8 * i)), (float)steps[i].At.XMm);
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(8 + (8 * i)), (float)steps[i].At.YMm);
            bytes[kinds + i] = (byte)((int)steps[i].Kind | ((int)steps[i].Action << 4));
        }

        return bytes;
    }
}
