using System.Globalization;
using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>From nothing measured to a plan by three names, through the files of a job.</summary>
public class SewnLengthsTests
{
    [Fact]
    public void Three_names_on_a_scrap_make_the_plan_and_more_of_them_narrow_its_ranges()
    {
        var machine = Machine();
        var names = machine.Names(20);
        using var folder = Folder(names);
        Assert.Equal(ExitStatus.NeedsPerson, Bander.Make(folder.FullPath).Status);
        var before = Rows(folder);
        var first = before.Take(3).Select(r => r["name"]).ToList();
        folder.With("lengths.csv", Lengths(machine, first));
        var report = Bander.Make(folder.FullPath);
        Assert.DoesNotContain(report.Problems, p => p.Severity == Severity.NeedsPerson);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        var after = Rows(folder);

        // Measuring changes neither the order on the strip nor the numbers.
        Assert.Equal(Numbered(before), Numbered(after));
        Assert.True(HalfMm(before) > 15 && HalfMm(after) < 6, $"± {HalfMm(before):0.0} and ± {HalfMm(after):0.0} mm");
        Assert.All(after, r => Assert.InRange(Math.Abs(Mm(r, "expected_mm") - machine.TrueMm(r["name"])), 0, 6));
        Assert.True(after.Count(r =>
            Mm(r, "least_mm") <= machine.TrueMm(r["name"]) && machine.TrueMm(r["name"]) <= Mm(r, "most_mm")) >= 17);

        // The feed's own variation stands beside the range, 1.75 % and 9 times in 10.
        Assert.All(after, r => Assert.Equal(0.0175 * 1.645 * Mm(r, "expected_mm"), Mm(r, "feed_mm"), 0.06));
        folder.With("lengths.csv", Lengths(machine, [.. first, .. names.Except(first).Take(8)]));
        Bander.Make(folder.FullPath);
        Assert.True(HalfMm(Rows(folder)) < 0.85 * HalfMm(after));
    }

    [Fact]
    public void A_copy_of_the_sheet_saved_where_a_comma_marks_decimals_is_read_the_same()
    {
        var machine = Machine();
        var names = machine.Names(8);
        using var folder = Folder(names);
        folder.With("lengths.csv", Lengths(machine, names.Take(4)));
        Bander.Make(folder.FullPath);
        string plain = File.ReadAllText(folder["out/key-in.csv"]);
        string filled = string.Join("\r\n", plain.TrimEnd().Split("\r\n").Select((line, i) =>
        {
            string[] fields = line.Split(',');
            if (i > 0 && names.Take(4).Contains(fields[4]))
            {
                fields[24] = machine.TrueMm(fields[4]).ToString("0.0", CultureInfo.InvariantCulture);
                fields[26] = "Scrap";
            }

            return string.Join(';', fields.Select(f => f.Replace('.', ',')));
        }));
        folder.With("lengths.csv", filled);
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(ExitStatus.AllPlaced, report.Status);
        Assert.Equal(plain, File.ReadAllText(folder["out/key-in.csv"]));
    }

