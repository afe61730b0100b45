using System.Globalization;
using System.Text;
using System.Text.Json;
using NameBand.Common;
using NameBand.Output;
using NameBand.Tests.CommandLine;
using NameBand.Web.Machine;
using NameBand.Web.Strip;
using NameBand.Web.Table;
using SixLabors.ImageSharp;
using UglyToad.PdfPig;
using NameBand.PlanFile;
using Xunit;
using Xunit.Abstractions;

namespace NameBand.Tests.WholeLine;

/// <summary>
/// One job of each way, and all that is written and said of it held side by side: the same hours, hoopings, lengths, places
/// and marks in plan.json, on paper, in the tables, in what the commands answer and on the page.
/// </summary>
public sealed class OneTruthTests(ITestOutputHelper output)
{
    private const double Shortening = 0.03;
    private static readonly string[] Crew =
        ["Hesper Quayle", "Tobin Marsh", "Ada Willowby", "Rufus Penhale", "Una Vane", "Kit Farthing", "Bo Reed"];

    [Theory]
    [InlineData("needlePath")]
    [InlineData("machineLetters")]
    [InlineData("traced")]
    public async Task Whatever_tells_of_a_job_tells_the_same(string way)
    {
        using var folder = Folder(way);
        var report = Bander.Print(folder.FullPath);
        Assert.NotNull(report.OutFolder);
        var told = new Told(folder.FullPath, report.OutFolder!, output.WriteLine);
        told.Papers();
        told.Pictures();
        told.Texts();
        told.Tables();
        told.Hours(CliRun.Of("hours", folder.FullPath, "--json").Out);
        told.Plans(CliRun.Of("plans", folder.FullPath, "--json").Out);
        await told.PageAsync();
        output.WriteLine($"{way}: {told.Compared} facts agree");
        Assert.True(told.Compared > 60);
    }

    private static TemporaryFolder Folder(string way)
    {
        string letters = string.Concat("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ".Select(c => $"{c},5,6\n"))
            + "'-,5,6\nblank,4,0\ngap,1,\nstart,,2\n";
        return new TemporaryFolder()
            .With("job.json",
                $$"""
                { "format": 1, "title": "Lantern walk", "lists": ["crew.csv"], "way": "{{way}}", "hem": { "length": ["600 mm", "580 mm"], "closed": false },
                  "strip": { "rounds": 2, "shortening": {{Shortening.ToString(CultureInfo.InvariantCulture)}} }, "lettering": { "height": "9 mm" }{{(way == "machineLetters" ? """, "letters": { "sizes": ["9 mm"], "holds": "any" }""" : "")}} }
                """)
            .With("crew.csv", "Name\n" + string.Join('\n', Crew) + "\n").With("letters.csv", "letter,width_mm,seconds\n" + letters);
    }

