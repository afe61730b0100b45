using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

public class JobReaderTests
{
    private const string Least = """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m" } }""";

    [Fact]
    public void The_least_job_gets_every_default()
    {
        var job = Read(Least);

        Assert.Equal(["names.csv"], job.Lists.AsEnumerable());
        Assert.Equal(Way.NeedlePath, Assert.Single(job.Ways));
        Assert.Equal(3660, Assert.Single(job.Hem.Lengths).Mm);
        Assert.Null(job.Hem.Skirt);
        Assert.Null(job.Hem.Turn);
        Assert.True(job.Hem.Closed);
        Assert.Equal((25.4, 6.0), (job.Hem.Overlap.Mm, job.Hem.Tolerance.Mm));
        Assert.Equal((50.8, 12.7, 4.0), (job.Strip.CutWidth.Mm, job.Strip.TurnIn.Mm, job.Strip.Margin.Mm));
        Assert.True(job.Strip.SewnBeforeCutting);
        Assert.Equal(0.01, job.Strip.Shortening);
        Assert.Equal(1, job.Strip.Rounds);
        Assert.Equal(3.0, job.Strip.Lift.Mm);
        Assert.Null(job.Strip.RoundStep);
        Assert.Equal((GarmentSide.Outside, Reader.Viewer), (job.Strip.Side, job.Strip.ReadBy));
        Assert.Equal(
            new LetteringSettings("Nunito Bold", null, Length.FromMm(6), null, true, NameOrder.Listed, "und"), job.Lettering);
        Assert.Equal((160.0, 100.0, 5.0), (job.Hoop.Along.Mm, job.Hoop.Across.Mm, job.Hoop.Spare.Mm));
        Assert.Equal("quilting cotton", job.Fabric);
        Assert.Equal(new MachineSettings(600, 1, 7, 40, 60), job.Machine);
        Assert.Equal(new HandSettings(4.5, 0.75, 0.5, 2, 2, 1.25, 3, 2.5, 3, 6, 0.1), job.Hands);
    }

    [Fact]
    public void Every_key_is_read()
    {
        var job = Read("""
            {
              "format": 1, "title": "Lantern walk", "way": "traced", "lists": ["names.csv", "sub\\late.csv"],
              "columns": { "name": "Shown as", "leaveOut": "Private" },
              "hem": { "length": ["3.66 m", 3600], "turn": 0.75, "closed": false, "overlap": "2 cm", "tolerance": 3 },
              "strip": { "cutWidth": "60 mm", "turnIn": "1 cm", "margin": 5, "sewn": "afterCutting", "shortening": 0.015,
                         "rounds": 2, "lift": 4, "roundStep": "2 in", "side": "inside", "readBy": "wearer" },
              "lettering": { "face": "Lato Bold", "height": "9 mm", "least": 7, "gap": "1/2 in", "spread": false,
                             "order": "alphabetical", "collation": "sv" },
              "hoop": { "along": "20 cm", "across": "14 cm", "spare": "1/4 in" },
              "fabric": "silk",
              "machine": { "stitchesPerMinute": 400, "secondsPerJump": 0.5, "secondsPerTrim": 8, "secondsPerStop": 30, "secondsToStart": 0 },
              "hands": { "hoopingMinutes": 8, "tearAwayMinutesPerName": 1, "clippingMinutesPerName": 2, "pressingMinutesPerMetre": 3,
                         "trimmingMinutesPerMetre": 4, "turningInMinutesPerMetre": 5, "pinningMinutesPerMetre": 6,
                         "sewingLowerEdgeMinutesPerMetre": 7, "sewingUpperEdgeMinutesPerMetre": 8, "joinMinutes": 9, "restAllowance": 0.2 }
            }
            """);

        Assert.Equal("Lantern walk", job.Title);
        Assert.Equal(Way.Traced, Assert.Single(job.Ways));
        Assert.Equal(["names.csv", "sub/late.csv"], job.Lists.AsEnumerable());
        Assert.Equal(new ColumnChoice("Shown as", "Private"), job.Columns);
        Assert.Equal([3660.0, 3600.0], job.Hem.Lengths.Select(l => l.Mm));
        Assert.Equal((0.75, false, 20.0, 3.0), (job.Hem.Turn!.Value, job.Hem.Closed, job.Hem.Overlap.Mm, job.Hem.Tolerance.Mm));
        Assert.Equal(
            new StripSettings(
                Length.FromMm(60), Length.FromMm(10), Length.FromMm(5), false, 0.015, 2, Length.FromMm(4), Length.FromMm(50.8),
                GarmentSide.Inside, Reader.Wearer)
            {
                IsShorteningTold = true,
            },
            job.Strip);
        Assert.Equal(
            new LetteringSettings("Lato Bold", Length.FromMm(9), Length.FromMm(7), Length.FromMm(12.7), false, NameOrder.Alphabetical, "sv")
            {
                IsFaceNamed = true,
            },
            job.Lettering);
        Assert.Equal(new HoopSettings(Length.FromMm(200), Length.FromMm(140), Length.FromMm(6.35)), job.Hoop);
        Assert.Equal("silk", job.Fabric);
        Assert.Equal(new MachineSettings(400, 0.5, 8, 30, 0), job.Machine);
        // Keys of before that are written take in what later keys tell apart.
        Assert.Equal(
            new HandSettings(
                8, 1, 2, 3, 4, 5, 6, 7, 8, 9, 0.2)
            { FirstHoopingsMinutes = 8, SecondsPerSnip = 0, TearAwayMinutesPerMetre = null },
            job.Hands);
    }

