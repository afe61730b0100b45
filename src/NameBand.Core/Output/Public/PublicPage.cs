using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;

namespace NameBand.Output.Public;

/// <summary>
/// Writes the page for supporters: one HTML file with its own style, script and stitches, that fetches nothing. Its policy
/// lets only that style and that script run, by their hashes.
/// </summary>
internal static class PublicPage
{
    public static void Write(Stream stream, PublicMatter matter)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        string style = Resource("public.css");
        string script = Resource("public.js");
        string title = Html(PlainText.OneLine(matter.Title));
        string language = Language.Now?.Culture.Name ?? "en";
        string direction = Language.Now is { IsRightToLeft: true } ? "rtl" : "ltr";
        int count = matter.Names.Count;
        writer.Write(
            $"<!DOCTYPE html>\n<html lang=\"{language}\" dir=\"{direction}\">\n<head>\n<meta charset=\"utf-8\">\n"
            + "<meta http-equiv=\"Content-Security-Policy\" content=\""
            + $"default-src 'none'; base-uri 'none'; form-action 'none'; img-src data:; style-src {HashOf(style)}; script-src {HashOf(script)}\">\n"
            + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"referrer\" content=\"no-referrer\">\n"
            + "<meta name=\"robots\" content=\"noindex\">\n<link rel=\"icon\" href=\"data:,\">\n"
            + $"<title>{Html((Said)$"{PlainText.OneLine(matter.Title)}: where is my name?")}</title>\n"
            + $"<style>{style}</style>\n</head>\n<body>\n<main>\n<h1><bdi>{title}</bdi></h1>\n");
        writer.Write(
            $"<form id=\"ask\" role=\"search\">\n<label for=\"letters\">{Html((Said)"Where is my name? Type a few letters of it.")}</label>\n"
            + "<input id=\"letters\" type=\"search\" dir=\"auto\" autocomplete=\"off\" autocapitalize=\"off\" spellcheck=\"false\">\n</form>\n"
            + $"<p id=\"said\" role=\"status\"></p>\n<ul id=\"found\" aria-label=\"{Html((Said)"Names found")}\"></ul>\n");
        writer.Write(
            "<section id=\"name\" aria-labelledby=\"who\" hidden>\n<h2 id=\"who\" tabindex=\"-1\"></h2>\n<canvas id=\"sewn\" role=\"img\"></canvas>\n"
            + $"<p id=\"where\"></p>\n<div id=\"photos\"></div>\n{HemDrawing(matter.Plan)}</section>\n");
        Said all = Said.Plural(count, $"All {count} name that are shown here", $"All {count} names that are shown here");
        writer.Write($"<details><summary>{Html(all)}</summary>\n<ul>\n");
        foreach (var name in matter.Names)
        {
            writer.Write(
                $"<li><a href=\"#n{Whole(name.Number)}\"><bdi>{Html(name.Text)}</bdi></a>: {Html(PublicName.PlaceInWords(matter.Plan, name.Found))}</li>\n");
        }

