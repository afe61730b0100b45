using NameBand.Common;
using NameBand.Estimating;
using NameBand.Names;

namespace NameBand.Reports.Answers;

/// <summary>What several answers put into their records in the same way.</summary>
internal static class Telling
{
    /// <summary>Rounded as a file of ours does it, so that prose and JSON start from the same digits.</summary>
    public static double Thousandth(double number) => (double)Math.Round((decimal)number, 3);

    public static ToldFigure Figure(Figure figure) =>
        new(Thousandth(figure.Low), Thousandth(figure.Likely), Thousandth(figure.High));

    public static ToldFigure? Figure(Figure? figure) => figure is { } known ? Figure(known) : null;

    public static ToldCounts Counts(NameList names)
    {
        return new ToldCounts
        {
            All = names.Rows.Length,
            Placed = Count(RowOutcome.Placed),
            Merged = Count(RowOutcome.Merged),
            Held = Count(RowOutcome.Held),
            LeftOut = Count(RowOutcome.LeftOut),
        };

        int Count(RowOutcome outcome) => names.Rows.Count(r => r.Outcome == outcome);
    }

    public static IReadOnlyList<ToldRow> Rows(NameList names, RowOutcome outcome) =>
        [.. names.Rows.Where(r => r.Outcome == outcome).Select(r => Row(r.Row, r.Text, r.Reason))];

    public static ToldRow Row(RowRef row, string text, Said reason) =>
        new() { List = row.List, Line = row.Line, Text = text, Reason = reason };

    public static ToldNeeds Needs(NameList? names, IEnumerable<Problem> problems)
    {
        var needs = NameBand.Names.Needs.Of(names, problems);
        return new ToldNeeds(needs.OfJob.Length, needs.OfRows.Length);
    }
}
