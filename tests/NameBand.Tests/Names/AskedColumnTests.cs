using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>A column that may be a wish not to be shown is known or asked about, and never passed over.</summary>
public class AskedColumnTests
{
    [Theory]
    [InlineData("May we show it?", "no")]
    [InlineData("OK to display", "n")]
    [InlineData("Okay to print your name?", "No")]
    [InlineData("Can we print it on the hem?", "no")]
    [InlineData("Show my name?", "No")]
    [InlineData("Consent", "no")]
    [InlineData("consent given", "FALSE")]
    [InlineData("Permission to print", "0")]
    [InlineData("Permission to show my name", "no")]
    [InlineData("I agree to be listed", "no")]
    [InlineData("Happy to be mentioned?", "no")]
    [InlineData("Anonymous?", "yes")]
    [InlineData("Keep me off", "x")]
    [InlineData("Keep me off the hem", "yes")]
    [InlineData("Leave me out", "yes")]
    [InlineData("Do not print my name", "yes")]
    [InlineData("I do not want to be shown", "yes")]
    [InlineData("Dürfen wir den Namen zeigen?", "nein")]
    [InlineData("Einwilligung", "nein")]
    [InlineData("Nicht veröffentlichen", "ja")]
    [InlineData("Pouvons-nous afficher votre nom ?", "non")]
    [InlineData("Autorisation", "non")]
    [InlineData("¿Podemos mostrar su nombre?", "no")]
    [InlineData("Permiso", "no")]
    [InlineData("Possiamo mostrare il nome?", "no")]
    [InlineData("Toestemming", "nee")]
    [InlineData("Får vi visa namnet?", "nej")]
    [InlineData("Samtykke", "nei")]
    [InlineData("Lupa", "ei")]
    [InlineData("Zgoda", "nie")]
    [InlineData("Souhlas", "ne")]
    [InlineData("Hozzájárulás", "nem")]
    [InlineData("Можно показать?", "нет")]
    [InlineData("Згода", "ні")]
    [InlineData("Συγκατάθεση", "όχι")]
    [InlineData("İzin", "hayır")]
    [InlineData("הסכמה", "לא")]
    [InlineData("موافقة", "لا")]
    [InlineData("同意", "いいえ")]
    [InlineData("掲載可", "いいえ")]
    [InlineData("동의", "아니요")]
    public void A_wish_in_words_that_are_known_leaves_the_row_out(string header, string answer)
    {
        var read = Lists.Read($"Name,{header}\nAda Reed,{answer}\n");
        Assert.Equal("2 leftOut Ada Reed", Lists.Table(read));
        Assert.Empty(read.Problems);
    }

    [Theory]
    [InlineData("Zibble", "no", "yes")]
    [InlineData("Lantern", "x", "")]
    [InlineData("Wish 3", "nej", "ja")]
    [InlineData("Column D", "No, thank you", "Yes please")]
    [InlineData("Privacy wishes", "my mother knows", "as you like")]
    [InlineData("Sichtbarkeit", "gern", "lieber nicht")]
    [InlineData("Named on the poster?", "gladly", "rather not")]
    [InlineData("Would you mind?", "gladly", "rather not")]
    [InlineData("Is it all right to print the name of your child?", "yes", "no")]
    [InlineData("Diffusion publique", "volontiers", "plutôt pas")]
    public void A_column_that_may_be_a_wish_is_asked_about_once_and_its_rows_wait(string header, string one, string other)
    {
        string csv = $"Name,Mail,\"{header}\"\n"
            + string.Concat(Enumerable.Range(0, 16).Select(i => $"Ada Reed{(char)('a' + i)},m{i},\"{(i % 2 == 0 ? one : other)}\"\n"));
        var read = Lists.Read(csv);
        var asked = Assert.Single(read.Problems);
        Assert.True(AskedColumns.IsAsked(asked));
        Assert.Equal((1, 3), (asked.Where.Line, asked.Where.Column));
        Assert.Contains($"“{(header.Length > 40 ? "column 3" : header)}”", asked.Found.English);
        Assert.All(read.Value!.Rows, r => Assert.Equal((RowOutcome.Held, HeldFor.Column), (r.Outcome, r.HeldFor)));
        Assert.Empty(CorrectionLines.ToAdd(read.Value, Corrections.None));
    }

    [Theory]
    [InlineData("Privacy wishes")]
    [InlineData("Would you mind?")]
    public void Numbers_are_no_wish_and_nobody_is_asked(string header)
    {
        string csv = $"Name,{header}\n" + string.Concat(Enumerable.Range(0, 16).Select(i => $"Ada Reed{(char)('a' + i)},{12 + (i % 2)}\n"));
        var read = Lists.Read(csv);
        Assert.Empty(read.Problems);
        Assert.All(read.Value!.Rows, r => Assert.Equal(RowOutcome.Placed, r.Outcome));
    }

    [Fact]
    public void The_job_says_what_such_a_column_means()
    {
        const string Csv = "Name,Zibble\nAda Reed,yes\nBo Marsh,no\nJo Farrow,\n";
        Assert.Equal("2 placed Ada Reed\n3 leftOut Bo Marsh\n4 held Jo Farrow", Table(new ColumnChoice { Show = ["Zibble"] }));
        Assert.Equal("2 leftOut Ada Reed\n3 placed Bo Marsh\n4 placed Jo Farrow", Table(new ColumnChoice { Hide = ["zibble"] }));
        Assert.Equal("2 placed Ada Reed\n3 placed Bo Marsh\n4 placed Jo Farrow", Table(new ColumnChoice { Ignored = ["Zibble"] }));
        Assert.Contains("no column “Zible”", Lists.Refused(Lists.Read(Csv, columns: new ColumnChoice { Show = ["Zible"] })).Found.English);

        string Table(ColumnChoice choice)
        {
            var read = Lists.Read(Csv, columns: choice);
            Assert.Empty(read.Problems);
            return Lists.Table(read);
        }
    }

