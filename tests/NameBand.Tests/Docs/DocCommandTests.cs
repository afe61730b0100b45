using NameBand.Tests.CommandLine;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.Docs;

/// <summary>Every command that is shown in the README and on the pages of docs is run, on copies of the samples.</summary>
public sealed class DocCommandTests
{
    private static readonly string[] Jobs = ["JOB", "FOLDER", "my-job", "samples/lantern-walk", "samples/boat-banner"];

    public static TheoryData<string> Pages => new(ShownCommand.Pages().Where(p => ShownCommand.On(p).Any()));

    /// <summary>In the order of the page, in one copy of each sample that is made beforehand; a command shown twice is run once.</summary>
    [Theory]
    [MemberData(nameof(Pages))]
    public void Every_command_of_a_page_can_be_run(string page)
    {
        using var jobs = new TemporaryFolder();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var command in ShownCommand.On(page))
        {
            Assert.Contains(command.Args[0], ShownCommand.Verbs);
            bool isOfName = command.Args[0] == "sewn" && command.Args.Length > 2 && command.Args[2].StartsWith('n');
            bool isKeyed = isOfName || command.Args.Contains("--left") || page == "docs/machine-letters.md" || command.Args[0] == "measure"
                || command.Text.Contains("boat-banner", StringComparison.Ordinal);
            string sample = isKeyed ? "boat-banner" : "lantern-walk";
            string job = Path.Combine(jobs.FullPath, sample);
            Copy(sample, job, isMade: command.Args[0] is "sewn" or "public" or "invite");
            string[] args = [.. command.Args.Select(a => Jobs.Contains(a) ? job : a)];
            if (seen.Add(string.Join(' ', args)))
            {
                if (args[0] == "sewn" && args.FirstOrDefault(a => a is "--again" or "--patch" or "--mistake" or "--measured") is not null)
                {
                    // Only of what is sewn can such a thing be said.
                    Assert.InRange(CliRun.Of("sewn", args[1], args[2]).Status, 0, 1);
                }

                if (args.Contains("--answers"))
                {
                    Directory.CreateDirectory(Path.Combine(args[1], "private"));
                    File.WriteAllText(Path.Combine(args[1], "private", "answers.csv"), "name,answer\nAda Thornbury,agreed\n");
                }

                if (args.Contains("--done"))
                {
                    // A garment is finished only where all of it is sewn.
                    foreach (string open in Open(args[1]))
                    {
                        Assert.InRange(CliRun.Of("sewn", args[1], open).Status, 0, 1);
                    }
                }

                // A page cannot know which mark the hooping of a job has.
                if (Array.IndexOf(args, "--mark") is > 0 and var mark)
                {
                    args[mark + 1] = MarkOf(args[1], int.Parse(args[2], System.Globalization.CultureInfo.InvariantCulture));
                }

                // Nor how much of a round its first name leaves bare.
                if (Array.IndexOf(args, "--left") is > 0 and var left)
                {
                    var (first, mm) =
                        FirstOf(args[1],
                            int.Parse(args[Array.IndexOf(args, "--round") + 1], System.Globalization.CultureInfo.InvariantCulture));
                    Assert.InRange(CliRun.Of("sewn", args[1], first).Status, 0, 1);
                    args[left + 1] = mm;
                }

                // The page is a server, which would not end: that its command line is understood must do.
                var run = CliRun.Of(args[0] == "page" ? [.. args, "--help"] : args);
                Assert.True(run.Status is 0 or 1, $"{page}: {command.Text}\nended with status {run.Status}\n{run.Out}\n{run.Errors}");
            }
        }
    }

    /// <summary>Every hooping that is not sewn, as it is said on the command line.</summary>
    private static string[] Open(string job)
    {
        using var state = System.Text.Json.JsonDocument.Parse(CliRun.Of("sewn", job, "--json").Out);
        return [.. state.RootElement.GetProperty("hoopings").EnumerateArray().Where(h => h.GetProperty("state").GetString() != "sewn")
            .Select(h => h.GetProperty("number").GetInt32().ToString(System.Globalization.CultureInfo.InvariantCulture))];
    }

    /// <summary>The first name of a round, and what lies bare behind it.</summary>
    private static (string Name, string LeftMm) FirstOf(string job, int round)
    {
        using var plan = System.Text.Json.JsonDocument.Parse(File.ReadAllText(Path.Combine(job, "out", "plan.json")));
        var of = plan.RootElement.GetProperty("rounds").EnumerateArray().Single(r => r.GetProperty("number").GetInt32() == round);
        var name = of.GetProperty("segments")[0].GetProperty("names")[0];
        double left = of.GetProperty("hemMm").GetDouble() - name.GetProperty("startMm").GetDouble() - name.GetProperty("widthMm")
            .GetDouble();
        return ($"n{name.GetProperty("order").GetInt32()}", FormattableString.Invariant($"{left:0.0} mm"));
    }

    private static string MarkOf(string job, int hooping)
    {
        using var state = System.Text.Json.JsonDocument.Parse(CliRun.Of("sewn", job, "--json").Out);
        return state.RootElement.GetProperty("hoopings").EnumerateArray().Single(h => h.GetProperty("number").GetInt32() == hooping)
            .GetProperty("mark").GetString()!;
    }

    [Fact]
    public void The_pages_show_every_command_there_is()
    {
        var shown = ShownCommand.Pages().SelectMany(ShownCommand.On).Select(c => c.Args[0]).Distinct().ToList();
        string[] verbs = NameBand.Cli.Usage.Commands.English["The commands are ".Length..].Split(';')[0]
            .Split([", ", " and "], StringSplitOptions.RemoveEmptyEntries);
        Assert.True(verbs.Length >= 9);
        Assert.Equal([], verbs.Where(v => !shown.Contains(v)).ToArray());
    }

    /// <summary>Builds and tests are what runs this; a benchmark takes minutes, so only its verb is looked up.</summary>
    [Fact]
    public void Every_other_program_that_is_shown_is_known()
    {
        string benchmarks = Repository.Read("tests/NameBand.Benchmarks/Program.cs");
        foreach (string line in ShownCommand.Pages().SelectMany(ShownCommand.Others))
        {
            string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words[1].EndsWith("NameBand.Benchmarks.dll", StringComparison.Ordinal))
            {
                Assert.Contains($"[\"{words[2]}\"", benchmarks, StringComparison.Ordinal);
            }
            else if (line.StartsWith("dotnet run --project tests/NameBand.Benchmarks ", StringComparison.Ordinal))
            {
                Assert.Contains($"[\"{words[Array.IndexOf(words, "--") + 1]}\"", benchmarks, StringComparison.Ordinal);
            }
            else
            {
                Assert.Contains(words[1], new[] { "build", "test", "restore", "run" });
            }
        }
    }

    /// <summary>The sample's own files, and its finished folder where a command goes on from one.</summary>
    private static void Copy(string sample, string job, bool isMade)
    {
        if (!Directory.Exists(job))
        {
            Directory.CreateDirectory(job);
            foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "samples", sample)))
            {
                // Twenty names do: what a command says of sixty is tested elsewhere.
                File.WriteAllLines(
                    Path.Combine(job, Path.GetFileName(file)),
                    File.ReadLines(file).Take(file.EndsWith("names.csv", StringComparison.Ordinal) ? 21 : int.MaxValue));
            }
        }

        if (isMade && !File.Exists(Path.Combine(job, "out", "plan.json")))
        {
            Assert.InRange(CliRun.Of("make", job).Status, 0, 1);
        }
    }
}
