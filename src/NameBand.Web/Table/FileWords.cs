using System.Globalization;
using NameBand.Common;

namespace NameBand.Web.Table;

/// <summary>What a made file is, by its name: <c>work-packet-a4.pdf</c> is the work packet, on A4.</summary>
internal static class FileWords
{
    private static readonly Dictionary<string, string> Papers = new(StringComparer.Ordinal) { ["a4"] = "A4", ["letter"] = "Letter" };

    private static readonly Dictionary<string, Said> Forms = new(StringComparer.Ordinal)
    {
        [".svg"] = "as a drawing",
        [".iso"] = "as a program",
        [".csv"] = "as a table",
    };

    private static readonly Said[] Stems =
    [
        "changes", "cutting plan", "earlier marks", "hooping", "key in", "load", "maker", "name finder", "paper rehearsal", "playback",
        "proof reading", "read me first", "round", "swatch", "template", "thanks", "thanks cards", "work packet", "worksheet",
    ];

    public static Said Of(string path)
    {
        string[] parts = Path.GetFileNameWithoutExtension(path).Split('-');
        bool isPath = path.Contains("/needle-paths/", StringComparison.Ordinal);
        string? paper = parts.Length > 1 ? Papers.GetValueOrDefault(parts[^1]) : null;
        Said? form = isPath && path.EndsWith(".csv", StringComparison.Ordinal) ? null : Forms.GetValueOrDefault(Path.GetExtension(path));
        string called = string.Join(' ', parts[..^(paper is null ? 0 : 1)].Select(Part));
        return Said.Join(", ", new[] { Called(called), paper is null ? null : Said.Plain(paper), form }.OfType<Said>());
    }

    /// <summary>A file's name is English; what it has besides its number is said.</summary>
    private static Said Called(string called)
    {
        int at = called.LastIndexOf(' ') + 1;
        bool isNumbered = at > 0 && called.AsSpan(at).IndexOfAnyExceptInRange('0', '9') < 0;
        string words = isNumbered ? called[..(at - 1)] : called;
        var stem = Array.Find(Stems, s => s.English == words);
        return stem is null ? Said.Plain(called) : isNumbered ? $"{stem} {called[at..]}" : stem;
    }

    private static string Part(string part) => int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
        ? number.ToString(CultureInfo.InvariantCulture) : part;
}
