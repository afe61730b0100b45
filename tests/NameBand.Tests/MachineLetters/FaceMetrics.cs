using System.Globalization;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>A letter of a face: advance and the clear space inside it on the left and on the right, in hundredths of the letter
/// height.</summary>
internal readonly record struct LetterMetrics(double Advance, double Left, double Right);

/// <summary>One face's letters, as letter-metrics.csv keeps them.</summary>
/// <param name="Look">sans, serif, slab, script or monospaced, as one sees it.</param>
/// <param name="IsHeldOut">The prior does not know it.</param>
internal sealed record FaceMetrics(string Look, bool IsHeldOut, string Face, IReadOnlyDictionary<string, LetterMetrics> Letters)
{
    public const string HeldOut = "held out";

    /// <summary>Letters that the table has, where a face has them.</summary>
    public const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,-'&";

    private static readonly string[] Measures = ["advance", "left", "right"];

    public static string File => Path.Combine(AppContext.BaseDirectory, "Data", "letter-metrics.csv");

    /// <summary>The letters of a face as its file has them: nominal glyphs, no kerning, by the height of its H.</summary>
    public static FaceMetrics Of(string look, bool isHeldOut, string fontFile)
    {
        var face = NameBand.Lettering.Faces.Face.FromBytes(
            fontFile, null, Path.GetFileName(fontFile), System.IO.File.ReadAllBytes(fontFile));
        using var capital = face.RawPath((int)face.GlyphOf('H'));
        double part = 100 / (double)capital!.TightBounds.Height;
        var letters = new SortedDictionary<string, LetterMetrics>(StringComparer.Ordinal);
        foreach (char letter in Alphabet)
        {
            uint glyph = face.GlyphOf(letter);
            using var path = glyph == 0 ? null : face.RawPath((int)glyph);
            if (path is null || path.TightBounds.Width <= 0)
            {
                continue;
            }

            double advance = face.Font.GetHorizontalGlyphAdvance(glyph);
            var ink = path.TightBounds;
            letters[letter.ToString()] = new LetterMetrics(advance * part, ink.Left * part, (advance - ink.Right) * part);
        }

        return new FaceMetrics(look, isHeldOut, Path.GetFileNameWithoutExtension(fontFile), letters);
    }

    public static IReadOnlyList<FaceMetrics> Read(string file)
    {
        string[][] rows = [.. System.IO.File.ReadLines(file).Skip(1).Select(l => l.Split('\t'))];
        return
        [
            .. rows.Chunk(Measures.Length).Select(three => new FaceMetrics(
                three[0][0], three[0][1] == HeldOut, three[0][2],
                new SortedDictionary<string, LetterMetrics>(
                    Enumerable.Range(0, Alphabet.Length).Where(i => three[0][4 + i].Length > 0).ToDictionary(
                        i => Alphabet[i].ToString(),
                        i => new LetterMetrics(Number(three[0][4 + i]), Number(three[1][4 + i]), Number(three[2][4 + i]))),
                    StringComparer.Ordinal))),
        ];
    }

    public static string Write(IEnumerable<FaceMetrics> faces)
    {
        var lines = new List<string> { string.Join(
            '\t', (string[])["look", "use", "face", "measure", .. Alphabet.Select(c => c.ToString())]) };
        foreach (var face in faces)
        {
            lines.AddRange(Measures.Select((measure, k) => string.Join('\t', (string[])
            [
                face.Look, face.IsHeldOut ? HeldOut : "prior", face.Face, measure,
                .. Alphabet.Select(c =>
                    face.Letters.TryGetValue(c.ToString(), out var m) ? Tenths(k == 0 ? m.Advance : k == 1 ? m.Left : m.Right) : ""),
            ])));
        }

        return string.Join('\n', lines) + "\n";
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Tenths(double value) => Math.Round(value, 1).ToString("0.0", CultureInfo.InvariantCulture);
}
