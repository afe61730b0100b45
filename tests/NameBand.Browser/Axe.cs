using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;
using Xunit;

namespace NameBand.Browser;

/// <summary>
/// The rules of WCAG as axe checks them. It is put into a page once, and only what it objects to is brought back: the many
/// elements it found nothing wrong with would take longer to carry over than to check.
/// </summary>
internal static class Axe
{
    public static readonly string[] Wcag = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

    /// <summary>In the dark the same page stands in other colours.</summary>
    public static readonly string[] Colours = ["color-contrast", "link-in-text-block"];

    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <param name="rules">Tags of rules, or the rules themselves.</param>
    /// <param name="within">The part of the page to look at; null: all of it.</param>
    public static async Task ExpectNothingAsync(IPage page, string where, string[] rules, string? within = null)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(Script);
        }

        var found = await page.EvaluateAsync<JsonElement>(
            """
            async ([within, type, rules]) => {
                const { violations, passes } = await axe.run(within ?? document, { runOnly: { type, values: rules }, resultTypes: ['violations'] });
                return { checked: passes.length + violations.length, violations: violations.map(v => `${v.id}: ${v.help}\n` + v.nodes.map(n =>
                    `    at ${n.target}: ${n.html}\n    ` + [...n.any, ...n.all, ...n.none].map(c => c.message).join('; ')).join('\n')) };
            }
            """,
            new object?[] { within, rules == Colours ? "rule" : "tag", rules });
        Assert.True(found.GetProperty("checked").GetInt32() > 0, where + ": no rule found anything to look at.");
        string objections = string.Join("\n", found.GetProperty("violations").EnumerateArray().Select(v => v.GetString()));
        Assert.True(objections.Length == 0, $"{where}: {objections}");
    }
}
