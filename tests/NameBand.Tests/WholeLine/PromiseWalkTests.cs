using System.Text;
using NameBand.Common;
using NameBand.Tests.CommandLine;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>
/// The beginning of the lantern walk's list from asking to thanks, with invented answers, command by command: who said no is
/// nowhere, what is
/// private stays in private/, and a no that comes when the name is sewn is told.
/// </summary>
public sealed class PromiseWalkTests
{
    /// <summary>One of them is a repeat.</summary>
    private const int Rows = 13;

    private const int Names = 12;

    [Fact]
    public void From_asking_to_thanks_nobody_is_sewn_shown_or_told_against_a_wish()
    {
        using var folder = new TemporaryFolder();
        string job = folder.FullPath;
        folder.With("job.json", """
            { "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "1.6 m", "turn": 0 }, "lettering": { "face": "Nunito Bold", "height": "9 mm" }, "marks": "drawn",
              "thanks": { "width": 320 }, "asking": { "answerBy": "2027-03-01", "silence": "leftOut" } }
            """).With("names.csv", string.Join('\n', File.ReadAllLines(Path.Combine(MadeFolder.SampleFolder, "names.csv")).Take(1 + Rows)) + "\n");
        Say(0, "make", job);
        Say(0, "invite", job);

        // The answers come back as a form has them: by address, with a remark that is nobody's business.
        var asked = CsvFile.Read(job, "private/mail-merge.csv").Value!.Rows.Skip(1).Select(r => (Address: r.Fields[0], Name: r.Fields[1]))
            .ToList();
        Assert.Equal(Names, asked.Count);
        string[] answers =
            ["agreed;;yes", "agreed;;yes", "agreed;;no", "change wished;Zdeněk H.;yes", "no;;", "agreed;;yes", "agreed;;", "perhaps;;yes",
            "agreed;;yes"];
        folder.With("private/answers.csv", "Timestamp;E-mail;Your answer;How should it read?;Show on the web?;Remark\n"
            + string.Concat(asked.Zip(answers, (a, said) => $"2027-02-1{asked.IndexOf(a) % 9};{a.Address};{said};Zwq9note\n")));
        var entered = Say(1, "invite", job, "--answers");
        Assert.Contains("not clear: 1, missing: 3", entered, StringComparison.Ordinal);
        Assert.Contains(
            $"names.csv,5,{asked[3].Name},change,Zdeněk H.", CliRun.Of("invite", job, "--answers").Out, StringComparison.Ordinal);

        // She asks the one who was not clear, and fulfils the wish.
        folder.With("approvals.csv", File.ReadAllText(folder["approvals.csv"]).Replace(",unclear,", ",agreed,", StringComparison.Ordinal))
            .With("corrections.csv", $"list,line,was,decision,text,why\nnames.csv,5,{asked[3].Name},change,Zdeněk H.,wished\n");
        Say(0, "make", job);
        Say(0, "invite", job);
        Assert.Equal(
            asked.Skip(9).Select(a => a.Name), CsvFile.Read(job, "private/reminders.csv").Value!.Rows.Skip(1).Select(r => r.Fields[1]));
        string plan = File.ReadAllText(folder["out/plan.json"]);
        Assert.Contains("\"Zdeněk H.\"", plan, StringComparison.Ordinal);
        Assert.Contains("its owner said no: approvals.csv, line 6", plan, StringComparison.Ordinal);

        // Two hoopings are sewn and photographed; on the first everybody said yes, on the second somebody did not.
        var hoopings = new[] { 0, 2 }.Select(i => HoopingOf(folder, asked[i].Name)).ToArray();
        Assert.All(hoopings, h => Assert.InRange(CliRun.Of("sewn", job, h.Number, "--mark", h.Mark).Status, 0, 1));
        Directory.CreateDirectory(folder["photos"]);
        folder.With($"photos/hooping-{hoopings[0].Number}.jpg", Photo()).With($"photos/hooping-{hoopings[1].Number}.jpg", Photo());
        var page = Bander.Public(job);
        Assert.Equal((1, 6), (page.Photos, page.Shown));
        Assert.InRange(CliRun.Of("print", job, "--thanks").Status, 0, 1);
        Assert.Equal(Names - 1, Directory.GetFiles(folder["out/thanks"], "*.png").Length);

        // A no that comes too late is told, and the page is made without that name.
        folder.With("private/answers-2.csv", $"address;answer;web\n{asked[0].Address};no;no\n");
        Assert.Contains("already sewn", Say(1, "invite", job, "--answers"), StringComparison.Ordinal);
        Assert.Contains("already sewn", string.Join(' ', Bander.Make(job).Problems.Select(p => p.Found)), StringComparison.Ordinal);
        page = Bander.Public(job);
        Assert.Equal((0, 5), (page.Photos, page.Shown));

        // Byte by byte: addresses and remarks are in the list and in private/ alone, and who said no to the web is not in public/.
        string[] files =
            [.. Directory.GetFiles(job, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(job, f).Replace('\\', '/'))];
        Assert.Contains(files, f => f.StartsWith("private/letters/", StringComparison.Ordinal));
        foreach (string file in files.Where(f => f != "names.csv" && !f.StartsWith("private/", StringComparison.Ordinal)))
        {
            string bytes = Encoding.UTF8.GetString(File.ReadAllBytes(folder[file]));
            Assert.All(
                new[] { "lantern.example", "Zwq9note", "blue envelope" },
                s => Assert.False(bytes.Contains(s, StringComparison.Ordinal), $"“{s}” in {file}"));
            Assert.All(
                new[] { 0, 2, 4, 6, 9, 10, 11 }.Select(i => asked[i].Name).Where(_ => file.StartsWith("public/", StringComparison.Ordinal)),
                n => Assert.False(bytes.Contains(n, StringComparison.Ordinal), $"“{n}” in {file}"));
        }
    }

    private static string Say(int status, params string[] command)
    {
        var run = CliRun.Of(command);
        Assert.True(run.Status == status, $"{string.Join(' ', command)} ended with {run.Status}\n{run.Out}\n{run.Errors}");
        return run.OutOnOneLine.Replace('\u00a0', ' ');
    }

    private static (string Number, string Mark) HoopingOf(TemporaryFolder folder, string name)
    {
        var made = new MadeFolder(folder["out"]);
        int segment = made.Segments.First(s => s.GetProperty("names").EnumerateArray().Any(n => n.GetProperty("text").GetString() == name))
            .GetProperty("number").GetInt32();
        var hooping = made.Plan.GetProperty("hoopings").EnumerateArray()
            .First(h => h.GetProperty("segments").EnumerateArray().Any(s => s.GetProperty("number").GetInt32() == segment));
        return (hooping.GetProperty("number").GetRawText(), hooping.GetProperty("mark").GetString()!);
    }

    private static byte[] Photo()
    {
        using var image = new Image<Rgb24>(64, 48);
        using var stream = new MemoryStream();
        image.SaveAsJpeg(stream);
        return stream.ToArray();
    }
}
