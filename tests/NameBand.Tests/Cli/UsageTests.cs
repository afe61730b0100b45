using NameBand.Cli;
using NameBand.Cli.Terminal;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>A wrong command line: status 64, nothing on standard output, and on standard error what was probably meant.</summary>
public class UsageTests
{
    private static readonly string Commands = string.Join('\n', Wrapping.Wrap(Usage.Commands.English, Outlet.WidthOfFiles)) + "\n";
    private const string Make = "Write: nameband make JOB [--out DIR] [--json]\n";

    private static readonly string Sewn =
        string.Join(
            '\n', Wrapping.Wrap(
                "Write: nameband sewn JOB [HOOPING | nNAME | nFIRST-nLAST] [--minutes N] [--hands N] [--machine NAME] [--by NAME] [--mark SIGNS] [--again | --patch | --mistake | --measured LENGTH [--strip N] [--sure] | --length LENGTH [--blank PLACES] [--scrap] | --scrap --mistake] [--done STEP | --undone STEP] [--round N] [--note TEXT] [--out DIR] [--json]", Outlet.WidthOfFiles)) + "\n";

    public static TheoryData<string, string> WrongLines => new()
    {
        { "", "No command was given.\n" + Commands },
        { "mak x", "“mak” is not a command of NameBand. Did you mean make?\n" + Commands },
        { "embroider x", "“embroider” is not a command of NameBand.\n" + Commands },
        { "--versoin", "“--versoin” is not an option of NameBand. Did you mean --version?\n" + Commands },
        { "make", "make needs the path of a job's folder.\n" + Make },
        { "make --json", "make needs the path of a job's folder.\n" + Make },
        { "make x --jsn", "“--jsn” is not an option of make. Did you mean --json?\n" + Make },
        { "make x --fast", "“--fast” is not an option of make.\n" + Make },
        { "make x -o y", "“-o” is not an option of make.\n" + Make },
        { "make x --out", "--out needs the path of a folder after it.\n" + Commands },
        { "make x y", "make takes one job, and “y” is one too many. A path with blanks in it stands in quotes.\n" + Make },
        { "make x -- y", "“--” means nothing to NameBand.\n" + Commands },
        { "hours x --evening", "--evening needs a word after it.\n" + Commands },
        { "names", "names needs the path of a job's folder.\nWrite: nameband names JOB [--settle] [--json]\n" },
        { "names x --out y", "“--out” is not an option of names.\nWrite: nameband names JOB [--settle] [--json]\n" },
        { "sewn x twelve", "“twelve” is not the number of a hooping, nor of names with an n before it.\n" + Sewn },
        { "sewn x 12 --minutes soon", "--minutes needs a number after it, with a point as the decimal mark, and “soon” is none.\n" + Sewn },
        { "sewn x 12 --minutes 0", "Minutes are a number above 0 and up to 1440, with a point as the decimal mark.\n" + Commands },
        { "sewn x 12 --hands -4", "Minutes are a number above 0 and up to 1440, with a point as the decimal mark.\n" + Commands },
        { "faces x", "faces takes no job, and “x” is one word too many.\nWrite: nameband faces [--json]\n" },
    };

    [Theory]
    [MemberData(nameof(WrongLines))]
    public void A_wrong_command_line_is_refused_with_what_was_meant(string line, string said) =>
        Assert.Equal(new CliRun(64, "", said), CliRun.Of(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)));

    [Theory]
    [InlineData("make", "x", "--out", "")]
    [InlineData("make", "")]
    public void An_empty_word_is_refused(params string[] args) =>
        Assert.Equal((64, ""), (CliRun.Of(args).Status, CliRun.Of(args).Out));

    /// <summary>From the list to the last stitch, in the help as in the README and in what is said of a mistyped command.</summary>
    [Fact]
    public void Commands_stand_in_the_order_of_the_work()
    {
        string[] verbs = ["names", "plans", "swatch", "measure", "invite", "make", "hours", "print", "page", "sewn", "public", "check",
            "faces"];
        string help = CliRun.Of("--help").Out;
        string readme = House.Repository.Read("README.md");
        Assert.Equal(verbs, verbs.OrderBy(v => help.IndexOf($"    {v} ", StringComparison.Ordinal)));
        Assert.Equal(verbs, verbs.OrderBy(v => readme.IndexOf($"| `{v}", StringComparison.Ordinal)));
        Assert.StartsWith("The commands are " + string.Join(", ", verbs[..^1]) + " and faces;", Usage.Commands.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help", "names <JOB>", "make <JOB>", "faces")]
    [InlineData("make --help", "--out <DIR>", "--json", "<JOB>")]
    [InlineData("names --help", "--json", "<JOB>")]
    [InlineData("faces -h", "--json")]
    public void Help_goes_to_standard_output(string line, params string[] parts)
    {
        var run = CliRun.Of(line.Split(' '));

        Assert.Equal((0, ""), (run.Status, run.Errors));
        Assert.All(parts, p => Assert.Contains(p, run.Out, StringComparison.Ordinal));
        Assert.DoesNotContain('\u001b', run.Out);
    }

    [Fact]
    public void Every_verb_of_the_help_page_is_named_where_a_command_line_is_refused()
    {
        string help = CliRun.Of("--help").Out;
        string[] verbs = [.. help[help.IndexOf("COMMANDS:", StringComparison.Ordinal)..].Split('\n').Skip(1)
            .Where(l => l.Length > 4 && l[4] != ' ').Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)[0])];

        Assert.Equal(
            verbs.Order(StringComparer.Ordinal),
            Usage.Commands.English["The commands are ".Length..].Split(';')[0].Split([", ", " and "], StringSplitOptions.None)
            .Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_version_is_a_number() => Assert.Matches(@"^\d+\.\d+\.\d+\n$", CliRun.Of("--version").Out);
}