    [Fact]
    public void A_skirt_takes_the_place_of_a_measured_hem()
    {
        var job = Read("""
            { "format": 1, "lists": ["names.csv"], "strip": { "rounds": "asNeeded" },
              "hem": { "skirt": { "turn": 0.75, "waist": "70 cm", "length": "60 cm" } } }
            """);

        Assert.Equal(new SkirtSettings(0.75, Length.FromMm(700), Length.FromMm(600), Length.FromMm(0)), job.Hem.Skirt);
        Assert.Empty(job.Hem.Lengths);
        Assert.Null(job.Strip.Rounds);
    }

    [Theory]
    [InlineData("\"asNeeded\"", "0", null)]
    [InlineData("3", "0.75", 3)]
    public void Rounds_with_one_measured_length_and_a_turn(string rounds, string turn, int? expected)
    {
        var job = Read($$"""
            { "format": 1, "lists": ["names.csv"], "strip": { "rounds": {{rounds}} }, "hem": { "length": 3660, "turn": {{turn}} } }
            """);

        Assert.Equal(expected, job.Strip.Rounds);
    }

    [Fact]
    public void The_title_is_the_folders_name_where_none_is_given()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nAda\n").With(JobReader.FileName, Least);

        Assert.Equal(Path.GetFileName(folder.FullPath), JobReader.Read(folder.FullPath).Value!.Title);
        Assert.Equal(
            folder.FullPath,
            JobReader.Read(folder.FullPath + Path.DirectorySeparatorChar).Value!.Folder.TrimEnd(Path.DirectorySeparatorChar));
    }

    [Fact]
    public void The_path_of_the_file_itself_does_for_the_folder()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nAda\n").With(JobReader.FileName, Least);

        Assert.Equal(folder.FullPath, JobReader.Read(folder[JobReader.FileName]).Value!.Folder);
    }

    [Fact]
    public void A_missing_format_is_read_as_1_and_said()
    {
        var result = ReadAll("""{ "lists": ["names.csv"], "hem": { "length": "3.66 m" } }""");

        Assert.True(result.IsUsable);
        Assert.Equal(Severity.Note, Assert.Single(result.Problems).Severity);
    }

    [Fact]
    public void Windows_line_ends_and_a_byte_order_mark_change_nothing()
    {
        string text = Least.Replace(", ", ",\r\n", StringComparison.Ordinal);
        Assert.Empty(ReadBytes([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text)]).Problems);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void UTF_16_is_read_with_a_note(bool isBig)
    {
        var encoding = new UnicodeEncoding(isBig, byteOrderMark: true);
        var result = ReadBytes([.. encoding.GetPreamble(), .. encoding.GetBytes(Least)]);

        Assert.True(result.IsUsable);
        Assert.Contains("UTF-16", Assert.Single(result.Problems).Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            var job = Read("""{ "format": 1, "lists": ["names.csv"], "hem": { "length": 3660.5 }, "strip": { "shortening": 0.015 } }""");
            Assert.Equal((3660.5, 0.015), (job.Hem.Lengths[0].Mm, job.Strip.Shortening));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    internal static Result<BandJob> ReadAll(string json) => ReadBytes(Encoding.UTF8.GetBytes(json));

    private static BandJob Read(string json)
    {
        var result = ReadAll(json);
        Assert.Empty(result.Problems);
        return result.Value!;
    }

    private static Result<BandJob> ReadBytes(byte[] json)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name\nAda\n").With("sub/late.csv", "Name\nBo\n").With(JobReader.FileName, json);
        return JobReader.Read(folder.FullPath);
    }
}
