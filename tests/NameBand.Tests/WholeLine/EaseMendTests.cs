using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Output;
using NameBand.Pipeline;
using NameBand.Pipeline.Stages;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>What is offered for a strip that cannot be eased mends it, and tucks that are taken stand on every sheet.</summary>
public sealed class EaseMendTests
{
    private static readonly string[] First = ["Ottilie", "Bram", "Anselm", "Corwen", "Isolde", "Ebba", "Piran", "Wenna", "Jo", "Ilse"];
    private static readonly string[] Last = ["Marsh", "Sedgewick", "Brightwater", "Applegarth", "Fennimore", "Ash", "Varga-Quill", "Pell"];

    private static string List(Random random, int count) =>
        "Name\n" + string.Concat(Enumerable.Range(0, count)
            .Select(i => $"{First[i % First.Length]} {Last[random.Next(Last.Length)]} {(char)('A' + (i / First.Length))}\n"));

    private static LaidOut Lay(string folder, FaceShelf shelf) => Planning.Run(folder, shelf, CancellationToken.None).Value!;

    /// <summary>Random hems, ways, widths and heights: each offered mend is written into job.json as it says, and the job laid
    /// out anew.</summary>
    [Fact]
    public void Every_mend_that_is_offered_mends_it()
    {
        var shelf = new FaceShelf();
        var random = new Random(1855);
        var taken = new Dictionary<EaseMendKind, int>();
        int unmended = 0;
        for (int i = 0; i < 40; i++)
        {
            int count = random.Next(6, 16);
            string way = random.Next(3) == 0 ? "traced" : "needlePath";
            string height = random.Next(3) == 0 ? "\"largest\"" : $"\"{random.Next(6, 11)} mm\"";
            string job = $$"""
                { "format": 1, "way": "{{way}}", "lists": ["names.csv"],
                  "hem": { "length": "{{count * random.Next(80, 150)}} mm", "turn": {{random.Next(4, 13) / 20.0}}, "closed": {{(random.Next(4) > 0 ? "true" : "false")}} },
                  "strip": { "cutWidth": "{{random.Next(44, 62)}} mm", "rounds": {{(random.Next(4) == 0 ? 2 : 1)}}{{(random.Next(4) == 0 ? ", \"easeLimit\": 0.08" : "")}}{{(random.Next(5) == 0 ? ", \"eased\": 0.02" : "")}} },
                  "lettering": { "height": {{height}} } }
                """;
            using var folder = new TemporaryFolder().With("names.csv", List(random, count)).With("job.json", job);
            var laid = Lay(folder.FullPath, shelf);
            bool wants = laid.Plan.Easing.Any(e => e.Judged().Kind == VerdictKind.NeedsAPerson);
            Assert.True(wants || laid.EaseMends.IsEmpty);
            unmended += wants && laid.EaseMends.IsEmpty ? 1 : 0;
            int before = NeedsOf(laid);
            foreach (var mend in laid.EaseMends)
            {
                folder.With("job.json", JobEditing.Apply(System.Text.Encoding.UTF8.GetBytes(job), mend.Edits)!);
                var mended = Lay(folder.FullPath, shelf);
                Assert.All(mended.Plan.Easing, e => Assert.NotEqual(VerdictKind.NeedsAPerson, e.Judged().Kind));
                Assert.True(NeedsOf(mended) < before, job + mend.Text.English);
                Assert.Equal(mend.FinishedWidthMm, mended.Plan.Hem.Strip.FinishedWidthMm, 9);
                Assert.Equal(
                    mend.Tucks.AsEnumerable().Select(t => (t.WidthMm, t.Count)),
                    mended.Plan.Easing.Select(e => e.Tucked).OfType<TuckSet>().Select(t => (t.WidthMm, t.Count)));
                Assert.All(
                    laid.Problems.Where(p => p is { Severity: Severity.NeedsPerson, Judged.About: Fact.Easing }).Take(1),
                    p => Assert.Contains(mend.Text.English, p.Mend.English, StringComparison.Ordinal));
                taken[mend.Kind] = taken.GetValueOrDefault(mend.Kind) + 1;
            }
        }

        Assert.All(
            Enum.GetValues<EaseMendKind>(),
            kind => Assert.True(taken.GetValueOrDefault(kind) >= 3, $"{kind}: {taken.GetValueOrDefault(kind)}"));
        Assert.InRange(unmended, 0, 5);
    }

