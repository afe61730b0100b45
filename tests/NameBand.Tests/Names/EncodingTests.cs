using System.Text;
using NameBand.Common;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class EncodingTests
{
    private const string Csv = "Name;Mail\r\nZoë Łucja Ωμέγα Ваня;a@x.example\r\n川上 みなと;b@x.example\r\n";
    private const string Rows = "2 placed Zoë Łucja Ωμέγα Ваня\n3 placed 川上 みなと";

    public static TheoryData<string> Unicode =>
        ["utf-8", "utf-8 mark", "utf-16", "utf-16 mark", "utf-16be", "utf-16be mark", "utf-32 mark", "utf-32be mark"];

    [Theory]
    [MemberData(nameof(Unicode))]
    public void Unicode_in_all_its_forms(string form)
    {
        var encoding = Form(form);
        byte[] mark = form.EndsWith("mark", StringComparison.Ordinal) ? encoding.GetPreamble() : [];

        var read = Lists.ReadBytes([.. mark, .. encoding.GetBytes(Csv)]);

        Assert.Equal(Rows, Lists.Table(read));
        Assert.Empty(read.Problems);
    }

    [Theory]
    [InlineData("windows-1252", "Jürgen Müßiggang;José Peña;Zoë Façade;Anaïs Corbeau;Søren Aaby;Åsa Blomqvist")]
    [InlineData("windows-1250", "Zdeněk Holub;Žofie Říčná;Eliška Mostecká;Kateřina Přívozníková;Jiří Lávka")]
    [InlineData("windows-1251", "Ваня Речной;Ольга Мостовая;Пётр Заречный;Марина Лодочникова;Сергей Тихий")]
    [InlineData("shift-jis", "川上みなと;山田はなこ;佐藤たろう;東京かもめ;川の人々")]
    [InlineData("gb18030", "张三丰河边;李四船夫;王五灯笼;赵六桥头;孙七舞者")]
    [InlineData("euc-kr", "강나루;김등불;이다리;박배꾼;최무용")]
    [InlineData("windows-1255", "נועה בן נחל;דוד הגשר;מרים העששית;יוסף הרקדן")]
    public void Older_encodings_are_guessed_and_said(string name, string names)
    {
        string[] all = names.Split(';');
        byte[] bytes =
            CodePagesEncodingProvider.Instance.GetEncoding(name.Replace(
                "shift-", "shift_", StringComparison.Ordinal))!.GetBytes("Name,Mail\n"
                + string.Concat(all.Select(n => n + ",x@x.example\n")));

        var read = Lists.ReadBytes(bytes);

        Assert.Equal(all, read.Value!.Rows.Select(r => r.Text));
        Assert.Contains(name, Assert.Single(read.Problems).Found.English);
    }

    [Fact]
    public void One_accent_in_an_older_encoding_is_read_as_western()
    {
        var read = Lists.ReadBytes([.. "Name\nJ"u8, 0xFC, .. "rgen\n"u8]);

        Assert.Equal("2 placed Jürgen", Lists.Table(read));
        Assert.Contains("which is a guess", read.Problems[0].Found.English);
    }

    /// <summary>The mark at the beginning is that of UTF-7, which nothing reads any more.</summary>
    [Fact]
    public void What_looks_like_UTF_7_is_read_as_western_and_said_so()
    {
        var read = Lists.ReadBytes([.. "+/v9\nJ"u8, 0xFC, .. "rgen\n"u8]);

        Assert.Equal(["+/v9", "Jürgen"], read.Value!.Rows.Select(r => r.Text));
        Assert.Contains(read.Problems, p => p.Found.English.Contains("read as windows-1252", StringComparison.Ordinal));
        Assert.DoesNotContain(read.Problems, p => p.Found.English.Contains("utf-7", StringComparison.Ordinal));
    }

    [Fact]
    public void One_broken_byte_in_UTF_8_spoils_one_row_and_not_all()
    {
        var read = Lists.ReadBytes([.. "Name\nZoë Łucja Ωμέγα\nAn"u8, 0xFF, .. "na\n"u8]);

        Assert.Equal("2 placed Zoë Łucja Ωμέγα\n3 held An\uFFFDna", Lists.Table(read));
        Assert.Equal(Severity.NeedsPerson, read.Problems[0].Severity);
    }

    private static Encoding Form(string form) => form.Split(' ')[0] switch
    {
        "utf-16" => Encoding.Unicode,
        "utf-16be" => Encoding.BigEndianUnicode,
        "utf-32" => Encoding.UTF32,
        "utf-32be" => new UTF32Encoding(bigEndian: true, byteOrderMark: true),
        _ => Encoding.UTF8,
    };
}
