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
        var laid = new Bench(Path.Combine(Repository.Root, "samples", "lantern-cape")).Lay().Laid!;
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

        // Said without minutes: what is left is the rest at the set pace.
        job.Say(1);
        double rest = all.MachineMinutes.Likely - all.Hoopings[0].MachineMinutes;
        Agree(all.Hoopings.Length - 1, rest);

        // Timed at twice what was reckoned: the rest takes longer too.
        job.Say(2, minutes: 2 * all.Hoopings[1].MachineMinutes);
        var left = Agree(all.Hoopings.Length - 2, null);
        Assert.True(left > rest - all.Hoopings[1].MachineMinutes);

        job.Say(2, SewingDeed.Again);
        Agree(all.Hoopings.Length - 1, null);

        double Agree(int hoopings, double? minutes)
        {
            var page = new Bench(job.Folder).Lay().Laid!.Reckon().Left!;
            var command = Bander.Reckon(job.Folder).Left!;
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

    private static List<NeedleStep> Stitches(NeedlePath path) =>
        [.. path.Steps.Where(s => s.Action == NeedleAction.Stitch && s.Kind != StitchKind.Mark)];
}
