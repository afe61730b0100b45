using NameBand.Common;

namespace NameBand.Names;

/// <summary>Which column of a file of answers is which; −1: none. A form has its own headings, so what stands below decides too.</summary>
internal sealed record AnswerColumns(int Address, int Name, int State, int Text, int Web, int Date)
{
    private static readonly string[] TextKeys =
    [
        "text", "change", "changewished", "newtext", "wish", "wishedtext", "howshallitread", "howitshallread", "howshoulditread",
        "howitshouldread",
        "itshallread", "wording",
    ];

    private static readonly string[] StateKeys = ["answer", "youranswer", "state", "reply", "isitright", "isthenameright"];

    /// <returns>Null where the answer, or whose it is, cannot be found; the problem says which headings there are.</returns>
    public static AnswerColumns? Find(string file, CsvTable table, List<Problem> problems)
    {
        string[] header = [.. table.Rows[0].Fields];
        string[] keys = [.. header.Select(HeaderWords.Key)];
        var labels = ListColumns.LabelsOf(table.Rows[0]);
        string mail = HeaderWords.MeaningOf("mail");
        int state = First(keys, StateKeys) is >= 0 and var named ? named
            : Array.FindIndex([.. Enumerable.Range(0, header.Length)], i => AreStates(table, i));
        int address = Array.FindIndex(header, h => HeaderWords.Key(h) == "address" || HeaderWords.MeaningOf(h) == mail);
        int name = Array.FindIndex(header, h => HeaderWords.RoleOf(h) is ColumnRole.Display or ColumnRole.FullName or ColumnRole.Name);
        var cells = ColumnCells.Of(table);
        int web = Array.FindIndex(
            [.. Enumerable.Range(0, header.Length)],
            i => i != state && (keys[i] == ApprovalsFile.WebColumn || HeaderWords.ShownOnWebByYes(header[i], cells[i]) == true));
        if (state >= 0 && (address >= 0 || name >= 0))
        {
            return new AnswerColumns(address, name == state ? -1 : name, state, First(keys, TextKeys, state), web, DateIn(header));
        }

        problems.Add(Problem.CannotUse(
            new Where(file, table.Rows[0].Line),
            state < 0 ? (Said)$"Which column holds the answers is not known; the headings are {ListColumns.Listed(labels)}."
            : $"Whose answers these are is not known: there is no column of addresses and none of names; the headings are {ListColumns.Listed(labels)}.",
            "Let the first line of the file be, with what is missing left empty below it: address,name,answer,text,web,date"));
        return null;
    }

    private static int DateIn(string[] header) =>
        Array.FindIndex(
            header, h => HeaderWords.MeaningOf(h) is "date" or "time" || HeaderWords.Key(h) is "when" or "answered" or "answeredon");

    public OwnerAnswer Answer(string file, CsvRow row)
    {
        string Field(int at) => at >= 0 && at < row.Fields.Length ? CsvText.ReadBack(row.Fields[at].Trim()) : "";
        string name = NameText.Clean(Field(Name)).Text;
        string text = NameText.Clean(Field(Text)).Text;
        var state = AnswerWords.Read(Field(State));

        // Agreed, and other words beside it: one of the two is a slip.
        bool contradicts = text.Length > 0 && text != name && state is (ApprovalState.Agreed or ApprovalState.NotAsked);
        return new OwnerAnswer(
            OwnerAnswer.AddressKey(Field(Address)), name, contradicts ? ApprovalState.Unclear : state, text, WebAnswers.Read(Field(Web)),
            PlainText.Short(Field(Date), 40), new Where(file, row.Line));
    }

    private static int First(string[] keys, string[] wanted, int not = -1) =>
        Array.FindIndex([.. Enumerable.Range(0, keys.Length)], i => i != not && wanted.Contains(keys[i]));

    /// <summary>At least half of what stands there is one of the three answers in so many words.</summary>
    private static bool AreStates(CsvTable table, int column)
    {
        string[] cells =
            [.. table.Rows.Skip(1).Where(r => column < r.Fields.Length).Select(r => r.Fields[column])
            .Where(c => !string.IsNullOrWhiteSpace(c))];
        int states = cells.Count(c => AnswerWords.Read(c) is ApprovalState.Agreed or ApprovalState.ChangeWished);
        return states > 0 && 2 * cells.Count(c => AnswerWords.Read(c) != ApprovalState.Unclear) >= cells.Length
            && cells.Any(AnswerWords.IsOurs);
    }
}
