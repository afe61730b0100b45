using System.Collections.Immutable;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Web.Table;

/// <summary>Rows that wait for the same answer: asked once, answered together or one by one.</summary>
/// <param name="Asks">The question, without what is of one row alone.</param>
/// <param name="For">What kind of answer settles them.</param>
internal sealed partial record AlikeRows(Said Asks, HeldFor For, ImmutableArray<ListedRow> Rows)
{
    /// <summary>In the order in which they first come up in the lists.</summary>
    public static ImmutableArray<AlikeRows> Of(NameList list) =>
        [.. list.Rows.Where(r => r.WaitsForDecision || (r.Outcome == RowOutcome.Held && r.HeldFor == HeldFor.Answer))
            .GroupBy(r => (r.HeldFor, Asks: Alike(r)))
            .Select(g => new AlikeRows(Question([.. g]), g.Key.HeldFor, [.. g]))];

    /// <summary>One answer for all of them makes sense where each could be kept as it stands.</summary>
    public bool CanBeKept => For is HeldFor.Doubt or HeldFor.Wish or HeldFor.Marks;

    private static Said Question(ImmutableArray<ListedRow> rows) =>
        rows[0].HeldFor == HeldFor.Marks
            ? "Shall the marks that are lacking be added by hand?"
            : PageWords.Of(Wording.AsSentence(
                rows.Length == 1 || rows[0].HeldFor == HeldFor.Wish ? rows[0].Reason : Alike(rows[0].Reason)));

    /// <summary>Two reasons are alike that differ only in rows, names and numbers.</summary>
    private static string Alike(ListedRow row) => row.HeldFor switch
    {
        HeldFor.Marks => "",
        HeldFor.Wish => row.Reason.English,
        _ => Alike(row.Reason).English,
    };

    private static Said Alike(Said reason)
    {
        Said another = "another row";
        return reason.Changed((text, culture) => Blanks().Replace(
            Numbers().Replace(
                Quoted().Replace(Places().Replace(text, culture.Name.Length == 0 ? another.English : another.ToString()), "…"), "…"), " "));
    }

    [GeneratedRegex(
        @"[^\s“”;:,?]+(?: [^\s“”;:,?]+)*?\.(?:csv|tsv|txt|xlsx)(?:#[^,]+)?, line \d+|\bline \d+", RegexOptions.CultureInvariant)]
    private static partial Regex Places();

    [GeneratedRegex("“[^”]*”", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\d+([.,]\d+)?", RegexOptions.CultureInvariant)]
    private static partial Regex Numbers();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}
