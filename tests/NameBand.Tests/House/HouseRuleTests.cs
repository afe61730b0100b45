using Xunit;

namespace NameBand.Tests.House;

/// <summary>Each rule of the house is fed something bad, to prove that it can fail.</summary>
public class HouseRuleTests
{
    [Theory]
    [InlineData("Layout", "using NameBand.Stitching;", "Layout reaches down to Stitching")]
    [InlineData("Layout", "using static NameBand.Output.OutPaths;", "Layout reaches down to Output")]
    [InlineData("Layout", "using P = NameBand.Stitching.NeedlePath;", "Layout reaches down to Stitching")]
    [InlineData("Layout", "class A { NameBand.Stitching.NeedlePath p; }", "Layout reaches down to Stitching")]
    [InlineData("Layout", "class A { global::NameBand . Stitching.NeedlePath p; }", "Layout reaches down to Stitching")]
    [InlineData("Layout", "class A { Stitching.NeedlePath p; }", "Layout reaches down to Stitching")]
    [InlineData("Layout", "class A { string s = $\"{Stitching.NeedlePath.Count}\"; }", "Layout reaches down to Stitching")]
    [InlineData("Common", "using NameBand.Job;", "Common reaches down to Job")]
    [InlineData("Output", "class A { object o = Bander.Make(\"\"); }", "a room reaches for Bander of the front door")]
    [InlineData("Output", "class A { Pipeline.LaidOutJob j; }", "Output reaches down to Pipeline")]
    [InlineData("Output", "using NameBand.Reports;", "Output reaches down to Reports")]
    [InlineData("Reports", "using NameBand.Pipeline.Ways;", "Reports reaches down to Pipeline")]
    [InlineData("Layout", "namespace NameBand.Job;", "is not that of its room")]
    [InlineData("Attic", "class A { }", "there is no room Attic")]
    public void A_room_that_reaches_the_wrong_way_is_found(string room, string code, string found) =>
        Assert.Contains(RoomOrder.Violations(Core(room, code)), v => v.Contains(found, StringComparison.Ordinal));

    [Theory]
    [InlineData("class A { B b; }", "class B { A a; }", 2)]
    [InlineData("class A { B b; }", "class B { }", 0)]
    [InlineData("class A { }", "class B : A { }", 0)]
    [InlineData("class A { string s = \"B b\"; }", "class B { A a; }", 0)]
    [InlineData("class A { int B; int C => x.B; }", "class B { A a; }", 0)]
    public void A_folder_that_is_led_back_to_itself_is_found(string parent, string child, int found) =>
        Assert.Equal(found, FolderCircles.Violations([
            new SourceFile("src/NameBand.Core/Layout/A.cs", $"using NameBand.Layout.Pieces;\nnamespace NameBand.Layout;\n{parent}"),
            new SourceFile("src/NameBand.Core/Layout/Pieces/B.cs", $"namespace NameBand.Layout.Pieces;\n{child}")]).Count());

    [Theory]
    [InlineData("src/NameBand.Core/Output/A.cs", "if (job.Way == Way.Traced) { }", 1)]
    [InlineData("src/NameBand.Core/Pipeline/Sewing.cs", "return way switch { Way.NeedlePath => 1, Job.Way . MachineLetters => 2 };", 2)]
    [InlineData("src/NameBand.Web/Components/A.razor", "@if (job.Way == Way.NeedlePath) { }", 1)]
    [InlineData("src/NameBand.Core/Pipeline/Ways/WayChoice.cs", "Way.Traced => new TracedWay()", 0)]
    [InlineData("src/NameBand.Core/Job/JobKeys.cs", "(\"traced\", Job.Way.Traced)", 0)]
    [InlineData("src/NameBand.Core/Output/A.cs", "// Way.Traced is asked elsewhere", 0)]
    public void Asking_for_the_way_is_found(string path, string code, int questions) =>
        Assert.Equal(questions, WayQuestions.Violations(new SourceFile(path, code)).Count());

