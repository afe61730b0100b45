using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class ColumnTests
{
    [Theory]
    [InlineData("name")]
    [InlineData("Name")]
    [InlineData("NAMES")]
    [InlineData("Display Name")]
    [InlineData("display_name")]
    [InlineData("displayName")]
    [InlineData("Full name")]
    [InlineData("Name to show")]
    [InlineData("Name (as it should appear on the cloak)")]
    [InlineData("Your name:")]
    [InlineData("Supporter name")]
    [InlineData("Supporter")]
    [InlineData("Vor- und Nachname")]
    [InlineData("Vollständiger Name")]
    [InlineData("nom")]
    [InlineData("Nom à afficher")]
    [InlineData("nombre")]
    [InlineData("Nombre y apellidos")]
    [InlineData("nome")]
    [InlineData("Nome e cognome")]
    [InlineData("naam")]
    [InlineData("navn")]
    [InlineData("namn")]
    [InlineData("imię")]
    [InlineData("Imie i nazwisko")]
    [InlineData("jméno")]
    [InlineData("Jmeno")]
    [InlineData("név")]
    [InlineData("nimi")]
    [InlineData("ad")]
    [InlineData("Adı Soyadı")]
    [InlineData("İSİM")]
    [InlineData("имя")]
    [InlineData("ФИО")]
    [InlineData("ім'я")]
    [InlineData("ім’я")]
    [InlineData("Όνομα")]
    [InlineData("ΟΝΟΜΑ")]
    [InlineData("اسم")]
    [InlineData("الاسم")]
    [InlineData("שם")]
    [InlineData("नाम")]
    [InlineData("名前")]
    [InlineData("お名前")]
    [InlineData("姓名")]
    [InlineData("이름")]
    [InlineData("ชื่อ")]
    [InlineData("Tên")]
    public void The_name_column_is_found_by_meaning(string header)
    {
        Assert.Equal("2 placed Anna Berg", Lists.Table(Lists.Read($"mail,{header},sum\na@x.example,Anna Berg,5\n")));
    }

    [Theory]
    [InlineData("name,display name", "display name")]
    [InlineData("Name to show,Full name", "Name to show")]
    [InlineData("First name,Last name,Display name", "Display name")]
    [InlineData("First name,Last name,Full name", "Full name")]
    [InlineData("First name,Name,Last name", "Name")]
    [InlineData("Company name,Name", "Name")]
    [InlineData("User name,Name", "Name")]
    [InlineData("Supporter,Name", "Name")]
    [InlineData("Vorname,Mail", "Vorname")]
    [InlineData("Nom,Prénom,Nom affiché", "Nom affiché")]
    public void The_one_that_is_to_be_shown_wins(string headers, string winner)
    {
        int place = Array.IndexOf(headers.Split(','), winner);
        string row = string.Join(',', headers.Split(',').Select((_, i) => i == place ? "right" : "wrong" + i));

        Assert.Equal("2 placed right", Lists.Table(Lists.Read($"{headers}\n{row}\n")));
    }

    [Theory]
    [InlineData("First name,Last name", "“First name” and “Last name”")]
    [InlineData("Vorname,Name", "“Vorname” and “Name”")]
    [InlineData("Nom,Prénom", "“Nom” and “Prénom”")]
    [InlineData("Nombre,Apellidos", "“Nombre” and “Apellidos”")]
    [InlineData("姓,名", "“姓” and “名”")]
    [InlineData("Name,Nickname", "“Name” and “Nickname”")]
    [InlineData("Name,Full name", "“Name” and “Full name”")]
    [InlineData("name,name", "“name” and “name”")]
    [InlineData("display name,name to show", "“display name” and “name to show”")]
    public void Where_two_could_be_it_a_person_is_asked(string headers, string named)
    {
        var problem = Lists.Refused(Lists.Read($"{headers}\nAnna,Berg\n"));

        Assert.Contains(named, problem.Found.English);
        Assert.Contains("\"columns\": { \"name\": \"", problem.Mend.English);
        Assert.DoesNotContain("Berg", problem.ToString());
    }

    [Fact]
    public void A_choice_in_the_job_settles_it()
    {
        var read = Lists.Read("Vorname;Rufname\nAnna;Änne\n", columns: new ColumnChoice("rufname"));

        Assert.Equal("2 placed Änne", Lists.Table(read));
    }

    [Fact]
    public void A_chosen_column_may_have_any_header()
    {
        Assert.Equal("2 placed Änne", Lists.Table(Lists.Read("a;b\nAnna;Änne\n", columns: new ColumnChoice("b"))));
    }

    [Fact]
    public void A_chosen_column_that_is_not_there_is_refused_with_the_nearest()
    {
        var problem = Lists.Refused(Lists.Read("Name on strip,Mail\nAnna,a@x.example\n", columns: new ColumnChoice("Nam on strip")));

        Assert.Equal("job.json, columns.name", problem.Where.ToString());
        Assert.Contains("“Name on strip” and “Mail”", problem.Found.English);
        Assert.Contains("Did you mean “Name on strip”?", problem.Mend.English);
    }

    [Fact]
    public void A_chosen_column_need_only_be_in_one_of_several_lists()
    {
        var read = Lists.Read(
            [("a.csv", "Vorname;Rufname\nAnna;Änne\n"), ("b.csv", "name\nBert\n")], columns: new ColumnChoice("Rufname"));

        Assert.Equal(["Änne", "Bert"], read.Value!.Names.Select(n => n.Text));
    }

    [Fact]
    public void Two_columns_of_the_chosen_name_are_refused()
    {
        Assert.Contains("more than one column “n”", Lists.Refused(Lists.Read("n,n\nA,B\n", columns: new ColumnChoice("n"))).Found.English);
    }

    [Fact]
    public void A_single_column_needs_no_header()
    {
        var read = Lists.Read("Anna Berg\n\nBert Ost\n");

        Assert.Equal("1 placed Anna Berg\n3 placed Bert Ost", Lists.Table(read));
        Assert.Contains(read.Problems, p => p.Severity == Severity.Note && p.Found.English.Contains("no header"));
    }

    [Fact]
    public void A_single_column_may_have_one()
    {
        Assert.Equal("2 placed Anna Berg", Lists.Table(Lists.Read("Display name\nAnna Berg\n")));
    }

    [Theory]
    [InlineData("Anonymous", RowOutcome.Held)]
    [InlineData("Don Miller", RowOutcome.Placed)]
    [InlineData("Nimi Patel", RowOutcome.Placed)]
    [InlineData("Ten Bells Inn", RowOutcome.Placed)]
    [InlineData("Nom Chaisri", RowOutcome.Placed)]
    [InlineData("Ora Landwehr", RowOutcome.Placed)]
    public void A_first_name_is_not_taken_for_a_header(string first, RowOutcome outcome)
    {
        var read = Lists.Read(first + "\nBert\n");

        Assert.Equal((first, outcome), (Lists.Row(read, 1).Text, Lists.Row(read, 1).Outcome));
    }

    [Fact]
    public void Several_columns_without_a_header_are_refused_without_showing_what_is_in_them()
    {
        var problem = Lists.Refused(Lists.Read("Anna Berg,anna@secret.example\nBert Ost,bert@secret.example\n"));

        Assert.Contains("2 columns (separated by comma)", problem.Found.English);
        Assert.DoesNotContain("secret", problem.ToString());
    }

    [Fact]
    public void A_header_without_a_name_column_is_refused_with_what_is_there()
    {
        var problem = Lists.Refused(Lists.Read("Mail,Sum,Wibble\na@x.example,3,Anna\n"));

        Assert.Contains("“Mail”, “Sum” and “Wibble”", problem.Found.English);
    }

    [Theory]
    [InlineData(",")]
    [InlineData(";")]
    [InlineData("\t")]
    [InlineData("|")]
    public void The_separator_is_found(string s)
    {
        Assert.Equal(
            "2 placed Berg, Anna; the | older\n3 placed Bert",
            Lists.Table(Lists.Read($"Name{s}Sum\n\"Berg, Anna; the | older\"{s}\"1,50\"\nBert{s}2\n")));
    }

    [Fact]
    public void Commas_in_the_rows_do_not_hide_a_semicolon()
    {
        Assert.Equal("2 placed Berg, Anna\n3 placed Ost, Bert", Lists.Table(Lists.Read("Name;Sum\nBerg, Anna;1,50\nOst, Bert;2,50\n")));
    }

    [Fact]
    public void A_spreadsheets_separator_line_is_obeyed_and_counted()
    {
        Assert.Equal("3 placed Anna", Lists.Table(Lists.Read("sep=;\r\nName;Sum\r\nAnna;1,5\r\n")));
    }
}
