using System.Globalization;
using System.Security;
using System.Text;
using NameBand.Common;

namespace NameBand.Output.Public;

/// <summary>A name as it is sewn, drawn in SVG (W3C): the strip, and the thread on it in its colour.</summary>
internal static class PublicPicture
{
    private const double MarginMm = 6; // Cloth beside the name, as on a proof.

    /// <summary>Part of a thread's width that is in the light; the rest is the shade between it and its neighbour.</summary>
    public const double LitPart = 0.62;

    public static void Write(Stream stream, PublicMatter matter, PublicName name)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        double high = matter.Plan.Hem.Strip.FinishedWidthMm;
        double wide = name.Found.Placed.WidthMm + (2 * MarginMm);
        string unit = Number(PackedStitches.UnitMm);
        string left = Number(MarginMm + matter.Plan.InsetMm(name.Found.Placed));
        string line = Number((high / 2) - name.Found.Placed.BaselineYMm);
        writer.Write(
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Number(wide)} {Number(high)}\" width=\"{Number(wide)}mm\" height=\"{Number(high)}mm\">\n"
            + $"<title>{SecurityElement.Escape(name.Text)}</title>\n<rect width=\"100%\" height=\"100%\" fill=\"{matter.Cloth}\"/>\n"
            + "<defs><path id=\"thread\" d=\"");
        Steps(writer, name.Stitches);
        writer.Write(
            $"\"/></defs>\n<g transform=\"translate({left} {line}) scale({unit})\" fill=\"none\" stroke-linejoin=\"bevel\">\n"
            + $"<use href=\"#thread\" stroke=\"{Shaded(name.Thread)}\" stroke-width=\"{Number(matter.ThreadMm / PackedStitches.UnitMm)}\"/>\n"
            + $"<use href=\"#thread\" stroke=\"{name.Thread}\" stroke-width=\"{Number(matter.ThreadMm * LitPart / PackedStitches.UnitMm)}\"/>\n</g>\n</svg>\n");
    }

    /// <summary>The same colour where thread lies in the shade of its neighbours.</summary>
    public static CssColour Shaded(CssColour thread) =>
        new((byte)(thread.Red * 0.66), (byte)(thread.Green * 0.66), (byte)(thread.Blue * 0.66));

    private static void Steps(StreamWriter writer, byte[] stitches)
    {
        writer.Write("M0 0");
        for (int i = 0; i < stitches.Length;)
        {
            bool isFar = stitches[i] == 0x80;
            (int x, int y) = isFar
                ? (BitConverter.ToInt16(stitches, i + 2), BitConverter.ToInt16(stitches, i + 4))
                : ((sbyte)stitches[i], (sbyte)stitches[i + 1]);
            writer.Write(string.Create(CultureInfo.InvariantCulture, $"{(isFar && stitches[i + 1] == 0 ? 'm' : 'l')}{x} {y}"));
            i += isFar ? 6 : 2;
        }
    }

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
