using System.Text.Json;
using System.Text.RegularExpressions;
using Json.Schema;
using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>workshop.json: where it is looked for, what it answers, what is refused, and that job.json wins key by key.</summary>
public sealed partial class WorkshopTests : IDisposable
{
    private const string Least = "\"lists\": [\"names.csv\"], \"hem\": { \"length\": \"600 mm\", \"turn\": 0 }";
    private const string Two = """
        { "name": "old", "takes": ["coordinates", "hands"], "stitchesPerMinute": 450, "cutsThread": false, "watched": false,
          "frames": [ { "name": "small", "along": "120 mm", "across": "60 mm", "minutes": 3 },
                      { "name": "large", "along": "300 mm", "across": "8 in", "hold": "magnet" } ] },
        { "name": "typed", "takes": ["keys"], "letters": { "sizes": ["9 mm"], "holds": 12 } }
        """;

    private readonly TemporaryFolder _above = new();

    public WorkshopTests() => Directory.CreateDirectory(Job);

    private string Job => _above["job"];

    public void Dispose() => _above.Dispose();

    /// <summary>The first hoopings in another frame take as much longer as they do in the job's.</summary>
    [Theory]
    [InlineData(4.0, null, 4, 8)]
    [InlineData(null, null, 5, 9)]
    [InlineData(4.0, 6.0, 4, 6)]
    public void A_frame_has_its_own_minutes(double? mount, double? first, double minutes, double firstMinutes)
    {
        var job = Sample.Job with { Hands = Sample.Job.Hands with { HoopingMinutes = 5, FirstHoopingsMinutes = 9 } };
        var hands = job.In(new Frame("f", Length.FromMm(240), Length.FromMm(150), null, mount) { FirstMountMinutes = first }).Hands;
        Assert.Equal((minutes, firstMinutes), (hands.HoopingMinutes, hands.FirstHoopingsMinutes));
    }

    [Fact]
    public void Without_one_what_is_usual_is_assumed_and_nothing_is_said_of_it()
    {
        var job = Read(Least);
        Assert.Same(Workshop.Assumed, job.Value!.Workshop);
        Assert.Empty(job.Problems);
        Assert.Equal(
            (160.0, 100.0, 600.0, true),
            (job.Value.Hoop.Along.Mm, job.Value.Hoop.Across.Mm, job.Value.Machine.StitchesPerMinute, job.Value.Machine.IsWatched));
    }

    [Fact]
    public void What_it_says_holds_where_the_job_says_nothing()
    {
        Put(Job, Machines(
            Two, "\"people\": [ { \"name\": \"me\", \"evenings\": { \"monday\": \"2h\", \"friday\": \"1h\" }, \"does\": \"machine\" } ]"));
        var job = Read(Least).Value!;
        Assert.Equal(
            (450.0, false, StartingValues.SecondsPerHandCut),
            (job.Machine.StitchesPerMinute, job.Machine.IsWatched, job.Machine.SecondsPerTrim));
        Assert.Equal(("workshop.json", 90.0), (job.Workshop.File, job.EveningMinutes));
        Assert.Equal([120, 0, 0, 0, 60, 0, 0], job.Workshop.People[0].EveningMinutes.AsEnumerable());
        Assert.Equal((true, false), (job.Workshop.People[0].DoesMachine, job.Workshop.People[0].DoesHands));
        Assert.Equal(["large", "small"], job.Frames.Select(f => f.Name));
        Assert.Equal(("large", 300.0, 203.2), (job.Frame!.Name, job.Hoop.Along.Mm, job.Hoop.Across.Mm));
        Assert.Equal((FrameHold.Magnet, 1.5, 1.5), (job.Holding.Hold, job.Hands.HoopingMinutes, job.Hands.FirstHoopingsMinutes));
        var small = job.In(job.Frames[1]);
        Assert.Equal((120.0, 3.0, 5.5), (small.Hoop.Along.Mm, small.Hands.HoopingMinutes, small.Hands.FirstHoopingsMinutes));
        Assert.Equal(FrameHold.Screw, small.Holding.Hold);
        Assert.Equal(1.5, small.In(job.Frames[0]).Hands.HoopingMinutes);
    }

