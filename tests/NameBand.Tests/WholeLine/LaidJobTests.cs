using NameBand.Job;
using NameBand.Stitching;
using NameBand.Tests.House;
using NameBand.Tests.SewingOn;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>What a screen shows of a job laid out is what the commands make of it.</summary>
public class LaidJobTests
{
    [Fact]
    public void A_name_on_a_curved_strip_is_sewn_as_in_its_hooping()
    {
        var laid = new LayoutSession(Path.Combine(Repository.Root, "samples", "lantern-cape")).Lay().Laid!;
        Assert.True(laid.Plan.Hem.IsCurved);
        var alone = laid.Plan.Hoopings.Where(h => h.Segments.Sum(s => s.Segment.Names.Length) == 1).Take(5).ToList();
        Assert.NotEmpty(alone);
        foreach (var hooping in alone)
        {
            var hooped = Assert.Single(hooping.Segments);
            var name = Assert.Single(hooped.Segment.Names);

            var own = Stitches(laid.SewName(hooped.Round, name));
            var inHooping = Stitches(laid.SewHooping(hooping));

            // The same stitches, only moved and turned: distances between them stay.
            Assert.Equal(inHooping.Count, own.Count);
            Assert.All(Enumerable.Range(1, own.Count - 1), i => Assert.Equal(
                inHooping[0].At.DistanceTo(inHooping[i].At), own[0].At.DistanceTo(own[i].At), 6));
            Assert.InRange((own.Min(s => s.At.XMm) + own.Max(s => s.At.XMm)) / 2, -1, 1);
        }
    }

    [Fact]
    public void The_page_and_the_command_hours_agree_on_what_is_left()
    {
        using var job = new SewnJob("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        job.Settings("", "");
        var all = job.Make().Estimate!;
        Agree(all.Hoopings.Length, all.MachineMinutes.Likely);

        // Said without minutes: what is left is the rest at the set pace, and of 100 names two once more.
        job.Say(1);
        double rest = 1.02 * all.Hoopings.Skip(1).Sum(h => h.MachineMinutes);
        Agree(all.Hoopings.Length - 1, rest);

        // Timed at twice what was estimated: the rest takes longer too.
        job.Say(2, minutes: 2 * all.Hoopings[1].MachineMinutes);
        var left = Agree(all.Hoopings.Length - 2, null);
        Assert.True(left > rest - all.Hoopings[1].MachineMinutes);

        job.Say(2, SewingDeed.Again);
        Agree(all.Hoopings.Length - 1, null);

        double Agree(int hoopings, double? minutes)
        {
            var page = new LayoutSession(job.Folder).Lay().Laid!.Calculate().Left!;
            var command = Bander.Hours(job.Folder).Left!;
            Assert.Equal(command.Hoopings, page.Hoopings);
            Assert.Equal(command.MachineMinutes.Low, page.MachineMinutes.Low, 6);
            Assert.Equal(command.MachineMinutes.Likely, page.MachineMinutes.Likely, 6);
            Assert.Equal(command.MachineMinutes.High, page.MachineMinutes.High, 6);
            Assert.Equal(hoopings, page.Hoopings);
            if (minutes is { } expected)
            {
                // Jumps take their time by their length, and the files hold hundredths of a mm.
                Assert.Equal(expected, page.MachineMinutes.Likely, 0.01);
            }

            return page.MachineMinutes.Likely;
        }
    }

    /// <summary>A bench that has laid the job out before shows, after any change, what one does that never saw it.</summary>
    [Theory]
    [InlineData("job.json", "\"heightFactor\": 1.2", "\"heightFactor\": 1.5")]
    [InlineData("job.json", "\"from\": 50", "\"from\": 30")]
    [InlineData("job.json", "\"place\": \"first\"", "\"place\": \"last\"")]
    [InlineData("job.json", "\"motif\": \"dot\"", "\"motif\": \"diamond\"")]
    [InlineData("job.json", "\"order\": \"listed\"", "\"order\": \"alphabetical\"")]
    [InlineData("job.json", "\"agreedFirst\": true", "\"agreedFirst\": false")]
    [InlineData("job.json", "\"height\": \"7 mm\"", "\"height\": \"8 mm\"")]
    [InlineData("job.json", "\"length\": \"650 mm\"", "\"length\": \"700 mm\"")]
    [InlineData("job.json", "\"fabric\": \"linen\"", "\"fabric\": \"felt\"")]
    [InlineData("names.csv", "Orla Penhale", "Orla Pennhale")]
    [InlineData("approvals.csv", "names.csv,4,Tuva Lind", "names.csv,3,Bram Sedgewick")]
    public void What_was_kept_is_never_shown_for_what_was_changed(string file, string from, string to)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "name,gift\nOrla Penhale,60\nBram Sedgewick,40\nTuva Lind,20\nIlse Quill,70\nNoor Haddad,10\n")
            .With("approvals.csv", "list,line,name,state,date,text\nnames.csv,4,Tuva Lind,agreed,,\n")
            .With("job.json", """
                { "format": 1, "lists": ["names.csv"], "columns": { "group": "gift" }, "hem": { "length": "650 mm" }, "fabric": "linen",
                  "lettering": { "height": "7 mm", "order": "listed", "agreedFirst": true, "motif": "dot" },
                  "groups": [ { "name": "large", "from": 50, "heightFactor": 1.2, "place": "first" }, { "name": "others", "rest": true } ] }
                """);
        var bench = new LayoutSession(folder.FullPath);
        string before = Shown(bench);
        string text = File.ReadAllText(folder[file]);
        Assert.Contains(from, text, StringComparison.Ordinal);
        folder.With(file, text.Replace(from, to, StringComparison.Ordinal));
        string after = Shown(bench);
        Assert.Equal(Shown(new LayoutSession(folder.FullPath)), after);
        Assert.NotEqual(before, after);
    }

    private static string Shown(LayoutSession bench)
    {
        var report = bench.Lay();
        var plan = report.Laid!.Plan;
        return string.Join(
            '\n', plan.Rounds.SelectMany(r => r.NamesAndMotifs)
            .Select(n => FormattableString.Invariant(
                $"{n.Order} {n.Lettered.Name.Text} {n.StartMm:0.000} {n.WidthMm:0.000} {n.Lettered.Ink} {n.Lettered.Pieces.Sum(p => p.Piece.Outline.AreaMm2()):0.0000} {n.BaselineYMm:0.000}")))
            + string.Join('\n', report.Problems.Select(p => p.Found)) + report.Laid.Fabric.Name.English;
    }

    private static List<NeedleStep> Stitches(NeedlePath path) =>
        [.. path.Steps.Where(s => s.Action == NeedleAction.Stitch && s.Kind != StitchKind.Mark)];
}
