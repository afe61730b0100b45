using System.Net;
using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>The few words that are said before the worktable is open. Nothing of the job stands in them.</summary>
internal static class DoorPages
{
    // Characters that no font and no address has a sign for: the tags take their place.
    private static readonly string Begin = "\uE0A1", End = "\uE0A2";

    /// <summary>Leads on at once and takes its own place in the browser's history.</summary>
    public static string Leading(string address) => Page(
        "The worktable opens",
        $"<p>{Html($"The worktable opens. If it does not, {Begin}go on to it{End}.", $"<a href=\"{WebUtility.HtmlEncode(address)}\">", "</a>")}</p>",
        $"""<meta http-equiv="refresh" content="0; url={WebUtility.HtmlEncode(address)}" />""");

    public static string Refused(string url) => Page(
        "Open the whole address",
        $"""
        <h1>{Html("The worktable opens by its whole address only")}</h1>
        <p>{Html(
            $"People’s names lie on it, so nobody else who uses this computer is let in. The address stands in the window in which the worktable was started, and begins with {Begin}{url.TrimEnd('/') + PageKey.Way}{End}. Copy it from there, all of it, and open it here.",
            "<strong>", "</strong>")}</p>
        <p>{Html("If you do not find it: close the worktable in that window (Ctrl+C) and start it again. Nothing is lost, all you have set is saved.")}</p>
        """);

    /// <summary>A text as HTML has it, with a part of it between two tags.</summary>
    public static string Html(Said text, string begin = "", string end = "") => WebUtility.HtmlEncode(text.ToString())
        .Replace(Begin, begin, StringComparison.Ordinal).Replace(End, end, StringComparison.Ordinal);

    private static string Page(Said title, string body, string head = "") =>
        $"""
        <!DOCTYPE html>
        <html {Language.HtmlNow}>
        <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="referrer" content="no-referrer" />
        <link rel="icon" href="data:," />
        {head}
        <title>{Html(title)}</title>
        </head>
        <body style="font: 1.1rem/1.5 system-ui, sans-serif; max-width: 40rem; margin: 10vh auto; padding: 0 1rem; overflow-wrap: anywhere">
        <main>
        {body}
        </main>
        </body>
        </html>
        """;
}
