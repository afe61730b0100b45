using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>Names that are keyed in or traced are logged one by one: what is sewn stays, what is left follows.</summary>
public class NameByNameTests
{
    [Fact]
    public void What_is_left_is_the_names_that_are_not_sewn()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        var whole = job.Make().Estimate!;
        Assert.Equal((6, 6, false), (whole.WorkLeft.Names, whole.WorkLeft.NamesInAll, whole.WorkLeft.IsBegun));
        Assert.Equal(whole.Work.All, whole.Left.All);
        Assert.Equal([1, 2], job.Say(1, 2).SaidNames.AsEnumerable());
        var left = job.Make().Estimate!;

        // By hand: a letter takes 6 s, a blank none, each name 2 s to begin; every character is a key of 1 s.
        string[] open = [.. job.Names.Skip(2)];
        double seconds = open.Sum(n => (n.Count(c => c != ' ') * 6) + 2);
        double breaks = left.Left.Rows.Single(r => r.Act == "thread breaks").Minutes.Likely;
        Assert.Equal(seconds / 60, Row(left.Left, "stitching"), 6);
        Assert.Equal(open.Sum(n => n.Length) * 1.1 / 60, Row(left.Left, "keying in"), 6);
        Assert.Equal(4 * 0.7 * 1.1, Row(left.Left, "bringing the start mark under the needle"), 6);
        Assert.Equal(4 * 0.5 * 1.1, Row(left.Left, "clipping threads"), 6);
        Assert.InRange(breaks, 0.01, 1);
        Assert.Equal((4, 6, true), (left.WorkLeft.Names, left.WorkLeft.NamesInAll, left.WorkLeft.IsBegun));
        Assert.Equal(whole.Work.All.Likely, left.Work.All.Likely, 9);
        Assert.DoesNotContain(left.Left.Rows, r => r.When == WorkTime.Before && r.Minutes.Likely > 0 && r.Act != "changing the bobbin");

        Assert.Contains("Names sewn 2 of 6", CliRun.Of("make", job.Folder).OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("Still to sew: 4 of 6 names", CliRun.Of("hours", job.Folder).OutOnOneLine, StringComparison.Ordinal);
        string[] done = [.. job.Sheet().Select(r => r["done"])];
        Assert.Equal(["sewn", "sewn", "", "", "", ""], done);

        // Evenings hold what is left and nothing else.
        var evenings = Bander.Hours(job.Folder, 30).Evenings!;
        Assert.Equal(left.Left.All.Likely, evenings.Sittings.Sum(s => s.Minutes), 6);

        job.Say(3, 6);
        var sewn = job.Make().Estimate!;
        Assert.True(sewn.WorkLeft.IsAllSewn);
        Assert.Equal(0, sewn.Left.Machine.High);
        Assert.Equal(sewn.WorkLeft.FinishingMinutes, sewn.Left.Hands.Likely, 9);
        Assert.Contains("Time left none at the machine; about", CliRun.Of("sewn", job.Folder).OutOnOneLine, StringComparison.Ordinal);
    }

    [Fact]
    public void The_pace_is_learnt_of_keying_placing_and_sewing()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        var whole = job.Make().Estimate!;
        double machine = whole.Names[..3].Sum(n => n.MachineMinutes), hands = whole.Names[..3].Sum(n => n.TimedHandMinutes);
        job.Say(1, 3, minutes: 2 * machine, hands: 3 * hands);
        var hours = Bander.Hours(job.Folder);
        Assert.Equal((3, 3), (hours.Machine!.Timed, hours.Hands!.Timed));

        // The prior weighs as much as 0.15 / 0.16² estimated minutes at the set pace.
        double prior = 0.15 / (0.16 * 0.16);
        Assert.Equal((prior + (2 * machine)) / (prior + machine), hours.Machine.PaceFactor, 0.001);
        Assert.Equal((prior + (3 * hands)) / (prior + hands), hours.Hands.PaceFactor, 0.001);
        var own = hours.Estimate!;
        foreach (string act in new[] { "keying in", "bringing the start mark under the needle", "clipping threads" })
        {
            Assert.Equal(Row(whole.Work, act) * hours.Hands.PaceFactor, Row(own.Work, act), 6);
        }

        Assert.Equal(Row(whole.Work, "stitching") * hours.Machine.PaceFactor, Row(own.Work, "stitching"), 6);
        Assert.Equal(Row(whole.Work, "pinning to the hem"), Row(own.Work, "pinning to the hem"), 9);

