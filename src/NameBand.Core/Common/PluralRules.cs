using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Globalization;
using System.Text.Json;

namespace NameBand.Common;

/// <summary>
/// Which plural a number takes in a language, by Unicode's own table: <c>plurals.json</c> of CLDR 48, unchanged, read as UTS 35, part 3,
/// “Plural rules syntax”, says.
/// </summary>
internal static class PluralRules
{
    private const string Prefix = "pluralRule-count-";

    private static readonly Lazy<FrozenDictionary<string, (string Category, string Rule)[]>> Table = new(Read);

    private static readonly ConcurrentDictionary<string, (string Category, string Rule)[]> ByCulture = new(StringComparer.Ordinal);

    public static IEnumerable<(string Language, string Category, string Rule)> All =>
        Table.Value.SelectMany(l => l.Value.Select(r => (l.Key, r.Category, r.Rule)));

    public static string CategoryOf(string culture, double count) =>
        CategoryOf(culture, Math.Round((decimal)Math.Abs(count), 6) / 1.000000000000000000000000000000000m);

    /// <param name="count">With as many decimals as are shown, which some languages ask for: 1.0 is not 1.</param>
    public static string CategoryOf(string culture, decimal count)
    {
        foreach (var (category, rule) in ByCulture.GetOrAdd(culture, RulesOf))
        {
            if (Holds(rule, count))
            {
                return category;
            }
        }

        return "other";
    }

    private static (string Category, string Rule)[] RulesOf(string culture)
    {
        for (string name = culture; name.Length > 0; name = name[..Math.Max(0, name.LastIndexOf('-'))])
        {
            if (Table.Value.TryGetValue(name, out var rules))
            {
                return rules;
            }
        }

        return [];
    }

    private static bool Holds(string rule, decimal count) =>
        rule.Split('@')[0].Trim() is { Length: > 0 } condition
        && condition.Split(" or ").Any(either => either.Split(" and ").All(relation => Relates(relation.Trim(), count)));

    /// <summary>Such as <c>n % 100 = 3..10,103</c> or <c>v != 0</c>.</summary>
    private static bool Relates(string relation, decimal count)
    {
        bool isNegated = relation.Contains("!=", StringComparison.Ordinal);
        string[] sides = relation.Split(isNegated ? "!=" : "=", StringSplitOptions.TrimEntries);
        string[] operand = sides[0].Split('%', StringSplitOptions.TrimEntries);
        decimal value = ValueOf(operand[0], count);
        if (operand.Length > 1)
        {
            value %= Whole(operand[1]);
        }

        bool isIn = sides[1].Split(',').Any(range => range.Split("..") is [var low, var high]
            ? value >= Whole(low) && value <= Whole(high) && value == decimal.Truncate(value) : value == Whole(range));
        return isIn != isNegated;
    }

    /// <summary>The operands of UTS 35; numbers here are never written in compact form, so c and e are 0.</summary>
    private static decimal ValueOf(string operand, decimal count)
    {
        string decimals = count.ToString(CultureInfo.InvariantCulture).Split('.') is [_, var after] ? after : "";
        string trimmed = decimals.TrimEnd('0');
        return operand switch
        {
            "n" => count,
            "i" => decimal.Truncate(count),
            "v" => decimals.Length,
            "w" => trimmed.Length,
            "f" => decimals.Length == 0 ? 0 : Whole(decimals),
            "t" => trimmed.Length == 0 ? 0 : Whole(trimmed),
            _ => 0,
        };
    }

    private static decimal Whole(string digits) => decimal.Parse(digits.Trim(), NumberStyles.None, CultureInfo.InvariantCulture);

    private static FrozenDictionary<string, (string Category, string Rule)[]> Read()
    {
        using var stream = typeof(PluralRules).Assembly.GetManifestResourceStream("NameBand.Common.plurals.json")!;
        using var json = JsonDocument.Parse(stream);
        return json.RootElement.GetProperty("supplemental").GetProperty("plurals-type-cardinal").EnumerateObject().ToFrozenDictionary(
            l => l.Name, l => l.Value.EnumerateObject().Select(r => (r.Name[Prefix.Length..], r.Value.GetString()!)).ToArray(),
            StringComparer.Ordinal);
    }
}
