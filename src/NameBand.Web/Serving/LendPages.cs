using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>Whether and how a screen is asked for the code.</summary>
internal enum CodeAsked
{
    First,

    /// <summary>What it gave was not the code.</summary>
    Again,

    /// <summary>It gave too many wrong ones.</summary>
    NotHeard,
    NoneHolds,
}

/// <summary>The two pages of the lent view: the one that asks for the code, and the view itself.</summary>
internal static class LendPages
{
    public static string View => Page(
        "At the machine",
        """
        <main class="machine" id="machine" data-lent></main>
        <script type="module" src="/_content/NameBand.Web/machine-begin.js"></script>
        """);

    public static string AskCode(CodeAsked asked)
    {
        string said = asked == CodeAsked.Again
            ? $"<p class=\"machine-problem\" role=\"alert\">{Html("That was not the code.")}</p>" : "";
        return Page("The code, please", asked is CodeAsked.First or CodeAsked.Again
            ? $"""
              <main class="machine lend">
              <h1>{Html("At the machine")}</h1>
              {said}
              <form method="post" action="/code">
              <p><label for="code">{Html("The code that is shown at the worktable, under “at the machine”")}</label></p>
              <p><input id="code" name="code" inputmode="numeric" autocomplete="off" required maxlength="20" /> <button type="submit">{Html("Open")}</button></p>
              </form>
              <p>{Html("This page is not encrypted: anyone else on this network could read the names that are shown here.")}</p>
              </main>
              """
            : $"""
              <main class="machine lend">
              <h1>{Html("At the machine")}</h1>
              <p>{Html(asked == CodeAsked.NotHeard
                  ? "Too many wrong codes came from this screen. At the worktable, under “at the machine”, press “New code”, then load this page again."
                  : "There is no valid code at the moment. At the worktable, under “at the machine”, press “New code”, then load this page again.")}</p>
              </main>
              """);
    }

    private static string Html(Said text) => DoorPages.Html(text);

    private static string Page(Said title, string body) =>
        $"""
        <!DOCTYPE html>
        <html {Language.HtmlNow}>
        <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <link rel="icon" href="/_content/NameBand.Web/icon.svg" type="image/svg+xml" />
        <title>{Html(title)}</title>
        <link rel="stylesheet" href="/_content/NameBand.Web/strip.css" />
        <link rel="stylesheet" href="/_content/NameBand.Web/machine.css" />
        <link rel="stylesheet" href="/_content/NameBand.Web/faces.css" />
        </head>
        <body class="lent">
        {ScriptTexts.Element}
        {body}
        </body>
        </html>
        """;
}
