using CsCheck;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>Who is in which group, and that nothing but the group's own name comes out of the column.</summary>
public class GroupingTests
{
    private static NameGroup Group(string name, double? from = null, double? below = null, bool rest = false, params string[] values) =>
        new(name, [.. values], from, below, rest, 1, null, GroupPlace.Among, null);

    private static Result<NameList> Read(string csv, params NameGroup[] groups)
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", csv);
        return ListReader.Read(
            Sample.Job with { Folder = folder.FullPath, Groups = new GroupSettings("Paid", [.. groups]) },
            Corrections.Read(folder.FullPath).Value!);
    }

    [Theory]
    [InlineData("50", 50.0)]
    [InlineData(" 50.00 ", 50.0)]
    [InlineData("€ 1.250,00", 1250.0)]
    [InlineData("1,250.50", 1250.5)]
    [InlineData("125,250.50", 125250.5)]
    [InlineData("1 250 kr", 1250.0)]
    [InlineData("£12", 12.0)]
    [InlineData("Fr. 1’250.00", 1250.0)]
    [InlineData("1.250.000", 1250000.0)]
    [InlineData("٥٠", 50.0)]
    [InlineData("50,-", 50.0)]
    [InlineData("1,250", null)]
    [InlineData("1.250", null)]
    [InlineData("12 34", null)]
    [InlineData("1250,250.50", null)]
    [InlineData("1,2,3", null)]
    [InlineData("fifty", null)]
    [InlineData("-5", null)]
    [InlineData("5/6", null)]
    [InlineData("20 then 30", null)]
    [InlineData("", null)]
    [InlineData(".", null)]
    public void Sums_are_read_as_people_write_them_and_never_guessed(string cell, double? expected) =>
        Assert.Equal(expected, Amount.TryRead(cell, out double amount) ? amount : null);

    [Fact]
    public void Any_text_is_a_number_or_not_and_never_an_exception() =>
        Gen.String.Sample(s => { Amount.TryRead(s, out double a); return double.IsFinite(a); }, iter: 20_000, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Thresholds_and_the_rest_divide_everybody()
    {
        var names = Read(
            "Name,Paid\nAda Reed,120\nBo Marsh,50\nIlse Varga,49.99\nJo Farrow,\n", Group("lamp", 100), Group("oar", 50, 100),
            Group("friend", rest: true)).Value!.Names;
        Assert.Equal(["lamp", "oar", "friend", "friend"], names.Select(n => n.Group));
    }

    [Fact]
    public void Values_are_compared_without_capitals_and_who_is_in_none_has_none()
    {
        var names = Read(
            "Name,Paid\nAda Reed,GOLD\nBo Marsh,silver \nIlse Varga,?\n", Group("lamp", values: ["gold", "silver"])).Value!.Names;
        Assert.Equal(["lamp", "lamp", null], names.Select(n => n.Group));
    }

    [Fact]
    public void A_group_nobody_is_in_is_noted_and_an_unclear_sum_is_asked_about_without_being_told()
    {
        var read = Read("Name,Paid\nAda Reed,\"1,250\"\nBo Marsh,20\n", Group("lamp", 100), Group("friend", rest: true));
        Assert.Contains(read.Problems, p => p.Severity == Severity.Note && p.Found.English.Contains("“lamp”", StringComparison.Ordinal));
        var asked = Assert.Single(read.Problems, p => p.Severity == Severity.NeedsPerson);
        Assert.Contains("names.csv, line 2", asked.Found.English, StringComparison.Ordinal);
        Assert.DoesNotContain("1,250", $"{asked.Found} {asked.Where}", StringComparison.Ordinal);
        Assert.Equal("friend", read.Value!.Names[0].Group);
    }

    [Fact]
    public void A_column_no_list_has_is_refused_with_the_nearest()
    {
        var read = Read("Name,Payd\nAda Reed,3\n", Group("lamp", 100));
        Assert.Contains(read.Problems, p => p.Severity == Severity.CannotUse && p.Mend.English.Contains("Payd", StringComparison.Ordinal));
    }
}
