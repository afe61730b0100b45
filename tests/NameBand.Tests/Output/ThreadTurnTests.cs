using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output;
using NameBand.Stitching;
using NameBand.Tests.CommandLine;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>Names in several threads: changed as seldom as can be, counted, bought by colour, and drawn as they will be sewn.</summary>
public sealed class ThreadTurnTests(ThreadTurnTests.Mixed mixed) : IClassFixture<ThreadTurnTests.Mixed>
{
    /// <summary>Two hoopings: in the first a red and a blue name, in the second a blue and a red one.</summary>
    public sealed class Mixed : IDisposable
    {
        private const string Job = """
            { "lists": ["names.csv"], "hem": { "length": "330 mm", "turn": 0, "closed": false }, "lettering": { "height": "9 mm" }, "marks": "MARKS", "files": { "svg": true, "loadMap": true },
              "colours": { "thread": "#2040c0", "bobbin": "white", "cloth": "#f0ead8" }, "columns": { "group": "Gift" },
              "groups": [{ "name": "lamps", "from": 50, "thread": "darkred" }, { "name": "rest", "rest": true }] }
            """;

        public Mixed()
        {
            Folder.With("names.csv", "Name,Gift\nAda Marsh,90\nBo Reed,1\nCleo Weir,1\nDara Ost,90\n")
                .With("job.json", Job.Replace("MARKS", "drawn", StringComparison.Ordinal));
            Made = Bander.Make(Folder.FullPath);
        }

        public TemporaryFolder Folder { get; } = new();

        public MakeReport Made { get; }

        public static string WithMarks(string marks) =>
            Job.Replace("MARKS", marks, StringComparison.Ordinal).Replace("330 mm", "140 mm", StringComparison.Ordinal);

        public void Dispose() => Folder.Dispose();
    }

    private static readonly CssColour Blue = CssColour.Of(0x2040C0);
    private static readonly CssColour Red = CssColour.Of(0x8B0000);

    /// <summary>Against every order that each of up to five hoopings with up to four threads can have.</summary>
    [Fact]
    public void No_other_order_asks_for_fewer_changes()
    {
        var random = new Random(23);
        for (int run = 0; run < 300; run++)
        {
            ImmutableArray<ImmutableArray<int>> hoopings =
                [.. Enumerable.Range(0, random.Next(1, 6))
                    .Select(_ => (ImmutableArray<int>)[.. Enumerable.Range(0, 4).Where(_ => random.Next(5) < 2)
                    .DefaultIfEmpty(random.Next(4))])];
            var planned = ThreadTurns.Fewest([.. hoopings.Select(ThreadTurns.Free)]);
            Assert.All(planned.Zip(hoopings), p => Assert.Equal(p.Second.Order(), p.First.Order()));
            Assert.Equal(Least(hoopings, null), Changes(planned.SelectMany(p => p)));
        }
    }

    /// <summary>Against every order of up to six cloths, on each of which the hoopings keep theirs.</summary>
    [Fact]
    public void No_other_order_of_cloths_asks_for_fewer_changes()
    {
        var random = new Random(29);
        int saved = 0;
        for (int run = 0; run < 200; run++)
        {
            ImmutableArray<ImmutableArray<ImmutableArray<int>>> cloths = [.. Enumerable.Range(0, random.Next(1, 6))
                .Select(_ => Enumerable.Range(0, random.Next(0, 3))
                .Select(_ => (ImmutableArray<int>)[.. Enumerable.Range(0, 4).Where(_ => random.Next(5) < 2).DefaultIfEmpty(random.Next(4))])
                    .ToImmutableArray())];
            var order = ClothTurns.Fewest([.. cloths.Select(c => c.Select(ThreadTurns.Free).ToImmutableArray())]);
            Assert.Equal(Enumerable.Range(0, cloths.Length), order.Order());
            int Of(IEnumerable<int> sewn) =>
                Changes(ThreadTurns.Fewest([.. sewn.SelectMany(c => cloths[c]).Select(ThreadTurns.Free)]).SelectMany(o => o));
            int least = Arranged([.. Enumerable.Range(0, cloths.Length)]).Min(o => Of(o));
            Assert.Equal(least, Of(order));
            int asListed = Of(Enumerable.Range(0, cloths.Length));
            saved += asListed > least ? 1 : 0;
            Assert.True(asListed > least || order.SequenceEqual(Enumerable.Range(0, cloths.Length)), "Moved for nothing.");
        }

        Assert.InRange(saved, 50, 200);
    }

    private static IEnumerable<ImmutableArray<int>> Arranged(ImmutableArray<int> of) =>
        of.Length < 2 ? [of] : of.SelectMany(first => Arranged(of.Remove(first)).Select(rest => rest.Insert(0, first)));

