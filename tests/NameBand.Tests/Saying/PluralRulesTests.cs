using System.Globalization;
using NameBand.Common;
using Xunit;

namespace NameBand.Tests.Saying;

/// <summary>
/// Source: CLDR 48, supplemental/plurals.json: beside each rule stand whole and decimal numbers that fall under it (UTS 35, part 3,
/// “Samples”). A range such as 2~16 goes up by the last place that is written; compact numbers, with c, are not written here.
/// </summary>
public sealed class PluralRulesTests
{
    [Fact]
    public void Every_sample_of_every_language_falls_under_its_rule()
    {
        int tried = 0;
        foreach (var (language, category, rule) in PluralRules.All)
        {
            foreach (decimal sample in rule.Split('@').Skip(1).SelectMany(Samples))
            {
                Assert.True(
                    category == PluralRules.CategoryOf(language, sample),
                    $"{language} {sample}: {PluralRules.CategoryOf(language, sample)}, not {category}");
                tried++;
            }
        }

        Assert.True(tried > 10_000, $"only {tried} samples");
    }

    [Theory]
    [InlineData("pl", 1, "one")]
    [InlineData("pl", 22, "few")]
    [InlineData("pl-PL", 12, "many")]
    [InlineData("ja", 1, "other")]
    [InlineData("ar-EG", 3, "few")]
    [InlineData("en-XA", 1, "one")]
    [InlineData("tlh", 1, "other")]
    public void A_culture_takes_the_rules_of_its_language(string culture, int count, string category) =>
        Assert.Equal(category, PluralRules.CategoryOf(culture, (double)count));

    private static IEnumerable<decimal> Samples(string list)
    {
        foreach (string sample in list[list.IndexOf(' ', StringComparison.Ordinal)..].Split(',', StringSplitOptions.TrimEntries))
        {
            if (sample is "…" or "" || sample.Contains('c'))
            {
                continue;
            }

            string[] ends = sample.Split('~');
            decimal low = Number(ends[0]), high = Number(ends[^1]);
            decimal step = ends[0].Contains('.') ? 1 / (decimal)Math.Pow(10, ends[0].Length - ends[0].IndexOf('.') - 1) : 1;
            for (decimal at = low; at <= high; at += step)
            {
                yield return at;
            }
        }
    }

    private static decimal Number(string text) => decimal.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
}
