using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>What is wished for single names, from job.json to the plan, before anything is sewn and after.</summary>
public class NameWishTests
{
    private static string Wishes(string wishes, string more = "") => $", \"names\": [{wishes}]{more}";

    private static (string Text, double MiddleMm, double? HeightMm, string? Face)[] Names(SewnJob job) =>
    [
        .. job.Plan().GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .SelectMany(s => s.GetProperty("names").EnumerateArray()).OrderBy(n => n.GetProperty("startMm").GetDouble()).Select(n => (
                n.GetProperty("text").GetString()!, n.GetProperty("startMm").GetDouble() + (n.GetProperty("widthMm").GetDouble() / 2),
                n.TryGetProperty("letterHeightMm", out var height) ? height.GetDouble() : (double?)null,
                n.TryGetProperty("face", out var face) ? face.GetString() : null)),
    ];

    private static IEnumerable<string> About(MakeReport report) => report.Problems.Where(p => p.Where.Key == "names").Select(
        p => $"{p.Where.Name}: {p.Found}");

    [Fact]
    public void A_name_is_larger_in_another_face_and_pinned_and_once_sewn_it_stays_whatever_is_wished()
    {
        using var job = new SewnJob(SewnJob.TenNames[..6]);
        job.Settings("", Wishes(
            """{ "name": "Jo Marsh", "heightFactor": 1.2, "face": "Vollkorn Bold", "at": "centreFront" }, """
                + """{ "name": "Nia Yeo", "after": "Bo Reed" }, { "name": "Nia Yoe", "heightFactor": 2 }"""));
        var made = job.Make();
        Assert.Equal(["Nia Yoe: Something is wished for this name, and no row of the lists has it."], About(made));
        Assert.Contains("“Nia Yeo”", made.Problems.Single(p => p.Where.Name == "Nia Yoe").Mend.English, StringComparison.Ordinal);
        double height = job.Plan().GetProperty("letterHeightMm").GetDouble();
        var names = Names(job);
        Assert.Equal(["Bo Reed", "Nia Yeo", "Ilse Varga", "Jo Marsh", "Tobiah Quill", "Wenna Tregear"], names.Select(n => n.Text));
        var jo = names[3];
        Assert.Equal(450, jo.MiddleMm, 1.0);
        Assert.Equal(1.2 * height, jo.HeightMm!.Value, 0.001);
        Assert.Equal("Vollkorn Bold", jo.Face);
        Assert.All(names.Where(n => n.Text != "Jo Marsh"), n => Assert.Equal((null, null), (n.HeightMm, n.Face)));

        int hooping = job.Plan().GetProperty("hoopings").EnumerateArray().First(h => h.GetProperty("segments").EnumerateArray()
            .Any(s => SegmentNames(job, s.GetProperty("number").GetInt32()).Contains("Jo Marsh"))).GetProperty("number").GetInt32();
        job.Say(hooping);
        byte[] sewn = job.Path(hooping);
        job.Settings("", Wishes(
            """{ "name": "Jo Marsh", "heightFactor": 0.8, "at": "100 mm" }, { "name": "Wenna Tregear", "heightFactor": 0.8 }"""));
        made = job.Make();
        Assert.Equal(
            [
                "Jo Marsh: Other letters are wished for this name, and it is sewn: its letters stay as they are.",
                $"Jo Marsh: It was wished at 100 mm and stands {Length.FromMm(jo.MiddleMm - 100).InMillimetres()} beside it. It is "
                    + $"sewn and stays where it is.",
            ],
            About(made));
        Assert.Equal(sewn, job.Path(hooping));
        var again = Names(job);
        Assert.Equal(jo, again.Single(n => n.Text == "Jo Marsh"));
        Assert.Equal(0.8 * height, again.Single(n => n.Text == "Wenna Tregear").HeightMm!.Value, 0.001);
        Assert.Equal(6, again.Length);
    }

