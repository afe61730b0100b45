using NameBand.Common;
using NameBand.Names;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>Answers that come back: entered where they are clear, asked about where they are not; a no is never lost.</summary>
public sealed class OwnerAnswersTests : IDisposable
{
    private const string List = """
        Name,E-mail
        Ada Marsh,ada@lantern.example
        Bo Reed,bo@lantern.example
        Cleo Weir,family@lantern.example
        Dara Weir,family@lantern.example
        José Quill,jose@lantern.example
        Fern Alder,
        Gil Otter,gil@lantern.example

        """;

    private readonly TemporaryFolder _job = new TemporaryFolder().With("names.csv", List).With(
        "job.json", """{ "lists": ["names.csv"], "hem": { "length": "2 m", "turn": 0 }, "asking": { "answerBy": "2027-03-01", "silence": "leftOut" } }""");

    public void Dispose() => _job.Dispose();

    private AnswersReport Enter(string answers, string file = "private/answers.csv") =>
        Bander.EnterAnswers(_job.With(file, answers).FullPath);

    private string States() =>
        string.Join("; ", ApprovalsFile.Read(_job.FullPath).Lines.Select(l => $"{l.Name}: {ApprovalsFile.Word(l.State)}"));

    private string[] Asked(AnswersReport report) =>
        [.. report.Problems.Where(p => p.Severity == Severity.NeedsPerson).Select(p => $"{p.Where.Line} {p.Where.Name}")];