    [Theory]
    [InlineData("Gen.Double.Sample(d => Assert.Equal(1, d, 6));", 1)]
    [InlineData("Gen.Double.Sample(d => { Assert.All(all, a => Assert.NotEqual(a, d, 9)); }, iter: 9);", 1)]
    [InlineData("Gen.Double.Sample(d => Assert.Equal(1, d, 1e-6), iter: 200);", 0)]
    [InlineData("Assert.Equal(1, Sample.Job.WidthMm, 6);", 0)]
    public void A_comparison_by_decimals_over_drawn_values_is_found(string code, int found) =>
        Assert.Equal(found, RoundedComparisons.Violations(new SourceFile("tests/A.cs", $"class A {{ void B() {{ {code} }} }}")).Count());

    [Theory]
    [InlineData("Reports/A.cs", "using System.Text.Json;", 1)]
    [InlineData("Reports/A.cs", "void Write(Utf8JsonWriter json) { }", 1)]
    [InlineData("Commands/A.cs", "var all = new JsonObject();", 1)]
    [InlineData("A.cs", "host.Output.Writer.WriteLine(JsonSerializer.Serialize(report));", 1)]
    [InlineData("Reports/A.cs", "using NameBand.Estimating;", 1)]
    [InlineData("Terminal/A.cs", "class A { NameBand.Layout.StripPlan p; }", 1)]
    [InlineData("Reports/A.cs", "using NameBand.Reports.Answers; string s = \"JsonObject\";", 0)]
    [InlineData("Commands/A.cs", "using NameBand.Job; class A { string s = AnswerJson.Of(report.Answer); }", 0)]
    public void A_command_line_that_answers_by_hand_is_found(string path, string code, int found) =>
        Assert.Equal(found, OneAnswer.Violations(new SourceFile($"src/NameBand.Cli/{path}", code)).Count());

    [Theory]
    [InlineData("Layout", "using NameBand.Lettering; namespace NameBand.Layout; // see NameBand.Stitching")]
    [InlineData(
        "Layout",
        "/* NameBand.Output */ class A { string s = \"NameBand.Output.X\"; char c = '\"'; string t = @\"NameBand.Load\"; }")]
    [InlineData("Layout", "class A { int x = plan.Stitching.Count + job.Load.X; }")]
    [InlineData("Stitching", "namespace NameBand.Stitching.Columns; class A { Lettering.LetterPiece p; }")]
    [InlineData("Layout", "class A { string r = \"\"\"\n NameBand.Output \"quoted\" \n\"\"\"; }")]
    public void A_room_that_keeps_to_its_place_passes(string room, string code) =>
        Assert.Empty(RoomOrder.Violations(Core(room, code)));

    [Theory]
    [InlineData("Console.WriteLine();")]
    [InlineData("var t = DateTime.UtcNow;")]
    [InlineData("var t = DateTimeOffset . Now;")]
    [InlineData("var t = System.Diagnostics.Stopwatch.StartNew();")]
    [InlineData("long t = Environment.TickCount64;")]
    [InlineData("Thread.Sleep(1);")]
    [InlineData("var r = new Random();")]
    [InlineData("var r = Random.Shared.Next();")]
    [InlineData("var g = Guid.NewGuid();")]
    [InlineData("using Microsoft.AspNetCore.Builder;")]
    [InlineData("using Spectre.Console;")]
    [InlineData("var c = CultureInfo.CurrentCulture;")]
    [InlineData("string s = $\"{DateTime.Now:O}\";")]
    public void What_the_core_may_not_touch_is_found(string code) => Assert.Single(CoreBans.Violations(Core("Layout", code)));

    [Theory]
    [InlineData("var r = new Random(7);")]
    [InlineData("// Console.WriteLine is banned")]
    [InlineData("string s = \"Console.WriteLine\";")]
    public void What_the_core_may_touch_passes(string code) => Assert.Empty(CoreBans.Violations(Core("Layout", code)));

