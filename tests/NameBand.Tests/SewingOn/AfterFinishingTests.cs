using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Reports.Answers;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>What goes wrong, and who comes when all is done: advice by work, honest about looks, and nothing that is sewn is
/// planned again.</summary>
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
            Names = Job.PlacedTexts();
            foreach (string file in Directory.GetFiles(Job.Folder, "*", SearchOption.AllDirectories))
            {
                Directory.CreateDirectory(Path.GetDirectoryName(Copy[Path.GetRelativePath(Job.Folder, file)])!);
                Copy.With(Path.GetRelativePath(Job.Folder, file), File.ReadAllBytes(file));
            }

            Label = CliRun.Of("plans", Job.Folder, "--late", "label");
            Without = Job.Make();
        }

        public string[] Names { get; }

        /// <summary>As the job was when they had come.</summary>
        public TemporaryFolder Copy { get; } = new();

        internal CliRun Label { get; }

        /// <summary>Made again when the label was taken.</summary>
        public MakeReport Without { get; }

        internal SewnJob Job { get; } = new("Bo Reed", "Ilse Varga", "Jo Marsh", "Nia Yeo");

        public int[] Sewn { get; }

        public byte[][] Paths { get; }

        public SpoiledReport Spoiled { get; }

        public SpoiledReport SpoiledLater { get; }

        public MakeReport Again { get; }

        public PlansReport Plans { get; }

        public void Dispose()
        {
            Job.Dispose();
            Copy.Dispose();
        }
    }

    [Fact]
    public void Latecomers_are_offered_every_place_with_its_work_and_nothing_sewn_is_planned_again()
    {
        for (int i = 0; i < finished.Sewn.Length; i++)
        {
            Assert.Equal(finished.Paths[i], finished.Job.Path(finished.Sewn[i]));
        }

        Assert.Contains(
            finished.Again.Problems,
            p => p.Severity == Severity.NeedsPerson
            && p.Found.English.StartsWith("The garment is finished, and these came later: Zofia Kay;", StringComparison.Ordinal));
        var late = finished.Plans.Late!;
        Assert.Equal(Finished.Late, late.Names);
        Assert.Equal(3, late.Offers.Length);
        var whole = late.Offers.Where(o => o.Fits == late.Names.Length).ToList();
        Assert.Equal(whole.OrderBy(o => o.Minutes), whole);
        Assert.Equal(late.Offers.Take(whole.Count), whole);

        // One label with four names and one with one: 45 and 25 minutes, and three more find room.
        var label = late.Offers.Single(o => o.Place.English.Contains("label", StringComparison.Ordinal));
        Assert.Equal(("2 labels sewn inside", 70, 3), (label.Place, label.Minutes, label.More));

        // As many more of a late name's usual width as ask for no hooping more.
        var plan = finished.Again.Plan!;
        double[] widths = [.. plan.Hoopings.OrderBy(h => h.Number).SelectMany(h => h.Segments).SelectMany(s => s.Segment.Names)
            .Where(n => Finished.Late.Contains(n.Lettered.Name.Text)).Select(n => n.WidthMm)];
        int hoopings = Hoopings(plan, widths), more = late.Offers.Single(o => o.Kind == LateKind.PartRound).More;
        Assert.Equal(Finished.Late.Length, widths.Length);
        Assert.Equal(hoopings, Hoopings(plan, [.. widths, .. Enumerable.Repeat(widths.Average(), more)]));
        Assert.Equal(hoopings + 1, Hoopings(plan, [.. widths, .. Enumerable.Repeat(widths.Average(), more + 1)]));

        Assert.All(late.Offers, o => Assert.True(o.Minutes > 10 && o.Looks.English.Length > 20 && o.Steps.English.Length > 20));
        Assert.Contains(late.Offers, o => o.Looks.English.Contains("everybody sees that it came later", StringComparison.Ordinal));

        var run = CliRun.Of("plans", finished.Copy.FullPath);
        Assert.Contains("Came when the garment was finished: Zofia Kay; Piran Jago", run.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(3, AnswerJson.Read<PlansAnswer>(CliRun.Of("plans", finished.Copy.FullPath, "--json").Out).Late!.Offers.Count);
    }

    /// <summary>One name after another, each in the same hooping as the one before where the field still holds it.</summary>
    private static int Hoopings(StripPlan plan, double[] widthsMm)
    {
        double gapMm = plan.Rounds.Min(r => r.GapMm), fieldMm = plan.FieldAlongMm - plan.SpareMm - plan.SpareMm;
        int hoopings = 0;
        double endMm = double.PositiveInfinity;
        foreach (double width in widthsMm)
        {
            bool isInSame = endMm + gapMm + width <= fieldMm;
            endMm = isInSame ? endMm + gapMm + width : width;
            hoopings += isInSame ? 0 : 1;
        }

        return hoopings;
    }

    [Fact]
    public void A_label_that_is_taken_is_a_job_with_hours_sheets_and_proofs()
    {
        Assert.Equal(0, finished.Label.Status);
        Assert.Contains("2 labels sewn inside: 5 names in the job late-1.", finished.Label.OutOnOneLine, StringComparison.Ordinal);
        Assert.DoesNotContain("Zofia",
            string.Concat(finished.Without.Plan!.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text)),
            StringComparison.Ordinal);
        Assert.DoesNotContain(finished.Without.Problems, p => p.Found.English.Contains("came later", StringComparison.Ordinal));
        Assert.Contains(finished.Without.Problems,
            p => p.Severity == Severity.Note && p.Where.File == "late-1"
            && p.Found.English.StartsWith("Sewn in a job of its own: Zofia Kay;", StringComparison.Ordinal));
        Assert.All(finished.Sewn.Zip(finished.Paths), s => Assert.Equal(s.Second, finished.Job.Path(s.First)));

        var label = Bander.Make(finished.Job["late-1"]);
        Assert.Equal(ExitStatus.AllPlaced, label.Status);
        Assert.Equal(Finished.Late.Order(StringComparer.Ordinal),
            label.Plan!.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text).Order(StringComparer.Ordinal));
        Assert.Equal(2, label.Plan.Rounds.Length);
        Assert.All(label.Plan.Rounds, r => Assert.InRange(r.Names.Count(), 2, 3));
        Assert.Equal(finished.Again.Plan!.LetterHeightMm, label.Plan.LetterHeightMm, 1e-6);
        Assert.False(label.Plan.Hem.Closed);
        Assert.True(File.Exists(finished.Job["late-1/out/proofs/round-01.png"]));
        Assert.Equal(0, CliRun.Of("hours", finished.Job["late-1"]).Status);
        Assert.Equal(2, CliRun.Of("plans", finished.Job.Folder, "--late", "label").Status);

        // In it names go wrong like anywhere, and the hours say what they have learned of that: (2 + 1) of 103.
        Assert.InRange(CliRun.Of("sewn", finished.Job["late-1"], "1").Status, 0, 1);
        Assert.DoesNotContain("Spoiled names", CliRun.Of("hours", finished.Job["late-1"]).Out, StringComparison.Ordinal);
        Assert.InRange(CliRun.Of("sewn", finished.Job["late-1"], "1", "--again").Status, 0, 1);
        var hours = CliRun.Of("hours", finished.Job["late-1"]);
        Assert.Matches(@"Spoiled names: 1 of \d names? logged. The hours allow for 2\.9 in a hundred; set are 2\.", hours.OutOnOneLine);
    }

    /// <summary>Whoever says no afterwards is told of as long as the name stands in that folder.</summary>
    [Fact]
    public void A_part_of_a_round_lies_on_the_same_curve_and_a_later_no_is_told()
    {
        string job = finished.Copy.FullPath;
        Assert.Equal(2, CliRun.Of("plans", job, "--late", "room").Status);
        Assert.Equal(2, CliRun.Of("plans", job, "--late", "pocket").Status);
        Assert.False(File.Exists(finished.Copy["corrections.csv"]));
        Assert.Equal(64, CliRun.Of("plans", job, "--late", "label", "--why", "K7Q4").Status);
        Assert.Equal(0, CliRun.Of("plans", job, "--late", "partRound").Status);
        var part = Bander.Make(finished.Copy["late-1"]);
        Assert.Equal(ExitStatus.AllPlaced, part.Status);
        var round = Assert.Single(part.Plan!.Rounds);
        Assert.Equal(Finished.Late, round.Names.Select(n => n.Lettered.Name.Text));
        Assert.InRange(round.LengthMm, 1, round.HemMm + 0.001);

        finished.Copy.With("approvals.csv", "list,line,name,state\nnames.csv,7,Piran Jago,no\n");
        var told = Bander.Make(job).Problems;
        Assert.Contains(told,
            p => p.Severity == Severity.NeedsPerson && p.Where.File == "late-1"
            && p.Found.English.EndsWith("since it was taken there: Piran Jago.", StringComparison.Ordinal));
    }

    [Fact]
    public void Nobody_is_late_while_the_garment_is_not_finished()
    {
        using var job = new SewnJob("Bo Reed", "Ilse Varga");
        job.Make();
        job.Say(1);
        job.Names.Add("Zofia Kay");
        Assert.DoesNotContain(job.Make().Problems, p => p.Found.English.Contains("came later", StringComparison.Ordinal));
    }

    [Fact]
    public void A_spoiled_name_is_met_by_the_least_work_that_the_cloth_bears()
    {
        var ways = finished.Spoiled.Ways;
        Assert.Equal(3, ways.Length);
        Assert.Equal(ways.OrderByDescending(w => w.IsSound).ThenBy(w => w.Minutes), ways);
        var again = ways.Single(w => w.Say == "1 --again");
        Assert.Matches(
            @"has made \d+\.\d holes on each mm² of the fullest letter, and sewn twice it makes \d+\.\d; quilting cotton bears \d+\.\d",
            again.Why.English);
        Assert.Equal(2, ways.Count(w => w.Say == "1 --patch"));

        // Once the strip is sewn down it has to be opened, but for what is sewn over it.
        var later = finished.SpoiledLater.Ways.ToDictionary(w => w.What, w => w.Minutes);
        Assert.Equal(
            [false, true, true],
            ways.OrderBy(w => w.What.English.Contains("over", StringComparison.Ordinal) ? 0 : 1).Select(w => later[w.What] > w.Minutes + 1));
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
        using var folder = new TemporaryFolder().With("job.json", File.ReadAllText(finished.Job["job.json"]))
            .With("names.csv", "name\nBo Reed\n")
            .With("out/plan.json",
                System.Text.RegularExpressions.Regex.Replace(File.ReadAllText(plan), "\"holesPerMm2\": [0-9.]+", "\"holesPerMm2\": 8.0"));
        var ways = Bander.Spoiled(folder.FullPath, null, 1, isName: false).Ways;
        Assert.False(ways[^1].IsSound);
        Assert.Equal("1 --again", ways[^1].Say);
        Assert.Contains(
            "has made 8.0 holes on each mm² of the fullest letter, and sewn twice it makes 16.0; quilting cotton bears 12.0. It is overworked by that.", ways[^1].Why.English, StringComparison.Ordinal);
    }

    /// <summary>Two of a hundred as set, as if seen on a hundred names: three spoiled of twenty more give five of 120.</summary>
    [Theory]
    [InlineData(20, 3, 100 * 5.0 / 120)]
    [InlineData(20, 0, 100 * 2.0 / 120)]
    [InlineData(19, 0, 2)]
    [InlineData(1, 1, 100 * 3.0 / 101)]
    public void How_often_she_spoils_a_name_is_learned_from_the_log(int sewn, int spoiled, double expected)
    {
        IEnumerable<SewingEntry> lines = Enumerable.Range(1, sewn)
            .Select(n => new SewingEntry(n, SewingDeed.Sewn) { Of = SewingSubject.Name })
            .Concat(Enumerable.Range(1, spoiled).Select(n => new SewingEntry(n, SewingDeed.Again) { Of = SewingSubject.Name }));
        Assert.Equal(expected, SpoilLearning.Per100(2, SewingLog.Of([.. lines], []), finished.Again.Plan!), 1e-9);
    }
}
