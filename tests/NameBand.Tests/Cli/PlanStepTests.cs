using NameBand.Job;
using NameBand.Reports.Answers;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>What a plan does otherwise is said, and what comes of it, from either side.</summary>
public sealed class PlanStepTests
{
    [Fact]
    public void Shorter_pieces_make_so_many_joins_more_and_longer_ones_as_many_less()
    {
        var whole = Offered("");
        var cut = Offered(", \"piece\": \"700 mm\"", JobEdit.Text("strip.piece", "700 mm"));
        int more = cut.Plan.Joins - whole.Plan.Joins;
        Assert.True(whole.Plan.Joins > 0 && more > 1, $"{whole.Plan.Joins} {more}");

        Assert.StartsWith($"pieces of 700 mm at most: {more} joins more, ", PlanStep.InWords(cut, whole).English, StringComparison.Ordinal);
        Assert.StartsWith(
            $"each round in one piece: {more} joins less, ",
            PlanStep.InWords(whole with { Edits = [JobEdit.Remove("strip.piece")] }, cut).English, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_face_is_named_and_the_same_one_is_not()
    {
        var (one, other) = (Offered(""), Offered("", "Lato Bold", 9, JobEdit.Text("lettering.face", "Lato Bold")));

        Assert.StartsWith("in Lato Bold: ", PlanStep.InWords(other, one).English, StringComparison.Ordinal);
        Assert.DoesNotContain("Lato", PlanStep.InWords(other, other).English, StringComparison.Ordinal);
    }

    /// <summary>Letters of another height are told once: as what is set where it is the height, else as what comes of it.</summary>
    [Fact]
    public void Letters_that_come_out_larger_or_smaller_are_told_once()
    {
        var one = Offered("");
        var set = Offered("", "Nunito Bold", 8, JobEdit.Text("lettering.height", "8 mm"));
        string told = PlanStep.InWords(set, one).English;
        Assert.StartsWith("letters 1.0 mm smaller: ", told, StringComparison.Ordinal);
        Assert.DoesNotContain("letters", told[8..], StringComparison.Ordinal);
        string come = PlanStep.InWords(set with { Edits = [JobEdit.Text("lettering.order", "alphabetical")] }, one).English;
        Assert.Equal(2, come.Split("letters 1.0 mm smaller").Length);
        var back = one with { Edits = [JobEdit.Remove("lettering.order")] };
        Assert.Contains("letters 1.0 mm larger", PlanStep.InWords(back, set).English, StringComparison.Ordinal);
    }

    /// <summary>A plan that has a place for more names takes longer for them, which is said before the hours.</summary>
    [Fact]
    public void Names_that_have_no_place_as_it_is_set_are_told_before_the_hours()
    {
        var (narrow, wide) = (Offered(" }, \"hoop\": { \"along\": \"75 mm\""), Offered("", JobEdit.Remove("hoop.along")));
        int more = wide.Plan.NameCount - narrow.Plan.NameCount;
        Assert.InRange(more, 2, 5);

        Assert.Contains($": {more} names more, ", PlanStep.InWords(wide, narrow).English, StringComparison.Ordinal);
        Assert.DoesNotContain("name", PlanStep.InWords(wide, wide).English, StringComparison.Ordinal);
    }

    private static OfferedPlan Offered(string strip, params JobEdit[] edits) => Offered(strip, "Nunito Bold", 9, edits);

    private static OfferedPlan Offered(string strip, string face, int heightMm, params JobEdit[] edits)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\nEmlyn Sedge\nFenna Weir\n")
            .With("job.json", $$"""
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m", "turn": 0 },
                  "lettering": { "height": "{{heightMm}} mm", "face": "{{face}}" }, "strip": { "rounds": 1{{strip}} } }
                """);
        var report = Bander.Hours(folder.FullPath);
        return new OfferedPlan("", [.. edits], report.Job!, report.Plan!, report.Estimate!);
    }
}
