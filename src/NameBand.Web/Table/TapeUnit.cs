using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>Which side of the tape measure a job is written for.</summary>
internal static partial class TapeUnit
{
    /// <summary>Whether more lengths of job.json are written in inches, feet and yards than in millimetres and metres.</summary>
    public static bool IsInches(ReadOnlySpan<byte> jobFile)
    {
        int inches = 0, metric = 0;
        foreach (var card in JobKeyCard.All)
        {
            if (card.Kind == JobKeyKind.Length && JobEditing.ValueOf(jobFile, card.Path) is { } json)
            {
                foreach (string text in Texts(json).Where(t => Length.TryParse(t, out _, out _)))
                {
                    _ = EndsInInches().IsMatch(text) ? inches++ : metric++;
                }
            }
        }

        return inches > metric;
    }

    private static IEnumerable<string> Texts(string json)
    {
        using var value = JsonDocument.Parse(json);
        return value.RootElement.ValueKind switch
        {
            JsonValueKind.String => [value.RootElement.GetString()!],
            JsonValueKind.Array =>
                [.. value.RootElement.EnumerateArray().Where(e => e.ValueKind == JsonValueKind.String).Select(e => e.GetString()!)],
            _ => [],
        };
    }

    [GeneratedRegex(
        @"(in\.?|inch|inches|ft\.?|foot|feet|yd\.?|yards?|[""'″′“”’])\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex EndsInInches();
}