    [Fact]
    public void Where_the_blank_lies_makes_the_ranges_narrower_still()
    {
        var machine = Machine();
        var names = machine.Names(12);
        using var folder = Folder(names);
        folder.With("lengths.csv", Lengths(machine, names.Take(3)));
        Bander.Make(folder.FullPath);
        double without = HalfMm(Rows(folder));
        folder.With("lengths.csv", "name,measured_mm,blank_mm,sewn_on\n" + string.Concat(names.Take(3).Select(n =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{n},{machine.TrueMm(n):0.0},\"{machine.TrueBlank(n).EndMm:0.0} mm, {machine.TrueBlank(n).BeginMm:0.0} mm\",scrap\n"))));
        Assert.Equal(ExitStatus.AllPlaced, Bander.Make(folder.FullPath).Status);
        Assert.True(HalfMm(Rows(folder)) < without);
    }

    [Theory]
    [InlineData("name,measured_mm\nHesper Quayle,63x", ExitStatus.CannotUse, "is not a number")]
    [InlineData("name,measured_mm\n,63", ExitStatus.CannotUse, "does not say of what it is")]
    [InlineData("name,length\nHesper Quayle,63", ExitStatus.CannotUse, "no column measured_mm")]
    [InlineData("name,measured_mm,size_mm\nHesper Quayle,63,8", ExitStatus.CannotUse, "The machine has no letters 8 mm high.")]
    [InlineData("name,measured_mm,blank_mm\nHesper Quayle,63,\"40, 31\"", ExitStatus.CannotUse, "cannot be right")]
    [InlineData("name,measured_mm,blank_mm\nHesper,63,\"31, 40\"", ExitStatus.CannotUse, "no blank")]
    [InlineData(
        "name,measured_mm\nHesper Quayle,63\nHesper Quayle,68", ExitStatus.NeedsPerson,
        "has two lengths, 63 mm in line 2 and 68 mm in line 3")]
    public void What_cannot_be_is_told_with_its_line(string lengths, ExitStatus status, string found)
    {
        using var folder = Folder(["Hesper Quayle", "Hesper", "Tobin Marsh"]).With("lengths.csv", lengths + "\n");
        var report = Bander.Make(folder.FullPath);
        Assert.Equal(status, report.Status);
        var told = report.Problems.Single(p => p.Found.English.Contains(found, StringComparison.Ordinal));
        Assert.Equal("lengths.csv", told.Where.File);
        Assert.NotEmpty(told.Mend.English);
    }

    [Fact]
    public void An_alphabet_of_another_machine_is_left_aside_and_told()
    {
        var machine = Machine();
        var names = machine.Names(6);
        using var folder = Folder(names);
        folder.With("lengths.csv", Lengths(machine, names.Take(4)));
        Bander.Make(folder.FullPath);
        string alone = File.ReadAllText(folder["out/key-in.csv"]);
        folder.With(
            "letters.csv",
            "letter,width_mm\n" + string.Concat("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ".Select(c => $"{c},3.1\n"))
            + "blank,3\ngap,0.5\n");
        var report = Bander.Make(folder.FullPath);
        Assert.Contains(report.Problems, p => p.Severity == Severity.NeedsPerson && p.Found.English.Contains("of another machine"));
        Assert.Equal(alone, File.ReadAllText(folder["out/key-in.csv"]));
    }

    [Fact]
    public void A_length_that_does_not_go_with_the_others_is_asked_about()
    {
        var machine = Machine();
        var names = machine.Names(10);
        using var folder = Folder(names);
        string right = Lengths(machine, names.Take(8));
        string[] lines = right.Split('\n');
        string[] fields = lines[4].Split(',');
        fields[1] = (double.Parse(fields[1], CultureInfo.InvariantCulture) - 10).ToString("0.0", CultureInfo.InvariantCulture);
        lines[4] = string.Join(',', fields);
        folder.With("lengths.csv", string.Join('\n', lines));
        var told = Bander.Make(folder.FullPath).Problems.Single(p => p.Found.English.Contains("by all other measures"));
        Assert.Equal(("lengths.csv", 5), (told.Where.File, told.Where.Line));
        folder.With("lengths.csv", right);
        Assert.DoesNotContain(Bander.Make(folder.FullPath).Problems, p => p.Found.English.Contains("by all other measures"));
    }

    [Fact]
    public void The_command_writes_lengths_down_and_a_scrap_is_not_sewn()
    {
        var machine = Machine();
        var names = machine.Names(8);
        using var folder = Folder(names);
        Bander.Make(folder.FullPath);
        foreach (var row in Rows(folder).Take(3))
        {
            string mm = string.Create(CultureInfo.InvariantCulture, $"{machine.TrueMm(row["name"]):0.0} mm");
            string blank =
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{machine.TrueBlank(row["name"]).EndMm:0.0} mm, {machine.TrueBlank(row["name"]).BeginMm:0.0} mm");
            var said = CliRun.Of(["sewn", folder.FullPath, "n" + row["order"], "--length", mm, "--blank", blank, "--scrap"]);
            Assert.True(said.Status is 0 or 1, said.Out + said.Errors);
        }

        Assert.False(File.Exists(folder["sewing-log.csv"]));
        Assert.Equal(ExitStatus.AllPlaced, Bander.Make(folder.FullPath).Status);
        Assert.True(HalfMm(Rows(folder)) < 6);

        // On the strip the name is sewn with it; a length that cannot be its is refused and nothing written.
        var first = Rows(folder)[0];
        var far = CliRun.Of(["sewn", folder.FullPath, "n" + first["order"], "--length", "200 mm"]);
        Assert.Equal(2, far.Status);
        Assert.False(File.Exists(folder["sewing-log.csv"]));
        var near = CliRun.Of(["sewn", folder.FullPath, "n" + first["order"], "--length", first["expected_mm"] + " mm"]);
        Assert.True(near.Status is 0 or 1, near.Out + near.Errors);
        Assert.True(File.Exists(folder["sewing-log.csv"]));
        string start = first["start_from_end_mm"];
        Bander.Make(folder.FullPath);
        Assert.Equal(start, Rows(folder).Single(r => r["order"] == first["order"])["start_from_end_mm"]);
        Assert.Equal(64, CliRun.Of(["sewn", folder.FullPath, "n1", "--scrap"]).Status);
    }

    private static SimulatedMachine Machine() => new(FaceMetrics.Read(FaceMetrics.File).First(f => f.Face == "Cabin-Regular"), 11);

    private static TemporaryFolder Folder(IEnumerable<string> names) => new TemporaryFolder()
        .With("job.json", """
            { "format": 1, "lists": ["crew.csv"], "hem": { "length": "3.2 m", "closed": false }, "way": "machineLetters",
              "letters": { "sizes": ["9 mm"], "look": "sans", "feed": "lengthwise" } }
            """)
        .With("crew.csv", "Name\n" + string.Join('\n', names) + "\n");

    private static string Lengths(SimulatedMachine machine, IEnumerable<string> names) =>
        "name,measured_mm,sewn_on\n" + string.Concat(names.Select(
        n => string.Create(CultureInfo.InvariantCulture, $"{n},{machine.TrueMm(n):0.0},scrap\n")));

    private static List<Dictionary<string, string>> Rows(TemporaryFolder folder)
    {
        var table = CsvFile.Read(folder["out"], "key-in.csv").Value!;
        return [.. table.Rows.Skip(1).Select(r => table.Rows[0].Fields.Zip(r.Fields).ToDictionary(p => p.First, p => p.Second))];
    }

    private static List<string> Numbered(List<Dictionary<string, string>> rows) =>
        [.. rows.Select(r => r["order"] + " " + r["name"]).Order(StringComparer.Ordinal)];

    private static double HalfMm(List<Dictionary<string, string>> rows) => rows.Average(r => (Mm(r, "most_mm") - Mm(r, "least_mm")) / 2);

    private static double Mm(Dictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);
}