    [Fact]
    public void A_keyed_name_gets_the_nearest_height_of_the_machine_and_its_place()
    {
        using var job = new NamedJob(
            "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\", \"6 mm\"], \"holds\": \"any\" }, \"lettering\": "
                + "{ \"height\": \"6 mm\" }, "
                + "\"names\": [{ \"name\": \"Ada Willowby\", \"heightFactor\": 1.4, \"at\": \"500 mm\" }]");
        var made = job.Make();
        Assert.Equal(["It gets letters 9 mm high: its heightFactor 1.4 asks for 8.4 mm, and the machine has 9 mm and 6 mm."],
            made.Problems.Where(p => p.Where.Key == "names").Select(p => p.Found));
        var (_, start, width) = job.Places()["Ada Willowby"];
        Assert.Equal(500, start + (width / 2), 1.0);
        Assert.Equal(1, made.Problems.Count(p => p.Where.Key == "names"));
    }

    [Theory]
    [InlineData("""{ "nam": "Bo Reed" }""", "Did you mean name?")]
    [InlineData("""{ "name": "Bo Reed", "heightFactor": 9 }""", "from 0.3 to 3")]
    [InlineData("""{ "name": "Bo Reed", "at": "somewhere" }""", "centreFront")]
    [InlineData("""{ "name": "Bo Reed", "after": "Jo Marsh", "before": "Nia Yeo" }""", "Keep one of the two")]
    [InlineData("""{ "name": "Bo Reed", "after": "Jo Marsh", "at": 50 }""", "Keep one of the two")]
    [InlineData("""{ "name": "Bo Reed" }, { "name": "Bo Reed" }""", "\"line\"")]
    [InlineData("""{ "name": "Bo Reed", "face": "No Such Face" }""", "No Such Face")]
    [InlineData("""3""", "names takes a list of names")]
    public void What_cannot_be_wished_is_refused_in_words(string wishes, string said)
    {
        using var job = new SewnJob("Bo Reed", "Jo Marsh", "Nia Yeo");
        job.Settings("", Wishes(wishes));
        var made = job.Make();
        Assert.False(File.Exists(job["out/plan.json"]));
        Assert.Contains(made.Problems, p => p.Severity == Severity.CannotUse && (p.Found + p.Mend).English.Contains(
            said, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_names_written_alike_the_row_says_which_and_a_corrected_name_keeps_its_wish()
    {
        using var job = new SewnJob("Bo Reed", "Jo Marsh", "Jo Marsh", "Nia Yeo");
        File.WriteAllText(job["corrections.csv"],
            "list,line,was,decision,text,why\nnames.csv,4,Jo Marsh,keep,,two people\nnames.csv,5,Nia Yeo,change,Nia Yeoh,asked\n");
        job.Settings("", Wishes("""{ "name": "Jo Marsh", "heightFactor": 1.2 }, { "name": "Nia Yeo", "heightFactor": 0.8 }"""));
        Assert.Equal(["Jo Marsh: Something is wished for this name, and 2 rows have it: names.csv, line 3, names.csv, line 4."], About(
            job.Make()));
        job.Settings("", Wishes("""{ "name": "Jo Marsh", "line": 4, "heightFactor": 1.2 }, { "name": "Nia Yeo", "heightFactor": 0.8 }"""));
        Assert.Empty(About(job.Make()));
        Assert.Equal([false, false, true, true], Names(job).Select(n => n.HeightMm is not null));
    }

    [Theory]
    [InlineData(", \"order\": \"bestFit\"", "", "bestFit")]
    [InlineData("", "\"lines\": 2", "two lines")]
    public void Places_do_not_go_with_an_order_that_is_free_or_with_shared_places(string lettering, string strip, string said)
    {
        using var job = new SewnJob("Bo Reed", "Jo Marsh");
        job.Settings(strip, Wishes("""{ "name": "Bo Reed", "at": "centreFront" }"""), lettering);
        Assert.Contains(
            job.Make().Problems, p => p.Severity == Severity.CannotUse && p.Found.English.Contains(said, StringComparison.Ordinal));
    }

    private static string[] SegmentNames(SewnJob job, int segment) =>
    [
        .. job.Plan().GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .Where(s => s.GetProperty("number").GetInt32() == segment).SelectMany(s => s.GetProperty("names").EnumerateArray()).Select(
                n => n.GetProperty("text").GetString()!),
    ];
}