    [Fact]
    public void The_job_wins_key_by_key()
    {
        Put(Job, Machines(Two));
        var job = Read(Least
            + ", \"hoop\": { \"across\": \"70 mm\" }, \"machine\": { \"stitchesPerMinute\": 500 }, \"evening\": \"3h\", \"hands\": { \"hoopingMinutes\": 9 }").Value!;
        Assert.Equal((500.0, false, 180.0), (job.Machine.StitchesPerMinute, job.Machine.IsWatched, job.EveningMinutes));
        Assert.Equal((160.0, 70.0, 9.0), (job.Hoop.Along.Mm, job.Hoop.Across.Mm, job.Hands.HoopingMinutes));
        Assert.Empty(job.Frames);
        var timed = Read(Least + ", \"hands\": { \"hoopingMinutes\": 9 }").Value!;
        Assert.Equal([9, 9], timed.Frames.Select(f => f.MountMinutes!.Value));
    }

    [Fact]
    public void Letters_of_the_machine_are_those_of_a_job_that_is_typed()
    {
        Put(Job, Machines(Two));
        var job = Read("\"way\": \"machineLetters\", " + Least + ", \"letters\": { \"holds\": 20 }").Value!;
        Assert.Equal((9.0, 20), (Assert.Single(job.Letters.Sizes).Mm, job.Letters.Holds));
        var wrong = Machines("""{ "name": "typed", "takes": ["keys"], "letters": { "sizes": "9 yd", "hold": 3 } }""");
        Put(Job, wrong);
        var problems = Read("\"way\": \"machineLetters\", " + Least).Problems;
        Assert.Contains(problems, p => p.Where.File == "workshop.json" && p.Where.Key == "letters.sizes");
        Assert.Contains(problems, p => p.Where.File == "workshop.json" && p.Mend.English.Contains("letters.holds", StringComparison.Ordinal));
    }

    [Fact]
    public void The_one_above_is_shared_and_the_one_in_the_folder_is_taken_instead()
    {
        Put(_above.FullPath, Machines(Two));
        Assert.Equal("../workshop.json", Read(Least).Value!.Workshop.File);
        Put(Job, Machines("""{ "name": "new", "takes": ["coordinates"] }"""));
        var job = Read(Least).Value!;
        Assert.Equal(("workshop.json", "new", 600.0), (job.Workshop.File, job.Workshop.Machines[0].Name, job.Machine.StitchesPerMinute));
    }

