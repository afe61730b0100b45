using NameBand.Choosing;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;
using NameBand.Pipeline;
using NameBand.Pipeline.Plans;
using Xunit;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>Letters that were stitched for one plan are looked up for the others, and come to what their stitches take.</summary>
public sealed class StitchTableTests
{
    private const string Names =
        "Name\nOrla Penhale\nBram Sedgewick\nTuva Lind\nIlse Quill\nNoor Haddad\nJo Weir\nMerryn Hobbs\nPiran Jago\n";

    private static TemporaryFolder Folder(string more = "") => new TemporaryFolder().With("names.csv", Names).With(
        "job.json", "{ \"format\": 1, \"lists\": [\"names.csv\"], \"hem\": { \"length\": \"1.2 m\", \"turn\": 0 }, "
            + $"\"lettering\": {{ \"height\": \"9 mm\", \"least\": \"4 mm\" }}{more} }}");

    private sealed class Trials
    {
        private readonly PlanTrials _trials;
        private readonly JobAsWritten _written;

        public Trials(TemporaryFolder folder)
        {
            _written = new JobAsWritten([.. File.ReadAllBytes(folder["job.json"])]);
            _trials = new PlanTrials(folder.FullPath, _written, new FaceShelf(), default);
        }

        public PlanTrial With(string path, string json) => _trials.Of(_written.With(VisibleChoice.AsSet, new JobEdit(path, json)));

        public PlanTrial AsSet => _trials.Of(VisibleChoice.AsSet);
    }

    [Theory]
    [InlineData("")]
    [InlineData(", \"marks\": \"sewn\", \"strip\": { \"rounds\": 2, \"cutWidth\": \"3 in\" }")]
    public void Another_height_takes_what_its_stitches_take_within_a_hundredth(string more)
    {
        using var folder = Folder(more);
        var trials = new Trials(folder);
        var stitching = new PlanStitching(default);
        stitching.Of(trials.AsSet);
        foreach (string height in new[] { "\"6 mm\"", "\"7 mm\"", "\"12 mm\"" })
        {
            var trial = trials.With("lettering.height", height);
            var (own, known) = (new PlanStitching(default).Of(trial), stitching.Of(trial));
            var (told, looked) = (own.Estimate.Work, known.Estimate.Work);
            Assert.NotSame(own, known);
            Assert.Equal(told.All.Likely, looked.All.Likely, 0.01 * told.All.Likely);
            Assert.Equal(told.Machine.Likely, looked.Machine.Likely, 0.04 * told.Machine.Likely);
            Assert.Equal(own.Estimate.NeedleThreadM, known.Estimate.NeedleThreadM, 0.06 * own.Estimate.NeedleThreadM);
            Assert.Equal(
                own.Estimate.Hoopings.Sum(h => h.Trims), known.Estimate.Hoopings.Sum(h => h.Trims),
                0.05 * own.Estimate.Hoopings.Sum(h => h.Trims));
            Assert.Equal((own.IsSound, own.Mark), (known.IsSound, known.Mark));
        }

        Assert.Equal(1, stitching.Stitched);
    }

    /// <summary>The same letters in other places take the same.</summary>
    [Fact]
    public void At_their_own_height_names_take_the_same_wherever_they_lie()
    {
        using var folder = Folder(", \"marks\": \"sewn\"");
        var trials = new Trials(folder);
        var stitching = new PlanStitching(default);
        stitching.Of(trials.AsSet);
        var trial = trials.With("strip.rounds", "3");
        var (own, known) = (new PlanStitching(default).Of(trial).Estimate, stitching.Of(trial).Estimate);
        Assert.NotEqual(stitching.Of(trials.AsSet).Estimate.Hoopings.Length, known.Hoopings.Length);
        Assert.Equal(own.Work.Machine.Likely, known.Work.Machine.Likely, 0.002 * own.Work.Machine.Likely);
        Assert.Equal(own.Work.Hands.Likely, known.Work.Hands.Likely, 0.5);
        Assert.Equal(own.NeedleThreadM, known.NeedleThreadM, 0.002 * own.NeedleThreadM);
        Assert.Equal(1, stitching.Stitched);
    }

    /// <summary>Another face and another cloth are stitched after all.</summary>
    [Theory]
    [InlineData("lettering.face", "\"Vollkorn Bold\"")]
    [InlineData("stitches.spacing", "\"0.5 mm\"")]
    public void What_cannot_be_told_of_other_letters_is_stitched(string path, string json)
    {
        using var folder = Folder();
        var trials = new Trials(folder);
        var stitching = new PlanStitching(default);
        stitching.Of(trials.AsSet);
        var trial = trials.With(path, json);
        Assert.NotNull(trial.Laid);
        var (own, known) = (new PlanStitching(default).Of(trial).Estimate, stitching.Of(trial).Estimate);
        Assert.Equal(own.Work.All.Likely, known.Work.All.Likely, 6);
        Assert.Equal(2, stitching.Stitched);
    }

    /// <summary>Near what the cloth bears a few letters do not stand for all.</summary>
    [Fact]
    public void Letters_that_may_be_too_full_for_the_cloth_are_stitched()
    {
        using var folder = Folder();
        var trials = new Trials(folder);
        var stitching = new PlanStitching(default);
        var asSet = stitching.Of(trials.AsSet);
        var trial = trials.With("lettering.height", "\"7 mm\"");
        var laid = trial.Laid!;
        var tight = laid with { Fabric = laid.Fabric with { MostPenetrationsPerMm2 = 0.1 } };
        Assert.Equal(1, stitching.Stitched);
        var table = new PlanStitching(default);
        table.Of(trials.AsSet with { Laid = trials.AsSet.Laid! with { Fabric = tight.Fabric } });
        table.Of(trial with { Laid = tight });
        Assert.Equal(2, table.Stitched);
        Assert.True(asSet.IsSound);
        Assert.False(table.Of(trial with { Laid = tight }).IsSound);
    }
}
