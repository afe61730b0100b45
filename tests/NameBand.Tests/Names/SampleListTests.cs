using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>The usual mess of a list, in one piece.</summary>
public class SampleListTests
{
    private const string List = """
        Name,E-mail,Paid,Anonymous,Note
        Ottilie Marshall,one@lantern.example,30.00,,
        Bram Sedgewick,two@lantern.example,20.00,,
        Bram Sedgewick,two@lantern.example,20.00,,
        Fenwick Alder,three@lantern.example,15.00,,
        ,four@lantern.example,10.00,,
          Ximena  del Río ,five@lantern.example,8.00,,
        Hester Quayle,six@lantern.example,40.00,yes,

        Fenwick Alder,seven@lantern.example,15.00,,the younger
        ottilie marshall,one@lantern.example,5.00,,
        ,,,,
        """;

    [Fact]
    public void Every_row_is_accounted_for_with_its_line()
    {
        Assert.Equal("""
            2 placed Ottilie Marshall
            3 placed Bram Sedgewick
            4 merged Bram Sedgewick
            5 placed Fenwick Alder
            6 leftOut
            7 placed Ximena del Río
            8 leftOut Hester Quayle
            10 held Fenwick Alder
            11 held ottilie marshall
            12 leftOut
            """, Lists.Table(Lists.Read(List)));
    }

    [Fact]
    public void The_names_to_sew_are_the_placed_rows_in_order()
    {
        var names = Lists.Read(List).Value!;

        Assert.Equal(["Ottilie Marshall", "Bram Sedgewick", "Fenwick Alder", "Ximena del Río"], names.Names.Select(n => n.Text));
        Assert.Equal([2, 3, 5, 7], names.Names.Select(n => n.Row.Line));
    }

    [Fact]
    public void What_is_held_says_why_and_offers_its_line_for_corrections_csv()
    {
        var names = Lists.Read(List).Value!;

        var lines = CorrectionLines.ToAdd(names, Corrections.None);
        Assert.EndsWith(",details,show,alike", lines[0], StringComparison.Ordinal);
        Assert.All(lines.Skip(1), l => Assert.Matches(",d[0-9a-f]{8},Anonymous = (empty|no),$", l));
        Assert.Equal(
            [
                "list,line,was,decision,text,why",
                "names.csv,10,Fenwick Alder,,,\"two people of this name? names.csv, line 5 has the same name with something else under “E-mail” and “Note”\"",
                "names.csv,11,ottilie marshall,,,\"the same person as names.csv, line 2? The two names differ only in capital and small letters\"",
            ],
            [.. lines.Select(l => l[..l.LastIndexOf(",d", StringComparison.Ordinal)])]);
    }
}
