using System.Globalization;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using NameBand.Reports;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>A latecomer too tall or too wide at the settled height: what is told makes the name fit, and nothing larger does.</summary>
public partial class OversizedLatecomerTests
{
    private const string TallMarks = "ทั้งนี้ปู่ญี่";

    [Theory]
    [InlineData(TallMarks, "too tall for the strip", "")]
    [InlineData("Wilhelmina Bartholomew", "too wide for one hooping", "")]
    [InlineData("Wilhelmina Bartholomew", "too wide for one hooping", "\"columns\": { \"group\": \"Gift\" }, "
        + "\"groups\": [ { \"name\": \"patrons\", \"from\": 100, \"heightFactor\": 1.2 } ], ")]
    public void What_is_told_of_its_size_makes_it_fit_and_the_next_step_does_not(string late, string why, string more)
    {
        using var folder = Sewn(more, late);
        string told = Held(folder);
        Assert.Contains(why, told, StringComparison.OrdinalIgnoreCase);
        double factor = double.Parse(Factor().Match(told).Groups[1].Value, CultureInfo.InvariantCulture);

        Wish(folder, late, factor, more);
        var fitting = Bander.Make(folder.FullPath);
        Assert.All(fitting.Names!.Rows, r => Assert.Equal(RowOutcome.Placed, r.Outcome));
        Assert.Equal(3, fitting.Plan!.Rounds.Sum(r => r.Names.Count()));

        Wish(folder, late, factor + 0.05, more);
        Assert.Contains($"\"heightFactor\": {Number(factor)} ", Held(folder), StringComparison.Ordinal);
    }

    /// <summary>Letters that would be too small to sew, and those that a machine has, are not offered smaller.</summary>
    [Theory]
    [InlineData("Wilhelmina Bartholomew of the Mill", "")]
    [InlineData("Wilhelmina Bartholomew of the Mill", "\"columns\": { \"group\": \"Gift\" }, "
        + "\"groups\": [ { \"name\": \"patrons\", \"from\": 100, \"heightFactor\": 0.7 } ], ")]
    [InlineData("Wilhelmina Bartholomew",
        "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\", \"7 mm\"], \"hooped\": true }, ")]
    public void A_shorter_form_is_asked_for_where_smaller_letters_do_not_do(string late, string more)
    {
        using var folder = Sewn(more, late);
        string told = Held(folder);
        Assert.Contains("Agree a shorter form with its owner", told, StringComparison.Ordinal);
        Assert.DoesNotContain("heightFactor", told, StringComparison.Ordinal);
    }

    private static TemporaryFolder Sewn(string more, string late)
    {
        var folder = new TemporaryFolder().With("names.csv", "Name,Gift\nOttilie Marsh,120\nBram Penhale,5\n").With("job.json", Job(more, ""));
        var made = Bander.Make(folder.FullPath);
        Assert.Equal(2, made.Plan!.Rounds.Sum(r => r.Names.Count()));
        bool isKeyed = more.Contains("machineLetters", StringComparison.Ordinal);
        var word = isKeyed ? new SewingWord(0, SewingDeed.Sewn, When: "2026-11-25T20:00") { Names = (1, 1) }
            : new SewingWord(1, SewingDeed.Sewn, When: "2026-11-25T20:00");
        Assert.DoesNotContain(
            Bander.Sewn(folder.FullPath, null, word, () => { }).Problems, p => p.Severity == Severity.CannotUse);
        return folder.With("names.csv", $"Name,Gift\nOttilie Marsh,120\nBram Penhale,5\n{late},150\n");
    }

    private static void Wish(TemporaryFolder folder, string name, double factor, string more) => folder.With(
        "job.json", Job(more, $"\"names\": [ {{ \"name\": \"{name}\", \"heightFactor\": {Number(factor)} }} ], "));

    private static string Number(double factor) => factor.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Job(string more, string wishes) => $$"""
        { "format": 1, "lists": ["names.csv"], "hem": { "length": "1200 mm", "turn": 0 }, "hoop": { "along": "140 mm" }, {{more}}{{wishes}}
          "strip": { "cutWidth": "36 mm", "turnIn": "8 mm" } }
        """;

    private static string Held(TemporaryFolder folder)
    {
        var row = Assert.Single(Bander.Make(folder.FullPath).Names!.Rows, r => r.Outcome != RowOutcome.Placed);
        Assert.Equal((RowOutcome.Held, 4), (row.Outcome, row.Row.Line));
        return row.Reason.English;
    }

    [GeneratedRegex("\"heightFactor\": (0\\.\\d+) for it")]
    private static partial Regex Factor();
}
