using System.Text.Json;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.MachineLetters.Alphabets;
using NameBand.Reports.Answers;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>
/// Each verb answers with one record: what --json writes is that record and nothing besides, and the prose is printed from it
/// alone, for the record that is read back from the JSON gives the same prose to the last character.
/// </summary>
public sealed class OneRecordTests : IDisposable
{
    private const string Job = """
        { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "40 cm", "turn": 0 },
          "bobbin": { "capacity": "2 m" }, "prices": { "currency": "kr", "spool": 49.5, "needle": 3.25, "hour": 200 } }
        """;

    private const string Names = "Name\nAda Marsh\nBo Reed\nada marsh\nBo Reed\nTuva\u200b Lind\nOrla Penhale\n";

    private const string Approvals =
        "list,line,name,state,date,text,details\nnames.csv,2,Ada Marsh,agreed,2 May,,\nnames.csv,3,Bo Reed,change wished,,Bo Reeds,\n";

    private readonly TemporaryFolder _folder =
        new TemporaryFolder().With("job.json", Job).With("names.csv", Names).With("approvals.csv", Approvals);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Make_before_anything_is_sewn_and_hours_sewn_and_make_after()
    {
        Assert.Equal(1, CliRun.Of("make", _folder.FullPath).Status);
        var made = Same<MakeAnswer>("make");
        Assert.NotNull(made.Changes);
        Assert.Null(made.Left);
        Assert.Equal((0, 1), (made.Needs.OfJob, made.Needs.OfRows));
        Assert.NotEmpty(made.HeightLimits);

        var open = Same<SewnAnswer>("sewn");
        Assert.All(open.Hoopings, h => Assert.Equal("open", h.State));
        Assert.Equal(0, CliRun.Of("sewn", _folder.FullPath, "1", "--minutes", "31", "--hands", "12").Status);
        Assert.Equal("sewn", Same<SewnAnswer>("sewn").Hoopings[0].State);

        var hours = Same<HoursAnswer>("hours", "--evening", "20 min");
        Assert.NotNull(hours.MachinePace);
        Assert.NotNull(hours.HandsPace);
        Assert.NotEmpty(hours.BobbinChanges);
        Assert.True(hours.Evenings > 1);
        Assert.True(hours.Total > 0 && hours.Worth > 0);

        Assert.Equal(1, CliRun.Of("make", _folder.FullPath).Status);
        var rest = Same<MakeAnswer>("print");
        Assert.NotNull(rest.Left);
        Assert.NotNull(rest.MachineMinutesAtSetPace);
    }

    [Fact]
    public void What_was_just_written_down()
    {
        Assert.Equal(1, CliRun.Of("make", _folder.FullPath).Status);
        string[][] words =
        [
            ["1", "--minutes", "31"], ["1", "--measured", "84 mm"], ["1", "--again"], ["2", "--hands", "7"], ["2", "--patch"],
        ];
        foreach (string[] word in words)
        {
            using var copy = Copy();
            string prose = CliRun.Of(["sewn", copy.FullPath, .. word]).Out;
            var run = CliRun.Of(["sewn", _folder.FullPath, .. word, "--json"]);
            var answer = Read<SewnAnswer>(run);
            Assert.True(answer.Written, run.Out);
            Assert.Equal(prose, Prose(answer));
        }
    }

    [Fact]
    public void Names_and_their_settling()
    {
        var held = Same<NamesAnswer>("names");
        Assert.Equal((1, 1, 1, 1), (held.Held!.Count, held.Repeats!.Count, held.Changed!.Count, held.Unasked));
        Assert.Equal(4, held.Approvals!.Count(a => a.State.Length == 0 || a.State == "change wished"));

        _folder.With("private/answers.csv", "name,answer,web\nAda Marsh,agreed,yes\nBo Reed,no,\n");
        Assert.Equal(1, CliRun.Of("invite", _folder.FullPath, "--answers").Status);
        Assert.Equal(2, Same<AnswersAnswer>("invite", "--answers").Lines);

        using var copy = Copy();
        string prose = CliRun.Of("names", copy.FullPath, "--settle").Out.Replace(copy.FullPath, _folder.FullPath, StringComparison.Ordinal);
        var settled = Read<NamesAnswer>(CliRun.Of("names", _folder.FullPath, "--settle", "--json"));
        Assert.Equal(1, settled.Written);
        Assert.Equal(prose, Prose(settled));
    }

