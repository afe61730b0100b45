using System.Text;
using NameBand.Common;
using NameBand.Names;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>The asking round joins what belongs together, in a folder that nothing else reads.</summary>
public sealed class InviteTests(InviteTests.Asked asked) : IClassFixture<InviteTests.Asked>
{
    private const string Header = "list,line,name,state,date,text,details,web,look\n";

    public sealed class Asked : IDisposable
    {
        public const string List = """
            Name,E-mail,Street
            Ada Marsh,ada@lantern.example,Ropewalk 1
            "=Bo, Reed",bo@lantern.example,Ropewalk 2
            ليلى النهري,not an address@lantern.example,Ropewalk 3
            Dara Weir,,Ropewalk 4

            """;

        public Asked()
        {
            Folder.With("job.json", Job("navy")).With("names.csv", List);
            Bander.Make(Folder.FullPath);
            Report = Bander.Invite(Folder.FullPath, new DateOnly(2027, 1, 1));
        }

        public TemporaryFolder Folder { get; } = new();

        public InviteReport Report { get; }

        public static string Job(string thread, string more = "") => $$"""
            { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "900 mm", "turn": 0 }, "thanks": { "width": 320 },
              "lettering": { "height": "9 mm" }, "colours": { "thread": "{{thread}}" }, "asking": { "answerBy": "2027-03-01", "silence": "leftOut" }{{more}} }
            """;

        public void Dispose() => Folder.Dispose();
    }

    [Fact]
    public void One_line_for_each_supporter_joins_address_name_picture_and_place()
    {
        string[] lines = File.ReadAllLines(asked.Folder["private/mail-merge.csv"]);
        Assert.Equal("address,name,number,picture,place,look,answer_by,state,list,line", lines[0]);
        Assert.Equal(5, lines.Length);
        Assert.StartsWith("ada@lantern.example,Ada Marsh,1,pictures/name-0001.png,", lines[1], StringComparison.Ordinal);
        Assert.Contains(",2027-03-01,,names.csv,2", lines[1], StringComparison.Ordinal);
        Assert.StartsWith("bo@lantern.example,\"'=Bo, Reed\",2,", lines[2], StringComparison.Ordinal);
        Assert.All(
            Enumerable.Range(1, 4),
            n => Assert.True(File.Exists(asked.Folder[FormattableString.Invariant($"private/pictures/name-{n:D4}.png")])));
        string letter = File.ReadAllText(asked.Folder["private/letters/name-0001.txt"]);
        Assert.StartsWith("To: ada@lantern.example\n", letter, StringComparison.Ordinal);
        foreach (string part in new[] { "    Ada Marsh\n", "name-0001.png", "of centre back", "by Monday 1 March 2027",
            "no: my name is not to be sewn", "your name is left out", "no answer is a no" })
        {
            Assert.Contains(part, letter, StringComparison.Ordinal);
        }

        Assert.Contains("{name}", File.ReadAllText(asked.Folder["private/letter.txt"]), StringComparison.Ordinal);
        Assert.Contains("\n*\n", File.ReadAllText(asked.Folder["private/.gitignore"]), StringComparison.Ordinal);

        // A line of the list is told, and what stands there is not.
        var told = Assert.Single(asked.Report.Problems, p => p.Severity == Severity.NeedsPerson);
        Assert.Equal(new Where("names.csv", 4, 2), told.Where);
    }