    /// <summary>Semicolons, a byte order mark, a form's own headings, and an address with blanks in it.</summary>
    [Fact]
    public void Answers_of_a_form_are_entered_and_who_is_missing_is_known()
    {
        var report = Enter(
            "\uFEFFZeitstempel;E-Mail-Adresse;Is it right?;How should it read?;Show on the web?\r\n"
            + "1.2.2027;\" ADA @lantern.example\";agreed: it is right, letter by letter.;;yes\r\n2.2.2027;bo@lantern.example;change wished;Bo Reeds;\r\n"
            + "3.3.2027;gil@lantern.example;no: my name is not to be sewn.;;no\r\n");
        Assert.Equal("Ada Marsh: agreed; Bo Reed: change wished; Gil Otter: no", States());
        Assert.Contains("Ada Marsh,agreed,1.2.2027,,", File.ReadAllText(_job["approvals.csv"]), StringComparison.Ordinal);
        Assert.Contains(report.Problems, p => p.Severity == Severity.Note && p.Found.English.Contains("2027-03-03", StringComparison.Ordinal));
        Assert.Empty(Asked(report));
        Assert.True(report.IsPlanTouched);
        var run = CliRun.Of("invite", _job.FullPath, "--answers");
        Assert.Equal(0, run.Status);
        Assert.Contains("Cleo Weir; Dara Weir; José Quill; Fern Alder", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("names.csv,3,Bo Reed,change,Bo Reeds", run.Out, StringComparison.Ordinal);
        Assert.Contains("new of 0 names", run.OutOnOneLine.Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void What_contradicts_is_asked_about_and_held_and_what_she_settles_stands()
    {
        const string Answers =
            "address,answer,text\nada@lantern.example,agreed,\nada@lantern.example,change wished,Ada M.\nbo@lantern.example,agreed,\nbo@lantern.example,agreed,\n"
            + "jose@lantern.example,please leave me off,\ngil@lantern.example,agreed,Gilbert Otter\n";
        Assert.Equal(["3 Ada Marsh", "6 José Quill", "7 Gil Otter"], Asked(Enter(Answers)).Order(StringComparer.Ordinal));
        Assert.Equal("Ada Marsh: unclear; Bo Reed: agreed; José Quill: unclear; Gil Otter: unclear", States());
        var names = Bander.CheckNames(_job.FullPath);
        var held = names.Names!.Rows.Where(r => r.Outcome == RowOutcome.Held).ToList();
        Assert.Equal(["Ada Marsh", "José Quill", "Gil Otter"], held.Select(r => r.Text));
        Assert.All(
            held, r => Assert.Contains(
                "write agreed, change wished or no under “state” in approvals.csv", r.Reason.English, StringComparison.Ordinal));
        Assert.Empty(names.LinesToAdd);

        _job.With("approvals.csv", File.ReadAllText(_job["approvals.csv"]).Replace("unclear", "agreed", StringComparison.Ordinal));
        Assert.Empty(Asked(Enter(Answers)));
        Assert.DoesNotContain("unclear", States(), StringComparison.Ordinal);
        Assert.Equal(
            ["8 Ada Marsh"],
            Asked(Enter(Answers + "ada@lantern.example,change wished,A. Marsh\n"))
            .Select(a => a.Replace("2 ", "8 ", StringComparison.Ordinal)));
        Assert.Contains("Ada Marsh: unclear", States(), StringComparison.Ordinal);
    }

    /// <summary>A yes to the web waits where the list has another address for the name than it came from, and only there.</summary>
    [Theory]
    [InlineData("Ada Marsh", "someone@elsewhere.example", WebAnswer.Unclear)]
    [InlineData("Ada Marsh", "ada@lantern.example", WebAnswer.Yes)]
    [InlineData("Ada Marsh", "", WebAnswer.Yes)]
    [InlineData("Fern Alder", "fern@elsewhere.example", WebAnswer.Yes)]
    public void A_yes_to_the_web_from_another_address_waits(string name, string mail, WebAnswer web)
    {
        var report = Enter(
            "Name;E-mail;Is it right?;Show on the web?\r\n" + $"{name};{mail};agreed: it is right, letter by letter.;yes\r\n");
        Assert.Equal(web, Assert.Single(ApprovalsFile.ReadWeb(_job.FullPath).Value!.All).Answer);
        Assert.Equal(
            web == WebAnswer.Unclear,
            report.Problems.Any(p => p.Found.English.StartsWith("This comes from another address", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_no_always_wins_and_is_never_taken_back()
    {
        Enter("address,answer,web\nada@lantern.example,agreed,yes\nbo@lantern.example,no,no\n");
        var report = Enter("address,answer,web\nada@lantern.example,no,no\nbo@lantern.example,agreed,yes\n", "private/answers-2.csv");
        Assert.Equal("Ada Marsh: no; Bo Reed: no", States());
        Assert.Equal(2, Asked(report).Length);
        Assert.All(File.ReadAllLines(_job["approvals.csv"])[1..], l => Assert.Contains(",no,,h", l, StringComparison.Ordinal));
        Assert.Equal(
            ["Ada Marsh", "Bo Reed"],
            Bander.CheckNames(_job.FullPath).Names!.Rows.Where(r => r.Outcome == RowOutcome.LeftOut).Select(r => r.Text));
    }

    /// <summary>Also where the file of answers was made anew and holds the no no longer.</summary>
    [Fact]
    public void A_no_that_was_entered_stays_though_the_file_says_otherwise_now()
    {
        Enter("address,answer,web\nada@lantern.example,no,no\nbo@lantern.example,agreed,yes\n");
        var report = Enter("address,answer,web\nada@lantern.example,agreed,yes\nbo@lantern.example,change wished,yes\n");
        Assert.Equal("Ada Marsh: no; Bo Reed: unclear", States());
        Assert.Equal(["2 Ada Marsh", "3 Bo Reed"], Asked(report));
    }

    [Fact]
    public void Whose_it_is_is_never_guessed_and_a_no_that_may_be_of_two_holds_both()
    {
        var report = Enter(
            "address,name,answer,web\nfamily@lantern.example,,no,\nfamily@lantern.example,Dara Wier,agreed,\njose@lantern.example,Jose Quill,agreed,\n"
            + "stranger@lantern.example,Fern Alder,agreed,yes\nstranger@lantern.example,Gil Otter,agreed,yes\nada@lantern.example,Bo Reed,agreed,\nnobody@lantern.example,Nobody Here,no,\n");
        Assert.Equal("Cleo Weir: unclear; Dara Weir: unclear; José Quill: unclear; Fern Alder: agreed; Gil Otter: agreed", States());
        string file = File.ReadAllText(_job["approvals.csv"]);
        Assert.Contains("Fern Alder,agreed,,,,yes", file, StringComparison.Ordinal);
        Assert.Contains(
            ",unclear,,h", file.Split('\n').Single(l => l.Contains("Gil Otter", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains(report.Problems, p => p.Where.Line == 8 && p.Found == "“Nobody Here” is in no list. It says no.");
        Assert.Contains(
            report.Problems, p => p.Where.Line == 7 && p.Found.English.Contains("it is not clear whose it is", StringComparison.Ordinal));
        Assert.DoesNotContain(report.Problems, p => (p.Found + p.Mend).English.Contains("lantern.example", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("colour,size\nred,3\n", "Which column holds the answers is not known")]
    [InlineData("answer,remark\nagreed,x\n", "Whose answers these are is not known")]
    [InlineData("\0\0\0", "private/answers.csv")]
    public void A_file_that_cannot_be_understood_is_refused_and_nothing_is_written(string file, string said)
    {
        _job.With("private/answers.csv", file);
        var run = CliRun.Of("invite", _job.FullPath, "--answers");
        Assert.Equal(2, run.Status);
        Assert.Contains(said, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.False(File.Exists(_job["approvals.csv"]));
    }

    /// <summary>Nothing is entered for a job that cannot be read, and only what stands in the way is told.</summary>
    [Fact]
    public void A_job_that_cannot_be_read_takes_no_answers()
    {
        _job.With("job.json", """{ "lists": ["names.csv"], "hem": { "length": "20 cm", "turn": "round" } }""");
        var report = Enter("address,name,answer,text,web,date\nada@lantern.example,Ada Marsh,agreed,,,\n");
        var problem = Assert.Single(report.Problems);
        Assert.Equal((Severity.CannotUse, "hem.turn"), (problem.Severity, problem.Where.Key));
        Assert.False(File.Exists(_job["approvals.csv"]));
    }
}
