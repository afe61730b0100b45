using System.Text;
using NameBand.Common;
using NameBand.MachineLetters.Alphabets;
using NameBand.Tests.CommandLine;
using UglyToad.PdfPig;
using Xunit;
using static NameBand.Tests.MarkedList;

namespace NameBand.Tests.Hostile;

/// <summary>
/// A list in which all that stands beside the names is marked: no mark is in any file that is written, in any message, or
/// in anything said as JSON, whichever way the names are sewn and whatever goes wrong.
/// </summary>
public class SecretsEverywhereTests
{
    private const string Groups =
        """, "columns": { "group": "Paid" }, "groups": [{ "name": "lamps", "from": 100, "heightFactor": 1.1, "place": "among" }, { "name": "rest", "rest": true }]""";

    private const string Broken =
        "Name,E-mail,Note\nAna Lind,qz7mail1@lantern-secret.example,\"Zwq9note\nBo,qz7mail1@lantern-secret.example,73519.57\n";

    private const string NoColumn =
        "qz7mail1@lantern-secret.example,07700900461,Zwq9note\nqz7mail2@lantern-secret.example,07700900461,73519.57\n";

    private const string Letters =
        "letter,width_mm\nblank,4\nA,5\nB,5\nC,5\nD,5\nL,5\nV,5\nP,5\nS,5\na,5\nb,5\ne,5\ng,5\nh,5\ni,5\nl,5\nn,5\no,5\nr,5\ns,5\nd,5\n'=,5\n&,5\n'-,4\n";

    [Theory]
    [InlineData("needlePath", Groups)]
    [InlineData("machineLetters", """, "letters": { "sizes": ["9 mm", "7 mm"] }""")]
    [InlineData("traced", Groups)]
    public void Nothing_that_stands_beside_a_name_comes_out(string way, string more)
    {
        using var folder = new TemporaryFolder().With("names.csv", MarkedList.Csv).With("letters.csv", Letters)
            .With("approvals.csv", "list,line,name,state\nnames.csv,2,Ana Lind,asked\n")
            .With("job.json", $$"""
                { "format": 1, "lists": ["names.csv"], "way": "{{way}}", "hem": { "length": "700 mm", "closed": false }, "files": { "svg": true, "program": true },
                  "title": "Lantern walk"{{more}} }
                """);
        var said = new StringBuilder();
        string[][] commands =
        [
            ["names"], ["plans"], ["make"], ["sewn", "1"], ["hours"], ["measure"], ["swatch"], ["print", "--thanks", "--playback"],
            ["make", "--json"], ["names", "--json"],
            ["hours", "--json"], ["plans", "--json"],
        ];
        foreach (string[] command in commands)
        {
            var run = CliRun.Of([command[0], folder.FullPath, .. command[1..]]);
            Assert.True(run.Status is 0 or 1 or 2, $"{command[0]}: {run.Errors}");
            said.Append(run.Out).Append(run.Errors);
        }

        Assert.True(File.Exists(folder["out/plan.json"]), said.ToString());
        int made = Directory.GetFiles(folder.FullPath, "*", SearchOption.AllDirectories).Length;
        Assert.InRange(made, 9, 500);
        AssertNoMark(said.ToString(), "what was said");
        AssertNoMarkIn(folder.FullPath);
        AssertNoFormulas(folder["out"], areMade: way != "traced");
    }

    [Theory]
    [InlineData(Broken)]
    [InlineData(NoColumn)]
    [InlineData("Note,Paid\nZwq9note,73519.57\n")]
    public void A_list_that_cannot_be_read_is_told_without_what_stands_in_it(string list)
    {
        using var folder = new TemporaryFolder().With("names.csv", list)
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "700 mm", "turn": 0 } }""");
        foreach (string[] command in new string[][] { ["names"], ["make"], ["names", "--json"], ["make", "--json"], ["plans"], ["hours"] })
        {
            var run = CliRun.Of([command[0], folder.FullPath, .. command[1..]]);
            Assert.NotEqual(0, run.Status);
            AssertNoMark(run.Out + run.Errors, command[0]);
        }

        AssertNoMarkIn(folder.FullPath);
    }

    private static void AssertNoMarkIn(string folder)
    {
        foreach (string file in Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Where(f => Path.GetFileName(f) != "names.csv"))
        {
            string name = Path.GetRelativePath(folder, file);
            byte[] bytes = File.ReadAllBytes(file);
            AssertNoMark(name, name);
            AssertNoMark(bytes, name);
            if (file.EndsWith(".pdf", StringComparison.Ordinal))
            {
                using var pdf = PdfDocument.Open(bytes);
                AssertNoMark(string.Concat(pdf.GetPages().Select(p => p.Text)), name + ", as text");
            }
        }
    }

    /// <summary>Every field of every CSV is a number or begins with no sign that a spreadsheet takes for a formula.</summary>
    /// <param name="areMade">Whether this way makes a CSV with names in it at all.</param>
    private static void AssertNoFormulas(string folder, bool areMade)
    {
        string[] files = Directory.GetFiles(folder, "*.csv", SearchOption.AllDirectories);
        bool sawGuarded = !areMade;
        foreach (string file in files)
        {
            var table = CsvFile.Read(folder, Path.GetRelativePath(folder, file).Replace('\\', '/')).Value!;
            foreach (string field in table.Rows.SelectMany(r => r.Fields))
            {
                sawGuarded |= field.StartsWith("'=Pell", StringComparison.Ordinal);
                bool isNumber =
                    double.TryParse(
                        field, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out _);
                Assert.True(
                    field.Length == 0 || isNumber || !"=+-@\t\r\n＝＋－＠".Contains(field[0], StringComparison.Ordinal), $"{file}: “{field}”");
            }
        }

        Assert.True(sawGuarded, "The name that begins like a formula is in no file: the test tries nothing.");
    }
}