    [Theory]
    [InlineData(141, "x", "", 1)]
    [InlineData(140, "x", "", 0)]
    [InlineData(141, "x", "/// ", 1)]
    [InlineData(141, "x", "Say(\"", 0)]
    [InlineData(142, "Aa(b); ", "Say(\"c\"); ", 1)]
    public void A_line_that_is_too_wide_is_found(int columns, string filling, string start, int found)
    {
        string line = start + string.Concat(Enumerable.Repeat(filling, columns))[..(columns - start.Length)];
        string end = start.EndsWith('"') ? "\");" : "";
        Assert.Equal(found, LineWidth.Violations(new SourceFile("a.cs", $"{line}{end}\n")).Count());
    }

    [Theory]
    [InlineData("1. `A.Run` (`Names/A.cs`)", "1 calls are told")]
    [InlineData("2. `A.Run` (`Names/A.cs`)", "call 1 is numbered 2")]
    [InlineData("1. `A.Run` (`Names/B.cs`)", "there is no file Names/B.cs")]
    [InlineData("1. `B.Run` (`Names/A.cs`)", "Names/A.cs declares no B")]
    [InlineData("1. `A.Go` (`Names/A.cs`)", "A has no Go")]
    public void A_call_that_is_told_and_is_not_there_is_found(string told, string found) =>
        Assert.Contains(found, CallChain.Violations(
            told, path => path == "Names/A.cs" ? "static class A\n{\n    public static int Run(int x) => Go(x);\n}\n" : null));

    [Fact]
    public void Numbers_without_a_unit_are_found() =>
        Assert.Equal(
            new[]
            {
                $"{typeof(Unitless).FullName}..ctor(Height)",
                $"{typeof(Unitless).FullName}.Depth()",
                $"{typeof(Unitless).FullName}.Height",
                $"{typeof(Unitless).FullName}.Move(by)",
                $"{typeof(Unitless).FullName}.Spread",
            }.Order(StringComparer.Ordinal),
            UnitNames.Violations([typeof(Unitless)]));

    [Theory]
    [InlineData("    private const int Most = 12;", 1)]
    [InlineData("    // Two lines of a screen.\n\n    private const int Most = 12;", 1)]
    [InlineData("    // The most names shown.\n    private const int MostNamed = 12;", 1)]
    [InlineData("    private const int MostNamed = 12; // The number of names that are shown", 1)]
    [InlineData("    /// <summary>Twice a thread's width.</summary>\n    private const double AMm = 0.8;\n    private const double BMm = 3;", 1)]
    [InlineData("    private static readonly double Root = Math.Sqrt(2);", 1)]
    [InlineData("    int F()\n    {\n        const int Tries = 4;\n        return Tries;\n    }", 1)]
    [InlineData("    private const double A = 1, B = 2;\n    public const byte C = 3;", 2)]
    [InlineData("    private const int Most = 12; // More would push the next step off a screen of 24 lines.", 0)]
    [InlineData("    /// <summary>Two lines of a screen.</summary>\n    public const int Most = 12;", 0)]
    [InlineData("    // Twice a thread's width, and the least stitch.\n    private const double AMm = 0.8;\n    private const double BMm = 1;", 0)]
    [InlineData("    // Our assumption,\n    // from looking at letters.\n    private const string Word = \"a\";\n    private const int Most = 1;", 0)]
    [InlineData("    private const string Address = \"http://\";\n    private readonly int _most = 12;\n    int most = 3;", 0)]
    public void A_number_that_gives_no_reason_is_found(string members, int found) =>
        Assert.Equal(found, ConstantReasons.Violations(new SourceFile("src/A.cs", $"class A\n{{\n{members}\n}}\n")).Count());

