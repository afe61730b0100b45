using System.Text.Json;
using NameBand.Cli.Reports;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Reports.Answers;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>The plans there are for a job: each is what make comes to once its keys are written, and nothing is written before.</summary>
public sealed class PlansTests
{
    private const string Job =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "0.7 m", "turn": 0 }, "strip": { "rounds": 2 } }""";

    /// <summary>What is told is rounded to a thousandth.</summary>
    private const double StitchMinutes = 0.0011;

    private static readonly string Names = "Name\n"
        + string.Concat(Enumerable.Range(0, 10).Select(i => $"Tamsin Marsh {(char)('A' + i)}\n"));

    private static TemporaryFolder Folder(string job = Job, string workshop = "")
    {
        var folder = new TemporaryFolder().With("job.json", job).With("names.csv", Names);
        return workshop.Length > 0 ? folder.With("workshop.json", workshop) : folder;
    }

    private static TemporaryFolder Copy(string sample)
    {
        var folder = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", sample)))
        {
            folder.With(Path.GetFileName(file), File.ReadAllBytes(file));
        }

        return folder;
    }

    private static PlansAnswer Plans(TemporaryFolder folder, params string[] more)
    {
        var run = CliRun.Of(["plans", folder.FullPath, "--json", .. more]);
        Assert.True(run.Status is 0 or 1, run.Out + run.Errors);
        var answer = AnswerJson.Read<PlansAnswer>(run.Out);
        Assert.Equal(run.Out, AnswerJson.Of(answer) + "\n");
        return answer;
    }

    private static string Prose(PlansAnswer answer, string job)
    {
        using var writer = new StringWriter { NewLine = "\n" };
        using var outlet = new Outlet(writer);
        new PlansSummary(new Page(outlet), answer, job).Print();
        return writer.ToString();
    }

    private static string[] Files(TemporaryFolder folder) =>
        [.. Directory.GetFileSystemEntries(folder.FullPath).Order(StringComparer.Ordinal)];

    /// <summary>Of the promised minutes; letters of another height are looked up and not stitched.</summary>
    private const double TakenPart = 0.01;

    /// <summary>
    /// Each plan of each sample is taken in a copy of its own, and hours comes to what it promised within a hundredth; as it is set,
    /// with nothing taken, to just that.
    /// </summary>
    [Theory]
    [InlineData("lantern-walk")]
    [InlineData("quay-banner")]
    [InlineData("boat-banner")]
    [InlineData("lantern-cape")]
    public void What_is_taken_comes_to_the_hours_it_promised(string sample)
    {
        using var folder = Copy(sample);
        byte[] before = File.ReadAllBytes(folder["job.json"]);
        string[] files = Files(folder);
        var answer = Plans(folder);
        Assert.InRange(answer.Plans.Count, 2, 5);
        Assert.Equal("asSet", answer.Plans[0].Wish);
        Assert.Equal(answer.Plans.Select(p => p.Mark).Distinct(), answer.Plans.Select(p => p.Mark));
        Assert.Equal(before, File.ReadAllBytes(folder["job.json"]));
        Assert.Equal(files, Files(folder));
        Numbers.AreAll(Prose(answer, "JOB"), AnswerJson.Of(answer));
        Assert.InRange(answer.Plans[0].CostMinutes, 0, 1.02 * answer.Plans[0].BoundCostMinutes!.Value);
        Assert.NotNull(answer.PlainMinutes);

        foreach (var plan in answer.Plans)
        {
            using var taken = Copy(sample);
            var edited = JobEditing.Apply(
                before, [.. plan.Settings.Select(s =>
                    new JobEdit(s.Key, s.Value.ValueKind == JsonValueKind.Null ? null : s.Value.GetRawText()))]);
            taken.With("job.json", edited!);
            var hours = Bander.Hours(taken.FullPath);
            var told = Assert.IsType<HoursAnswer>(hours.Answer);
            Assert.Equal(plan.Mark, told.Mark);
            double minutes = told.MachineMinutes.Likely + told.HandsOnMinutes.Likely;
            double near = plan.Settings.Count == 0 ? StitchMinutes : TakenPart * minutes;
            Assert.Equal(plan.MachineMinutes + plan.HandsOnMinutes, minutes, near);
            Assert.Equal(plan.HandsOnMinutes, told.HandsOnMinutes.Likely, near / 5);
            Assert.Equal((plan.Hoopings, plan.Rounds), (told.Hoopings, hours.Plan!.Rounds.Length));
            Assert.Equal(plan.LetterHeightMm, hours.Plan.LetterHeightMm, 3);
            Assert.Equal(answer.Plans[0].Ways.Values.Sum(), plan.Ways.Values.Sum());
            Assert.True(hours.Plan.MatchesHem);
            Assert.InRange(plan.BoundCostMinutes!.Value, plan.CostMinutes * 0.85, plan.CostMinutes);
            Assert.DoesNotContain(hours.Plan.Easing, e => e.Verdict == EaseVerdict.WantsShaping);
        }
    }

    [Fact]
    public void Take_writes_the_keys_and_make_makes_that_plan()
    {
        using var folder = Folder();
        var plan = Plans(folder).Plans.First(p => p.Settings.Count > 0);
        var run = CliRun.Of("plans", folder.FullPath, "--take", plan.Mark.ToLowerInvariant());
        Assert.Equal((0, ""), (run.Status, run.Errors));
        Assert.Contains($"nameband make {folder.FullPath}", run.Out, StringComparison.Ordinal);
        foreach (var (path, value) in plan.Settings)
        {
            Assert.Equal(
                value.ValueKind == JsonValueKind.Null ? null : value.GetRawText(),
                JobEditing.ValueOf(File.ReadAllBytes(folder["job.json"]), path));
        }

        Assert.Equal("[\"names.csv\"]", JobEditing.ValueOf(File.ReadAllBytes(folder["job.json"]), "lists"));
        Assert.NotEqual(2, CliRun.Of("make", folder.FullPath).Status);
        using var made = JsonDocument.Parse(File.ReadAllBytes(folder["out/plan.json"]));
        Assert.Equal(plan.Mark, made.RootElement.GetProperty("made").GetProperty("mark").GetString());
        var totals = made.RootElement.GetProperty("totals");
        double minutes = totals.GetProperty("machineMinutes").GetDouble() + totals.GetProperty("handsOnMinutes").GetDouble();
        Assert.Equal(plan.MachineMinutes + plan.HandsOnMinutes, minutes, TakenPart * minutes);

        // It is now the plan as it is set, and taking it once more writes nothing.
        byte[] written = File.ReadAllBytes(folder["job.json"]);
        var again = Plans(folder, "--take", plan.Mark);
        Assert.Equal((plan.Mark, "asSet"), (again.Taken, again.Plans[0].Wish));
        Assert.Equal(written, File.ReadAllBytes(folder["job.json"]));
    }

    [Theory]
    [InlineData("2222", "No plan has the mark 2222 now")]
    [InlineData("best", "No plan has the mark BEST now")]
    [InlineData("the first", "“the first” is not a mark")]
    public void A_mark_that_no_plan_has_is_refused_and_nothing_is_written(string mark, string said)
    {
        using var folder = Folder();
        byte[] before = File.ReadAllBytes(folder["job.json"]);
        foreach (string option in new[] { "--take", "--why" })
        {
            var run = CliRun.Of("plans", folder.FullPath, option, mark);
            Assert.Equal((2, ""), (run.Status, run.Out));
            Assert.Contains(said, run.ErrorsOnOneLine, StringComparison.Ordinal);
            Assert.Contains("Nothing was written", run.ErrorsOnOneLine, StringComparison.Ordinal);
        }

        Assert.Equal(before, File.ReadAllBytes(folder["job.json"]));
        Assert.Equal(2, Files(folder).Length);
    }

    /// <summary>A name came since the marks were printed: they are those of other plans.</summary>
    [Fact]
    public void A_mark_of_before_the_list_changed_is_refused()
    {
        using var folder = Folder();
        string mark = Plans(folder).Plans[^1].Mark;
        folder.With("names.csv", Names + "Orla Penhale\n");
        byte[] before = File.ReadAllBytes(folder["job.json"]);
        Assert.Equal(2, CliRun.Of("plans", folder.FullPath, "--take", mark).Status);
        Assert.Equal(before, File.ReadAllBytes(folder["job.json"]));
    }

    [Fact]
    public void Why_lists_the_work_rows_of_both_with_their_differences()
    {
        using var folder = Folder();
        var answer = Plans(folder, "--why", Plans(folder).Plans[^1].Mark);
        var (asSet, plan) = (answer.Plans[0], answer.Plans[^1]);
        var compared = answer.Compared!;
        Assert.Equal((plan.Mark, asSet.Mark), (compared.Mark, compared.OtherMark));
        Assert.Equal(plan.MachineMinutes + plan.HandsOnMinutes, compared.Minutes, 3);
        Assert.Equal(asSet.MachineMinutes + asSet.HandsOnMinutes, compared.OtherMinutes, 3);
        Assert.Equal(compared.Minutes, compared.Acts.Sum(a => a.Minutes), 3);
        Assert.Equal(compared.OtherMinutes, compared.Acts.Sum(a => a.OtherMinutes), 3);
        Assert.Equal(compared.DifferenceMinutes, compared.Acts.Sum(a => a.DifferenceMinutes), 3);
        Assert.Equal(plan.MachineMinutes, compared.Acts.Where(a => a.By == "machine").Sum(a => a.Minutes), 3);
        var rows = Bander.Hours(folder.FullPath).Estimate!.Work.Rows;
        Assert.All(
            rows, r => Assert.Contains(compared.Acts, a => a.Act == r.Act && Math.Abs(a.OtherMinutes - r.Minutes.Likely) < StitchMinutes));

        var beside = Plans(folder, "--why", asSet.Mark);
        Assert.Equal("", beside.Compared!.OtherMark);
        Assert.Equal(beside.PlainMinutes!.Value, beside.Compared.OtherMinutes, 3);
        string prose = CliRun.Of("plans", folder.FullPath, "--why", plan.Mark).Out;
        Assert.All(prose.Split('\n'), l => Assert.True(l.Length <= 80, l));
        Assert.Contains("in all", prose, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("asSet", "asSet")]
    [InlineData("fewestHours", "fewestHours")]
    [InlineData("biggestLetters", "biggestLetters")]
    public void What_she_wishes_for_comes_first(string wish, string first)
    {
        using var folder =
            Folder(Job.Replace("\"format\": 1,", $"\"format\": 1, \"plan\": {{ \"wish\": \"{wish}\" }},", StringComparison.Ordinal));
        var plans = Plans(folder).Plans;
        Assert.Equal(first, plans[0].Wish);
        var fewest = plans.Single(p => p.Wish == "fewestHours" || p.AlsoWishes.Contains("fewestHours"));
        // Whether her machine has letters is not known: typed ones are a wish of their own.
        Assert.Equal(plans.Where(p => p.Wish != "typedLetters").Min(p => p.HersMinutes), fewest.HersMinutes, 1.0);
        var largest = plans.Single(p => p.Wish == "biggestLetters" || p.AlsoWishes.Contains("biggestLetters"));
        Assert.Equal(plans.Max(p => p.LetterHeightMm), largest.LetterHeightMm);
    }

    /// <summary>Names that run over the hem cannot be attached: what mends it is offered, with what stood in the way.</summary>
    [Theory]
    [InlineData("\"rounds\": 2", "\"rounds\": 1, \"turnIn\": \"18 mm\"")]
    [InlineData("\"turn\": 0", "\"turn\": 0.3")]
    public void A_job_that_cannot_be_attached_as_it_is_set_is_mended(string sound, string unsound)
    {
        using var folder = Folder(Job.Replace(sound, unsound, StringComparison.Ordinal));
        Assert.Equal(1, (int)Bander.Make(folder.FullPath).Status);
        Directory.Delete(folder["out"], recursive: true);
        var answer = Plans(folder);
        var mended = answer.Plans[0];
        Assert.Equal("asSet", mended.Wish);
        Assert.True(mended.Settings.Count >= 1);
        Assert.Contains("as it is set it will not do", mended.Why.English, StringComparison.Ordinal);
        Assert.Equal(0, CliRun.Of("plans", folder.FullPath, "--take", mended.Mark).Status);
        Assert.Equal(0, CliRun.Of("make", folder.FullPath).Status);
    }

    private const string Typing =
        """{ "format": 1, "machines": [{ "name": "m", "takes": ["coordinates", "keys"], "letters": { "sizes": ["9 mm", "7 mm"] }, "frames": [{ "name": "f", "along": 160, "across": 100 }] }] }""";

    [Fact]
    public void A_machine_that_types_gives_a_plan_of_typed_letters_with_what_it_asks()
    {
        using var folder = Folder(workshop: Typing);
        var answer = Plans(folder);
        var typed = answer.Plans.Single(p => p.Wish == "typedLetters" || p.AlsoWishes.Contains("typedLetters"));
        Assert.Equal(["machineLetters"], typed.Ways.Keys);
        Assert.False(typed.Hooped);
        Assert.Contains(typed.Asks, a => a.English.Contains("measure", StringComparison.Ordinal));
        Assert.Equal("\"machineLetters\"", typed.Settings["way"].GetRawText());
        Assert.False(typed.Settings.ContainsKey("letters.sizes"));
        Assert.True(answer.PlainMinutes < answer.Plans[0].HersMinutes);
    }

    [Theory]
    [InlineData("""{ "format": 1, "machines": [] }""", "no machine at all")]
    [InlineData("""{ "format": 1, "machines": [{ "name": "m", "takes": ["coordinates"], "frames": [{ "name": "f", "along": 160, "across": 4 }] }] }""", "no letter fits")]
    public void A_workshop_that_cannot_be_is_refused_in_the_words_of_make(string workshop, string said)
    {
        using var folder = Folder(workshop: workshop);
        var run = CliRun.Of("plans", folder.FullPath);
        Assert.Equal(2, run.Status);
        Assert.Contains(said, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.Equal(3, Files(folder).Length);
    }

    [Fact]
    public void Fit_is_another_name_for_it_and_the_table_fits_a_terminal_of_80_columns()
    {
        using var folder = Folder();
        var run = CliRun.Of("fit", folder.FullPath);
        Assert.Equal((0, CliRun.Of("plans", folder.FullPath).Out), (run.Status, run.Out));
        string[] table =
            [.. run.Out.Split('\n').SkipWhile(l => !l.StartsWith("Mark", StringComparison.Ordinal)).TakeWhile(l => l.Length > 0)];
        Assert.Equal(Plans(folder).Plans.Count + 2, table.Length);
        Assert.All(table, l => Assert.True(l.Length <= 80, l));
        Assert.Equal(64, CliRun.Of("plans", folder.FullPath, "--take", "K7Q4", "--why", "K7Q4").Status);
        Assert.Equal(64, CliRun.Of("plans", folder.FullPath, "--take").Status);
    }

    /// <summary>Once something is sewn, what can be seen is settled.</summary>
    [Fact]
    public void A_job_that_is_begun_has_the_one_plan()
    {
        using var folder = Folder();
        Assert.NotEqual(2, CliRun.Of("make", folder.FullPath).Status);
        Assert.Equal(0, CliRun.Of("sewn", folder.FullPath, "1").Status);
        var answer = Plans(folder);
        Assert.Equal("asSet", Assert.Single(answer.Plans).Wish);
        Assert.Contains(answer.Problems, p => p.Found.English.Contains("sewn already", StringComparison.Ordinal));
        Assert.Equal(
            (double)PlanWork.Minutes(Bander.Hours(folder.FullPath).Estimate!.Work, Doer.Hands), answer.Plans[0].HandsOnMinutes, 3);
    }

    /// <summary>Typed names are logged one by one.</summary>
    [Fact]
    public void A_job_of_typed_names_that_is_begun_has_the_one_plan_too()
    {
        using var folder =
            Folder(Job.Replace(
                "\"format\": 1,", "\"format\": 1, \"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"7 mm\"] },",
                StringComparison.Ordinal));
        var before = Plans(folder).Plans[0];
        Assert.Contains(
            before.Asks.Concat(Plans(folder).Problems.Select(p => p.Mend)), a => a.English.Contains("measure", StringComparison.Ordinal));
        Assert.NotEqual(2, CliRun.Of("make", folder.FullPath).Status);
        Assert.Equal(0, CliRun.Of("sewn", folder.FullPath, "n1-n3", "--minutes", "30").Status);
        var answer = Plans(folder);
        var plan = Assert.Single(answer.Plans);
        Assert.Equal(("asSet", before.Mark), (plan.Wish, plan.Mark));
        Assert.Contains(answer.Problems, p => p.Found.English.Contains("sewn already", StringComparison.Ordinal));
        Assert.Equal((double)PlanWork.Minutes(Bander.Hours(folder.FullPath).Estimate!.Work, Doer.Machine), plan.MachineMinutes, 3);
        Assert.NotEqual(before.MachineMinutes, plan.MachineMinutes);
    }

    /// <summary>Measuring is asked for and hinders no plan; letters that run over the hem do, though both are found as it is laid
    /// out.</summary>
    [Fact]
    public void Only_what_is_asked_before_sewing_speaks_against_no_plan()
    {
        using var folder = Folder(Job.Replace(
            "\"format\": 1,", "\"format\": 1, \"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"15 mm\"] },",
            StringComparison.Ordinal));
        var laid = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.NeedsPerson, laid.Status);
        Assert.Contains(laid.Problems, p => p is { Severity: Severity.NeedsPerson, IsBeforeSewing: true });
        Assert.Contains(laid.Problems, p => p is { Severity: Severity.NeedsPerson, IsBeforeSewing: false });
        Directory.Delete(folder["out"], recursive: true);
        Assert.DoesNotContain(Plans(folder).Plans, p => p.Settings.Count == 0);
    }

    [Fact]
    public void Hours_are_written_in_the_one_form_and_a_step_says_what_comes_of_what_is_done()
    {
        using var folder = Folder();
        var answer = Plans(folder);
        string prose = Prose(answer, "JOB").Replace(Words.Tie, ' ');
        Assert.DoesNotMatch(@"\d:\d\d", prose);
        Assert.All(
            answer.Plans,
            p => Assert.Contains(Words.Duration(p.HersMinutes).English.Replace(Words.Tie, ' '), prose, StringComparison.Ordinal));
        Assert.Equal("as job.json has it", answer.Plans[0].Why);
        var rounds = answer.Plans.First(p => p.Settings.ContainsKey("strip.rounds") && !p.Settings.ContainsKey("lettering.height"));
        Assert.Matches(
            @"^[^:]*\d rounds? (less|more)[^:]*: letters \d+\.\d mm (smaller|larger), ([^:]*, )?((\d+ h )?(\d+ min )?(saved|more)|\d+ h (saved|more)|about the same hours)$", rounds.Why.English);
    }

    /// <summary>Whether anybody reads them while it is worn shapes the heights; where she does not say, what is assumed is told
    /// with its line.</summary>
    [Fact]
    public void Names_that_are_to_be_read_while_it_is_worn_are_never_made_smaller()
    {
        using var folder = Folder();
        var answer = Plans(folder);
        Assert.Contains(answer.Plans, p => p.LetterHeightMm < answer.Plans[0].LetterHeightMm - 0.1);
        Assert.Contains("about 7 mm are enough", answer.Reading!.Text.English, StringComparison.Ordinal);
        Assert.Contains(answer.Reading.Line, Prose(answer, "JOB"), StringComparison.Ordinal);
        byte[] told = JobEditing.Apply(File.ReadAllBytes(folder["job.json"]), [new JobEdit("plan.readWhileWorn", "true")])!;
        folder.With("job.json", told);
        var read = Plans(folder);
        Assert.Null(read.Reading);
        Assert.All(read.Plans, p => Assert.True(p.LetterHeightMm > read.Plans[0].LetterHeightMm - 0.1, p.Why.English));
        Assert.Equal(answer.Plans[0].Mark, read.Plans[0].Mark);
    }

    /// <summary>Her own round with a name or two is told of, with the letters that do without it; none such is offered.</summary>
    [Fact]
    public void A_round_for_a_few_names_is_told_and_never_offered()
    {
        using var folder = Folder(
            """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.15 m", "turn": 0 }, "strip": { "rounds": "asNeeded" }, "lettering": { "height": "10 mm" } }""");
        var plan = Bander.Hours(folder.FullPath).Plan!;
        Assert.Equal((2, true), (plan.Rounds.Length, plan.Rounds[1].Names.Count() is 1));
        var answer = Plans(folder);
        var note = Assert.Single(answer.Problems, p => p.Where.Key == "strip.rounds");
        Assert.Contains("Round 2 has 1 name", note.Found.English, StringComparison.Ordinal);
        Assert.Contains("On 1 round the letters would be", note.Found.English, StringComparison.Ordinal);
        Assert.Contains("\"rounds\": 1", note.Mend.English, StringComparison.Ordinal);
        Assert.All(answer.Plans.Where(p => p.Settings.Count > 0), p => Assert.NotEqual((2, 10.0), (p.Rounds, p.LetterHeightMm)));
    }

    [Fact]
    public void The_wish_that_stood_in_the_way_is_told()
    {
        using var folder = Folder(Job.Replace("\"rounds\": 2", "\"rounds\": 1, \"turnIn\": \"18 mm\"", StringComparison.Ordinal)
            .Replace("\"strip\"", "\"lettering\": { \"face\": \"Nunito Bold\" }, \"strip\"", StringComparison.Ordinal));
        var answer = Plans(folder);
        var mended = answer.Plans[0];
        Assert.NotEmpty(mended.InTheWay);
        Assert.Contains(
            "In the way stands what you wrote: " + mended.InTheWay[0].English, Prose(answer, "JOB").ReplaceLineEndings(" "),
            StringComparison.Ordinal);
        Assert.All(
            mended.InTheWay,
            l => Assert.Contains(
                l.English, new[] { "\"strip\": { \"rounds\": 1 }", "\"strip\": { \"turnIn\": \"18 mm\" }",
                "\"lettering\": { \"face\": \"Nunito Bold\" }" }));

        // Nothing helps: what was tried is told.
        folder.With(
            "job.json", Job.Replace(
                "\"length\": \"0.7 m\", \"turn\": 0", "\"length\": [\"320 mm\", \"320 mm\"]", StringComparison.Ordinal));
        folder.With(
            "names.csv", Names + string.Concat(Enumerable.Range(0, 40).Select(i => $"Wilhelmina Abernathy {(char)('A' + (i % 26))}{i}\n")));
        var none = Plans(folder);
        Assert.Empty(none.Plans);
        Assert.Contains(
            none.Problems,
            p => p.Found.English.Contains("leaving out", StringComparison.Ordinal) && p.Found.English.Contains("strip.rounds", StringComparison.Ordinal));
    }

    /// <summary>What an earlier plan chose where it was free is kept by make, and so by the plans.</summary>
    [Fact]
    public void Plans_keep_the_free_choices_of_the_earlier_plan_as_make_does()
    {
        using var folder = Folder(Job.Replace("\"strip\"", "\"hoop\": { \"across\": \"60 mm\" }, \"strip\"", StringComparison.Ordinal));
        Assert.NotEqual(2, CliRun.Of("make", folder.FullPath).Status);
        int alone = Plans(folder).Plans[0].Hoopings;
        folder.With("job.json", Job);
        var kept = Plans(folder).Plans[0];
        Assert.Equal(alone, kept.Hoopings);
        Assert.Equal(Bander.Hours(folder.FullPath).Plan!.Hoopings.Length, kept.Hoopings);
        Directory.Delete(folder["out"], recursive: true);
        Assert.True(Plans(folder).Plans[0].Hoopings < alone);
    }
}
