using System.Net;

namespace NameBand.Web.Serving;

/// <summary>The few words that are said before the worktable is open. Nothing of the job stands in them.</summary>
internal static class DoorPages
{
    /// <summary>Leads on at once and takes its own place in the browser's history.</summary>
    public static string Leading(string address) => Page(
        "The worktable opens",
        $"""<p>The worktable opens. If it does not, <a href="{WebUtility.HtmlEncode(address)}">go on to it</a>.</p>""",
        $"""<meta http-equiv="refresh" content="0; url={WebUtility.HtmlEncode(address)}" />""");

    public static string Refused(string url) => Page(
        "Open the whole address",
        $"""
        <h1>The worktable opens by its whole address only</h1>
        <p>People’s names lie on it, so nobody else who uses this computer is let in. The address stands in the window in which
        the worktable was started, and begins with <strong>{WebUtility.HtmlEncode(url.TrimEnd('/') + PageKey.Way)}</strong>. Copy it from there, all of it, and open it here.</p>
        <p>If you do not find it: close the worktable in that window (Ctrl+C) and start it again. Nothing is lost, all you have set is saved.</p>
        """);

    private static string Page(string title, string body, string head = "") =>
        $"""
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="referrer" content="no-referrer" />
        <link rel="icon" href="data:," />
        {head}
        <title>{title}</title>
        </head>
        <body style="font: 1.1rem/1.5 system-ui, sans-serif; max-width: 40rem; margin: 10vh auto; padding: 0 1rem; overflow-wrap: anywhere">
        <main>
        {body}
        </main>
        </body>
        </html>
        """;
}