    /// <summary>Of all that lies in the job, only the list itself and private/ hold an address; so does nothing that is printed.</summary>
    [Fact]
    public void No_address_is_anywhere_but_in_the_private_folder()
    {
        string job = asked.Folder.FullPath;
        Assert.InRange(CliRun.Of("print", job, "--thanks").Status, 0, 1);
        Assert.InRange(CliRun.Of("public", job).Status, 0, 1);
        asked.Folder.With(
            "private/answers.csv",
            "address,answer,text,web,remark\nbo@lantern.example,agreed,,yes,Zwq9note\nelse@lantern.example,no,,,Zwq9note\n");
        var entered = CliRun.Of("invite", job, "--answers");
        Assert.Equal(1, entered.Status);
        Assert.Contains("Reed\",agreed", File.ReadAllText(asked.Folder["approvals.csv"]), StringComparison.Ordinal);
        Assert.DoesNotContain(
            "Zwq9note", entered.Out + entered.Errors + File.ReadAllText(asked.Folder["approvals.csv"]), StringComparison.Ordinal);
        Assert.DoesNotContain(
            "lantern.example", entered.Out + entered.Errors + CliRun.Of("invite", job, "--answers", "--json").Out,
            StringComparison.Ordinal);
        var said = CliRun.Of("invite", job, "--json");
        using var told = System.Text.Json.JsonDocument.Parse(said.Out);
        Assert.Equal(1, told.RootElement.GetProperty("agreed").GetInt32());
        Assert.True(told.RootElement.GetProperty("letters").GetInt32() > 2);
        Assert.DoesNotContain("lantern.example", said.Out + said.Errors + CliRun.Of("invite", job).Out, StringComparison.Ordinal);
        string[] holding = [.. Directory.GetFiles(job, "*", SearchOption.AllDirectories)
            .Where(f => Encoding.Latin1.GetString(File.ReadAllBytes(f)).Contains("lantern.example", StringComparison.Ordinal))
            .Select(f => Path.GetRelativePath(job, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];
        Assert.Contains(holding, f => f.StartsWith("private/letters/", StringComparison.Ordinal));
        Assert.Equal(["names.csv"], holding.Where(f => !f.StartsWith("private/", StringComparison.Ordinal)).ToArray());
    }

    [Fact]
    public void No_list_is_taken_from_the_private_folder()
    {
        using var job = new TemporaryFolder().With("job.json", """{ "lists": ["private/mail-merge.csv"], "hem": { "length": "1 m" } }""")
            .With("private/mail-merge.csv", "name\nAda\n");
        var run = CliRun.Of("names", job.FullPath);
        Assert.Equal(2, run.Status);
        Assert.Contains("lies in the folder private", run.ErrorsOnOneLine, StringComparison.Ordinal);
    }

    [Fact]
    public void Answers_count_and_a_change_of_colour_says_whose_approval_it_touches()
    {
        using var job = new TemporaryFolder().With("job.json", Asked.Job("navy")).With("names.csv", Asked.List);
        Bander.Make(job.FullPath);
        Assert.True(Bander.Invite(job.FullPath).IsBegun);
        string begun = File.ReadAllText(job["approvals.csv"]);
        job.With(
            "approvals.csv",
            begun.Replace("Ada Marsh,,", "Ada Marsh,agreed,", StringComparison.Ordinal)
            .Replace("Dara Weir,,", "Dara Weir,no,", StringComparison.Ordinal));

        var answered = Bander.Make(job.FullPath);
        Assert.DoesNotContain(answered.Problems, p => p.Where.Key == "look");
        Assert.Equal(3, answered.Plan!.NameCount);
        Assert.Contains("approvals.csv, line 5", answered.Names!.Rows[3].Reason.English, StringComparison.Ordinal);
        var asked = Bander.Invite(job.FullPath, new DateOnly(2027, 3, 2));
        Assert.Equal((2, true), (asked.LeaveOutLines.Length, asked.IsPast));
        Assert.Equal(2, File.ReadAllLines(job["private/reminders.csv"]).Length - 1);

        job.With("job.json", Asked.Job("darkred"));
        var touched = Assert.Single(Bander.Make(job.FullPath).Problems, p => p.Where.Key == "look");
        Assert.Equal(Severity.NeedsPerson, touched.Severity);
        Assert.Contains("Ada Marsh", touched.Found.English, StringComparison.Ordinal);
        Assert.DoesNotContain("Reed", touched.Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_answers_are_asked_about_and_unknown_names_are_told()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nAda Marsh\nBo Reed\n").With(
            "approvals.csv",
            Header + "names.csv,2,Ada Marsh,agreed,,,,,\nnames.csv,2,Ada Marsh,change wished,,Ada M.,,,\nnames.csv,9,Nobody Here,agreed,,,,,\n");
        var names = NamesRoom.Lists.Read(folder).Value!;
        var report = Approvals.Of(folder.FullPath, names, Job.Corrections.None)!;
        Assert.Contains(
            report.Problems, p => p.Severity == Severity.NeedsPerson && p.Found.English.StartsWith("Answered twice", StringComparison.Ordinal));
        Assert.Contains(report.Problems, p => p.Found.English.Contains("Nobody Here", StringComparison.Ordinal));
    }

    /// <summary>The no outweighs a decision to keep the row, and a second answer.</summary>
    [Fact]
    public void An_owners_no_outweighs_all()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nAda Marsh\nBo Reed\n").With(
            "approvals.csv", Header + "names.csv,2,Ada Marsh,agreed,,,,,\nnames.csv,2,Ada Marsh,No,,,,,\n");
        var names = NamesRoom.Lists.Read(folder, "list,line,was,decision,text,why\nnames.csv,2,Ada Marsh,keep,,\n").Value!;
        var heeded = OwnersNo.Heeded(folder.FullPath, names).Value!;
        Assert.Equal("Bo Reed", Assert.Single(heeded.Names).Text);
        Assert.Equal(RowOutcome.LeftOut, heeded.Rows[0].Outcome);
    }
}
