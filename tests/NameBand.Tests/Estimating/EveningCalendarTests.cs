using System.Text.Json;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Tests.CommandLine;
using NameBand.Tests.SewingOn;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>Evenings as days: when to begin, when all is done, and what would make it fit.</summary>
public sealed class EveningCalendarTests
{
    /// <summary>ISO 8601 gives 12 April 1985 as the fifth day of its week (its example 1985-W15-5, from memory).</summary>
    [Fact]
    public void A_week_begins_on_Monday()
    {
        var fridays = new EveningWeek([0, 0, 0, 0, 60, 0, 0]);
        var day = new DateOnly(1985, 4, 12);
        Assert.True(fridays.IsSewnOn(day));
        Assert.Equal(day, fridays.DayOf(day, 1));
        Assert.Equal(new DateOnly(1985, 4, 19), fridays.DayOf(day, 2));
        Assert.Equal(new DateOnly(1985, 4, 12), fridays.DayOf(new DateOnly(1985, 4, 6), 1));
    }

    /// <summary>Against every way of cutting the work, in its order, into days: tried one after another, day by day.</summary>
    [Fact]
    public void Days_are_those_that_trying_everything_finds()
    {
        var random = new Random(86);
        SewingMachine[] machine = [new("")];
        int late = 0, inTime = 0, unmended = 0;
        for (int i = 0; i < 300; i++)
        {
            double[] week = [.. Enumerable.Range(0, 7).Select(_ => random.Next(2) == 0 ? 0 : 15.0 * random.Next(2, 9))];
            week[random.Next(7)] = 90;
            double[] hoopings = [.. Enumerable.Range(0, random.Next(1, 8)).Select(_ => (double)random.Next(10, 85))];
            var today = new DateOnly(2027, 1, 1).AddDays(random.Next(400));
            var by = today.AddDays(random.Next(0, 20));
            HoopingTime[] times = [.. hoopings.Select((m, n) => new HoopingTime(n + 1, m))];
            var found = EveningCalendar.Of(l => EveningPlanner.Over(times, machine, l), new EveningWeek([.. week]), today, by);

            Assert.Equal(Done(hoopings, week, today, 0), found.DoneOn);
            DateOnly? begin = null;
            for (var day = today; day <= by; day = day.AddDays(1))
            {
                begin = week[IsoDay(day)] > 0 && Done(hoopings, week, day, 0) <= by ? day : begin;
            }

            Assert.Equal(begin, found.BeginBy);
            Assert.Equal(found.DoneOn <= by, found.IsInTime);
            Assert.All(found.Plan.Sittings, s => Assert.True(s.Minutes <= week[IsoDay(found.DayOf(s.Evening))] + 1e-9));
            if (found.IsInTime)
            {
                inTime++;
                Assert.Null(found.LongerByMinutes);
            }
            else if (found.LongerByMinutes is { } more)
            {
                late++;
                Assert.True(Done(hoopings, Longer(week, more), today, 0) <= by);
                Assert.False(more > 15 && Done(hoopings, Longer(week, more - 15), today, 0) <= by);
            }
            else
            {
                unmended++;
                Assert.False(Done(hoopings, Longer(week, 480), today, 0) <= by);
            }
        }

        Assert.True(late > 20 && inTime > 20 && unmended > 5, $"{late} late, {inTime} in time, {unmended} without a mend");
    }

    private static int IsoDay(DateOnly day) => (int)(day.ToDateTime(TimeOnly.MinValue) - new DateTime(2024, 1, 1)).TotalDays % 7;

    private static double[] Longer(double[] week, double more) => [.. week.Select(m => m > 0 ? m + more : 0)];

    /// <summary>The soonest day by which the hoopings from one on are sewn, each day taking any number of the next ones that fit,
    /// none included.</summary>
    private static DateOnly Done(double[] hoopings, double[] week, DateOnly day, int from)
    {
        var best = DateOnly.MaxValue;
        double sum = 0;
        for (int to = from; to < hoopings.Length; to++)
        {
            sum += hoopings[to];
            if (sum > week[IsoDay(day)])
            {
                break;
            }

            var done = to == hoopings.Length - 1 ? day : Done(hoopings, week, day.AddDays(1), to + 1);
            best = done < best ? done : best;
        }

        // A day of rest, or too short for the next hooping: only then is nothing done on it.
        return best == DateOnly.MaxValue ? Done(hoopings, week, day.AddDays(1), from) : best;
    }

