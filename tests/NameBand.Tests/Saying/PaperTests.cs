using System.Text.RegularExpressions;
using NameBand.Output;
using NameBand.Tests.CommandLine;
using SixLabors.ImageSharp;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using Xunit;
using static NameBand.Tests.Saying.Spoken;

namespace NameBand.Tests.Saying;

/// <summary>What is printed, drawn and shown to supporters, in the languages that are made from the English.</summary>
public sealed partial class PaperTests
{
    private const string Accented = "en-XA";
    private const string Mirrored = "ar-XB";

    private const string Job = """
        { "format": 1, "title": "Fleet", "lists": ["names.csv"], "hem": { "length": "1.5 m", "turn": 1.0 }, "strip": { "grain": "bias" } }
        """;

    private const string Keyed = """
        { "format": 1, "title": "Fleet", "lists": ["names.csv"], "way": "machineLetters", "hem": { "length": "900 mm", "closed": false },
          "letters": { "sizes": ["9 mm"], "holds": 12, "has": "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz" },
          "lettering": { "height": "9 mm" } }
        """;

    private const string Traced = """
        { "format": 1, "title": "Fleet", "lists": ["names.csv"], "way": "traced", "hem": { "length": "2 m", "closed": false } }
        """;

    /// <summary>No word of ours: what of them stands on a sheet is a name.</summary>
    private const string Names = "Name,Show on the web?\nKvist Vrng,yes\nBrff Trnd,yes\nPlmm Grst,\nSchtzmnn Kvrl,yes\n";

    public static TheoryData<string, string> Ways => new() { { "needle paths", Job }, { "keyed", Keyed }, { "traced", Traced } };

    [Theory]
    [MemberData(nameof(Ways))]
    public void No_sheet_of_a_packet_has_an_English_word_left_or_one_word_over_another(string way, string job)
    {
        using var folder = new TemporaryFolder().With("job.json", job).With("names.csv", Names);
        Assert.NotEqual(2, In(Accented, () => CliRun.Of("print", folder.FullPath, "--thanks")).Status);
        string[] sheets = [.. Directory.EnumerateFiles(folder["out"], "*.pdf", SearchOption.AllDirectories)];
        Assert.True(sheets.Length > 5, $"{way}: {string.Join(' ', sheets)}");
        var left = new SortedSet<string>(StringComparer.Ordinal);
        foreach (string sheet in sheets)
        {
            using var pdf = PdfDocument.Open(sheet);
            string text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
            Assert.Contains("ŕ", text, StringComparison.Ordinal);
            left.UnionWith(Left(text).Select(w => $"{Path.GetFileName(sheet)}: {w}"));
            left.UnionWith(pdf.GetPages().SelectMany(Covered).Select(w => $"{Path.GetFileName(sheet)}, {w}"));
        }

        left.UnionWith(Left(File.ReadAllText(folder[$"out/{OutPaths.ReadMeFirst}"])).Select(w => $"{OutPaths.ReadMeFirst}: {w}"));
        foreach (string proof in Directory.EnumerateFiles(folder["out/proofs"]))
        {
            Assert.Contains("«", Described(proof), StringComparison.Ordinal);
            left.UnionWith(Left(Described(proof)).Select(w => $"{Path.GetFileName(proof)}: {w}"));
        }

        Assert.True(left.Count == 0, string.Join('\n', left));
    }

    /// <summary>Letters that lie over letters of another text by a third of their size and more.</summary>
    private static IEnumerable<string> Covered(Page page)
    {
        var letters = page.Letters.Where(l => l.Value.Trim().Length > 0 && l.BoundingBox.Area > 0).ToList();
        for (int i = 0; i < letters.Count; i++)
        {
            for (int j = i + 2; j < letters.Count; j++)
            {
                var (a, b) = (letters[i].BoundingBox, letters[j].BoundingBox);
                double wide = Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left);
                double high = Math.Min(a.Top, b.Top) - Math.Max(a.Bottom, b.Bottom);
                if (wide > 0 && high > 0 && wide * high > Math.Min(a.Area, b.Area) / 3)
                {
                    yield return $"page {page.Number}: {Beside(i)} over {Beside(j)}";
                }
            }
        }

