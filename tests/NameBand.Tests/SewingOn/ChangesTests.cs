using NameBand.Output.Changes;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>The plan says what changed since the one before, name by name.</summary>
public class ChangesTests
{
    private static SewnJob Job() => new("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");

    private static string[] Fates(MakeReport report, NameFate fate) => [.. report.Changes!.Of(fate).Select(n => n.Text)];

    [Fact]
    public void The_first_plan_has_nothing_to_be_compared_with()
    {
        using var job = Job();
        Assert.Null(job.Make().Changes);
        Assert.False(File.Exists(job["out/changes.csv"]));
    }

    [Fact]
    public void A_plan_made_twice_says_that_nothing_changed_and_gives_the_same_files()
    {
        using var job = Job();
        job.Make();
        job.Names.Add("Pip Ash");
        job.Make();
        byte[] before = File.ReadAllBytes(job["out/changes.csv"]);
        var again = job.Make();
        Assert.True(again.Changes!.IsNothing);
        Assert.Equal(7, again.Changes.Names.Length);
        Assert.Equal(before, File.ReadAllBytes(job["out/changes.csv"]));
        Assert.DoesNotContain(Directory.EnumerateFiles(job["out"]), f => f.Contains("(kept)", StringComparison.Ordinal));
    }

    [Fact]
    public void New_withdrawn_and_changed_names_are_told_and_the_others_say_whether_they_moved()
    {
        using var job = Job();
        job.Make();
        job.Names[1] = "Bram Sedgwick";
        job.Names.RemoveAt(5);
        job.Names.Add("Pip Ash");
        var report = job.Make();
        Assert.Equal(["Pip Ash"], Fates(report, NameFate.New));
        Assert.Equal(["Jo Weir"], Fates(report, NameFate.Withdrawn));
        var changed = Assert.Single(report.Changes!.Of(NameFate.TextChanged));
        Assert.Equal(("Bram Sedgewick", "Bram Sedgwick"), (changed.TextBefore, changed.Text));
        Assert.Equal(7, report.Changes.Names.Length);

        string[] lines = File.ReadAllLines(job["out/changes.csv"]);
        Assert.Equal(8, lines.Length);
        Assert.Contains(lines, l => l.StartsWith("text changed,Bram Sedgwick,Bram Sedgewick,names.csv,3,", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("withdrawn,Jo Weir,Jo Weir,names.csv,7,,", StringComparison.Ordinal));
    }

    [Fact]
    public void A_name_that_is_wholly_others_on_its_line_is_a_changed_one_where_its_neighbours_stayed()
    {
        using var job = Job();
        job.Make();
        job.Names[2] = "Z. Okonjo";
        var changed = Assert.Single(job.Make().Changes!.Of(NameFate.TextChanged));
        Assert.Equal("Tuva Lind", changed.TextBefore);
    }

    [Fact]
    public void A_list_in_another_order_is_told_by_hoopings_and_not_as_new_names()
    {
        using var job = Job();
        job.Make();
        job.Names.Reverse();
        var report = job.Make();
        Assert.Empty(Fates(report, NameFate.New));
        Assert.Empty(Fates(report, NameFate.Withdrawn));
        Assert.NotEmpty(Fates(report, NameFate.MovedHooping));
    }

    [Fact]
    public void A_name_that_is_held_now_is_told_with_its_reason()
    {
        using var job = Job();
        job.Make();
        job.Names.Insert(0, "Jo  weir");
        var report = job.Make();
        var held = Assert.Single(report.Changes!.Of(NameFate.NoLongerSewn));
        Assert.Equal("Jo Weir", held.Text);
        Assert.StartsWith("held: ", held.Why!.English, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sewn_name_that_was_changed_or_withdrawn_is_told_and_latecomers_move_no_other()
    {
        using var job = Job();
        job.Make();
        job.Say(1);
        job.Say(2);
        job.Names[0] = "Orla Penhallow";
        job.Names.RemoveAt(1);
        var report = job.Make();
        Assert.Equal(["Orla Penhale"], Fates(report, NameFate.SewnThenChanged));
        Assert.Equal(["Bram Sedgewick"], Fates(report, NameFate.SewnThenWithdrawn));
        Assert.Equal(["Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir"], Fates(report, NameFate.Unchanged));
        byte[] told = File.ReadAllBytes(job["out/changes.csv"]);
        job.Make();
        Assert.Equal(told, File.ReadAllBytes(job["out/changes.csv"]));
    }

    [Fact]
    public void A_plan_that_was_spoiled_by_hand_is_not_compared_and_stops_nothing()
    {
        using var job = Job();
        job.Make();
        string plan = File.ReadAllText(job["out/plan.json"]);
        File.WriteAllText(job["out/plan.json"], plan.Replace("\"rounds\"", "\"ronds\"", StringComparison.Ordinal));
        var report = job.Make();
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Null(report.Changes);
    }
}
