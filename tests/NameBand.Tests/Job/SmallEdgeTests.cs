using System.Text;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>A waist of 70 is 70 mm by contract, and hardly ever meant: it is questioned, and the work goes on.</summary>
public class SmallEdgeTests
{
    private const string Bare = " A number without a unit is taken as millimetres.";

    [Theory]
    [InlineData("\"length\": 70", "hem.length", "The edge is 70 mm (2 3/4 in) long, which is little for a garment." + Bare)]
    [InlineData(
        "\"length\": [\"3.66 m\", 70], \"turn\": 0.75", "hem.length",
        "The edge is 70 mm (2 3/4 in) long, which is little for a garment." + Bare, 2)]
    [InlineData("\"length\": \"299 mm\"", "hem.length", "The edge is 299 mm (11 3/4 in) long, which is little for a garment.")]
    [InlineData(
        "\"skirt\": { \"turn\": 1, \"waist\": 70, \"length\": 600 }", "hem.skirt.waist",
        "The waist is 70 mm (2 3/4 in) long, which is little for a garment." + Bare)]
    [InlineData(
        "\"skirt\": { \"turn\": 1, \"waist\": \"70 cm\", \"length\": 55 }", "hem.skirt.length",
        "The skirt from waist to hem is 55 mm (2 3/16 in) long, which is little for a garment." + Bare)]
    public void What_is_little_for_a_garment_is_questioned(string hem, string key, string found, int rounds = 1)
    {
        var read = Read(hem, rounds);

        Assert.True(read.IsUsable);
        var note = Assert.Single(read.Problems);
        Assert.Equal((Severity.Note, key, found), (note.Severity, note.Where.Key, note.Found));
        Assert.Equal(1, note.Where.Line);
        Assert.Contains("\"70 cm\"", note.Mend.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"length\": 300")]
    [InlineData("\"length\": 3660")]
    [InlineData("\"skirt\": { \"turn\": 1, \"waist\": 700, \"length\": 600, \"takenUp\": 20 }")]
    [InlineData("\"skirt\": { \"turn\": 1, \"waist\": 300, \"length\": 100 }")]
    public void What_a_garment_has_is_not(string hem) => Assert.Empty(Read(hem, 1).Problems);

    private static Result<BandJob> Read(string hem, int rounds)
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nOttilie Marsh\n");
        return JobReader.Check(folder.FullPath, Encoding.UTF8.GetBytes(
            $$"""{ "format": 1, "lists": ["names.csv"], "hem": { {{hem}} }, "strip": { "rounds": {{rounds}} } }"""));
    }
}
