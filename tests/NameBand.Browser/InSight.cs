using Microsoft.Playwright;
using Xunit;

namespace NameBand.Browser;

/// <summary>What is seen at the machine without scrolling.</summary>
internal static class InSight
{
    private const string OutOfSight =
        """
        what => {
            scrollTo(0, 0);
            return what.filter(w => {
                const { top, bottom, height } = document.querySelector(w)?.getBoundingClientRect() ?? { height: 0 };
                return !(height > 0 && top >= 0 && bottom <= innerHeight);
            });
        }
        """;

    /// <summary>On a tablet as it stands and as it lies, in CSS pixels.</summary>
    public static async Task ExpectAsync(IPage page, params string[] what)
    {
        foreach (var (width, height) in ((int, int)[])[(820, 1180), (1180, 820)])
        {
            await page.SetViewportSizeAsync(width, height);
            string[] missed = await page.EvaluateAsync<string[]>(OutOfSight, what);
            Assert.True(missed.Length == 0, $"{width} × {height}: out of sight {string.Join(", ", missed)}");
        }
    }
}
