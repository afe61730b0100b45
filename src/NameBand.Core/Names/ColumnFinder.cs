using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>
/// Finds the header, the name column and the columns that ask not to be shown. Where two columns could be the name
/// and none is clearly the one to show, it says so and how to choose.
/// </summary>
internal static class ColumnFinder
{
    private static readonly ColumnRole[] NameRoles =
        [ColumnRole.Display, ColumnRole.FullName, ColumnRole.Name, ColumnRole.OtherName, ColumnRole.GivenName, ColumnRole.FamilyName];

    /// <param name="choice">Headers chosen in job.json that this list has to have, or null where it need not.</param>
    public static Result<ListColumns> Find(string list, CsvTable table, ColumnChoice choice)
    {
        var header = table.Rows[0];
        var cells = ColumnCells.Of(table);
        var roles = header.Fields.Select((f, i) => RoleOf(f, cells[i])).ToArray();
        var where = new Where(File: list, Line: header.Line);
        var problems = new List<Problem>();

        int? chosenName = Chosen(list, header, "name", choice.Name, problems);
        int? chosenLeaveOut = Chosen(list, header, "leaveOut", choice.LeaveOut, problems);
        int? group = Chosen(list, header, "group", choice.Group, problems);
        var hides = choice.Hide.Select(c => Chosen(list, header, "hide", c, problems)).ToHashSet();
        var shows = choice.Show.Select(c => Chosen(list, header, "show", c, problems)).ToHashSet();
        var webs = choice.Web.Select(c => Chosen(list, header, "web", c, problems)).ToHashSet();
        var ignored = choice.Ignored.Select(c => Chosen(list, header, "ignored", c, problems)).ToHashSet();
        if (problems.Count > 0)
        {
            return Result.Fail<ListColumns>(problems);
        }

        // A single column called “private” holds no names; the word is then rather what somebody wrote for a name.
        bool isChosen = chosenName is not null || chosenLeaveOut is not null || group is not null
            || hides.Count + shows.Count + webs.Count + ignored.Count > 0;
        bool hasHeader = isChosen || (roles.Length == 1
            ? NameRoles.Contains(roles[0]) || roles[0] == ColumnRole.Person
            : roles.Any(r => r != ColumnRole.Unknown));
        if (!hasHeader)
        {
            return header.Fields.Length == 1 ? Single(header, where) : NoHeader(table, where);
        }

        var name = chosenName is { } c ? Result.Of(new Found(c)) : NameColumn(header, roles, where);
        if (name.Value is null)
        {
            return Result.Fail<ListColumns>(name.Problems);
        }

        int place = name.Value.Index;
        var labels = ListColumns.LabelsOf(header);
        if (header.Fields.Length == 1)
        {
            problems.Add(Problem.Note(where, $"The first line, “{labels[0]}”, was taken for the header and not for a name."));
        }

        bool IsSaid(int i) => hides.Contains(i) || shows.Contains(i) || i == chosenLeaveOut || i == group;
        LeaveOutColumn? WebIn(int i) => i == place || ignored.Contains(i) ? null
            : webs.Contains(i) ? new LeaveOutColumn(i, false)
            : !IsSaid(i) && HeaderWords.ShownOnWebByYes(header.Fields[i], cells[i]) is { } shows ? new LeaveOutColumn(i, !shows)
            : null;

        ImmutableArray<LeaveOutColumn> web = [.. Enumerable.Range(0, roles.Length).Select(WebIn).OfType<LeaveOutColumn>()];
        LeaveOutColumn? WishIn(int i) => i == place || web.Any(w => w.Index == i) || ignored.Contains(i) ? null
            : hides.Contains(i) ? new LeaveOutColumn(i, true)
            : shows.Contains(i) ? new LeaveOutColumn(i, false)
            : i == chosenLeaveOut ? new LeaveOutColumn(i, roles[i] != ColumnRole.Public)
            : roles[i] is ColumnRole.LeaveOut or ColumnRole.Public ? new LeaveOutColumn(i, roles[i] == ColumnRole.LeaveOut)
            : i != group && MayBeWish(header.Fields[i], roles[i], cells[i]) ? new LeaveOutColumn(i, null)
            : null;

        ImmutableArray<LeaveOutColumn> leaveOut = [.. Enumerable.Range(0, roles.Length).Select(WishIn).OfType<LeaveOutColumn>()];
        problems.AddRange(leaveOut.Where(c => c.YesHides is null).Select(c => AskedColumns.Ask(list, header, c.Index, labels)));
        return Result.Of(
            new ListColumns(true, place, leaveOut, labels, MeaningsOf(header))
            {
                Group = group,
                Web = web,
                Remarks = [.. Enumerable.Range(0, roles.Length)
                .Where(i => i != place && i != group && !ignored.Contains(i) && leaveOut.All(c => c.Index != i))],
            }, problems);
    }

