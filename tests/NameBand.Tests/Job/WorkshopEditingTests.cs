using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>What three questions tell is written into workshop.json, and all else in it stays.</summary>
public sealed class WorkshopEditingTests : IDisposable
{
    private const string Told = """
        { "format": 1, "machines": [
            { "name": "old faithful", "takes": ["coordinates", "hands"], "stitchesPerMinute": 450,
              "frames": [ { "name": "large", "along": 300, "across": "8 in", "hold": "magnet", "minutes": 3 } ] },
            { "name": "typed", "takes": ["keys"], "frames": [ { "name": "120 mm × 60 mm", "along": "120 mm", "across": "60 mm" } ] } ],
          "people": [ { "name": "Wenna", "evenings": "2h", "does": "hands" } ] }
        """;

    private readonly TemporaryFolder _above = new();

    public WorkshopEditingTests() => _above.With("job/names.csv", "name\nOttilie Marsh\n");

    private string Job => _above["job"];

    public void Dispose() => _above.Dispose();

    [Theory]
    [InlineData(MachineSkill.TypesLetters, "keys", Way.MachineLetters)]
    [InlineData(MachineSkill.FollowsFiles, "coordinates", null)]
    [InlineData(MachineSkill.Both, "keys coordinates", Way.MachineLetters)]
    [InlineData(MachineSkill.StraightOnly, "hands", Way.Traced)]
    public void What_the_machine_can_do_is_read_back_and_says_how_a_job_begins(MachineSkill skill, string takes, Way? way)
    {
        var answers = new WorkshopAnswers(skill, [new("160 mm", "100 mm"), new("160 mm", "100 mm")], "90 min")
        {
            LetterHeights = skill is MachineSkill.TypesLetters or MachineSkill.Both ? ["9 mm", "6 mm"] : [],
        };
        Put(WorkshopEditing.Apply(Job, answers));

        Assert.False(WorkshopEditing.Told(Job)!.DiffersFrom(answers));
        string? begins = answers.BeginsWith is { } edit ? $", \"{edit.Path}\": {edit.Json}" : "";
        _above.With("job/job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1 m" }{{begins}} }""");
        var job = JobReader.Read(Job);
        Assert.Empty(job.Problems);
        Assert.Equal(way ?? Way.NeedlePath, job.Value!.Ways[0]);
        Assert.Equal(takes, string.Join(' ', job.Value.Workshop.Machines[0].Takes.Select(WorkshopWords.Of)));
        Assert.Equal(["160 mm × 100 mm", "160 mm × 100 mm, number 2"], job.Value.Workshop.Machines[0].Frames.Select(f => f.Name));
        Assert.Equal(90, job.Value.EveningMinutes);
    }

    [Fact]
    public void What_was_told_besides_stays_here_and_in_the_folder_above()
    {
        _above.With("workshop.json", Told);
        var told = WorkshopEditing.Told(Job)!;
        Assert.Equal((MachineSkill.FollowsFiles, "2h"), (told.Skill, told.Evening));
        Assert.Equal([new FrameAnswer("300 mm", "8 in")], told.Frames.AsEnumerable());

        Put(WorkshopEditing.Apply(Job, told with { Evening = "1 h", Frames = [new("120 mm", "60 mm"), .. told.Frames] }));

        Assert.Equal(Told, File.ReadAllText(_above["workshop.json"]));
        _above.With("job/job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1 m" } }""");
        var workshop = JobReader.Read(Job).Value!.Workshop;
        Assert.Equal(["old faithful", "typed"], workshop.Machines.Select(m => m.Name));
        Assert.Equal((450.0, true), (workshop.Machines[0].StitchesPerMinute, workshop.Machines[0].Takes.Contains(MachineTakes.Hands)));
        Assert.Equal(
            [("120 mm × 60 mm, number 2", null), ("large", (FrameHold?)FrameHold.Magnet)],
            workshop.Machines[0].Frames.Select(f => (f.Name, f.Hold)));
        Assert.Equal(
            ("Wenna", 60.0, false), (workshop.People[0].Name, workshop.People[0].UsualEveningMinutes, workshop.People[0].DoesMachine));
    }

    /// <summary>A word before a time is a weekday; half of a time is none.</summary>
    [Theory]
    [InlineData("1h 30 min", "\"1h 30 min\"")]
    [InlineData("2 h", "\"2 h\"")]
    [InlineData("Fri 2 h", "{\"fri\":\"2 h\"}")]
    [InlineData("Fri 2 h; sat", "{\"fri\":\"2 h\",\"sat\":\"\"}")]
    public void Evenings_are_told_by_weekday_or_alike(string told, string json) =>
        Assert.Equal(json, PeopleEditing.Evenings(told).ToJsonString());

    [Fact]
    public void Who_helps_is_told_by_weekday_and_what_was_told_of_them_besides_stays()
    {
        const string Others = """ "does": "hands" }, { "name": "Piran", "evenings": "1h", "does": ["machine"] }, { "name": "Gone" } ] }""";
        _above.With("job/workshop.json", Told.Replace("\"does\": \"hands\" } ] }", Others, StringComparison.Ordinal));
        var told = WorkshopEditing.Told(Job)!;
        Assert.Equal([new HelperAnswer("Piran", "1h", "machine"), new HelperAnswer("Gone", "", "")], told.Helpers.AsEnumerable());

        var helpers = new[] { new HelperAnswer("Jo", "tuesday 2 h; Friday 90 min", "hands"), told.Helpers[0] with { Does = "" } };
        Put(WorkshopEditing.Apply(Job, told with { Evening = "saturday 3 h", Helpers = [.. helpers] }));

        _above.With("job/job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1 m" } }""");
        var people = JobReader.Read(Job).Value!.Workshop.People;
        Assert.Equal(["Wenna", "Jo", "Piran"], people.Select(p => p.Name));
        Assert.Equal([(false, true), (false, true), (true, true)], people.Select(p => (p.DoesMachine, p.DoesHands)));
        Assert.Equal([0.0, 120, 0, 0, 90, 0, 0], people[1].EveningMinutes.AsEnumerable());
        Assert.Equal("saturday 3 h", WorkshopEditing.Told(Job)!.Evening);
        Assert.Equal("tuesday 2 h; friday 90 min", WorkshopEditing.Told(Job)!.Helpers[0].Evenings);
        var wrong = WorkshopEditing.Apply(Job, told with { Helpers = [new HelperAnswer("Jo", "munday 2 h", "")] });
        Assert.Null(wrong.Value);
        Assert.Contains("munday", string.Join(' ', wrong.Problems.Select(p => p.Found)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("160", "100 mm", "1 h", "160")]
    [InlineData("160 mm", "2 mm", "1 h", "no letter fits")]
    [InlineData("160 mm", "100 mm", "some time", "some time")]
    public void What_cannot_be_is_refused_and_nothing_is_made(string along, string across, string evening, string said)
    {
        var made = WorkshopEditing.Apply(Job, new WorkshopAnswers(MachineSkill.FollowsFiles, [new(along, across)], evening));
        Assert.Null(made.Value);
        Assert.Contains(said, string.Join(' ', made.Problems.Select(p => p.Found)), StringComparison.Ordinal);
        Assert.DoesNotContain("machines[", string.Join(' ', made.Problems.Select(p => p.Found + p.Mend)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[1]")]
    [InlineData("{ \"machines\": ")]
    [InlineData("{ \"machines\": [], \"machines\": [] }")]
    public void What_is_no_workshop_is_not_written_over(string text)
    {
        _above.With("job/workshop.json", text);
        Assert.Null(WorkshopEditing.Told(Job));
        Assert.NotEmpty(WorkshopEditing.Apply(Job, WorkshopAnswers.None).Problems);
    }

    private void Put(Result<KeptFile> file)
    {
        Assert.Empty(file.Problems);
        Assert.Empty(JobStore.Save(Job, WorkshopEditing.FileName, file.Value!, JobStore.Read(Job, WorkshopEditing.FileName)).Problems);
    }
}
