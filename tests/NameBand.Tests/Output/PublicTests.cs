using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Output.Public;
using NameBand.Stitching;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>The page for supporters shows who said yes to it, and gives away nothing else.</summary>
public sealed partial class PublicTests(PublicSample sample) : IClassFixture<PublicSample>
{
    [Fact]
    public void Only_names_whose_owners_said_yes_are_shown()
    {
        Assert.Equal(PublicSample.Shown.Order(StringComparer.Ordinal), Names("name").Order(StringComparer.Ordinal));
        Assert.Equal(PublicSample.Shown.Length, sample.Report.Shown);

        // Said no: Bo, Fern; doubtful: Ewan, and Una, of whom a second row says no. Not asked: Dara.
        Assert.Equal((4, 1), (sample.Report.Refusing, sample.Report.Unanswered));
        var asked = sample.Report.Problems.Where(p => p.Severity == Severity.NeedsPerson).Select(p => p.Where.Name).ToList();
        Assert.Equal(["Ewan Pellow", "Fern Alder", "Una Brook"], asked.Order(StringComparer.Ordinal));
        Assert.Equal(ExitStatus.NeedsPerson, sample.Report.Status);
    }

    [Fact]
    public void The_wish_for_the_web_says_nothing_of_the_garment()
    {
        var sewn = sample.Made.Plan!.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text).ToList();
        Assert.Contains("Bo Reed", sewn);
        Assert.Contains("Fern Alder", sewn);
        Assert.DoesNotContain("Gil Otter", sewn);
        Assert.DoesNotContain(sewn, n => n.Contains("Sluice", StringComparison.Ordinal));
    }

    /// <summary>Every file of the folder is searched, as it lies and with JSON's and HTML's escapes undone.</summary>
    [Fact]
    public void No_byte_gives_away_another_name_an_address_or_a_remark()
    {
        string[] files = Directory.GetFiles(sample.Report.Folder!, "*", SearchOption.AllDirectories);
        Assert.Equal(3 + PublicSample.Shown.Length, files.Length);
        Assert.All(files, file =>
        {
            string text = Encoding.UTF8.GetString(File.ReadAllBytes(file));
            foreach (string seen in new[] { text, Escape().Replace(text, m => ((char)Convert.ToInt32(m.Value[2..], 16)).ToString()),
                System.Net.WebUtility.HtmlDecode(text) })
            {
                Assert.All(PublicSample.Private, p => Assert.DoesNotContain(p, seen, StringComparison.OrdinalIgnoreCase));
            }
        });
    }

    [Fact]
    public void The_page_fetches_nothing_and_no_name_ends_its_script()
    {
        string page = sample.Text("index.html");
        Assert.DoesNotMatch("(?i)https?:|src=|@import|url\\(|fetch\\(|XMLHttp|sendBeacon|localStorage|cookie", page);
        var scripts = Script().Matches(page);
        Assert.Equal(2, scripts.Count);
        Assert.Equal((2, 2), (Regex.Count(page, "(?i)<script"), Regex.Count(page, "(?i)</script")));
        string policy = Policy().Match(page).Groups[1].Value;
        Assert.StartsWith("default-src 'none'; base-uri 'none'; form-action 'none';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Contains(HashOf(scripts[1].Groups[1].Value), policy, StringComparison.Ordinal);
        Assert.Contains(
            HashOf(Regex.Match(page, "<style>(.*?)</style>", RegexOptions.Singleline).Groups[1].Value), policy, StringComparison.Ordinal);
        using var data = JsonDocument.Parse(scripts[0].Groups[1].Value);
        Assert.Contains(
            data.RootElement.GetProperty("names").EnumerateArray(), n => n.GetProperty("t").GetString() == PublicSample.Hostile);
        Assert.Contains("<h1><bdi>Lantern &lt;walk&gt;</bdi></h1>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Places_and_colours_are_those_of_the_plan()
    {
        using var places = JsonDocument.Parse(sample.Text("places.json"));
        Assert.Equal("#3a2b20", places.RootElement.GetProperty("cloth").GetString());
        var plan = sample.Made.Plan!.Rounds.SelectMany(r => r.Names).ToDictionary(n => n.Lettered.Name.Text, StringComparer.Ordinal);
        foreach (var place in places.RootElement.GetProperty("names").EnumerateArray())
        {
            var name = plan[place.GetProperty("name").GetString()!];
            Assert.Equal(name.StartMm, place.GetProperty("fromStartMm").GetDouble(), 0.001);
            Assert.Equal("#ffd700", place.GetProperty("thread").GetString());
            string picture = sample.Text(place.GetProperty("picture").GetString()!);
            Assert.Contains("fill=\"#3a2b20\"", picture, StringComparison.Ordinal);
            Assert.Contains("stroke=\"#ffd700\"", picture, StringComparison.Ordinal);
            Assert.NotNull(System.Xml.Linq.XDocument.Parse(picture).Root);
        }
    }

    /// <summary>1,000 names are to stay under 10 MB: at 9 mm, in a face that is sewn as satin, each under 10 kB with its place.</summary>
    [Fact]
    public void A_name_takes_less_than_its_share_of_the_page() =>
        Assert.True(sample.Report.PageBytes < 12_000 + (PublicSample.Shown.Length * 9_000), $"{sample.Report.PageBytes}");

    [Fact]
    public void Stitches_come_back_from_their_bytes()
    {
        NeedleStep Stitch(double x, double y, StitchKind kind = StitchKind.Satin) => new(NeedleAction.Stitch, kind, new Point(x, y));
        var path = new NeedlePath([
            new(NeedleAction.Jump, StitchKind.None, new Point(1, 1)), Stitch(1, 1), Stitch(2, 3), Stitch(2.5, 3, StitchKind.Underlay),
            Stitch(1.5, 2),
            new(NeedleAction.Jump, StitchKind.None, new Point(20, 2)), Stitch(20, 2), Stitch(20, 11),
            new(NeedleAction.End, StitchKind.None, new Point(20, 11))]);
        var seen = new List<(int X, int Y, bool IsStitch)>();
        byte[] bytes = PackedStitches.Of(path);
        var at = (X: 0, Y: 0);
        for (int i = 0; i < bytes.Length;)
        {
            bool isFar = bytes[i] == 0x80;
            at = isFar ? (at.X + BitConverter.ToInt16(bytes, i + 2), at.Y + BitConverter.ToInt16(bytes, i + 4))
                : (at.X + (sbyte)bytes[i], at.Y + (sbyte)bytes[i + 1]);
            seen.Add((at.X, at.Y, !isFar || bytes[i + 1] == 1));
            i += isFar ? 6 : 2;
        }

        Assert.Equal(
            [(20, -20, false), (20, -20, true), (40, -60, true), (50, -60, false), (30, -40, true), (400, -40, false), (400, -40, true),
            (400, -220, true)], seen);
    }

    /// <summary>The no stands in a line that says neither row nor state rightly.</summary>
    [Fact]
    public void A_later_no_takes_a_name_off_and_what_cannot_be_read_shows_nobody()
    {
        using var job = new TemporaryFolder().With("job.json", PublicSample.Job("9 mm"))
            .With("names.csv", "Name,Show on the web?\nAda Marsh,yes\nBo Reed,yes\n");
        Assert.InRange(CliRun.Of("make", job.FullPath).Status, 0, 1);
        Assert.Equal(0, CliRun.Of("public", job.FullPath).Status);
        Assert.Equal(2, Pictures(job));

        job.With("approvals.csv", "list,line,name,state,web\n,,ada marsh,agred,NO\n");
        Assert.Equal(1, Bander.Public(job.FullPath).Shown);
        Assert.DoesNotContain(
            "Ada", string.Concat(Directory.GetFiles(job["public"], "*", SearchOption.AllDirectories).Select(File.ReadAllText)),
            StringComparison.Ordinal);
        Assert.Equal(1, Pictures(job));

        job.With("approvals.csv", "list;row;who;web\nnames.csv;2;Ada Marsh;no\n");
        Assert.Equal(2, CliRun.Of("public", job.FullPath).Status);
        Assert.Equal(1, Pictures(job));

        job.With("approvals.csv", "").With("job.json", PublicSample.Job("8 mm"));
        var stale = CliRun.Of("public", job.FullPath);
        Assert.Equal(2, stale.Status);
        Assert.Contains("Run make first, then public again.", stale.ErrorsOnOneLine, StringComparison.Ordinal);
    }

    private static int Pictures(TemporaryFolder job) => Directory.GetFiles(job["public/pictures"]).Length;

    private string[] Names(string key)
    {
        using var places = JsonDocument.Parse(sample.Text("places.json"));
        return [.. places.RootElement.GetProperty("names").EnumerateArray().Select(n => n.GetProperty(key).GetString()!)];
    }

    private static string HashOf(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";

    [GeneratedRegex(@"\\u[0-9a-fA-F]{4}")]
    private static partial Regex Escape();

    [GeneratedRegex("<script[^>]*>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Script();

    [GeneratedRegex("Content-Security-Policy\" content=\"([^\"]*)\"")]
    private static partial Regex Policy();
}