    private const string Job =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0 }, "finishBy": "2027-05-01" }""";

    private const string Shop =
        """{ "format": 1, "machines": [{ "name": "the machine", "takes": ["coordinates"] }], "people": [{ "name": "Wenna", "evenings": { "tuesday": "1h", "friday": "45 min" } }] }""";

    private static TemporaryFolder Folder(string job = Job) => new TemporaryFolder().With("job.json", job)
        .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\n").With("workshop.json", Shop);

    [Fact]
    public void Work_is_laid_onto_the_evenings_of_the_workshop()
    {
        using var folder = Folder();
        var report = Bander.Hours(folder.FullPath, today: new DateOnly(2027, 3, 1));
        var told = JsonDocument.Parse(NameBand.Reports.Answers.AnswerJson.Of(report.Answer)).RootElement;
        var days = told.GetProperty("sittings").EnumerateArray()
            .Select(s => (Day: s.GetProperty("day").GetDateTime(), Minutes: s.GetProperty("minutes").GetDouble())).ToList();
        Assert.True(days.Count > 2);
        Assert.All(
            days, d => Assert.InRange(
                d.Minutes, 0, d.Day.DayOfWeek == DayOfWeek.Tuesday ? 60 : d.Day.DayOfWeek == DayOfWeek.Friday ? 45 : 0));
        Assert.Equal(new DateTime(2027, 3, 2), days[0].Day);
        Assert.Equal(told.GetProperty("doneOn").GetDateTime(), days[^1].Day);
        Assert.Equal(0, (int)report.Status);
        Assert.InRange(told.GetProperty("beginBy").GetDateTime(), days[0].Day, new DateTime(2027, 5, 1));
        Assert.Equal(report.Estimate!.Left.Rows.Sum(r => r.Minutes.Likely), days.Sum(d => d.Minutes), 1);
    }

    [Fact]
    public void Too_late_is_said_with_what_would_do()
    {
        using var folder = Folder();
        var report = Bander.Hours(folder.FullPath, today: new DateOnly(2027, 4, 25));
        Assert.Equal(1, (int)report.Status);
        Assert.Null(report.Calendar!.BeginBy);
        var problem = Assert.Single(report.Problems, p => p.Severity == Severity.NeedsPerson);
        Assert.Contains("after Saturday 1 May 2027", problem.Found.English, StringComparison.Ordinal);
        Assert.Contains("min longer would be enough", problem.Mend.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2027-02-29", "is no day")]
    [InlineData("1 May", "is no day")]
    public void A_day_that_cannot_be_kept_is_refused(string day, string says)
    {
        using var folder = Folder(Job.Replace("2027-05-01", day, StringComparison.Ordinal));
        var report = Bander.Hours(folder.FullPath, today: new DateOnly(2027, 3, 1));
        Assert.Equal(2, (int)report.Status);
        var problem = Assert.Single(report.Problems, p => p.Severity == Severity.CannotUse);
        Assert.Equal("finishBy", problem.Where.Key);
        Assert.Contains(says, problem.Found.English, StringComparison.Ordinal);
        Assert.Equal(3, Directory.EnumerateFileSystemEntries(folder.FullPath).Count());
    }

    /// <summary>Whoever is late wants to know what is left more than anybody.</summary>
    [Fact]
    public void When_the_day_is_past_the_hours_are_told_all_the_same_until_all_is_done()
    {
        using var folder = Folder();
        var late = new DateOnly(2027, 5, 2);
        var report = Bander.Hours(folder.FullPath, today: late);
        var problem = Assert.Single(report.Problems, p => p.Where.Key == "finishBy");
        Assert.Equal((1, Severity.NeedsPerson), ((int)report.Status, problem.Severity));
        Assert.Equal("The day by which all is to be sewn down, Saturday 1 May 2027, is past.", problem.Found.English);
        Assert.Equal(Bander.Hours(folder.FullPath).Estimate!.Left.All, report.Estimate!.Left.All);
    }

    /// <summary>What make writes knows no date, so that hours does not send her there for the day.</summary>
    [Theory]
    [InlineData("", 0, false)]
    [InlineData("guest\n", 1, true)]
    public void For_the_day_alone_nobody_is_sent_to_make(string row, int made, bool says)
    {
        using var folder = Folder(Job.Replace("2027-05-01", "2020-05-01", StringComparison.Ordinal));
        File.AppendAllText(folder["names.csv"], row);
        Assert.Equal(made, CliRun.Of("make", folder.FullPath).Status);
        var hours = CliRun.Of("hours", folder.FullPath);
        Assert.Equal(1, hours.Status);
        Assert.Contains("Friday 1 May 2020, is past.", hours.OutOnOneLine, StringComparison.Ordinal);
        Assert.Equal(says, hours.OutOnOneLine.Contains("The command make", StringComparison.Ordinal));
    }

    [Fact]
    public void When_all_is_sewn_down_nothing_is_said_of_a_day_that_is_past()
    {
        using var job = new NamedJob(NamedJob.Keyed + ", \"finishBy\": \"2027-05-01\", \"evening\": \"1h\"");
        job.Make();
        job.Say(1, 6);
        var late = new DateOnly(2027, 5, 2);
        Assert.Contains(Bander.Hours(job.Folder, today: late).Problems, p => p.Where.Key == "finishBy");

        job.Finish(FinishingStep.Upper);
        var done = Bander.Hours(job.Folder, today: late);
        Assert.False(done.Estimate!.IsWorkLeft);
        Assert.DoesNotContain(done.Problems, p => p.Where.Key == "finishBy");
        Assert.Equal(0, (int)done.Status);
        Assert.Equal((null, true), (Bander.Hours(job.Folder, today: late.AddDays(-1)).Calendar!.DoneOn, done.Evenings!.Sittings.IsEmpty));
    }

    [Fact]
    public void Without_the_length_of_an_evening_no_day_is_told()
    {
        using var folder = Folder()
            .With("workshop.json", """{ "format": 1, "machines": [{ "name": "the machine", "takes": ["coordinates"] }] }""");
        var report = Bander.Hours(folder.FullPath, today: new DateOnly(2027, 3, 1));
        Assert.Null(report.Calendar);
        Assert.Contains(report.Problems, p => p.Where.Key == "finishBy" && p.Mend.English.Contains("\"evening\"", StringComparison.Ordinal));
        Assert.Equal(0, (int)report.Status);
    }
}
