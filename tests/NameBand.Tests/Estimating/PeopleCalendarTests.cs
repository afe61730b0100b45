using NameBand.Estimating;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>Evenings of several people: whole pieces, as many at once as there are machines, on days of their own.</summary>
public sealed class PeopleCalendarTests
{
    /// <summary>
    /// Instances whose optimum is known, since they were cut from it: every evening of every one who sews is cut into pieces without a
    /// rest, so that no plan can do with fewer.
    /// </summary>
    [Fact]
    public void Jobs_cut_from_full_evenings_take_as_many_evenings_again()
    {
        var random = new Random(19);
        for (int i = 0; i < 200; i++)
        {
            int people = random.Next(2, 4), evenings = random.Next(1, 5);
            PersonEvenings[] who =
                [.. Enumerable.Range(0, people).Select(p => new PersonEvenings($"p{p}", Alike(120 - (30 * p)), true, true))];
            var pieces = new List<HoopingTime>();
            foreach (int e in Enumerable.Range(0, evenings))
            {
                foreach (var person in who)
                {
                    for (double left = person.Minutes[0]; left > 0;)
                    {
                        double part = Math.Min(left, random.Next(5, 60));
                        part = left - part < 5 ? left : part;
                        pieces.Add(new HoopingTime(pieces.Count + 1, part));
                        left -= part;
                    }
                }
            }

            var plan = EveningPlanner.Over(pieces, Machines(people), EveningWeek.Of([.. who]).From(new DateOnly(2027, 1, 4)));
            Assert.Equal((evenings, true), (plan.Evenings, plan.IsProvenBest));
        }
    }

    /// <summary>Whatever the job: no piece is lost, cut or sewn twice, nobody sits longer than she said or does what she does
    /// not.</summary>
    [Fact]
    public void Everybody_does_what_she_does_and_no_longer_than_her_evening()
    {
        var random = new Random(8);
        for (int i = 0; i < 300; i++)
        {
            int machines = random.Next(1, 4);
            PersonEvenings[] who =
            [
                .. Enumerable.Range(0, random.Next(2, 5)).Select(p => new PersonEvenings(
                    $"p{p}", [.. Enumerable.Range(0, 7).Select(_ => random.Next(2) * 15.0 * random.Next(4, 9))],
                    p == 0 || random.Next(2) == 0, p == 1 || random.Next(2) == 0)),
            ];
            who[0] = who[0] with { Minutes = who[0].Minutes.SetItem(2, 120) };
            who[1] = who[1] with { Minutes = who[1].Minutes.SetItem(5, 60) };
            HoopingTime[] pieces =
                [.. Enumerable.Range(1, random.Next(1, 25)).Select(n => new HoopingTime(n, random.Next(5, 50), random.Next(0, 10)))];
            var other = new OtherWork(
                [new("cutting", random.Next(0, 100))], [new("pressing", random.Next(0, 200)), new("sewing down", 90)]);
            var week = EveningWeek.Of([.. who]);
            var from = new DateOnly(2027, 1, 1).AddDays(random.Next(7));
            var plan = EveningPlanner.Over(pieces, Machines(machines), week.From(from), other);

            Assert.Equal(pieces.Select(p => p.Number), plan.Sittings.SelectMany(s => s.Hoopings).Order());
            Assert.Equal(pieces.Sum(p => p.MachineMinutes + p.HandMinutes) + other.Minutes, plan.Sittings.Sum(s => s.Minutes), 6);
            foreach (var sitting in plan.Sittings)
            {
                var person = who.Single(p => p.Name == sitting.Person);
                var day = week.DayOf(from, sitting.Evening);
                Assert.InRange(sitting.Minutes, 0, person.Minutes[((int)day.DayOfWeek + 6) % 7] + 1e-6);
                Assert.True(sitting.Hoopings.IsEmpty || person.DoesMachine);
                Assert.True(sitting.Before.IsEmpty && sitting.After.IsEmpty || person.DoesHands);
            }

            foreach (var evening in plan.Sittings.GroupBy(s => s.Evening))
            {
                var sewing = evening.Where(s => !s.Hoopings.IsEmpty).ToList();
                Assert.True(sewing.Count <= machines && sewing.Select(s => s.Machine).Distinct().Count() == sewing.Count);
            }

            int lastBefore = plan.Sittings.Where(s => !s.Before.IsEmpty).Select(s => s.Evening).DefaultIfEmpty(0).Max();
            int lastPiece = plan.Sittings.Where(s => !s.Hoopings.IsEmpty).Max(s => s.Evening);
            Assert.All(plan.Sittings.Where(s => !s.Hoopings.IsEmpty), s => Assert.True(s.Evening >= lastBefore));
            Assert.All(plan.Sittings.Where(s => !s.After.IsEmpty), s => Assert.True(s.Evening >= lastPiece));
        }
    }