    /// <summary>A strip whose gaps are eased too much even with tucks, and could be attached on the bias with them.</summary>
    [Fact]
    public void A_mend_says_no_share_of_the_gaps_that_is_over_its_limit()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv",
                "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\nEla Finch\nFinn Weir\nGita Shore\nHana Brook\nIvo Heron\nJune Sedge\nKit Alder\n")
            .With("job.json",
                """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.5 m", "turn": 1.0 }, "strip": { "tucks": true } }""");
        var bias = Assert.Single(Lay(folder.FullPath, new FaceShelf()).EaseMends, m => m.Kind == EaseMendKind.Bias);
        Assert.NotEmpty(bias.Tucks);
        Assert.Contains("20 %, with tucks:", bias.Text.English, StringComparison.Ordinal);
        var shares = System.Text.RegularExpressions.Regex.Matches(bias.Text.English, @"([0-9.]+) %")
            .Select(m => double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.True(shares.Count > 1);
        Assert.All(shares, s => Assert.InRange(s, 0, 20));
    }

    private static int NeedsOf(LaidOut laid) => laid.Problems.Count(p => p.Severity == Severity.NeedsPerson);

    private const string Round = """
        { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "1.5 m", "turn": 0.5 }, "strip": { "tucks": TUCKS }, "lettering": { "height": "8 mm" } }
        """;

    private static TemporaryFolder Skirt(bool tucks) => new TemporaryFolder()
        .With("job.json", Round.Replace("TUCKS", tucks ? "true" : "false", StringComparison.Ordinal))
        .With("names.csv", List(new Random(7), 11));

    private static string Packet(MakeReport report)
    {
        using var pdf = PdfDocument.Open(File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.WorkPacket("a4"))));
        return string.Concat(pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    [Fact]
    public void Tucks_that_are_taken_end_with_status_0_and_stand_in_plan_packet_hours_and_proof()
    {
        using var folder = Skirt(tucks: false);
        var without = Bander.Print(folder.FullPath, wishes: new PrintWishes());
        Assert.Equal(ExitStatus.NeedsPerson, without.Status);
        string packet = Packet(without);
        var needed = without.Problems.Single(p => p.Judged is { About: Fact.Easing });
        var offered = Planning.Run(folder.FullPath, new FaceShelf(), CancellationToken.None).Value!.EaseMends;
        Assert.Contains(EaseMendKind.Tucks, offered.Select(m => m.Kind));
        Assert.All(offered, m => Assert.Contains(Bare(m.Text.English), packet, StringComparison.Ordinal));
        Assert.All(offered, m => Assert.Contains(m.Text.English, needed.Mend.English, StringComparison.Ordinal));
        byte[] proof = File.ReadAllBytes(Path.Combine(without.OutFolder!, OutPaths.RoundProof(1)));

        folder.With("job.json", Round.Replace("TUCKS", "true", StringComparison.Ordinal));
        var report = Bander.Print(folder.FullPath, wishes: new PrintWishes());
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        var tucks = report.Plan!.Easing[0].Tucked!;
        Assert.Equal(offered.Single(m => m.Kind == EaseMendKind.Tucks).Tucks[0].Count, tucks.Count);
        var note = report.Verdicts.Single(v => v.About == Fact.Easing);
        Assert.Equal(VerdictKind.Note, note.Kind);
        Assert.Contains(report.Problems, p => p.Severity == Severity.Note && p.Found == note.Text);
        Assert.NotEqual(proof, File.ReadAllBytes(Path.Combine(report.OutFolder!, OutPaths.RoundProof(1))));

        using var plan = JsonDocument.Parse(File.ReadAllText(Path.Combine(report.OutFolder!, OutPaths.Plan)));
        var round = plan.RootElement.GetProperty("rounds")[0];
        Assert.Equal("withTucks", round.GetProperty("upperEdge").GetString());
        var written = round.GetProperty("tucks").EnumerateArray().ToList();
        Assert.Equal(tucks.Count, written.Count);
        var act = plan.RootElement.GetProperty("work").EnumerateArray()
            .Single(a => a.GetProperty("act").GetString() == "folding tapered tucks");
        Assert.Equal(tucks.Count, act.GetProperty("count").GetInt32());
        Assert.Equal(tucks.Count * 0.4 * 1.1, act.GetProperty("minutes").GetDouble(), 0.051);

        packet = Packet(report);
        Assert.Contains(Bare(note.Text.English), packet, StringComparison.Ordinal);
        foreach (var tuck in written)
        {
            string row = FormattableString.Invariant(
                $"{tuck.GetProperty("atMm").GetDouble():0.0}{tuck.GetProperty("onClothMm").GetDouble():0.0}{tucks.WidthMm:0.0}");
            Assert.Contains(row, packet, StringComparison.Ordinal);
        }
    }

    /// <summary>Cloth that is sewn on is cut: only what can still be folded is offered.</summary>
    [Fact]
    public void Once_something_is_sewn_only_tucks_are_offered()
    {
        using var folder = Skirt(tucks: false);
        var made = Bander.Make(folder.FullPath);
        var word = new SewingWord(made.Plan!.Hoopings[0].Number, SewingDeed.Sewn, When: "2026-11-25T20:00");
        Assert.NotNull(Bander.Sewn(folder.FullPath, null, word, () => { }).Said);
        var laid = Planning.Run(folder.FullPath, new FaceShelf(), CancellationToken.None).Value!;
        Assert.Equal([EaseMendKind.Tucks], laid.EaseMends.Select(m => m.Kind));
    }
}