        writer.Write(
            $"</ul>\n</details>\n<noscript><p>{Html((Said)"Without scripts this page can only list the names and their places.")}</p></noscript>\n");
        writer.Write(
            $"<footer><p>{Html((Said)"Shown here are names whose owners said yes to it. This page sends nothing and remembers nothing.")}</p></footer>\n</main>\n");
        writer.Write(
            $"<script type=\"application/json\" id=\"data\">{Data(matter)}</script>\n<script>{script}</script>\n</body>\n</html>\n");
    }

    /// <summary>Signs that HTML could take for its own are escaped, so that no name ends the script that holds it.</summary>
    private static string Data(PublicMatter matter)
    {
        using var memory = new MemoryStream();
        using (var json = new Utf8JsonWriter(memory, new JsonWriterOptions { Encoder = JavaScriptEncoder.Default }))
        {
            json.WriteStartObject();
            json.WriteString("cloth", matter.Cloth.ToString());
            json.WriteNumber("high", Rounded(matter.Plan.Hem.Strip.FinishedWidthMm));
            json.WriteNumber("thread", Rounded(matter.ThreadMm));
            json.WriteNumber("lit", PublicPicture.LitPart);
            json.WriteNumber("unit", PackedStitches.UnitMm);
            PublicSays.Write(json, matter);
            json.WriteStartArray("names");
            foreach (var name in matter.Names)
            {
                var placed = name.Found.Placed;
                double round = Math.Max(name.Found.Middles.RoundLengthMm, 1);
                json.WriteStartObject();
                json.WriteNumber("n", name.Number);
                json.WriteString("t", name.Text);
                json.WriteString("p", PublicName.PlaceInWords(matter.Plan, name.Found).ToString());
                json.WriteNumber("r", name.Found.Round);
                json.WriteNumber("a", Math.Round(placed.StartMm / round, 5));
                json.WriteNumber("b", Math.Round(placed.EndMm / round, 5));
                json.WriteNumber("w", Rounded(placed.WidthMm));
                json.WriteNumber("x", Rounded(matter.Plan.InsetMm(placed)));
                json.WriteNumber("y", Rounded(placed.BaselineYMm));
                json.WriteString("c", name.Thread.ToString());
                json.WriteString("d", PublicPicture.Shaded(name.Thread).ToString());
                json.WriteBase64String("s", name.Stitches);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("photos");
            foreach (var photo in matter.Photos)
            {
                json.WriteStartObject();
                json.WriteBase64String("j", photo.Jpeg);
                json.WriteNumber("w", photo.WidthPx);
                json.WriteNumber("h", photo.HeightPx);
                json.WriteBoolean("part", photo.IsOfPart);
                json.WriteStartArray("n");
                foreach (int name in photo.Names)
                {
                    json.WriteNumberValue(name);
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(memory.ToArray());
    }

    /// <summary>The rounds as rings seen from above, front down, or as bars; the script marks the place of a name on them.</summary>
    private static string HemDrawing(StripPlan plan)
    {
        int rounds = plan.Rounds.Length;
        double step = Math.Min(12, 60.0 / rounds);
        var lines = new StringBuilder();
        if (!plan.Hem.Closed)
        {
            double high = 24 + (step * (rounds - 1));
            for (int i = 0; i < rounds; i++)
            {
                string y = Number(high - 12 - (step * i));
                lines.Append(
                    CultureInfo.InvariantCulture,
                    $"<path id=\"r{i + 1}\" data-left=\"10\" data-wide=\"180\" data-y=\"{y}\" d=\"M10 {y}H190\"/>\n");
            }

            return $"<svg id=\"hem\" viewBox=\"0 0 200 {Number(high)}\" aria-hidden=\"true\">\n{lines}<path id=\"spot\"/>\n</svg>\n";
        }

        var middles = GarmentMiddles.On(plan.Hem, 1);
        int turn = plan.Hem.Runs == RunDirection.CounterClockwise ? -1 : 1;
        for (int i = 0; i < rounds; i++)
        {
            string radius = Number(88 - (step * i));
            lines.Append(
                CultureInfo.InvariantCulture,
                $"<circle id=\"r{i + 1}\" data-front=\"{Number(middles.FrontMm ?? 0.5)}\" data-turn=\"{turn}\" cx=\"100\" cy=\"100\" r=\"{radius}\"/>\n");
        }

        double inside = 88 - (step * (rounds - 1));
        return "<svg id=\"hem\" viewBox=\"0 0 200 200\" aria-hidden=\"true\">\n" + lines + "<path id=\"spot\"/>\n"
            + $"<text x=\"100\" y=\"{Number(100 + inside - 8)}\">{Html((Said)"front")}</text>\n<text x=\"100\" y=\"{Number(100 - inside + 14)}\">{Html((Said)"back")}</text>\n"
            + $"<text x=\"100\" y=\"103\">{Html((Said)"seen from above")}</text>\n</svg>\n";
    }

    private static string Resource(string file)
    {
        using var stream = typeof(PublicPage).Assembly.GetManifestResourceStream("NameBand.Public." + file)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static string HashOf(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";

    private static string Html(string text) => WebUtility.HtmlEncode(text);

    private static string Html(Said text) => Html(text.ToString());

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Number(double number) => number.ToString("0.####", CultureInfo.InvariantCulture);

    private static double Rounded(double mm) => Math.Round(mm, 3);
}
