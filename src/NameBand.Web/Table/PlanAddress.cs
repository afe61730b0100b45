using System.Globalization;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Web.Table;

/// <summary>What is open on the plan and which rows are shown, as its address has it.</summary>
/// <param name="Set">Name of the part of the sentence that is open; null: none.</param>
/// <param name="OnlyWaiting">Only rows that wait for an answer.</param>
/// <param name="Row">Only this one; null: all.</param>
/// <param name="Find">What is looked for in the list.</param>
internal sealed record PlanAddress(string? Set, bool OnlyWaiting, RowRef? Row, string Find)
{
    public const string SetKey = "set", RowsKey = "rows", FindKey = "find";

    private const string Waiting = "waiting";
    private const int MostFindCharacters = 200; // Characters: the longest name that a list may have; an address with more is cut.

    public static PlanAddress None { get; } = new(null, false, null, "");

    /// <summary>What is looked for, as it stands in an address.</summary>
    public static string Kept(string? find) => PlainText.Short(find ?? "", MostFindCharacters);

    /// <summary>What cannot be meant is as if it were not there.</summary>
    public static PlanAddress Of(string? set, string? rows, string? find)
    {
        int comma = rows?.IndexOf(',') ?? -1;
        var row = comma > 0 && int.TryParse(rows![..comma], NumberStyles.None, CultureInfo.InvariantCulture, out int line)
            ? new RowRef(rows[(comma + 1)..], line) : null as RowRef?;
        return new PlanAddress(Theme.All.FirstOrDefault(t => t.Name == set)?.Name, rows == Waiting, row, Kept(find));
    }

    /// <summary>Null where it does not stand in the address.</summary>
    public IReadOnlyDictionary<string, object?> Query => new Dictionary<string, object?>
    {
        [SetKey] = Set,
        [RowsKey] = OnlyWaiting ? Waiting : Row is { } row ? string.Create(CultureInfo.InvariantCulture, $"{row.Line},{row.List}") : null,
        [FindKey] = Find.Length > 0 ? Find : null,
    };
}