    /// <summary>
    /// A cloth is one maker's from its first hooping to its last, and the cloths are shared out so that, by their minutes, nobody's share
    /// could be done sooner: every way to share them is looked at.
    /// </summary>
    [Fact]
    public void Whole_cloths_go_to_one_person_each_and_no_other_share_is_done_sooner()
    {
        var random = new Random(198);
        for (int i = 0; i < 120; i++)
        {
            int cloths = random.Next(1, 6), people = random.Next(2, 4), number = 0;
            PersonEvenings[] who =
                [.. Enumerable.Range(0, people).Select(p => new PersonEvenings($"p{p}", Alike(60 * random.Next(1, 4)), true, true))];
            HoopingTime[] hoopings =
                [.. Enumerable.Range(1, cloths)
                    .SelectMany(c => Enumerable.Range(0, random.Next(1, 6))
                        .Select(_ => new HoopingTime(++number, random.Next(5, 30)) { Cloth = c }))];
            var plan = EveningPlanner.Over(hoopings, Machines(people), EveningWeek.Of([.. who]).From(new DateOnly(2027, 1, 4)));
            var whose = plan.Sittings.SelectMany(s => s.Hoopings.Select(h => (hoopings[h - 1].Cloth, s.Person))).Distinct().ToList();
            Assert.Equal(hoopings.Select(h => h.Number), plan.Sittings.SelectMany(s => s.Hoopings).Order());
            Assert.Equal(cloths, whose.Count);

            double[] minutes = [.. Enumerable.Range(1, cloths).Select(c => hoopings.Where(h => h.Cloth == c).Sum(h => h.MachineMinutes))];
            double soonest = Enumerable.Range(0, (int)Math.Pow(people, cloths))
                .Min(way => Longest([.. Enumerable.Range(0, cloths).Select(c => way / (int)Math.Pow(people, c) % people)]));
            Assert.Equal(soonest, Longest([.. whose.OrderBy(w => w.Cloth).Select(w => w.Person[1] - '0')]), 9);

            double Longest(int[] owner) => Enumerable.Range(0, people)
                .Max(p => owner.Select((o, c) => o == p ? minutes[c] : 0).Sum() / who[p].Minutes[0]);
        }
    }