    /// <summary>What a header means; one that is only put together of known words yields to what stands under it.</summary>
    private static ColumnRole RoleOf(string header, Lazy<ColumnCells> cells)
    {
        var role = HeaderWords.RoleOf(header);
        if (role is ColumnRole.LeaveOut or ColumnRole.Public || HeaderWords.IsKnown(header))
        {
            return role;
        }

        var asked = HeaderWords.AskedBy(header);
        bool isName = NameRoles.Contains(role);
        return asked != ColumnRole.Unknown && (!isName || cells.Value.AreAnswers) ? asked
            : isName && cells.Value.AreAnswers ? ColumnRole.Unknown
            : role;
    }

    /// <summary>Whether a column whose header is not known may hold wishes not to be shown: by its header, or by what stands in
    /// it.</summary>
    private static bool MayBeWish(string header, ColumnRole role, Lazy<ColumnCells> lazy)
    {
        if (role is not (ColumnRole.Unknown or ColumnRole.Private) || (role == ColumnRole.Private && HeaderWords.IsKnown(header)))
        {
            return false;
        }

        bool hints = HeaderWords.HintsAtShowing(header);
        var cells = lazy.Value;
        return role switch
        {
            _ when cells.AreBlank => false,
            ColumnRole.Unknown => cells.AreAnswers || (hints && !cells.AreNumbers)
                || (cells.AreFew && !cells.AreNumbers
                    && (HeaderWords.MayHintAtShowing(header) || (cells.Kinds <= 2 && header.Contains('?')))),
            _ => cells.AreAnswers && hints,
        };
    }

    public static bool Has(CsvRow header, string wanted) => Places(header, wanted).Length > 0;

    /// <summary>Where a header stands by its exact text, else by its letters alone.</summary>
    private static int[] Places(CsvRow header, string wanted)
    {
        int[] Fitting(Func<string, bool> fits) => [.. Enumerable.Range(0, header.Fields.Length).Where(i => fits(header.Fields[i]))];

        string key = HeaderWords.Key(wanted);
        int[] exact = Fitting(f => f.Trim() == wanted.Trim());
        return exact.Length > 0 ? exact : Fitting(f => key.Length > 0 && HeaderWords.Key(f) == key);
    }

    private static int? Chosen(string list, CsvRow header, string key, string? wanted, List<Problem> problems)
    {
        int[] places = wanted is null ? [] : Places(header, wanted);
        if (wanted is null || places.Length == 1)
        {
            return wanted is null ? null : places[0];
        }

        var labels = ListColumns.LabelsOf(header);
        var where = new Where(File: "job.json", Key: "columns." + key);
        Said nearest = NearestWord.Find(wanted, labels.Select(l => l.English)) is { } near ? (Said)$"Did you mean “{near}”? " : "";
        problems.Add(places.Length > 1
            ? Problem.CannotUse(where, $"{list} has more than one column “{wanted}”.", $"Give one of them another header in {list}.")
            : Problem.CannotUse(where, $"{list} has no column “{wanted}”; its columns are {ListColumns.Listed(labels)}.",
                $"{nearest}Write the header as it stands in the first line of {list}."));
        return null;
    }