    /// <summary>What plan.json tells, and everything else held against it.</summary>
    private sealed class Told(string job, string outFolder, Action<string> say)
    {
        private readonly JsonElement _plan = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(outFolder, "plan.json"))).RootElement;

        public int Compared { get; private set; }

        private string PlanMark => _plan.GetProperty("made").GetProperty("mark").GetString()!;

        private bool IsHooped => Hoopings[0].GetProperty("needlePath").ValueKind == JsonValueKind.String;

        private JsonElement[] Hoopings => [.. _plan.GetProperty("hoopings").EnumerateArray()];

        private JsonElement[] Rounds => [.. _plan.GetProperty("rounds").EnumerateArray()];

        private JsonElement[] Segments => [.. Rounds.SelectMany(r => r.GetProperty("segments").EnumerateArray())];

        private double Minutes(string by) => _plan.GetProperty("totals").GetProperty(by + "Minutes").GetDouble();

        /// <summary>Each name's number, text, round and place from the cut left end of its cloth, by the rule that docs/files.md
        /// states.</summary>
        private IEnumerable<(int Order, string Text, int Hooping, double OnClothMm)> Names =>
            from segment in Segments
            let hooping = Hoopings.Single(h => h.GetProperty("segments").EnumerateArray().Any(s => Number(s) == Number(segment)))
            from name in segment.GetProperty("names").EnumerateArray()
            select (name.GetProperty("order").GetInt32(), name.GetProperty("text").GetString()!, Number(hooping),
                segment.GetProperty("onClothMm").GetDouble()
                    + ((name.GetProperty("startMm").GetDouble() - segment.GetProperty("startMm").GetDouble())
                        / (1 - _plan.GetProperty("strip").GetProperty("shortening").GetDouble())));

        /// <summary>Every page of every PDF bears the plan's mark; lengths, hours, places and the marks of hoopings are those of
        /// the plan.</summary>
        public void Papers()
        {
            string[] files = [.. Directory.GetFiles(outFolder, "*.pdf", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];
            foreach (string file in files)
            {
                using var pdf = PdfDocument.Open(File.ReadAllBytes(file));
                var pages = pdf.GetPages().Select(p => Plain(string.Join(' ', p.GetWords().Select(w => w.Text)))).ToList();
                for (int i = 0; i < pages.Count; i++)
                {
                    Holds(pages[i].Contains("plan " + PlanMark, StringComparison.Ordinal),
                        $"{Path.GetFileName(file)}, page {i + 1}: no plan {PlanMark}");
                }

                string all = string.Join(' ', pages);
                if (file.Contains("work-packet", StringComparison.Ordinal))
                {
                    Packet(Path.GetFileName(file), all);
                }

                if (Path.GetFileName(file).StartsWith("key-in", StringComparison.Ordinal))
                {
                    foreach (var (_, text, hooping, at) in Names)
                    {
                        Holds(all.Contains(Tenths(at), StringComparison.Ordinal),
                            $"{Path.GetFileName(file)}: {text} is not at {Tenths(at)}");
                        Holds(all.Contains("mark " + MarkOf(hooping), StringComparison.Ordinal),
                            $"{Path.GetFileName(file)}: no mark of run {hooping}");
                    }
                }

                say(Path.GetRelativePath(outFolder, file));
            }

            Holds(files.Length >= 6, "there are sheets");
        }

        private void Packet(string file, string text)
        {
            foreach (var round in Rounds)
            {
                Holds(text.Contains(
                    $"Round {Number(round)}: finished {Tenths(round.GetProperty("lengthMm").GetDouble())} mm", StringComparison.Ordinal),
                    $"{file}: round {Number(round)}");
            }

            foreach (string by in new[] { "machine", "handsOn" })
            {
                Holds(text.Contains(Duration.InWords(Minutes(by)).English, StringComparison.Ordinal), $"{file}: {by} minutes");
            }

            if (IsHooped)
            {
                Holds(text.Contains(FormattableString.Invariant($"{Hoopings.Length} hoopings,"), StringComparison.Ordinal),
                    $"{file}: hoopings");
                foreach (var hooping in Hoopings)
                {
                    Holds(text.Contains($"Hooping {Number(hooping)} mark {MarkOf(Number(hooping))}", StringComparison.Ordinal),
                        $"{file}: mark of hooping {Number(hooping)}");
                    Holds(text.Contains(
                        $"left mark {Tenths(hooping.GetProperty("onClothMm").GetDouble() + 3)} mm", StringComparison.Ordinal),
                        $"{file}: place of hooping {Number(hooping)}");
                }
            }
        }

        /// <summary>What stands under a proof stands in its file as text too.</summary>
        public void Pictures()
        {
            foreach (string file in Directory.GetFiles(Path.Combine(outFolder, "proofs"), "*.png").Order(StringComparer.Ordinal))
            {
                string name = Path.GetFileNameWithoutExtension(file);
                string text = TextOf(file);
                if (Hoopings.SingleOrDefault(h =>
                    h.GetProperty("proof").GetString()!.EndsWith(Path.GetFileName(file), StringComparison.Ordinal))
                    is { ValueKind: JsonValueKind.Object } hooping)
                {
                    Holds(text.Contains("mark " + MarkOf(Number(hooping)), StringComparison.Ordinal), $"{name}: no mark");
                    Holds(text.Contains($": {Tenths(hooping.GetProperty("onClothMm").GetDouble())} to ", StringComparison.Ordinal),
                        $"{name}: place");
                }
                else if (!name.StartsWith("round-", StringComparison.Ordinal))
                {
                    Holds(text.Contains("plan " + PlanMark, StringComparison.Ordinal), $"{name}: no plan {PlanMark}");
                }
                else
                {
                    Holds(
                        text.Split("   ·   mark ").Skip(1).Any(t => SheetMarks.IsMark(t[..Math.Min(4, t.Length)])), $"{name}: no mark");
                    var round = Rounds.Single(r => Number(r) == int.Parse(name[6..], CultureInfo.InvariantCulture));
                    Holds(text.Contains($"{Tenths(round.GetProperty("lengthMm").GetDouble())} mm", StringComparison.Ordinal),
                        $"{name}: length");
                    foreach (var segment in round.GetProperty("segments").EnumerateArray())
                    {
                        var (_, first, _, at) = Names.First(n => n.Text == segment.GetProperty("names")[0].GetProperty("text").GetString());
                        Holds(text.Contains($"{Tenths(at)} mm {first}", StringComparison.Ordinal), $"{name}: {first} at {Tenths(at)}");
                    }
                }

                say(Path.GetRelativePath(outFolder, file));
            }
        }

        public void Texts()
        {
            string text = File.ReadAllText(Path.Combine(outFolder, OutPaths.ReadMeFirst));
            Holds(text.Contains($"Plan {PlanMark}", StringComparison.Ordinal), "read-me: plan mark");
            Holds(Plain(text).Contains("from the cut left end", StringComparison.Ordinal), "read-me: one ruler");
            Holds(!text.Contains("Only a round's proof counts", StringComparison.Ordinal), "read-me: no second ruler");
            say(OutPaths.ReadMeFirst);
        }

        public void Tables()
        {
            foreach (string file in new[] { OutPaths.Worksheet, OutPaths.KeyInTable }.Where(f => File.Exists(Path.Combine(outFolder, f))))
            {
                var table = CsvFile.Read(outFolder, file).Value!;
                var rows = table.Rows.Skip(1).Select(r => table.Rows[0].Fields.Zip(r.Fields).ToDictionary(p => p.First, p => p.Second))
                    .ToList();
                if (file == OutPaths.KeyInTable)
                {
                    Assert.Equal(Names.Count(), rows.Count);
                    foreach (var (order, text, hooping, at) in Names)
                    {
                        var row = rows.Single(r => r["order"] == order.ToString(CultureInfo.InvariantCulture));
                        Same(Tenths(at), row["start_on_cloth_mm"], $"{file}: {text}");
                        Same(MarkOf(hooping), row["mark"], $"{file}: mark of {text}");
                        Same(PlanMark, row["plan"], $"{file}: plan");
                    }
                }
                else
                {
                    foreach (var segment in Segments)
                    {
                        var row = rows.Single(r => r["segment"] == Number(segment).ToString(CultureInfo.InvariantCulture));
                        Same(Tenths(segment.GetProperty("onClothMm").GetDouble()), row["on_cloth_mm"],
                            $"{file}: segment {Number(segment)}");
                        Same(MarkOf(int.Parse(row["hooping"], CultureInfo.InvariantCulture)), row["mark"], $"{file}: mark");
                        Same(PlanMark, row["plan"], $"{file}: plan");
                    }
                }

                say(file);
            }
        }

        public void Hours(string json)
        {
            using var hours = JsonDocument.Parse(json);
            Near(Minutes("machine"), hours.RootElement.GetProperty("machineMinutes").GetProperty("likely").GetDouble(), "hours: machine");
            Near(Minutes("handsOn"), hours.RootElement.GetProperty("handsOnMinutes").GetProperty("likely").GetDouble(), "hours: hands");
            Same(PlanMark, hours.RootElement.GetProperty("mark").GetString()!, "hours: mark");
            say("hours --json");
        }

        public void Plans(string json)
        {
            using var plans = JsonDocument.Parse(json);
            var asSet = plans.RootElement.GetProperty("plans").EnumerateArray().Single(p => p.GetProperty("wish").GetString() == "asSet");
            Same(PlanMark, asSet.GetProperty("mark").GetString()!, "plans: mark");
            Same(Hoopings.Length.ToString(CultureInfo.InvariantCulture),
                asSet.GetProperty("hoopings").GetInt32().ToString(CultureInfo.InvariantCulture), "plans: hoopings");
            Near(Minutes("machine"), asSet.GetProperty("machineMinutes").GetDouble(), "plans: machine");
            Near(Minutes("handsOn"), asSet.GetProperty("handsOnMinutes").GetDouble(), "plans: hands");
            say("plans --json");
        }

        public async Task PageAsync()
        {
            using var table = new Worktable(job);
            var counted = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            table.Changed += () => _ = table.Now.Figures is not null && counted.TrySetResult();
            table.Open();
            await table.FirstLaidAsync();
            await counted.Task.WaitAsync(TimeSpan.FromMinutes(2));

            var now = table.Now;
            using var machine = Written(json => MachineState.Write(json, "", now, Bander.Sewn(job, null, null, () => { })));
            Same(PlanMark, machine.RootElement.GetProperty("plan").GetString()!, "page: plan mark");
            foreach (var hooping in machine.RootElement.GetProperty("hoopings").EnumerateArray())
            {
                Same(MarkOf(Number(hooping)), hooping.GetProperty("mark").GetString()!, $"page: mark of hooping {Number(hooping)}");
                var planned = Hoopings.Single(h => Number(h) == Number(hooping));
                double at = planned.GetProperty("onClothMm").GetDouble();
                double[] expected =
                    [.. planned.GetProperty("segments").EnumerateArray().Select(s => at + s.GetProperty("xMm").GetDouble() + 3).Order()];
                double[] shown = [.. hooping.GetProperty("strips").EnumerateArray().Select(s => s.GetProperty("left").GetDouble()).Order()];
                Same($"{expected.Length}", $"{shown.Length}", $"page: strips of hooping {Number(hooping)}");
                foreach (var (wanted, found) in expected.Zip(shown))
                {
                    Near(wanted, found, $"page: left mark of hooping {Number(hooping)}");
                }
            }

            if (machine.RootElement.TryGetProperty("keys", out var keys))
            {
                foreach (var key in keys.EnumerateArray())
                {
                    double at = Names.Single(n => n.Order == key.GetProperty("order").GetInt32()).OnClothMm;
                    Same(Tenths(at), Tenths(key.GetProperty("onCloth").GetDouble()),
                        $"page: start of {key.GetProperty("name").GetString()}");
                }
            }

            var estimate = now.Figures!.Estimate;
            Near(Minutes("machine"), estimate.MachineMinutes.Likely, "page: machine");
            Near(Minutes("handsOn"), estimate.HandsOnMinutes.Likely, "page: hands");
            using var strip = Written(json => StripMap.Write(json, 1, now.Laid!, false, new ShapeShelf()));
            foreach (var name in strip.RootElement.GetProperty("names").EnumerateArray())
            {
                double at = Names.Single(n => n.Order == name[6].GetInt32()).OnClothMm;
                Near(at, name[13].GetDouble(), $"page: place of {name[0].GetString()}");
            }

            foreach (var (round, i) in strip.RootElement.GetProperty("rounds").EnumerateArray().Select((r, i) => (r, i)))
            {
                Near(Rounds[i].GetProperty("lengthMm").GetDouble(), round.GetProperty("length").GetDouble(),
                    $"page: length of round {i + 1}");
            }

            say("the page: at the machine, and the strip");
        }

        private static JsonDocument Written(Action<Utf8JsonWriter> write)
        {
            using var stream = new MemoryStream();
            using (var json = new Utf8JsonWriter(stream))
            {
                write(json);
            }

            return JsonDocument.Parse(Encoding.UTF8.GetString(stream.ToArray()));
        }

        private string MarkOf(int hooping) => Hoopings.Single(h => Number(h) == hooping).GetProperty("mark").GetString()!;

        private static string TextOf(string png) =>
            string.Join(
                ' ', Image.Identify(png).Metadata.GetPngMetadata().TextData.Where(t => t.Keyword == "Description").Select(t => t.Value));

        private static int Number(JsonElement of) => of.GetProperty("number").GetInt32();

        private static string Tenths(double mm) => Thousandths.Tenths(mm).ToString("0.0", CultureInfo.InvariantCulture);

        private static string Plain(string text) =>
            string.Join(' ', text.Replace('\u00a0', ' ').Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

        private void Same(string expected, string found, string what)
        {
            Compared++;
            Assert.True(expected == found, $"{what}: {found} instead of {expected}");
        }

        private void Near(double expected, double found, string what)
        {
            Compared++;
            Assert.True(Math.Abs(expected - found) <= 0.051, FormattableString.Invariant($"{what}: {found} instead of {expected}"));
        }

        private void Holds(bool holds, string otherwise)
        {
            Compared++;
            Assert.True(holds, otherwise);
        }
    }
}
