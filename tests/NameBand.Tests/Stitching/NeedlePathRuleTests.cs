using NameBand.Cloth;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>What a machine may rely on in every needle path, held for whole hoopings of invented names in several faces.</summary>
public class NeedlePathRuleTests
{
    private static readonly string[] Invented =
    [
        "Maren Aldous", "Őrsi Ågren", "Čeněk & Žofie", "Þóra Ø.", "Łucja d’Aubigné", "Jörg Weiß", "Quillon Fjæreide", "Iji", "X",
        "Émile-Noël Ça",
        "Ψυχή Νικολάου", "Жанна Щукина", "@lantern 1234567890?!",
    ];

    public static TheoryData<string, double> Cases
    {
        get
        {
            var data = new TheoryData<string, double>();
            foreach (string face in new[] { "nunito-bold", "vollkorn-bold", "pacifico", "roboto-slab-bold", "grand-hotel" })
            {
                data.Add(face, 8);
                data.Add(face, 11.3);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_hooping_keeps_the_rules(string face, double height)
    {
        var fabric = FabricTable.Find("quilting cotton")!;
        var plan = Plan(face, height);
        var stitcher = new Stitcher(fabric, plan.LetterHeightMm);
        Assert.NotEmpty(plan.Hoopings);
        foreach (var hooping in plan.Hoopings)
        {
            var path = stitcher.SewHooping(plan, hooping);
            PathRules.Hold(path);
            HoopingRules.Hold(path, plan, hooping);
        }
    }

    [Fact]
    public void A_name_alone_starts_at_its_left_edge()
    {
        var fabric = FabricTable.Find("quilting cotton")!;
        foreach (string text in Invented)
        {
            var name = Shelf.Name("nunito-bold", text);
            var path = new Stitcher(fabric, 9).SewName(name);
            double width = name.WidthMm(9, fabric.PullCompensationMm);
            Assert.All(path.Steps, s => Assert.InRange(s.At.XMm, -1e-9, width + 1e-9));
            Assert.InRange(path.Steps.Min(s => s.At.XMm), 0, 0.5);
            Assert.InRange(path.Steps.Max(s => s.At.XMm), width - 0.5, width);
        }
    }

    [Fact]
    public void The_same_name_is_sewn_the_same_way_by_any_number_of_threads()
    {
        var fabric = FabricTable.Find("quilting cotton")!;
        var names = Shelf.Names("vollkorn-bold", Invented);
        var alone = names.Select(n => new Stitcher(fabric, 10).SewName(n)).ToList();
        var shared = new Stitcher(fabric, 10);
        var together = new NeedlePath[names.Count];
        Parallel.For(0, names.Count, i => together[names.Count - 1 - i] = shared.SewName(names[names.Count - 1 - i]));
        for (int i = 0; i < names.Count; i++)
        {
            Assert.Equal(alone[i].Steps.AsEnumerable(), together[i].Steps.AsEnumerable());
        }
    }

    private static StripPlan Plan(string face, double height)
    {
        var job = Sample.Job.WithHeight(height).WithRounds(null);
        var names = Shelf.Names(face, Invented);
        var list = new LetteredList(face, [.. names], []);
        return LayoutPlanner.Plan(job, Sample.Hem(job), list, FabricTable.Find(job.Fabric)!).Value!;
    }
}
