namespace NameBand.Names;

/// <summary>Rows that say the same in everything but in whether they may be shown: perhaps one person, who asked for it once.</summary>
internal static class Twins
{
    /// <summary>The rows, each told where a second row of it asks not to be shown.</summary>
    public static List<SourceRow> Told(List<SourceRow> rows)
    {
        var hidden = rows.Where(r => r.Wish == Wish.LeaveOut).Select(r => (r.Name.Text, r.BesideAnswers)).ToHashSet();
        return hidden.Count == 0
            ? rows : [.. rows.Select(r => r.Wish != Wish.LeaveOut && hidden.Contains((r.Name.Text, r.BesideAnswers)) ? WithTwin(r) : r)];
    }

    private static SourceRow WithTwin(SourceRow row) =>
        row with { Answers = new([.. row.Answers.All, new ShowAnswer(ShowAnswers.Twin, "no", true, false)]) };
}