        string Beside(int at) => string.Concat(letters.Skip(Math.Max(0, at - 6)).Take(13).Select(l => l.Value));
    }

    [Fact]
    public void The_page_for_supporters_says_its_language_and_which_way_it_runs()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", Names);
        Assert.NotEqual(2, CliRun.Of("make", folder.FullPath).Status);
        string english = Page("");
        Assert.Contains("<html lang=\"en\" dir=\"ltr\">", english, StringComparison.Ordinal);
        Assert.Contains("Where is my name? Type a few letters of it.", english, StringComparison.Ordinal);
        string accented = Page(Accented);
        Assert.Contains("<html lang=\"en-XA\" dir=\"ltr\">", accented, StringComparison.Ordinal);
        Assert.Contains("<html lang=\"ar-XB\" dir=\"rtl\">", Page(Mirrored), StringComparison.Ordinal);
        string shown = Tag().Replace(Code().Replace(accented, ""), " ");
        Assert.Empty(Left(System.Net.WebUtility.HtmlDecode(shown)));
        Assert.Contains("\"none\":\"\\u00AB\\u00D1", accented, StringComparison.Ordinal);

        string Page(string language)
        {
            Assert.NotEqual(2, In(language, () => CliRun.Of("public", folder.FullPath)).Status);
            return File.ReadAllText(folder["public/index.html"]);
        }
    }

    [Fact]
    public void A_make_in_another_language_leaves_nothing_of_the_one_before()
    {
        using var both = new TemporaryFolder().With("job.json", Job).With("names.csv", Names);
        using var one = new TemporaryFolder().With("job.json", Job).With("names.csv", Names);
        Made(both, "");
        byte[][] english = Proofs(both);
        Made(both, Accented);
        Made(one, Accented);
        byte[][] accented = Proofs(both);
        Assert.True(accented.Length > 3, $"only {accented.Length} proofs");
        Assert.Equal(Proofs(one), accented);
        Assert.All(english.Zip(accented), p => Assert.NotEqual(p.First, p.Second));
        Assert.Equal(File.ReadAllText(one[$"out/{OutPaths.ReadMeFirst}"]), File.ReadAllText(both[$"out/{OutPaths.ReadMeFirst}"]));
        Made(both, "");
        Assert.Equal(english, Proofs(both));

        static void Made(TemporaryFolder folder, string language) =>
            Assert.NotEqual(2, In(language, () => CliRun.Of("make", folder.FullPath)).Status);

        static byte[][] Proofs(TemporaryFolder folder) =>
            [.. Directory.EnumerateFiles(folder["out/proofs"]).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)];
    }

    /// <summary>A page read from right to left begins at the right; what is drawn of cloth lies as it lies.</summary>
    [Fact]
    public void Sheets_of_a_language_from_right_to_left_begin_at_the_right()
    {
        using var folder = new TemporaryFolder().With("job.json", Job).With("names.csv", Names);
        Assert.NotEqual(2, In(Mirrored, () => CliRun.Of("print", folder.FullPath)).Status);
        using var packet = PdfDocument.Open(folder["out/sheets/work-packet-a4.pdf"]);
        var page = packet.GetPage(1);
        var title = page.GetWords().First(w => w.Text == "Fleet");
        Assert.InRange(title.BoundingBox.Right, page.Width * 0.9, page.Width);
        using var template = PdfDocument.Open(folder["out/sheets/template-a4.pdf"]);
        int[] scale = [.. template.GetPage(1).GetWords().Where(w => w.Text is "10" or "20").OrderBy(w => w.BoundingBox.Bottom)
            .ThenBy(w => w.BoundingBox.Left).Take(2).Select(w => int.Parse(w.Text, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal([10, 20], scale);
    }

    private static IEnumerable<string> Left(string text) => Word().Matches(text).Select(m => m.Value)
        .Where(w => !(Job + Keyed + Names + "Nunito Andika").Contains(w, StringComparison.Ordinal));

    /// <summary>What a picture says to those who do not see it.</summary>
    private static string Described(string png) =>
        string.Join(' ', Image.Identify(png).Metadata.GetPngMetadata().TextData.Select(d => d.Value));

    /// <summary>A word in plain letters: every vowel of a translated one has an accent. No part of a path, a key or an option.</summary>
    [GeneratedRegex(@"(?<![\p{L}\p{M}\w./-])(?=[a-z]*[aeiou])[A-Za-z]{3,}(?![\p{L}\p{M}\w/-]|\.[a-z])", RegexOptions.IgnoreCase)]
    private static partial Regex Word();

    [GeneratedRegex("<(script|style)[^>]*>.*?</\\1>", RegexOptions.Singleline)]
    private static partial Regex Code();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();
}
