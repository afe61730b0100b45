using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using NameBand.Common;
using NameBand.Reports.Answers;
using Xunit;

namespace NameBand.Tests.House;

/// <summary>The rules of DEVELOPERS.md, held against the sources themselves.</summary>
public class HouseTests
{
    private const int MostLines = 430;

    private static readonly string[] TextFiles =
    [
        ".cs", ".csproj", ".props", ".targets", ".sln", ".md", ".json", ".csv", ".txt", ".yml", ".yaml", ".sh", ".editorconfig",
        ".gitattributes", ".gitignore", ".html", ".css", ".razor", "/run",
    ];

    [Fact]
    public void Rooms_use_only_the_rooms_above_them() =>
        AssertNone(Repository.Files("src/NameBand.Core", ".cs").SelectMany(RoomOrder.Violations));

    [Fact]
    public void Folders_of_a_room_use_each_other_one_way() =>
        AssertNone(FolderCircles.Violations([.. Repository.Files("src/NameBand.Core", ".cs")]));

    [Fact]
    public void No_room_is_opened_to_another_by_a_global_using() =>
        AssertNone(Repository.Files("src", ".csproj", ".props").Where(f => f.Text.Contains("<Using", StringComparison.Ordinal))
            .Concat(Repository.Files("src", ".cs").Where(f => CodeText.Of(f.Text).Contains("global using", StringComparison.Ordinal)))
            .Select(f => f.Path));

    [Fact]
    public void The_core_has_no_console_no_web_no_clock_and_no_chance() =>
        AssertNone(Repository.Files("src/NameBand.Core", ".cs").SelectMany(CoreBans.Violations));

    [Fact]
    public void The_files_of_a_job_are_opened_through_one_door() =>
        AssertNone(Repository.Files("src/NameBand.Core", ".cs").SelectMany(OneDoor.Violations));

    [Fact]
    public void Which_way_names_go_is_asked_in_one_place() =>
        AssertNone(Repository.Files("src", ".cs", ".razor").SelectMany(WayQuestions.Violations));

    [Fact]
    public void The_command_line_prints_the_records_of_the_front_door_alone() =>
        AssertNone(Repository.Files("src/NameBand.Cli", ".cs").SelectMany(OneAnswer.Violations));

    [Fact]
    public void Every_report_of_the_front_door_has_a_record_that_is_told()
    {
        var reports = typeof(Bander).GetMethods(BindingFlags.Public | BindingFlags.Static).Select(m => m.ReturnType).Distinct().ToList();
        Assert.True(reports.Count >= 9);
        AssertNone(reports.Where(r => typeof(ReportAnswers).GetMethod("get_Answer", [r])?.ReturnType != typeof(CommandAnswer))
            .Select(r => $"{r.Name} has no Answer"));

        var answers = typeof(CommandAnswer).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(CommandAnswer))).ToList();
        Assert.True(answers.Count >= 9);
        AssertNone(answers.Where(a => ((IJsonTypeInfoResolver)AnswerJson.Forms).GetTypeInfo(a, AnswerJson.Forms.Options) is null)
            .Select(a => $"{a.Name} has no form in AnswerForms"));
    }

    [Fact]
    public void The_tree_of_the_sources_has_a_line_for_each_folder() =>
        Assert.Equal(
            Repository.Files("src", ".cs", ".razor").Select(f => f.Path[..f.Path.LastIndexOf('/')])
                .Append("src/NameBand.Web").Distinct().Order(StringComparer.Ordinal),
            SourceTree.Folders(Repository.Read("DEVELOPERS.md")).Order(StringComparer.Ordinal));

    [Fact]
    public void No_file_is_too_long_to_be_read() =>
        AssertNone(Repository.Files("src", ".cs").Concat(Repository.Files("tests", ".cs"))
            .Where(f => f.LineCount > MostLines).Select(f => $"{f.Path}: {f.LineCount} lines"));

    [Fact]
    public void No_method_is_handed_more_than_can_be_told_apart() =>
        AssertNone(new[] { typeof(Bander).Assembly, typeof(NameBand.Cli.CliApp).Assembly, typeof(NameBand.Web.Table.Worktable).Assembly }
            .SelectMany(a => ParameterCount.Violations(a.GetTypes())));

    [Fact]
    public void What_nobody_outside_uses_is_not_open_to_them() =>
        AssertNone(OpenTypes.Violations(
            typeof(Bander).Assembly.GetTypes(),
            Repository.Files("src/NameBand.Cli", ".cs").Concat(Repository.Files("src/NameBand.Web", ".cs", ".razor", ".cshtml")).Select(f => f.Text)));

    [Fact]
    public void No_line_is_too_wide_to_be_read() =>
        AssertNone(Repository.Files("src", ".cs").Concat(Repository.Files("tests", ".cs")).SelectMany(LineWidth.Violations));

    [Fact]
    public void A_test_over_drawn_values_does_not_fail_by_rounding() =>
        AssertNone(Repository.Files("tests", ".cs").Where(f => f.Text.Contains(".Sample(", StringComparison.Ordinal))
            .SelectMany(RoundedComparisons.Violations));

    [Fact]
    public void The_way_of_one_name_is_told_call_by_call() =>
        AssertNone(CallChain.Violations(
            Repository.Read("DEVELOPERS.md"),
            path => Repository.Files("src", ".cs").FirstOrDefault(f => f.Path == $"src/NameBand.Core/{path}")?.Text));

    [Fact]
    public void Public_numbers_say_their_unit() =>
        AssertNone(UnitNames.Violations(typeof(Length).Assembly.GetTypes()));

    [Fact]
    public void A_number_with_a_name_says_why_it_is_what_it_is() =>
        AssertNone(Repository.Files("src", ".cs", ".razor").SelectMany(ConstantReasons.Violations));

    [Fact]
    public void What_is_handed_on_cannot_be_changed() =>
        AssertNone(Mutability.Violations(typeof(Length).Assembly.GetTypes()));

    [Fact]
    public void No_file_says_where_it_was_made() =>
        AssertNone(Repository.Files().Where(f => TextFiles.Any(e => f.Path.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
            .SelectMany(Leaks.Violations));

    [Fact]
    public void Every_package_is_pinned_and_accounted_for() =>
        AssertNone(Packages.Violations(
            Repository.Files("src", ".csproj").Concat(Repository.Files("tests", ".csproj")), Repository.Read("Directory.Packages.props"),
            Repository.Read("docs/dependencies.md")));

    private static void AssertNone(IEnumerable<string> violations)
    {
        string all = string.Join("\n", violations);
        Assert.True(all.Length == 0, all);
    }
}