    /// <summary>A name that is sewn and no longer in the list stays where it is, and its thread is not laid out for anybody.</summary>
    [Fact]
    public void A_thread_that_only_a_name_has_that_is_gone_is_not_asked_for()
    {
        var plan = mixed.Made.Plan!;
        Assert.Equal([Blue.Number, Red.Number], ThreadTurns.Of(plan).Threads.Select(t => t.Number));
        var onlyBlue = plan with
        {
            Hoopings = [.. plan.Hoopings.Select(h => h with
            {
                Segments = [.. h.Segments.Select(s => s with
                {
                    Segment = s.Segment with
                    {
                        Names = [.. s.Segment.Names.Select(n => n with { IsGone = ThreadTurns.ThreadOf(plan, n).Number == Red.Number })],
                    },
                })],
            })],
        };
        var turns = ThreadTurns.Of(onlyBlue);
        Assert.Equal(Blue.Number, Assert.Single(turns.Threads).Number);
        Assert.Equal(0, turns.Changes);
    }

    /// <summary>
    /// Red, blue and red rounds: both red ones come one after the other, and with one of them sewn nothing is numbered anew.
    /// </summary>
    [Fact]
    public void Rounds_of_one_thread_are_sewn_one_after_another()
    {
        using var job = new TemporaryFolder().With("names.csv", "Name,Gift\nAda Marsh,90\nCleo Weir,1\nDara Ost,60\n").With("job.json", """
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "120 mm", "turn": 0, "closed": false },
                "lettering": { "height": "9 mm" }, "marks": "drawn",
              "strip": { "rounds": 3, "lanes": 1 },
              "columns": { "group": "Gift" },
              "groups": [{ "name": "lamps", "from": 80, "thread": "darkred", "place": "first" },
                  { "name": "oars", "from": 50, "below": 80, "thread": "darkred", "place": "last" },
                  { "name": "rest", "rest": true, "thread": "navy" }] }
            """);
        var plan = Bander.Make(job.FullPath).Plan!;
        Assert.Equal(1, plan.Threads.Changes);
        var before = Rounds(plan);
        Assert.InRange(CliRun.Of("sewn", job.FullPath, "1").Status, 0, 1);
        var again = Bander.Make(job.FullPath).Plan!;
        Assert.Equal(before, Rounds(again));
        Assert.Equal(plan.Threads.Of(1)!.Order.AsEnumerable(), again.Threads.Of(1)!.Order);

        static string Rounds(StripPlan plan) => string.Join(' ', plan.Hoopings.Select(h => $"{h.Number}:{h.Segments[0].Round.Number}"));
    }

    private static int Least(ImmutableArray<ImmutableArray<int>> hoopings, int? before)
    {
        return hoopings.IsEmpty ? 0
            : Orders(hoopings[0]).Min(o => o.Length - 1 + (before is { } b && b != o[0] ? 1 : 0) + Least(hoopings.RemoveAt(0), o[^1]));
    }

    private static IEnumerable<ImmutableArray<int>> Orders(ImmutableArray<int> of) =>
        of.Length < 2 ? [of] : of.SelectMany(first => Orders(of.Remove(first)).Select(rest => rest.Insert(0, first)));

    private static int Changes(IEnumerable<int> threads) => threads.Zip(threads.Skip(1)).Count(p => p.First != p.Second);

    [Fact]
    public void Threads_are_sewn_one_after_another_and_a_hooping_goes_on_with_the_last()
    {
        var plan = mixed.Made.Plan!;
        Assert.Equal(2, plan.Hoopings.Length);
        Assert.Equal(2, plan.Threads.Changes);
        Assert.Equal(plan.Threads.Of(1)!.Order[^1], plan.Threads.Of(2)!.Order[0]);
        foreach (var hooping in plan.Hoopings)
        {
            var path = NeedlePathReading.Read(File.ReadAllBytes(mixed.Folder["out/" + OutPaths.NeedlePath(hooping.Number)]))!;
            Assert.DoesNotContain(path.Steps, s => s.Kind == StitchKind.Mark);
            var parts = ThreadSections.Of(plan, hooping, path.Steps.AsSpan());
            Assert.Equal(
                plan.Threads.Of(hooping.Number)!.Order.Select(t => (CssColour?)t),
                parts.Where(p => p.To - p.From > 1).Select(p => p.Thread));
            Assert.Single(path.Steps, s => s.Action == NeedleAction.Stop);
        }
    }

