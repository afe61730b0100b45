using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Whatever comes late or is measured, nothing is planned over what is sewn without being told.</summary>
public class NothingOverSewnTests
{
    [Theory]
    [InlineData(", \"start\": \"500 mm\"")]
    [InlineData(", \"start\": \"500 mm\", \"keepClear\": [\"60 mm at 900 mm\"]")]
    [InlineData(", \"keepClear\": [\"60 mm at 1070 mm\"]")]
    [InlineData("")]
    public void Too_many_latecomers_run_over_the_hem_and_not_over_what_is_sewn(string hem)
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings("\"rounds\": 1");
        File.WriteAllText(job["job.json"], File.ReadAllText(job["job.json"])
            .Replace("\"length\": \"900 mm\"", "\"length\": \"1100 mm\"" + hem, StringComparison.Ordinal)
            .Replace("\"least\": \"5 mm\"", "\"height\": \"7 mm\"", StringComparison.Ordinal));
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        job.Say(1);
        for (int late = 1; late <= 8; late++)
        {
            job.Names.Add($"Ottilie Marsh {(char)('A' + late)}.");
            var report = job.Make();
            var placed = job.Plan().GetProperty("rounds")[0].GetProperty("segments").EnumerateArray()
                .SelectMany(s => s.GetProperty("names").EnumerateArray())
                .Select(n => (Start: n.GetProperty("startMm").GetDouble(),
                    End: n.GetProperty("startMm").GetDouble() + n.GetProperty("widthMm").GetDouble(),
                    Text: n.GetProperty("text").GetString()!))
                .OrderBy(n => n.Start).ToList();
            Assert.Equal(10 + late, placed.Count);
            string over =
                string.Join(
                    ", ", placed.Zip(placed.Skip(1)).Where(p => p.Second.Start < p.First.End - 0.01)
                    .Select(p => $"{p.Second.Text} over {p.First.Text}"));
            Assert.Equal("", over);
            bool isTold = report.Problems.Any(p => p.Severity == Severity.NeedsPerson
                && (p.Found.English.Contains("too long", StringComparison.Ordinal)
                    || p.Found.English.Contains("no longer fits", StringComparison.Ordinal)));
            Assert.True(
                isTold || placed[^1].End <= 1100 + 6, $"{late} latecomers run over the hem to {placed[^1].End:0} mm and nobody is told.");
        }
    }

    /// <summary>The cloth ends where its piece does: a hooping that takes a latecomer lies on that piece alone, as every other
    /// one.</summary>
    [Fact]
    public void A_latecomers_hooping_lies_on_the_piece_of_cloth_that_carries_it()
    {
        using var job = new SewnJob(SewnJob.TenNames);
        job.Settings("\"rounds\": 1, \"piece\": \"400 mm\"");
        File.WriteAllText(job["job.json"], File.ReadAllText(job["job.json"])
            .Replace("\"length\": \"900 mm\"", "\"length\": \"1000 mm\", \"turn\": 0", StringComparison.Ordinal)
            .Replace("\"least\": \"5 mm\"", "\"height\": \"6 mm\", \"gap\": \"12 mm\"", StringComparison.Ordinal));
        job.Make();
        job.Say(1);
        int late = 0;
        foreach (string name in (string[])["Al", "Bo", "Cy", "Di", "Ed", "Fi"])
        {
            job.Names.Add(name);
            var plan = job.Make().Plan!;
            var pieces = plan.Cloths.SelectMany(c => c.Pieces).OrderBy(p => p.StartMm).ToList();
            Assert.True(pieces.Count > 1);
            foreach (var segment in plan.Hoopings.SelectMany(h => h.Segments).Select(s => s.Segment))
            {
                double start = segment.Names[0].StartMm;
                var piece = pieces.Last(p => p.StartMm <= start + 0.01);
                Assert.InRange(segment.StartMm, piece.StartMm - 0.01, piece.EndMm);
                Assert.InRange(segment.StartMm + segment.LengthMm, piece.StartMm, Math.Max(piece.EndMm, segment.Names[^1].EndMm) + 0.01);
                late += segment.Names.Any(n => n.Lettered.Name.Text == name) ? 1 : 0;
            }
        }

        Assert.Equal(6, late);
    }

    /// <summary>Groups with rounds of their own keep them when a latecomer comes and when the rest is set out again.</summary>
    [Fact]
    public void A_groups_own_rounds_stay_its_own()
    {
        using var job = new SewnJob();
        string[] small = ["Bo Reed,10", "Ilse Varga,10", "Jo Marsh,10", "Tobiah Quill,10"],
        large = ["Nia Moor,60", "Wenna Trear,60", "Rafe Holm,60"];
        void Write(string more, string length, params string[] rows)
        {
            File.WriteAllText(job["job.json"], $$"""
                { "format": 1, "lists": ["names.csv"], "columns": { "group": "gift" }, "hem": { "length": "{{length}}", "turn": 0 }, "strip": { "rounds": 2{{more}} },
                  "lettering": { "height": "7 mm", "motif": "dot" },
                  "groups": [ { "name": "small", "rest": true, "place": "ownRound" }, { "name": "large", "from": 50, "heightFactor": 1.4, "place": "ownRound" } ] }
                """);
            File.WriteAllText(job["names.csv"], "name,gift\n" + string.Join('\n', rows) + "\n");
        }

        Write("", "800 mm", [.. small, .. large]);
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(job.Folder).Status);
        Check();
        job.Say(1);
        Write("", "800 mm", [.. small, .. large, "Otto Lind,70", "Gytha Moor,5"]);
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(job.Folder).Status);
        Check();
        Write("", "820 mm", [.. small, .. large, "Otto Lind,70", "Gytha Moor,5"]);
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(job.Folder).Status);
        Check();

        void Check()
        {
            var gift = File.ReadAllLines(job["names.csv"]).Skip(1).Select(l => l.Split(','))
                .ToDictionary(c => c[0], c => int.Parse(c[1], System.Globalization.CultureInfo.InvariantCulture) >= 50);
            foreach (var round in job.Plan().GetProperty("rounds").EnumerateArray())
            {
                var own = round.GetProperty("segments").EnumerateArray().SelectMany(s => s.GetProperty("names").EnumerateArray())
                    .Select(n => gift[n.GetProperty("text").GetString()!]).Distinct().ToList();
                Assert.Single(own);
            }
        }
    }

    /// <summary>A drift moves what is sewn, and what is sewn between its names with it.</summary>
    [Fact]
    public void Motifs_go_along_with_a_hooping_that_drifted()
    {
        using var job = new SewnJob("Bo Reed", "Jo Marsh", "Io Mo", "Nia Moor", "Al Po", "Ida Lo");
        job.Settings("\"rounds\": 1");
        File.WriteAllText(
            job["job.json"],
            File.ReadAllText(job["job.json"])
            .Replace("\"length\": \"900 mm\"", "\"length\": \"420 mm\", \"turn\": 0", StringComparison.Ordinal)
            .Replace("\"least\": \"5 mm\"", "\"height\": \"7 mm\", \"motif\": \"dot\"", StringComparison.Ordinal));
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var before = Gaps();
        Assert.NotEmpty(before);
        job.Say(1);
        var first = job.Plan().GetProperty("rounds")[0].GetProperty("segments")[0].GetProperty("names").EnumerateArray().Last();
        double end = first.GetProperty("startMm").GetDouble() + first.GetProperty("widthMm").GetDouble();
        File.WriteAllText(
            job["drift.csv"], FormattableString.Invariant($"number,name,end_mm\n{first.GetProperty("order").GetInt32()},,{end + 6:0.0}\n"));
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var after = Gaps();
        Assert.Equal(before[0], after[0], 0.05);

        // Distances from each motif to the name before it, in the first segment.
        List<double> Gaps()
        {
            var segment = job.Plan().GetProperty("rounds")[0].GetProperty("segments")[0];
            var ends = segment.GetProperty("names").EnumerateArray()
                .Select(n => n.GetProperty("startMm").GetDouble() + n.GetProperty("widthMm").GetDouble()).ToList();
            return segment.TryGetProperty("motifs", out var motifs)
                ? [.. motifs.EnumerateArray().Select(m => m.GetProperty("startMm").GetDouble())
                    .Select(at => at - ends.Where(e => e < at + 1).DefaultIfEmpty(0).Max())]
                : [];
        }
    }
}
