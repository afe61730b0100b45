using System.Globalization;
using System.Text;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>Lists and names at the ends of what there may be: each ends with clear words and the right status.</summary>
public class ListSizeTests
{
    private const string Job = """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 } }""";
    private const string RoundsAsNeeded =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "36.6 m", "turn": 0 }, "strip": { "rounds": "asNeeded" }, "lettering": { "height": 10 } }""";

    private static TemporaryFolder With(string list, string job = Job) =>
        new TemporaryFolder().With("job.json", job).With("names.csv", list);

    [Fact]
    public void One_name_of_one_letter_is_a_whole_job()
    {
        using var job = With("Name\nA\n");

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal((0, ""), (run.Status, run.Errors));
        Assert.Contains("1 name on one round", run.Out, StringComparison.Ordinal);
        var made = new MadeFolder(job["out"]);
        Assert.Equal("A", Assert.Single(made.Names).GetProperty("text").GetString());
        Assert.True(File.Exists(job["out/needle-paths/hooping-001.csv"]));
    }

    [Fact]
    public void A_name_of_a_thousand_characters_is_held_and_the_others_are_made()
    {
        using var job = With($"Name\n{new string('M', 1000)}\nAda Marsh\n");

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal(1, run.Status);
        Assert.Contains("1000 characters are more than a name has.", run.OutOnOneLine, StringComparison.Ordinal);
        var made = new MadeFolder(job["out"]);
        Assert.Equal(["held", "placed"], made.Rows.Select(r => r.GetProperty("outcome").GetString()!));
        Assert.All(run.Out.Split('\n'), l => Assert.InRange(l.Length, 0, 120));
    }

    [Fact]
    public void A_name_of_which_only_the_beginning_was_read_cannot_be_kept()
    {
        string longest = new('M', 1000);
        using var job =
            With($"Name\n{longest}\nAda Marsh\n",
                Job.Replace("}\n", "", StringComparison.Ordinal)[..^1] + """, "hoop": { "along": "9 m" } }""");
        job.With("corrections.csv", $"list,line,was,decision,text,why\nnames.csv,2,{longest},keep,,\n");

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal(1, run.Status);
        Assert.Contains(
            "it cannot be kept; write under “text” in corrections.csv what is to be sewn", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal("Ada Marsh", Assert.Single(new MadeFolder(job["out"]).Names).GetProperty("text").GetString());

        job.With("corrections.csv", $"list,line,was,decision,text,why\nnames.csv,2,{longest},keep,Emm,\n");
        Assert.Equal(0, CliRun.Of("make", job.FullPath).Status);
        Assert.Equal(["Emm", "Ada Marsh"], new MadeFolder(job["out"]).Names.Select(n => n.GetProperty("text").GetString()!));
    }

    [Fact]
    public void Rows_that_are_all_the_same_are_one_name()
    {
        using var job = With("Name\n" + string.Concat(Enumerable.Repeat("Ada Marsh\n", 500)));

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal((0, ""), (run.Status, run.Errors));
        Assert.Contains("Of 500 rows, 499 are repeats and 0 are left out", run.OutOnOneLine, StringComparison.Ordinal);
        var made = new MadeFolder(job["out"]);
        Assert.Single(made.Names);
        Assert.Equal(499, made.Rows.Count(r => r.GetProperty("outcome").GetString() == "merged"));
    }

    [Fact]
    public void A_hooping_of_a_plan_without_any_is_refused_with_the_reason()
    {
        using var job = With("Name\nguest\nunknown\n");
        File.WriteAllText(
            job["job.json"],
            File.ReadAllText(job["job.json"])
            .Replace("\"format\": 1,", "\"format\": 1, \"strip\": { \"rounds\": \"asNeeded\" },", StringComparison.Ordinal));
        CliRun.Of("make", job.FullPath);

        var run = CliRun.Of("sewn", job.FullPath, "1");

        Assert.Equal(2, run.Status);
        Assert.Contains("hooping", run.ErrorsOnOneLine, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("make", 1)]
    [InlineData("print", 1)]
    [InlineData("names", 1)]
    [InlineData("hours", 1)]
    [InlineData("plans", 1)]
    public void When_all_rows_are_held_every_command_says_so(string verb, int status)
    {
        using var job = With("Name\nguest\nunknown\n");

        var run = CliRun.Of(verb, job.FullPath);

        Assert.Equal((status, ""), (run.Status, run.Errors));
        Assert.DoesNotContain("fault", run.Out, StringComparison.Ordinal);
        if (verb is "make" or "print")
        {
            Assert.Contains("No name could be placed", run.Out, StringComparison.Ordinal);
            Assert.Contains("2 things need a decision", run.Out, StringComparison.Ordinal);
            var made = new MadeFolder(job["out"]);
            Assert.Empty(made.Names);
            Assert.All(made.Rows, r => Assert.Equal("held", r.GetProperty("outcome").GetString()));
        }

        if (verb == "plans")
        {
            Assert.Contains("No name is to be sewn yet", run.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("--take", run.Out, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("", "This file is empty.")]
    [InlineData("Name\n", "There are no names in it: it ends after the header.")]
    public void A_list_without_a_name_is_refused_and_nothing_is_written(string list, string found)
    {
        using var job = With(list);

        var run = CliRun.Of("make", job.FullPath);

        Assert.Equal((2, ""), (run.Status, run.Out));
        Assert.Contains(found, run.ErrorsOnOneLine, StringComparison.Ordinal);
        Assert.False(Path.Exists(job["out"]));
    }

    [Fact]
    public void Of_thirty_thousand_names_each_is_accounted_for()
    {
        using var job = With(Many(30_000), RoundsAsNeeded);

        var run = CliRun.Of("names", job.FullPath);
        var planned = Planning.Run(job.FullPath, new FaceShelf(), default);

        Assert.Equal((0, ""), (run.Status, run.Errors));
        Assert.StartsWith(
            "30000 rows in the list: 30000 names to sew.", run.Out.Replace(",", "", StringComparison.Ordinal), StringComparison.Ordinal);
        var plan = planned.Value!.Plan;
        Assert.Equal(30_000, planned.Value.Rows.Rows.Count(r => r.Outcome == RowOutcome.Placed));
        Assert.Equal(30_000, plan.NameCount);
        Assert.Equal(Enumerable.Range(1, 30_000), plan.Rounds.SelectMany(r => r.Names).Select(n => n.Order));
        Assert.True(plan.MatchesHem);
    }

    [Fact]
    public void Reading_and_laying_out_take_memory_in_step_with_the_list()
    {
        Allocated(300);
        double few = Allocated(3000), many = Allocated(30_000);
        Assert.InRange(many / few, 5, 13);

        static double Allocated(int names)
        {
            using var job = With(Many(names), RoundsAsNeeded);
            long before = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal(names, Planning.Run(job.FullPath, new FaceShelf(), default).Value!.Plan.NameCount);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }
    }

    /// <summary>Names of two words, no two alike.</summary>
    private static string Many(int count)
    {
        string[] first = ["Ada", "Bram", "Orla", "Tuva", "Jo", "Wyn", "Ilse", "Pim", "Rhona", "Gus"];
        string[] syllables = ["ba", "den", "fil", "gor", "hem", "ju", "kas", "lo", "mir", "nat", "pel", "rud", "sov", "tam", "wex", "zin"];
        var list = new StringBuilder("name\n");
        for (int i = 0; i < count; i++)
        {
            int n = i / first.Length;
            string last = syllables[n % 16] + syllables[n / 16 % 16] + syllables[n / 256 % 16];
            list.Append(CultureInfo.InvariantCulture, $"{first[i % first.Length]} {char.ToUpperInvariant(last[0])}{last[1..]}\n");
        }

        return list.ToString();
    }
}