    [Fact]
    public void A_word_that_says_it_by_itself_leaves_out_whatever_the_column_means() =>
        Assert.Equal("2 leftOut Ada Reed\n3 held Bo Marsh", Lists.Table(Lists.Read("Name,Zibble\nAda Reed,private\nBo Marsh,no\n")));

    [Fact]
    public void A_column_named_for_it_does_not_put_the_others_out_of_force() =>
        Assert.Equal(
            "2 leftOut Ada Reed\n3 leftOut Bo Marsh",
            Lists.Table(Lists.Read("Name,Anonymous,Wish\nAda Reed,yes,\nBo Marsh,,yes\n", columns: new ColumnChoice(LeaveOut: "Wish"))));

    [Theory]
    [InlineData("Zibble", "yes", "no", "2 held Ada Reed\n3 held Bo Marsh")]
    [InlineData("Note", "please keep me anonymous", "thank you all", "2 held Ada Reed\n3 placed Bo Marsh")]
    [InlineData("Public", "no", "yes", "2 leftOut Ada Reed\n3 placed Bo Marsh")]
    public void No_choice_of_one_column_silences_another(string header, string one, string other, string table)
    {
        string csv = $"Name,Wish,Sum,{header}\nAda Reed,no,5,{one}\nBo Marsh,no,6,{other}\n";
        Assert.Equal(table, Lists.Table(Lists.Read(csv, columns: new ColumnChoice(LeaveOut: "Wish"))));
        Assert.Equal(table, Lists.Table(Lists.Read(csv, columns: new ColumnChoice { Hide = ["Wish"] })));
        Assert.Equal(table, Lists.Table(Lists.Read(csv, columns: new ColumnChoice { Ignored = ["Wish"] })));
    }

    [Theory]
    [InlineData("Paid", "yes", "no")]
    [InlineData("Boat", "The Heron", "The Gull")]
    [InlineData("Tickets", "1", "2")]
    [InlineData("gave", "a lantern", "candles")]
    [InlineData("Street", "Ropewalk", "Quay Street")]
    [InlineData("Note", "hello", "")]
    public void A_column_that_is_none_is_not_asked_about(string header, string one, string other)
    {
        var read = Lists.Read($"Name,{header}\nAda Reed,{one}\nBo Marsh,{other}\nJo Farrow,{one}\n");
        Assert.Equal("2 placed Ada Reed\n3 placed Bo Marsh\n4 placed Jo Farrow", Lists.Table(read));
        Assert.Empty(read.Problems);
    }

    [Theory]
    [InlineData("please keep me anonymous, secret-qz7")]
    [InlineData("I'd rather not be named secret-qz7")]
    [InlineData("bitte nicht nennen secret-qz7")]
    [InlineData("ne pas afficher secret-qz7")]
    public void A_remark_that_may_ask_for_it_holds_its_row_and_is_not_repeated(string remark)
    {
        string csv = $"Name,Anonymous,Note\nAda Reed,,\"{remark}\"\nBo Marsh,,thank you all\n";
        var read = Lists.Read(csv);
        Assert.Equal("2 held Ada Reed\n3 placed Bo Marsh", Lists.Table(read));
        Assert.Equal("asked not to be shown? What stands under “Note” may say so: read it", Lists.Row(read, 2).Reason);
        string lines = string.Join("\r\n", CorrectionLines.ToAdd(read.Value!, Corrections.None));
        Assert.DoesNotContain("qz7", lines + Lists.AllShown(read));
        Assert.Equal(RowOutcome.Placed, Lists.Row(Lists.Read(csv, lines.Replace(",,,", ",keep,,", StringComparison.Ordinal)), 2).Outcome);
    }

    [Theory]
    [InlineData("78")]
    [InlineData("2024")]
    [InlineData("12345")]
    [InlineData("12 345,00 €")]
    [InlineData("٧٨")]
    [InlineData("Total: 78")]
    [InlineData("Total")]
    [InlineData("Grand total 1.250,00 EUR")]
    [InlineData("78 names")]
    [InlineData("Summe 78")]
    [InlineData("Итого: 78")]
    [InlineData("合計 78")]
    [InlineData("★")]
    public void A_row_that_is_a_total_and_no_name_is_held(string text) =>
        Assert.Equal(RowOutcome.Held, Lists.Row(Lists.Read($"Name;Sum\nAda Reed;5\n{text};5\n"), 3).Outcome);

    [Theory]
    [InlineData("John 3")]
    [InlineData("7 of Nine")]
    [InlineData("Tot Al")]
    [InlineData("Sum Li")]
    [InlineData("Lin")]
    public void A_name_with_a_number_is_a_name(string text) =>
        Assert.Equal(RowOutcome.Placed, Lists.Row(Lists.Read($"Name;Sum\nAda Reed;5\n{text};5\n"), 3).Outcome);

    [Theory]
    [InlineData("Zibble", "yes", "gold", true)]
    [InlineData("Zibble", "yes", "", true)]
    [InlineData("Zibble", "silver", "gold", false)]
    public void A_column_half_of_which_are_answers_is_asked_about(string header, string one, string other, bool isAsked)
    {
        var read = Lists.Read($"Name,{header}\nAda Reed,{one}\nBo Marsh,{other}\n");
        Assert.Equal(isAsked, read.Problems.Any(AskedColumns.IsAsked));
        Assert.Equal(isAsked ? "2 held Ada Reed\n3 held Bo Marsh" : "2 placed Ada Reed\n3 placed Bo Marsh", Lists.Table(read));
    }
}