    private static Result<ListColumns> Single(CsvRow header, Where where) => Result.Of(
        new ListColumns(false, 0, [], ["column 1"], ["1"]),
        [Problem.Note(where, "This list has no header; its first line was taken for a name.",
            "If the first line is a header, write “name” there.")]);

    private static Result<ListColumns> NoHeader(CsvTable table, Where where) => Result.Fail<ListColumns>(Problem.CannotUse(where,
        $"This list has {Number(table.Rows[0].Fields.Length)} columns (separated by {table.SeparatorWord}), and its first line has no "
            + $"header we know.",
        $"Write a first line with a header for each column, such as name"
        + $"{(table.Separator == '\t' ? " and mail separated by a tab" : (Said)($"{table.Separator}mail"))}"
        + $", or say in job.json which is the name: \"columns\": {{ \"name\": \"…\" }}. If it is one column of names, put quotation marks round each."));

    private static Result<Found> NameColumn(CsvRow header, ColumnRole[] roles, Where where)
    {
        int[] Of(params ColumnRole[] wanted) => [.. Enumerable.Range(0, roles.Length).Where(i => wanted.Contains(roles[i]))];

        int[] display = Of(ColumnRole.Display);
        int[] whole = Of(ColumnRole.FullName, ColumnRole.Name);
        int[] given = Of(ColumnRole.GivenName);
        int[] family = Of(ColumnRole.FamilyName);
        int[] could = Of(NameRoles);
        if (could.Length == 0)
        {
            could = Of(ColumnRole.Person);
        }

        // One that says it is to be shown wins. A whole name wins over its parts, but a plain “name” beside only
        // one of the two parts may be the other part (Name, Vorname; nom, prénom).
        int? winner = display.Length == 1 ? display[0] : null;
        if (display.Length == 0 && whole.Length == 1 && Of(ColumnRole.OtherName).Length == 0)
        {
            bool partsOfIt = (given.Length > 0) == (family.Length > 0);
            winner = partsOfIt || roles[whole[0]] == ColumnRole.FullName ? whole[0] : null;
        }

        winner ??= could.Length == 1 ? could[0] : null;
        if (winner is { } place)
        {
            return Result.Of(new Found(place));
        }

        var labels = ListColumns.LabelsOf(header);
        if (could.Length == 0)
        {
            return Result.Fail<Found>(Problem.CannotUse(
                where, $"None of the columns {ListColumns.Listed(labels)} is known to hold the names.",
                HowToChoose(labels[0])));
        }

        bool parts = could.All(i => roles[i] is ColumnRole.GivenName or ColumnRole.FamilyName);
        return Result.Fail<Found>(Problem.CannotUse(where,
            $"The name could stand in any of the columns {ListColumns.Listed(could.Select(i => labels[i]))}"
            + $"{(parts ? (Said)", each of which may be only a part of it." : ".")}",
            (parts ? "Add a column to the list with the name as it should be sewn, or choose one: " : "") + HowToChoose(labels[could[0]])));
    }

    private static Said HowToChoose(Said header) =>
        $"Say in job.json which one it is, for example \"columns\": {{ \"name\": \"{header}\" }}.";

    private static ImmutableArray<string> MeaningsOf(CsvRow header)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var meanings = ImmutableArray.CreateBuilder<string>(header.Fields.Length);
        for (int i = 0; i < header.Fields.Length; i++)
        {
            string meaning = HeaderWords.MeaningOf(header.Fields[i]) is { Length: > 0 } m ? m : "#" + Number(i + 1);
            int count = seen[meaning] = seen.GetValueOrDefault(meaning) + 1;
            meanings.Add(count == 1 ? meaning : meaning + "#" + Number(count));
        }

        return meanings.MoveToImmutable();
    }

    private static string Number(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private sealed record Found(int Index);
}
