using System.Globalization;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class SecretsTests
{
    /// <summary>Every cell beside the names is marked; no mark may come out, whatever becomes of the row.</summary>
    [Theory]
    [InlineData("Name,Mail,Sum,Anonymous,Note\nAnna,{0},{1},,{2}\nAnna,{3},{1},,{2}\nanna,{0},{1},,\nBert,{4},,{5} no,{6}\nCarl,{0},{1},yes,{2},{7}\n,{0}\nDora, Berg,{0},{1},,{2}\n\"Emil\nOst\",{0},\"{1}\n{2}\"\n")]
    [InlineData("First name,Last name,Mail\n{0},{1},{2}\n")]
    [InlineData("{0}@x.example,{1}\n{2},{3}\n")]
    [InlineData("Mail,Sum\n{0},{1}\n")]
    [InlineData("Name,Mail\nAnna,\"{0}\nBert,{1}\n")]
    [InlineData("Name,Mail\n\"Anna\" Berg,{0}\n")]
    public void What_stands_beside_a_name_never_comes_out(string form)
    {
        string csv = string.Format(CultureInfo.InvariantCulture, form, [.. Enumerable.Range(0, 8).Select(i => $"SECRET{i}")]);
        var read = Lists.Read(
            csv, "list,line,was,decision,text,why\nnames.csv,3,Nobody Here,keep,,SECRET8\nnames.csv,5,Bert,SECRET7,,SECRET8\nSECRET6,1,,keep,,\n");
        var lines = read.Value is { } names ? CorrectionLines.ToAdd(names, Corrections.None) : [];

        Assert.DoesNotContain("SECRET", Lists.AllShown(read, lines));
    }

    [Fact]
    public void Nothing_depends_on_the_machines_culture()
    {
        const string Csv = "Name;Betrag\nİpek;1,50\nipek;1,50\nIpek;2,50\nAnna;3,1\n";
        var culture = CultureInfo.CurrentCulture;
        try
        {
            string expected = Shown("");
            Assert.All(new[] { "de-DE", "tr-TR", "ar-SA", "th-TH", "fa-IR" }, name => Assert.Equal(expected, Shown(name)));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }

        static string Shown(string name)
        {
            CultureInfo.CurrentCulture = new CultureInfo(name);
            var read = Lists.Read(Csv, "list,line,was,decision,text,why\nnames.csv,5,Anna,KEEP,,\n");
            return Lists.AllShown(read, CorrectionLines.ToAdd(read.Value!, Corrections.None));
        }
    }
}
