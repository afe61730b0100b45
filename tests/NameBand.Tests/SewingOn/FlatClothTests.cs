using System.Globalization;
using NameBand.Garment;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>The needle sees flat cloth: field, spare and the places on paper are judged on it.</summary>
public class FlatClothTests
{
    [Theory]
    [InlineData(0.03, 0, 1)]
    [InlineData(0.03, 5, 1)]
    [InlineData(0.05, 5, 1)]
    [InlineData(0.03, 5, 2)]
    [InlineData(0, 5, 1)]
    public void The_needle_stays_within_the_field_less_its_spare(double shortening, double spareMm, int lanes)
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings(
            FormattableString.Invariant($"\"rounds\": 1, \"lanes\": {lanes}, \"shortening\": {shortening}"),
            FormattableString.Invariant($", \"hoop\": {{ \"along\": \"100 mm\", \"across\": \"100 mm\", \"spare\": \"{spareMm} mm\" }}"),
            ", \"height\": \"6 mm\"");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var read = new ClothReading(job["out"]);
        Assert.Equal(SewnJob.TenNames.Length, read.Placed.Count);
        Assert.Empty(read.Faults(job.Folder, [], (100, 100, spareMm), 17.4));
    }

    [Fact]
    public void The_worksheet_says_where_a_segment_ends_on_the_flat_cloth()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings("\"rounds\": 1, \"shortening\": 0.05");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var segments = job.Plan().GetProperty("rounds")[0].GetProperty("segments").EnumerateArray()
            .ToDictionary(
                s => s.GetProperty("number").GetInt32(),
                s => (Start: s.GetProperty("startMm").GetDouble(), Length: s.GetProperty("lengthMm").GetDouble()));
        string[][] rows = [.. File.ReadAllLines(job["out/worksheet.csv"]).Select(l => l.TrimStart('\ufeff').Split(','))];
        int Column(string name) => Array.IndexOf(rows[0], name);
        Assert.Equal(segments.Count, rows.Length - 1);
        Assert.All(rows.Skip(1), row =>
        {
            var (start, length) = segments[int.Parse(row[Column("segment")], CultureInfo.InvariantCulture)];
            double from = double.Parse(row[Column("cloth_start_mm")], CultureInfo.InvariantCulture);
            Assert.Equal(80 + (start / 0.95), from, 0.06);
            Assert.Equal(row[Column("on_cloth_mm")], row[Column("cloth_start_mm")]);
            Assert.Equal(length / 0.95, double.Parse(row[Column("cloth_end_mm")], CultureInfo.InvariantCulture) - from, 0.11);
        });
    }

    [Fact]
    public void Cloth_and_strip_are_each_others_reverse()
    {
        var flat = new FlatCloth(0.04);
        Assert.Equal(100, flat.OnClothMm(96), 9);
        Assert.Equal(96, flat.FinishedMm(100), 9);
        Assert.Equal(90, FlatCloth.FieldMm(100, 5), 9);
    }
}