    [Fact]
    public void A_method_that_is_handed_too_much_is_found() =>
        Assert.Equal(
            ["Handed.Much has 7", "Handed..ctor has 7"],
            ParameterCount.Violations([typeof(Handed), typeof(MuchTogether)])
                .Select(v => v[(v.LastIndexOf('+') + 1)..v.IndexOf(" parameters", StringComparison.Ordinal)]));

    [Fact]
    public void A_type_open_to_nobody_is_found() =>
        Assert.Equal(
            ["OpenToNobody", "OpenToNobodyEither"],
            OpenTypes.Violations(
                    [
                        typeof(OpenToSome), typeof(HandedOn), typeof(InAList), typeof(Adding),
                        typeof(OpenToNobody), typeof(OpenToNobodyEither),
                    ],
                    ["var a = new OpenToSome(); a.Added();"])
                .Select(v => v.Split(' ')[0].Split('.')[^1]));

    [Fact]
    public void What_can_be_changed_is_found() => Assert.Equal(3, Mutability.Violations([typeof(Changeable)]).Count());

    [Theory]
    [InlineData("see /", "work/shared/x")]
    [InlineData("\"/", "home/maker/x\"")]
    [InlineData("(/", "root/.nuget)")]
    [InlineData("/", "tmp/nb/x")]
    [InlineData("C:\\", "Users\\maker")]
    [InlineData("https://api.", "nuget.org/x")]
    public void A_path_of_some_machine_is_found(string before, string after) =>
        Assert.Single(Leaks.Violations(new SourceFile("a.md", "fine\n" + before + after + "\n")));

    [Fact]
    public void A_path_of_the_web_is_no_path_of_a_machine() =>
        Assert.Empty(Leaks.Violations(new SourceFile("a.md", "https://example.org/home/page and homework/root/x")));

    [Theory]
    [InlineData("Good", "1.0.0", "| Other | MIT | why |", "Good is used and is not in")]
    [InlineData("Good", "1.0.0", "| Good |  | why |", "Good is used and is not in")]
    [InlineData("Good", "1.0.0", "| Good | MIT |  |", "Good is used and is not in")]
    [InlineData("Good", "1.*", "| Good | MIT | why |", "Good is not pinned to one version")]
    [InlineData("Good", "[1.0,2.0)", "| Good | MIT | why |", "Good is not pinned to one version")]
    [InlineData("Better", "1.0.0", "| Good | MIT | why |", "Better is pinned and no project uses it")]
    public void A_package_that_is_not_accounted_for_is_found(string pinned, string version, string row, string found) =>
        Assert.Contains(
            Packages.Violations(
                [new SourceFile("a.csproj", "<PackageReference Include=\"Good\" />")],
                $"<PackageVersion Include=\"{pinned}\" Version=\"{version}\" />", row),
            v => v.StartsWith(found, StringComparison.Ordinal));

    private static SourceFile Core(string room, string code) => new($"src/NameBand.Core/{room}/A.cs", code);

    public sealed record Unitless(double Height, double WidthMm, System.Collections.Immutable.ImmutableArray<double> SpreadMm)
    {
        public double? Spread => Height;

        public double Depth() => WidthMm;

        public void Move(double by, double overMm) => _ = by + overMm;
    }

    public sealed class Changeable
    {
#pragma warning disable CA1051, SA1401 // A bad example on purpose.
        public int Field;
#pragma warning restore CA1051, SA1401

        public int Settable { get; set; }

        public int Given { get; init; }

        public int[] Entries { get; } = [];
    }

    public sealed class Handed(int a, int b, int c, int d, int e, int f, int g)
    {
        public int Sum => a + b + c + d + e + f + g;

        public int Much(int h, int i, int j, int k, int l, int m, int n) => Sum + h + i + j + k + l + m + n;

        public int Enough(int h, int i, int j, int k, int l, int m) => Sum + h + i + j + k + l + m;
    }

    public sealed record MuchTogether(int A, int B, int C, int D, int E, int F, int G);
}
