using Microsoft.Playwright;
using NameBand.Tests;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Browser;

/// <summary>A page as the browser prints it, looked at sheet by sheet.</summary>
internal static class Paper
{
    /// <summary>Darker than this is ink; the browser prints no grounds.</summary>
    private const int Ink = 200;

    public static async Task ExpectNoEmptySheetAsync(IPage page, string view)
    {
        using var folder = new TemporaryFolder();
        await page.PdfAsync(new() { Path = folder["page.pdf"], Format = "A4" });
        OutsideTool.Run("pdftoppm", ["-r", "20", "-gray", folder["page.pdf"], folder["sheet"]]);
        string[] sheets = [.. Directory.GetFiles(folder.FullPath, "sheet*.pgm").Order(StringComparer.Ordinal)];
        Assert.NotEmpty(sheets);
        var empty = sheets.Select((file, i) => (Number: i + 1, IsEmpty: !Dots(File.ReadAllBytes(file)).Any(d => d < Ink)))
            .Where(s => s.IsEmpty).Select(s => s.Number).ToList();
        Assert.True(empty.Count == 0, $"{view}, printed on {sheets.Length} sheets: nothing is on sheet {string.Join(", ", empty)}.");
    }

    /// <summary>The grey values of a PGM (P5): after its width, height and greatest value, each one byte.</summary>
    private static ArraySegment<byte> Dots(byte[] pgm)
    {
        int at = 0;
        for (int field = 0; field < 4; at++)
        {
            field += pgm[at] is (byte)' ' or (byte)'\n' ? 1 : 0;
        }

        return new ArraySegment<byte>(pgm, at, pgm.Length - at);
    }
}