    [Fact]
    public void Plans_and_the_work_of_two()
    {
        var plans = Read<PlansAnswer>(CliRun.Of("plans", _folder.FullPath, "--json"));
        Assert.NotEmpty(plans.Plans);
        Assert.Equal(Prose(plans), CliRun.Of("plans", _folder.FullPath).Out);
        Numbers.AreAll(Prose(plans).Replace(_folder.FullPath, "JOB", StringComparison.Ordinal), AnswerJson.Of(plans));
        var why = Read<PlansAnswer>(CliRun.Of("plans", _folder.FullPath, "--why", plans.Plans[0].Mark, "--json"));
        Assert.Equal(Prose(why), CliRun.Of("plans", _folder.FullPath, "--why", plans.Plans[0].Mark).Out);
        Numbers.AreAll(Prose(why).Replace(_folder.FullPath, "JOB", StringComparison.Ordinal), AnswerJson.Of(why));
    }

    [Fact]
    public void Swatch_and_its_reading()
    {
        Assert.Equal(0, CliRun.Of("swatch", _folder.FullPath).Status);
        Assert.NotEmpty(Same<SwatchAnswer>("swatch").Samples);
        Assert.Equal(0.008, Same<ShorteningAnswer>("swatch", "--measured", "99.2").Shortening);
        Assert.NotNull(Same<PullAnswer>("swatch", "--columns", "1.2x9.2 4x9.3 1.1x9.2 3.9x9.3").PullAcrossFactor);
    }

    [Fact]
    public void Faces()
    {
        var answer = Read<FacesAnswer>(CliRun.Of("faces", "--json"));
        Assert.Equal(CliRun.Of("faces").Out, Prose(answer));
        // At this height the thinnest stroke is a millimetre wide; both are told to a thousandth.
        Assert.All(answer.Faces, f => Assert.Equal(1, (double)(f.HeightForThinnest1Mm * f.ThinnestStrokePart), 0.01));
    }

    [Fact]
    public void Measure_with_its_sheet_empty_and_filled_in()
    {
        _folder.With("job.json", """
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m" }, "way": "machineLetters", "letters": { "sizes": ["8 mm"] } }
            """);
        using var copy = Copy();
        string prose = CliRun.Of("measure", copy.FullPath).Out.Replace(copy.FullPath, _folder.FullPath, StringComparison.Ordinal);
        var asked = Read<MeasureAnswer>(CliRun.Of("measure", _folder.FullPath, "--json"));
        Assert.Equal(2, asked.Printed.Count);
        Assert.Equal(prose, Prose(asked));

        Assert.Null(Same<MeasureAnswer>("measure").Letters);
        string sheet = _folder[asked.Sheet!];
        File.WriteAllLines(sheet, File.ReadAllLines(sheet).Select((line, i) => i == 0 ? line : Filled(line)));
        Assert.NotEmpty(Same<MeasureAnswer>("measure").Letters!);

        static string Filled(string line)
        {
            string[] fields = line.Split(',');
            fields[2] = FormattableString.Invariant($"{(fields[1].Length * 5.7) + (fields[1].Sum(c => c) % 7 * 0.1):0.0}");
            return string.Join(',', fields);
        }
    }

