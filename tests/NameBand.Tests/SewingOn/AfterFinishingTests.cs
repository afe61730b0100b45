using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Reports.Answers;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>What goes wrong, and who comes when all is done: advice by work, honest about looks, and nothing that is sewn is planned again.</summary>
public sealed class AfterFinishingTests(AfterFinishingTests.Finished finished) : IClassFixture<AfterFinishingTests.Finished>
{
    /// <summary>Four names, sewn and sewn down; then five more came.</summary>
    public sealed class Finished : IDisposable
    {
        internal static readonly string[] Late = ["Zofia Kay", "Piran Jago", "Merryn Hobbs", "Rafe Holm", "Wenna Tregear"];

        public Finished()
        {
            Job.Settings("");
            var plan = Job.Make().Plan!;
            foreach (var hooping in plan.Hoopings)
            {
                Assert.NotNull(Job.Say(hooping.Number).Said);
            }

            Sewn = [.. plan.Hoopings.Select(h => h.Number)];
            Spoiled = Bander.Spoiled(Job.Folder, null, 1, isName: false);
            Assert.InRange(CliRun.Of("sewn", Job.Folder, "--done", "upper").Status, 0, 1);
            SpoiledLater = Bander.Spoiled(Job.Folder, null, 1, isName: false);
            Paths = [.. Sewn.Select(n => Job.Path(n))];
            Job.Names.AddRange(Late);
            Again = Job.Make();
            Plans = Bander.Plans(Job.Folder);
        }

        internal SewnJob Job { get; } = new("Bo Reed", "Ilse Varga", "Jo Marsh", "Nia Yeo");

        public int[] Sewn { get; }

        public byte[][] Paths { get; }

        public SpoiledReport Spoiled { get; }

        public SpoiledReport SpoiledLater { get; }

        public MakeReport Again { get; }

        public PlansReport Plans { get; }

        public void Dispose() => Job.Dispose();
    }

    [Fact]
    public void Latecomers_are_offered_every_place_with_its_work_and_nothing_sewn_is_planned_again()
    {
        for (int i = 0; i < finished.Sewn.Length; i++)
        {
            Assert.Equal(finished.Paths[i], finished.Job.Path(finished.Sewn[i]));
        }

        Assert.Contains(finished.Again.Problems, p => p.Severity == Severity.NeedsPerson && p.Found.StartsWith("The garment is finished, and these came later: Zofia Kay;", StringComparison.Ordinal));
        var late = finished.Plans.Late!;
        Assert.Equal(Finished.Late, late.Names);
        Assert.Equal(3, late.Offers.Length);
        var whole = late.Offers.Where(o => o.Fits == late.Names.Length).ToList();
        Assert.Equal(whole.OrderBy(o => o.Minutes), whole);
        Assert.Equal(late.Offers.Take(whole.Count), whole);

        // One label with four names and one with one: 45 and 25 minutes, and three more find room.
        var label = late.Offers.Single(o => o.Place.Contains("label", StringComparison.Ordinal));
        Assert.Equal(("2 labels sewn inside", 70, 3), (label.Place, label.Minutes, label.More));
        Assert.All(late.Offers, o => Assert.True(o.Minutes > 10 && o.Looks.Length > 20 && o.Steps.Length > 20));
        Assert.Contains(late.Offers, o => o.Looks.Contains("everybody sees that it came later", StringComparison.Ordinal));

        var run = CliRun.Of("plans", finished.Job.Folder);
        Assert.Contains("Came when the garment was finished: Zofia Kay; Piran Jago", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(3, AnswerJson.Read<PlansAnswer>(CliRun.Of("plans", finished.Job.Folder, "--json").Out).Late!.Offers.Count);
    }

    [Fact]
    public void Nobody_is_late_while_the_garment_is_not_finished()
    {
        using var job = new SewnJob("Bo Reed", "Ilse Varga");
        job.Make();
        job.Say(1);
        job.Names.Add("Zofia Kay");
        Assert.DoesNotContain(job.Make().Problems, p => p.Found.Contains("came later", StringComparison.Ordinal));
    }

    [Fact]
    public void A_spoiled_name_is_met_by_the_least_work_that_the_cloth_bears()
    {
        var ways = finished.Spoiled.Ways;
        Assert.Equal(3, ways.Length);
        Assert.Equal(ways.OrderByDescending(w => w.IsSound).ThenBy(w => w.Minutes), ways);
        var again = ways.Single(w => w.Say == "1 --again");
        Assert.Matches(@"has made \d+\.\d holes on each mm² of the fullest letter, and sewn twice it makes \d+\.\d; quilting cotton bears \d+\.\d", again.Why);
        Assert.Equal(2, ways.Count(w => w.Say == "1 --patch"));

        // Once the strip is sewn down it has to be opened, but for what is sewn over it.
        var later = finished.SpoiledLater.Ways.ToDictionary(w => w.What, w => w.Minutes);
        Assert.Equal([false, true, true], ways.OrderBy(w => w.What.Contains("over", StringComparison.Ordinal) ? 0 : 1).Select(w => later[w.What] > w.Minutes + 1));
        Assert.DoesNotContain("again", File.ReadAllText(finished.Job["sewing-log.csv"]), StringComparison.Ordinal);
        Assert.Contains("nameband sewn", CliRun.Of("sewn", finished.Job.Folder, "1", "--spoiled").Out, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("sewn", finished.Job.Folder, "99", "--spoiled").Status);
        Assert.Equal(64, CliRun.Of("sewn", finished.Job.Folder, "--spoiled").Status);
    }

    /// <summary>Twice the load is more than the cloth bears: then it is not the first advice, however little work it is.</summary>
    [Fact]
    public void What_the_cloth_does_not_bear_twice_comes_last()
    {
        string plan = finished.Job["out/plan.json"];
        using var folder = new TemporaryFolder().With("job.json", File.ReadAllText(finished.Job["job.json"])).With("names.csv", "name\nBo Reed\n")
            .With("out/plan.json", System.Text.RegularExpressions.Regex.Replace(File.ReadAllText(plan), "\"holesPerMm2\": [0-9.]+", "\"holesPerMm2\": 8.0"));
        var ways = Bander.Spoiled(folder.FullPath, null, 1, isName: false).Ways;
        Assert.False(ways[^1].IsSound);
        Assert.Equal("1 --again", ways[^1].Say);
        Assert.Contains("has made 8.0 holes on each mm² of the fullest letter, and sewn twice it makes 16.0; quilting cotton bears 12.0. It is overworked by that.", ways[^1].Why, StringComparison.Ordinal);
    }

    /// <summary>Two of a hundred as set, as if seen on a hundred names: three spoiled of twenty more give five of 120.</summary>
    [Theory]
    [InlineData(20, 3, 100 * 5.0 / 120)]
    [InlineData(20, 0, 100 * 2.0 / 120)]
    [InlineData(19, 0, 2)]
    [InlineData(1, 1, 100 * 3.0 / 101)]
    public void How_often_she_spoils_a_name_is_learned_from_the_log(int sewn, int spoiled, double expected)
    {
        IEnumerable<SewingEntry> lines = Enumerable.Range(1, sewn).Select(n => new SewingEntry(n, SewingDeed.Sewn) { Of = SewingSubject.Name })
            .Concat(Enumerable.Range(1, spoiled).Select(n => new SewingEntry(n, SewingDeed.Again) { Of = SewingSubject.Name }));
        Assert.Equal(expected, SpoilLearning.Per100(2, SewingLog.Of([.. lines], []), finished.Again.Plan!), 1e-9);
    }
}