    [SkippableFact]
    public void No_link_is_followed_in_the_folder_or_above()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs the right to make symbolic links");
        using var elsewhere = new TemporaryFolder();
        Put(elsewhere.FullPath, Machines(Two));
        File.CreateSymbolicLink(_above["workshop.json"], elsewhere["workshop.json"]);
        var passed = Read(Least);
        Assert.Same(Workshop.Assumed, passed.Value!.Workshop);
        Assert.Equal((Severity.Note, "../workshop.json"), (Assert.Single(passed.Problems).Severity, passed.Problems[0].Where.File));
        File.CreateSymbolicLink(Path.Combine(Job, "workshop.json"), elsewhere["workshop.json"]);
        Assert.Contains("is a link", Refusal(Read(Least)).Found.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "machines": [] }""", "no machine at all", "at least one")]
    [InlineData("""{ "people": [] }""", "no machine at all", "at least one")]
    [InlineData("""[1]""", "takes a group of keys", "Write for example")]
    [InlineData("""{ "format": 2, "machines": [] }""", "of format 2", "newer NameBand")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["keys"] }, { "name": "A", "takes": ["keys"] }] }""", "Two machines are called “A”",
        "a name of its own")]
    [InlineData("""{ "machines": [{ "name": "a", "takes": ["hands"] }], "people": [{ "name": "me", "evenings": { "tusday": "2h" } }] }""",
        "does not know the key people[1].evenings.tusday", "Did you mean tuesday?")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["hands"] }], "people": [{ "name": "me", "evenings": { "lanternday": "2h" } }] }""",
            "does not know the key people[1].evenings.lanternday", "monday, tuesday, wednesday, thursday, friday, saturday, sunday")]
    [InlineData("""{ "machines": [{ "name": "a" }] }""", "does not say what this machine takes", "\"takes\": [\"coordinates\"]")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["coordinate"] }] }""", "machines[1].takes[1] takes", "Did you mean \"coordinates\"?")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["hands"], "wached": true }] }""", "does not know the key machines[1].wached",
        "Did you mean watched?")]
    [InlineData("""{ "machines": [{ "name": "a", "takes": ["hands"], "watched": "no" }] }""", "takes true or false", "without quotes")]
    [InlineData("""{ "machines": [{ "name": "a", "takes": ["hands"], "stitchesPerMinute": 2 }] }""", "takes a number", "from 10 to 5000")]
    [InlineData("""{ "machines": [{ "takes": ["hands"] }] }""", "machines[1] has no name", "Add \"name\"")]
    [InlineData("""{ "machines": [{ "name": "a", "name": "b", "takes": ["hands"] }] }""", "a second time", "Keep one")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["coordinates"], "frames": [{ "name": "f", "along": 160, "across": 4 }] }] }""",
        "no letter fits into it", "needle can reach")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["coordinates"], "frames": [{ "name": "f", "along": 25, "across": 40 }] }] }""",
        "leaves no room for a letter", "hoop.spare")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["coordinates"], "frames": [{ "name": "f", "along": 160 }] }] }""",
        "does not say how far its field goes across", "Add \"across\"")]
    [InlineData("""{ "machines": [{ "name": "a", "takes": ["coordinates"], "frames": [{ "name": "f", "along": "6 ells", "across": 40 }] }] }""", "ells", "")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["hands"], "frames": [{ "name": "f", "along": 99, "across": 40 }] }, { "name": "b", "takes": ["hands"], "frames": [{ "name": "F", "along": 99, "across": 40 }] }] }""",
        "The machines “a” and “b” both have a frame called “F”", "a name of its own")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["hands"] }], "people": [{ "name": "me", "evenings": { "tusday": "2h" } }] }""",
        "people[1].evenings.tusday", "Did you mean tuesday?")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["hands"] }], "people": [{ "name": "me", "evenings": "2" }] }""", "is not a time",
        "\"2h\"")]
    [InlineData(
        """{ "machines": [{ "name": "a", "takes": ["hands"] }], "people": [{ "name": "me", "does": "washing" }] }""",
        "people[1].does takes", "\"machine\"")]
    [InlineData("{ \"machines\": [", "", "")]
    [InlineData("", "is empty", "remove it")]
    public void What_is_wrong_is_said_in_clear_words_and_nothing_is_made(string file, string found, string mend)
    {
        Put(Job, file);
        File.WriteAllText(Path.Combine(Job, "names.csv"), "Name\nRowan\n");
        var refusal = Refusal(Read(Least));
        Assert.Equal("workshop.json", refusal.Where.File);
        Assert.Contains(found, refusal.Found.English, StringComparison.Ordinal);
        Assert.Contains(mend, refusal.Mend.English, StringComparison.Ordinal);
        Assert.Equal(ExitStatus.CannotUse, Bander.Make(Job).Status);
        Assert.False(Directory.Exists(Path.Combine(Job, "out")));
    }

    [Fact]
    public void A_way_that_no_machine_goes_needs_a_person()
    {
        Put(Job, Machines("""{ "name": "typed", "takes": ["keys"] }"""));
        var problem = Assert.Single(Read(Least).Problems);
        Assert.Equal(Severity.NeedsPerson, problem.Severity);
        Assert.Contains("\"way\": \"machineLetters\"", problem.Mend.English, StringComparison.Ordinal);
        Assert.Empty(Read("\"way\": \"traced\", " + Least).Problems);
    }

    [Fact]
    public void What_was_used_stands_in_the_plan_and_what_was_assumed_is_told()
    {
        File.WriteAllText(Path.Combine(Job, "names.csv"), "Name\nRowan\nWillow\n");
        var told = Make();
        Assert.Equal(
            (null, 600.0, 160m, null), (told.Plan.File, told.Plan.StitchesPerMinute, told.Plan.Frame!.AlongMm, told.Plan.Frame.Name));
        Assert.NotNull(told.Assumed);
        Put(Job, told.Assumed.Line);
        var same = Make();
        Assert.Equal(
            ("workshop.json", "mine", 600.0, 160m, "frame"),
            (same.Plan.File, same.Plan.Machine, same.Plan.StitchesPerMinute, same.Plan.Frame!.AlongMm, same.Plan.Frame.Name));
        Assert.Null(same.Assumed);

        (WrittenWorkshop Plan, AssumedWorkshop? Assumed) Make()
        {
            File.WriteAllText(Path.Combine(Job, "job.json"), $"{{ \"format\": 1, {Least} }}");
            var made = Bander.Make(Job);
            return (PlanJson.Read(File.ReadAllBytes(Path.Combine(Job, "out", "plan.json"))).Workshop!, AssumedWorkshop.Of(made.Job!));
        }
    }

    /// <summary>Whoever sews all names by hand is not told of a machine that she may not have.</summary>
    [Theory]
    [InlineData("\"way\": \"traced\", \"traced\": { \"sewn\": \"byHand\" }", null)]
    [InlineData("\"way\": \"traced\"", "hands")]
    [InlineData("\"ways\": [\"needlePath\", \"traced\"], \"traced\": { \"sewn\": \"byHand\" }", "coordinates")]
    public void A_machine_is_assumed_where_one_is_needed(string way, string? takes)
    {
        var assumed = AssumedWorkshop.Of(Read($"{way}, {Least}").Value!);
        Assert.Equal(takes is not null, assumed is not null);
        Assert.Contains($"\"takes\": [\"{takes}\"]", assumed?.Line ?? "\"takes\": [\"\"]", StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_s_example_is_read_and_fits_the_published_form()
    {
        string example = Example().Match(Repository.Read("docs/workshop.md")).Groups[1].Value;
        Put(Job, example);
        Assert.Empty(Read(Least).Problems);
        var schema = JsonSchema.FromText(Repository.Read("docs/workshop.schema.json"));
        Assert.True(schema.Evaluate(JsonDocument.Parse(example).RootElement).IsValid);
        Assert.True(schema.Evaluate(JsonDocument.Parse(Machines(Two)).RootElement).IsValid);
        Assert.False(schema.Evaluate(JsonDocument.Parse("""{ "machines": [] }""").RootElement).IsValid);
    }

    private static string Machines(string machines, string more = "") =>
        $"{{ \"format\": 1, \"machines\": [ {machines} ]{(more.Length > 0 ? ", " + more : "")} }}";

    private static void Put(string folder, string text) => File.WriteAllText(Path.Combine(folder, "workshop.json"), text);

    private Result<BandJob> Read(string keys)
    {
        File.WriteAllText(Path.Combine(Job, "job.json"), $"{{ \"format\": 1, {keys} }}");
        if (!File.Exists(Path.Combine(Job, "names.csv")))
        {
            File.WriteAllText(Path.Combine(Job, "names.csv"), "Name\nRowan\n");
        }

        return JobReader.Read(Job);
    }

    private static Problem Refusal(Result<BandJob> read) => read.Problems.First(p => p.Severity == Severity.CannotUse);

    [GeneratedRegex(@"```json\s(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();
}