        // Minutes of several names are shared out by their widths, to the last thousandth.
        var lines = SewingLogFile.Read(job.Folder).OfNames.Entries;
        Assert.Equal(2 * machine, lines.Sum(l => l.Minutes!.Value), 0.002);
        Assert.True(lines[0].Minutes > lines[1].Minutes);
    }

    [Theory]
    [InlineData(NamedJob.Keyed)]
    [InlineData(NamedJob.Traced)]
    [InlineData(NamedJob.Hooped)]
    public void What_is_sewn_stays_whoever_comes_and_goes_and_numbers_never_come_twice(string way)
    {
        using var job = new NamedJob(way);
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var before = job.Places();
        byte[] plan = File.ReadAllBytes(job["out/plan.json"]);
        Assert.NotNull(job.Say(1, 3).Said);
        job.Make();
        var logged = job.Places();
        Assert.Equal(before, logged);
        Assert.Equal(Mark(plan), Mark(File.ReadAllBytes(job["out/plan.json"])));

        job.Names.Remove("Maren Lovdal");
        job.Names.Insert(0, "Bo Reed");
        Assert.NotEqual(ExitStatus.CannotUse, job.Make().Status);
        var after = job.Places();
        Assert.All(job.Names.Skip(1).Take(3), n => Assert.Equal(before[n], after[n]));
        Assert.Equal(7, after["Bo Reed"].Number);
        Assert.Equal(before["Rufus Penhale"].Number, after["Rufus Penhale"].Number);

        // Number 5 was given, and 7 was: neither comes again.
        job.Names.Remove("Bo Reed");
        job.Make();
        Assert.Equal(7, job.Plan().GetProperty("lastNumber").GetInt32());
        job.Names.Add("Ilse Varga");
        job.Make();
        Assert.Equal(8, job.Places()["Ilse Varga"].Number);
        Assert.All(job.Names.Take(3), n => Assert.Equal(before[n], job.Places()[n]));
        var along = job.Places().Values.OrderBy(p => p.StartMm).ToList();
        Assert.All(along.Zip(along.Skip(1)), p => Assert.True(p.First.StartMm + p.First.WidthMm <= p.Second.StartMm));
    }

    [Fact]
    public void Before_anything_is_sewn_numbers_stay_and_places_are_free()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        var before = job.Places();
        job.Names.Insert(0, "Bo Reed");
        job.Make();
        var after = job.Places();
        Assert.All(before, b => Assert.Equal(b.Value.Number, after[b.Key].Number));
        Assert.Equal(7, after["Bo Reed"].Number);
        Assert.True(after["Bo Reed"].StartMm < after["Hesper Quayle"].StartMm);
        Assert.NotEqual(before["Hesper Quayle"].StartMm, after["Hesper Quayle"].StartMm);
        Assert.Equal("7", job.Sheet()[0]["order"]);
        Assert.Equal("1", job.Sheet()[0]["turn"]);
    }

    [Fact]
    public void Letters_measured_anew_move_only_what_is_not_sewn()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        var before = job.Places();
        job.Say(1, 2);
        job.Letters(5.2);
        var report = job.Make();
        var after = job.Places();
        Assert.Equal((before["Hesper Quayle"], before["Tobin Marsh"]), (after["Hesper Quayle"], after["Tobin Marsh"]));
        Assert.Equal(before["Kit Farthing"].WidthMm + (11 * 0.2), after["Kit Farthing"].WidthMm, 0.1);
        Assert.True(report.Plan!.MatchesHem);
        Assert.True(after["Ada Willowby"].StartMm >= after["Tobin Marsh"].StartMm + after["Tobin Marsh"].WidthMm);
        Assert.Contains(report.Problems, p => p.Found.English.StartsWith("What is not sewn yet was set out again", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_measured_to_have_drifted_goes_on_from_where_it_was_laid_out()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        var laid = job.Places();
        double end = laid["Tobin Marsh"].StartMm + laid["Tobin Marsh"].WidthMm;
        job.With("drift.csv", FormattableString.Invariant($"number,name,end_mm\n2,Tobin Marsh,{end + 4:0.0}\n"));
        job.Make();
        var drifted = job.Places();
        Assert.True(drifted["Ada Willowby"].StartMm > laid["Ada Willowby"].StartMm);
        Assert.NotNull(job.Say(1, 2).Said);
        job.Make();
        Assert.Equal(drifted, job.Places());
        byte[] once = File.ReadAllBytes(job["out/plan.json"]);
        job.Make();
        Assert.Equal(once, File.ReadAllBytes(job["out/plan.json"]));

        // Another name, another reading, and a latecomer: each goes on from the one before.
        Assert.NotNull(job.Say(3).Said);
        job.Names.Add("Bo Reed");
        var report = job.Make();
        Assert.True(report.Plan!.MatchesHem);
        Assert.Equal(drifted["Hesper Quayle"].StartMm, job.Places()["Hesper Quayle"].StartMm, 0.01);
        Assert.True(job.Places()["Bo Reed"].StartMm + job.Places()["Bo Reed"].WidthMm <= 1000);
    }

    [Fact]
    public void A_sewn_name_that_is_corrected_or_asked_out_is_told_of()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        job.Say(1, 3);
        job.Names[1] = "Tobin Marshe";
        job.Names.RemoveAt(2);
        var report = job.Make();
        Assert.Equal(ExitStatus.NeedsPerson, report.Status);
        Assert.Contains(report.Problems, p => p.Found == "This name is sewn as “Tobin Marsh”, and the list now says “Tobin Marshe”.");
        Assert.Contains(
            report.Problems,
            p => p.Where.Name == "Ada Willowby" && p.Found.English.StartsWith("This name is sewn, and no row", StringComparison.Ordinal));
        Assert.Equal(5, report.Plan!.NameCount);
        Assert.True(job.Places().ContainsKey("Ada Willowby"));
        string[] fates = [.. File.ReadLines(job["out/changes.csv"]).Where(l => l.Contains("sewn then", StringComparison.Ordinal))];
        Assert.Equal(["sewn then changed", "sewn then withdrawn"], fates.Select(l => l.Split(',')[0]).Order());
        Assert.Contains(fates, l => l.Contains("Tobin Marshe", StringComparison.Ordinal));

        // Said to be spoiled, it comes out with its new words.
        Assert.NotNull(job.Say(2, deed: SewingDeed.Again).Said);
        Assert.Contains(job.Make().Plan!.Rounds[0].Names, n => n.Lettered.Name.Text == "Tobin Marshe");
        Assert.Equal(2, job.Places()["Tobin Marshe"].Number);
        Assert.Equal([1, 3], SewingLogFile.Read(job.Folder).OfNames.Sewn.AsEnumerable());
    }

    [Theory]
    [InlineData(NamedJob.Keyed)]
    [InlineData(NamedJob.Traced)]
    public void Answers_of_owners_corrections_and_latecomers_move_nothing_that_is_sewn(string way)
    {
        using var job = new NamedJob(way);
        job.Make();
        var before = job.Places();
        job.Say(1, 3);
        job.With("approvals.csv", "list,line,name,state,date,text,details\ncrew.csv,3,Tobin Marsh,no,,,\ncrew.csv,6,Maren Lovdal,no,,,\n");
        var asked = job.Make();
        Assert.Equal(ExitStatus.NeedsPerson, asked.Status);
        Assert.Contains(
            asked.Problems,
            p => p.Where.Name == "Tobin Marsh" && p.Found == "This row asks not to be shown, and its name is already sewn.");
        Assert.All(job.Names.Take(3), n => Assert.Equal(before[n], job.Places()[n]));
        Assert.False(job.Places().ContainsKey("Maren Lovdal"));
        Assert.Equal((2, 5), (asked.Estimate!.WorkLeft.Names, asked.Estimate.WorkLeft.NamesInAll));

        // They think again; a name that is not sewn is corrected, and a latecomer stands in the middle of the list.
        File.Delete(job["approvals.csv"]);
        job.With("corrections.csv", "list,line,was,decision,text,why\ncrew.csv,5,Rufus Penhale,change,Rufus Penhall,asked him\n");
        job.Make();
        Assert.Equal(4, job.Places()["Rufus Penhall"].Number);
        job.Names.Insert(2, "Bo Reed");
        job.With("corrections.csv", "list,line,was,decision,text,why\ncrew.csv,6,Rufus Penhale,change,Rufus Penhall,asked him\n");
        var more = job.Make();
        var after = job.Places();
        Assert.All(new[] { "Hesper Quayle", "Tobin Marsh", "Ada Willowby" }, n => Assert.Equal(before[n], after[n]));
        Assert.Equal((4, 7), (after["Rufus Penhall"].Number, after["Bo Reed"].Number));
        Assert.True(after.ContainsKey("Maren Lovdal"));
        Assert.Equal((4, 7), (more.Estimate!.WorkLeft.Names, more.Estimate.WorkLeft.NamesInAll));
        var along = after.Values.OrderBy(p => p.StartMm).ToList();
        Assert.All(along.Zip(along.Skip(1)), p => Assert.True(p.First.StartMm + p.First.WidthMm <= p.Second.StartMm));
    }

    [Fact]
    public void What_cannot_be_is_not_written_down()
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        Refused(job.Say(9), "There is no name n9 in the plan; its names are numbered n1 to n6.");
        Refused(job.Say(2, deed: SewingDeed.Again), "Name n2, “Tobin Marsh”, is not marked as sewn.");
        Refused(job.Say(2, deed: SewingDeed.Patch), "are not let in as pieces");
        Refused(job.Say(2, mark: "ZZZ9"), "The sheet with mark ZZZ9 is not the one");
        Refused(
            Bander.Sewn(job.Folder, null, new Reports.SewingWord(1, SewingDeed.Sewn), () => { }),
            "Number 1 has no needle path: its names are keyed in or traced, and each of them is said by itself.");
        Assert.False(File.Exists(job["sewing-log.csv"]));
        string mark = job.Plan().GetProperty("made").GetProperty("mark").GetString()!;
        Assert.NotNull(job.Say(2, mark: mark).Said);

        // A plan in which a sewn name lies elsewhere is never gone on from.
        string plan = File.ReadAllText(job["out/plan.json"]);
        File.WriteAllText(job["out/plan.json"], plan.Replace("\"Crew\"", "\"Crews\"", StringComparison.Ordinal));
        Refused(job.Say(3), "This plan is not as make wrote it");
        File.WriteAllText(job["out/plan.json"], plan);
        File.Move(job["sewing-log.csv"], job["log"]);
        job.Names.Insert(0, "Bo Reed");
        job.Make();
        File.Move(job["log"], job["sewing-log.csv"]);
        Refused(job.Say(3), "does not hold name n2 where it was sewn");

        static void Refused(Reports.SewingReport report, string why)
        {
            Assert.Equal(ExitStatus.CannotUse, report.Status);
            Assert.Contains(why, Assert.Single(report.Problems).Found.English, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_name_said_by_mistake_is_free_again()
    {
        using var job = new NamedJob(NamedJob.Traced);
        job.Make();
        job.Say(1, 2);
        job.Say(2, deed: SewingDeed.Mistake);
        var left = job.Make().Estimate!.WorkLeft;
        Assert.Equal((5, 6), (left.Names, left.NamesInAll));
        job.Say(1, deed: SewingDeed.Mistake);
        Assert.False(job.Make().Estimate!.WorkLeft.IsBegun);
    }

    [Theory]
    [InlineData("n3-n5")]
    [InlineData("n3-5")]
    public void The_command_line_takes_names_one_by_one_and_in_rows(string what)
    {
        using var job = new NamedJob(NamedJob.Keyed);
        job.Make();
        var said = CliRun.Of("sewn", job.Folder, what, "--minutes", "12", "--note", "by the lamp");
        Assert.Equal((0, ""), (said.Status, said.Errors));
        Assert.Contains(
            "Names n3–n5, “Ada Willowby”, “Rufus Penhale” and “Maren Lovdal”, are logged as sewn, 12 minutes at the machine.",
            said.OutOnOneLine, StringComparison.Ordinal);
        Assert.Contains("Done 3 of 6 names: n3–n5", said.OutOnOneLine, StringComparison.Ordinal);
        string log = File.ReadAllText(job["sewing-log.csv"]);
        Assert.StartsWith(
            "hooping,what,minutes,hand_minutes,machine,measured_mm,when,path,note,check\r\nn3,sewn,", log, StringComparison.Ordinal);
        foreach (string wrong in new[] { "n0", "n5-n3", "name", "n", "12b", "-1" })
        {
            Assert.Equal(64, CliRun.Of("sewn", job.Folder, wrong).Status);
        }
    }

    private static double Row(Work work, string act) => work.Rows.Where(r => r.Act == act).Sum(r => r.Minutes.Likely);

    private static string Mark(byte[] plan) =>
        System.Text.Json.JsonDocument.Parse(plan).RootElement.GetProperty("made").GetProperty("mark").GetString()!;
}