    [Theory]
    [InlineData("make")]
    [InlineData("print")]
    [InlineData("names")]
    [InlineData("hours")]
    [InlineData("plans")]
    [InlineData("plans --take K7Q4")]
    [InlineData("sewn")]
    [InlineData("swatch")]
    [InlineData("swatch --measured 99.2")]
    [InlineData("swatch --columns 1.3x9,4.2x9")]
    [InlineData("measure")]
    public void A_refusal_is_the_same_record_in_both(string words)
    {
        _folder.With("job.json", """{ "format": 1, "lists": ["names.csv"] }""");
        string[] args = words.Split(' ');
        var said = CliRun.Of([args[0], _folder.FullPath, .. args[1..]]);
        using var json = JsonDocument.Parse(CliRun.Of([args[0], _folder.FullPath, .. args[1..], "--json"]).Out);

        Assert.Equal((2, ""), (said.Status, said.Out));
        Assert.Equal(2, json.RootElement.GetProperty("status").GetInt32());
        Assert.All(json.RootElement.GetProperty("problems").EnumerateArray(), p =>
            Assert.Contains(OnOneLine(p.GetProperty("found").GetString()!), said.ErrorsOnOneLine, StringComparison.Ordinal));
    }

    /// <summary>The record of a verb as its JSON has it, after its prose was found to be that of the record.</summary>
    private T Same<T>(string verb, params string[] options)
        where T : CommandAnswer
    {
        var answer = Read<T>(CliRun.Of([verb, _folder.FullPath, .. options, "--json"]));
        var run = CliRun.Of([verb, _folder.FullPath, .. options]);
        string prose = Prose(answer);
        Assert.Equal(prose, verb == "print" ? run.Out[..Math.Min(prose.Length, run.Out.Length)] : run.Out);
        Assert.NotEmpty(prose);
        Assert.Equal(run.Status, answer.Status);
        Numbers.AreAll(prose.Replace(_folder.FullPath, "JOB", StringComparison.Ordinal), AnswerJson.Of(answer));
        return answer;
    }

    /// <summary>Read with no member left over, and written again to the same bytes: the JSON is the record and nothing besides.</summary>
    private static T Read<T>(CliRun run)
        where T : CommandAnswer
    {
        var answer = AnswerJson.Read<T>(run.Out);
        Assert.Equal(run.Out, AnswerJson.Of(answer) + "\n");
        return answer;
    }

    private string Prose(CommandAnswer answer)
    {
        using var writer = new StringWriter { NewLine = "\n" };
        using var outlet = new Outlet(writer);
        var page = new Page(outlet);
        string job = _folder.FullPath;
        switch (answer)
        {
            case MakeAnswer made: new MakeSummary(page, made, job).Print(); break;
            case NamesAnswer names: new NamesSummary(page, names, job).Print(); break;
            case HoursAnswer hours: new HoursSummary(page, hours).Print(); break;
            case PlansAnswer plans: new PlansSummary(page, plans, job).Print(); break;
            case SewnAnswer sewn: new SewnSummary(page, sewn).Print(); break;
            case SwatchAnswer swatch: SwatchSummary.Print(page, swatch, job, null); break;
            case ShorteningAnswer read: SwatchSummary.Print(page, read, job, null); break;
            case PullAnswer pull: SwatchSummary.Print(page, pull, job, null); break;
            case MeasureAnswer measured: new MeasureSummary(page, measured, job).Print(); break;
            case AnswersAnswer answers: AnswersSummary.Print(page, answers); break;
            case FacesAnswer faces: FacesSummary.Print(page, faces); break;
            default: throw new InvalidOperationException($"{answer.GetType().Name} has no prose.");
        }

        return writer.ToString();
    }

    private TemporaryFolder Copy()
    {
        var copy = new TemporaryFolder();
        foreach (string file in Directory.EnumerateFiles(_folder.FullPath, "*", SearchOption.AllDirectories))
        {
            string name = Path.GetRelativePath(_folder.FullPath, file);
            Directory.CreateDirectory(Path.GetDirectoryName(copy[name])!);
            copy.With(name, File.ReadAllBytes(file));
        }

        return copy;
    }

    private static string OnOneLine(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
