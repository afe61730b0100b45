using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Cli.Terminal;
using NameBand.Common;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>Holds every number that prose prints against the JSON of the same answer.</summary>
internal static partial class Numbers
{
    /// <summary>What is worked out from figures of the JSON while it is printed, and no figure of its own; each with its reason.</summary>
    private static readonly (string Words, string Reason)[] Derived =
    [
        (@"(?m)^ *\d+\. ", "the number of a thing in a list"),
        (@"\d+ things? needs? you", "the needs of the job and of rows together"),
        (@"\d+ too (long|short|much|little)|[\d. ]+mm \([\d/ ]+in\) too (long|short|much|little)", "a strip less its hem"),
        (@"at 100 %", "how a sheet is printed"),
        (@"no plan (does with fewer than \d+|takes less than [\d a-z]+)", "a bound, rounded down to five minutes"),
        (@"(Done|To do) +\d+ hoopings?: [\d–, ]+", "the hoopings of one state, counted"),
        (@"Time left +[\d a-z]+ at the machine", "the minutes of the open hoopings, summed"),
        (@"(Waiting|Change wished|Not asked|Agreed by their owners) *:? *\d+( of \d+ names)?", "the names of one state, counted"),
        (@"(New|Text changed|Other hooping|Moved along|Withdrawn) +\d+ names?", "the names of one fate, counted"),
        (@"hoopings? [\d–, ]+", "neighbouring numbers of a list drawn together"),
        (@"\d+ of them estimated", "the letters that are estimated, counted"),
        (@"± [\d.]+", "the farther end of a letter's range from its width"),
        (@"\d+ letters? at", "the letters of the alphabet, counted"),
        (@"19 times in 20", "what a range means"),
        (@"half a millimetre changes it by [\d.]+", "half a millimetre as a part of what lies between the marks"),
        (@"or [\d.]+ %", "the shortening in hundredths"),
        (@"--measured [\d.]+", "an example: the marks less what cloth commonly loses"),
        (@"--columns\s+""[\d.x\s]+""", "an example, or the readings as they were typed"),
        (@"a column 2.mm wide|[\d.]+.% of (that|it)|misread makes 0\.05.mm", "what the figure means, and a part in hundredths"),
        (@"swatch-a4|key-in-a4|template-a4|measure-[\d.]+mm[-\w]*", "the name of a file"),
        (@"in hooping \d+, before name \d+", "looked for as it stands in bobbinChanges"),
    ];

    public static void AreAll(string prose, string json)
    {
        using var document = JsonDocument.Parse(json);
        var forms = new HashSet<string>(StringComparer.Ordinal);
        Collect(document.RootElement, forms);
        prose = string.Join('\n', prose.Split('\n').Select(l => l.TrimEnd()));
        foreach (var (words, _) in Derived)
        {
            prose = Regex.Replace(prose, words, " ");
        }

        string[] unknown = [.. Token().Matches(prose).Select(m => Plain(m.Value)).Where(t => !IsKnown(t)).Distinct()];
        Assert.True(unknown.Length == 0, $"In the prose and not in the JSON: {string.Join("; ", unknown)}\n{prose}");

        // The minutes of one act are written without hours, however many.
        bool IsKnown(string token) => forms.Contains(token) || forms.Contains(token.Replace(" min", "", StringComparison.Ordinal));
    }

    private static void Collect(JsonElement element, HashSet<string> forms)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var member in element.EnumerateObject())
                {
                    Collect(member.Value, forms);
                }

                break;
            case JsonValueKind.Array:
                // How many there are may be said too.
                forms.Add(element.GetArrayLength().ToString(CultureInfo.InvariantCulture));
                foreach (var entry in element.EnumerateArray())
                {
                    Collect(entry, forms);
                }

                break;
            case JsonValueKind.Number:
                forms.UnionWith(Forms(element.GetDouble()));
                break;
            case JsonValueKind.String:
                forms.UnionWith(Token().Matches(Plain(element.GetString()!)).Select(m => m.Value));
                break;
        }
    }

    /// <summary>Every way in which the command line writes a number.</summary>
    private static IEnumerable<string> Forms(double number)
    {
        string[] plain = ["0", "0.#", "0.0", "0.0#", "0.00", "0.##", "0.####", "#,0", "#,0.#", "#,0.00"];
        var length = Length.FromMm(number);
        int clock = (int)(Math.Round(number / 5) * 5);
        double tenths = number < 100 ? Math.Round(number, 1) : Math.Round(number);
        return plain.Select(f => number.ToString(f, CultureInfo.InvariantCulture))
            .Append(tenths.ToString("#,0.#", CultureInfo.InvariantCulture))
            .Concat(new[] { length.InMillimetres(), length.InMetres(), length.InInches(), Words.Metres(number), Words.Duration(number) }
                .Select(s => s.English))
            .Append(string.Create(CultureInfo.InvariantCulture, $"{clock / 60}:{clock % 60:00} h"))
            .SelectMany(t => Token().Matches(Plain(t)).Select(m => m.Value));
    }

    private static string Plain(string text) => Blanks().Replace(text, " ");

    [GeneratedRegex(@"\d+:\d\d h|\d+\s+h\b(\s+\d+\s+min)?|\d+\s+min\b|(\d+\s+)?\d+/\d+|\d+(,\d{3})*(\.\d+)?")]
    private static partial Regex Token();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