    [Fact]
    public void A_job_is_laid_onto_the_days_of_two_people_with_a_test_name_to_match()
    {
        using var folder = new TemporaryFolder()
            .With("job.json",
                """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 }, "finishBy": "2027-05-01" }""")
            .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\nEmlyn Sedge\nFenna Weir\n")
            .With("workshop.json", """
                { "format": 1, "machines": [ { "name": "old", "takes": ["coordinates"] }, { "name": "new", "takes": ["coordinates"] } ],
                  "people": [ { "name": "Wenna", "evenings": { "tuesday": "1h" } }, { "name": "Tobin", "evenings": { "tuesday": "1h", "friday": "45 min" } } ] }
                """);
        var report = Bander.Hours(folder.FullPath, today: new DateOnly(2027, 3, 1));
        var plan = report.Calendar!.Plan;
        Assert.Equal(["Tobin", "Wenna"], plan.Sittings.Select(s => s.Person).Distinct().Order());
        Assert.All(
            plan.Sittings,
            s => Assert.True(report.Calendar.DayOf(s.Evening).DayOfWeek == DayOfWeek.Tuesday
            || (report.Calendar.DayOf(s.Evening).DayOfWeek == DayOfWeek.Friday && s.Person == "Tobin")));
        double hoopings =
            report.Estimate!.Left.Rows.Where(r =>
                r.When == WorkTime.EachHooping || (r.When == WorkTime.EachName && r.Cause != WorkCause.Spoiling))
                .Sum(r => r.Minutes.Likely);
        double match = plan.Sittings.SelectMany(s => s.Before).Where(t => t.Act == "a test name of each to match").Sum(t => t.Minutes);
        Assert.Equal(hoopings / 6, match, 3);
        Assert.Equal(report.Estimate.Left.Rows.Sum(r => r.Minutes.Likely) + match, plan.Sittings.Sum(s => s.Minutes), 1);
        Assert.Contains(report.Problems,
            p => p.Found.English.StartsWith("2 people sew, and all strips lie on one cloth.", StringComparison.Ordinal));
        Assert.Single(plan.Sittings.Where(s => !s.Hoopings.IsEmpty).Select(s => s.Person).Distinct());
        Assert.NotNull(report.Calendar.BeginBy);
        Assert.True(report.Calendar.IsInTime);
    }

    /// <summary>Whole hoopings each, one test name for all, and what each has sewn in the one log.</summary>
    [Fact]
    public void Each_maker_has_a_packet_of_her_own_and_the_log_knows_who_sewed()
    {
        using var folder = new TemporaryFolder()
            .With("job.json",
                """{ "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 }, "lettering": { "height": "9 mm" }, "marks": "drawn" }""")
            .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\nEmlyn Sedge\nFenna Weir\n")
            .With("workshop.json", """
                { "format": 1, "machines": [ { "name": "old", "takes": ["coordinates"] }, { "name": "new", "takes": ["coordinates"] } ],
                  "people": [ { "name": "Wenna", "evenings": { "tuesday": "1h" } }, { "name": "Tobin", "evenings": { "tuesday": "1h", "friday": "45 min" } } ] }
                """);
        var plan = Bander.Print(folder.FullPath).Plan!;
        string[] sheets = [.. Directory.GetFiles(folder["out/sheets"], "maker-*-a4.pdf").Order(StringComparer.Ordinal).Select(Text)];
        Assert.Equal(2, sheets.Length);
        Assert.All(sheets, s => Assert.Contains("sew “Ada Marsh” on a scrap", s, StringComparison.Ordinal));
        Assert.Contains(sheets, s => s.Contains("packet of Wenna", StringComparison.Ordinal));
        Assert.Contains(sheets, s => s.Contains("packet of Tobin", StringComparison.Ordinal));
        Assert.All(plan.Hoopings, h => Assert.Single(sheets, s => s.Contains($"Hooping {h.Number} mark", StringComparison.Ordinal)));

        Assert.InRange(CliRun.Of("sewn", folder.FullPath, "1", "--by", "Wenna; Ost", "--note", "went well").Status, 0, 1);
        var said = CliRun.Of("sewn", folder.FullPath);
        Assert.Contains("Sewn by: Wenna, Ost, 1", said.OutOnOneLine.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains("by Wenna, Ost; went well", File.ReadAllText(folder["sewing-log.csv"]), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_has_no_evening_is_given_no_cloth()
    {
        HoopingTime[] hoopings = [.. Enumerable.Range(1, 4).Select(i => new HoopingTime(i, 10, 5) { Cloth = i })];
        PersonEvenings none = new("none", Alike(0), true, true), some = new("some", Alike(60), true, true);

        Assert.Empty(ClothShares.Of(hoopings, [none]));
        Assert.All(ClothShares.Of(hoopings, [none, some]).Values, p => Assert.Equal("some", p.Name));
    }

    private static string Text(string file)
    {
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(File.ReadAllBytes(file));
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    private static System.Collections.Immutable.ImmutableArray<double> Alike(double minutes) => [.. Enumerable.Repeat(minutes, 7)];

    private static SewingMachine[] Machines(int count) => [.. Enumerable.Range(1, count).Select(m => new SewingMachine($"m{m}"))];
}
