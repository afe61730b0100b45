using System.Globalization;

namespace NameBand.Web.Table;

/// <summary>What a made file is, by its name: <c>work-packet-a4.pdf</c> is the work packet, on A4.</summary>
internal static class FileWords
{
    private static readonly Dictionary<string, string> Papers = new(StringComparer.Ordinal) { ["a4"] = "A4", ["letter"] = "Letter" };

    private static readonly Dictionary<string, string> Forms = new(StringComparer.Ordinal)
    {
        [".svg"] = "as a drawing",
        [".iso"] = "as a program",
        [".csv"] = "as a table",
    };

    public static string Of(string path)
    {
        string[] parts = Path.GetFileNameWithoutExtension(path).Split('-');
        bool isPath = path.Contains("/needle-paths/", StringComparison.Ordinal);
        string? paper = parts.Length > 1 ? Papers.GetValueOrDefault(parts[^1]) : null;
        string form = isPath && path.EndsWith(".csv", StringComparison.Ordinal) ? "" : Forms.GetValueOrDefault(Path.GetExtension(path), "");
        string called = string.Join(' ', parts[..^(paper is null ? 0 : 1)].Select(Part));
        return string.Join(", ", new[] { called, paper ?? "", form }.Where(p => p.Length > 0));
    }

    private static string Part(string part) => int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
        ? number.ToString(CultureInfo.InvariantCulture) : part;
}