    /// <summary>Sewn marks come before them with a stop of their own, and are known from the names when they are read again.</summary>
    [Fact]
    public void Marks_come_first_in_a_thread_of_their_own()
    {
        using var job = new TemporaryFolder().With("names.csv", "Name,Gift\nAda Marsh,90\nBo Reed,1\n")
            .With("job.json", Mixed.WithMarks("sewn"));
        Assert.NotNull(Bander.Make(job.FullPath).Plan);
        var path = NeedlePathReading.Read(File.ReadAllBytes(job["out/" + OutPaths.NeedlePath(1)]))!;
        Assert.Equal(2, path.Steps.Count(s => s.Action == NeedleAction.Stop));
        int last = Enumerable.Range(0, path.Steps.Length).Last(i => path.Steps[i].Kind == StitchKind.Mark);
        Assert.InRange(last, 5, 30);
        Assert.All(path.Steps.Take(last).Where(s => s.Action == NeedleAction.Stitch), s => Assert.Equal(StitchKind.Mark, s.Kind));
    }

    [Fact]
    public void Changes_are_counted_and_spools_bought_by_colour()
    {
        using var plan = JsonDocument.Parse(File.ReadAllText(mixed.Folder["out/plan.json"]));
        var threads = plan.RootElement.GetProperty("hoopings").EnumerateArray()
            .Select(h => h.GetProperty("threads").EnumerateArray().Select(t => t.GetString()!).ToArray()).ToList();
        Assert.Equal(["#2040c0", "#8b0000"], threads[0].Order(StringComparer.Ordinal));
        Assert.Equal(threads[0].Reverse(), threads[1]);
        var work = plan.RootElement.GetProperty("work").EnumerateArray()
            .ToDictionary(w => w.GetProperty("act").GetString()!, w => w.GetProperty("count").GetDouble());
        Assert.Equal(2, work["changing the thread"]);
        Assert.DoesNotContain("changing to another thread", work.Keys);

        string[] sheet = File.ReadAllLines(mixed.Folder["out/worksheet.csv"]);
        Assert.Contains(",threads,stitches,", sheet[0], StringComparison.Ordinal);
        Assert.Contains("darkred (#8b0000)", sheet[1], StringComparison.Ordinal);
        var made = mixed.Made.Plan!;
        Assert.StartsWith("Begin with this thread: ", ThreadWords.Of(made, made.Hoopings[0]).English, StringComparison.Ordinal);
        Assert.StartsWith("The thread stays as it is: ", ThreadWords.Of(made, made.Hoopings[1]).English, StringComparison.Ordinal);
        var hours = CliRun.Of("hours", mixed.Folder.FullPath);
        foreach (string said in new[] { "needle thread, darkred (#8b0000)", "needle thread, near", "(#2040c0)",
            "bobbin thread, white (#ffffff)" })
        {
            Assert.Contains(said, hours.OutOnOneLine.Replace('\u00a0', ' '), StringComparison.Ordinal);
        }

        var told = Assert.Single(mixed.Made.Problems, p => p.Where.Key == "groups");
        Assert.Equal(Severity.Note, told.Severity);
        Assert.Contains("2 changes between them; 2 hoopings hold more than one", told.Found.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("proofs/hooping-001.png")]
    [InlineData("proofs/round-01.png")]
    [InlineData("proofs/load-001.png")]
    public void Each_name_is_drawn_in_its_own_thread(string file)
    {
        using var picture = Image.Load<Rgb24>(mixed.Folder["out/" + file]);
        var (red, blue) = (0, 0);
        for (int i = 0; i < picture.Width * picture.Height; i++)
        {
            var p = picture[i % picture.Width, i / picture.Width];
            red += p.R > 90 && p.G < 60 && p.B < 60 && p.R > 2 * p.G ? 1 : 0;
            blue += p.B > 120 && p.R < 90 && p.B > p.R + 60 ? 1 : 0;
        }

        int all = picture.Width * picture.Height;
        Assert.True(red > all / 500 && blue > all / 500, $"{file}: {red} red and {blue} blue of {all}");
    }

    [Fact]
    public void A_drawing_has_a_group_for_each_thread()
    {
        string svg = File.ReadAllText(Directory.GetFiles(mixed.Folder["out"], "hooping-001.svg", SearchOption.AllDirectories).Single());
        Assert.Contains($"stroke=\"{Blue}\"", svg, StringComparison.Ordinal);
        Assert.Contains($"stroke=\"{Red}\"", svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0x8B0000, "darkred (#8b0000)")]
    [InlineData(0x8A0103, "near darkred (#8a0103)")]
    public void A_colour_can_be_asked_for_in_a_shop(int colour, string said) => Assert.Equal(said, CssColour.Of(colour).InWords);
}
