using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>Files that another program saved with a byte order mark and its own line ends say what they said before.</summary>
public class SavedElsewhereTests
{
    private static readonly Dictionary<string, string> Files = new()
    {
        ["job.json"] = """
            {
              "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "900 mm" },
              "lettering": { "height": 8, "agreedFirst": true }
            }
            """,
        ["names.csv"] = "name,note\nOrla Penhale,\nBram Sedgewick,one\nBram Sedgewick,two\nTuva Lind,\n",
        ["corrections.csv"] = "list,line,was,decision,text,why\nnames.csv,4,Bram Sedgewick,change,Bram S. Sedgewick,his son\n",
        ["approvals.csv"] = "list,line,name,state,date,text,details\nnames.csv,5,Tuva Lind,agreed,2026-03-02,,\n",
        ["sewing-log.csv"] = "hooping,what,minutes,hand_minutes,machine,measured_mm,when,path,note,check\n1,sewn,8,,,,,,,\n",
    };

    [Fact]
    public void A_byte_order_mark_and_other_line_ends_change_nothing()
    {
        string plain = PlanOf("", "\n");
        Assert.Contains("Bram S. Sedgewick", plain, StringComparison.Ordinal);
        Assert.Contains("\"sewn\": true", plain, StringComparison.Ordinal);
        Assert.Equal(plain, PlanOf("\uFEFF", "\r\n"));
        Assert.Equal(plain, PlanOf("\uFEFF", "\n"));
        Assert.Equal(plain, PlanOf("", "\r\n"));
    }

    /// <summary>Of a job made, begun by a line written by hand, and made again.</summary>
    private static string PlanOf(string mark, string lineEnd)
    {
        using var folder = new TemporaryFolder();
        foreach (var (name, text) in Files.Where(f => f.Key != "sewing-log.csv"))
        {
            folder.With(name, mark + text.ReplaceLineEndings(lineEnd));
        }

        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(folder.FullPath).Status);
        foreach (string kept in new[] { "plan.json", "needle-paths/hooping-001.csv", "proofs/hooping-001.png" })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(folder["sewn/" + kept])!);
            folder.With("sewn/" + kept, File.ReadAllBytes(folder["out/" + kept]));
        }

        folder.With("sewing-log.csv", mark + Files["sewing-log.csv"].ReplaceLineEndings(lineEnd));
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(folder.FullPath).Status);
        return File.ReadAllText(folder["out/plan.json"]);
    }
}
