using System.Collections.Immutable;

namespace NameBand.Common;

/// <summary>A row of a CSV, unchecked.</summary>
/// <param name="Line">Physical line on which the row starts, from 1.</param>
/// <param name="LastLine">Physical line on which it ends: later than <paramref name="Line"/> when a quoted field holds line breaks.</param>
internal sealed record CsvRow(int Line, int LastLine, ImmutableArray<string> Fields);

/// <summary>The rows of a CSV, header included where there is one; blank lines are not rows.</summary>
internal sealed record CsvTable(char Separator, ImmutableArray<CsvRow> Rows)
{
    /// <summary>"comma", "semicolon", "tab" or "bar".</summary>
    public Said SeparatorWord => Separator switch { ',' => "comma", ';' => "semicolon", '\t' => "tab", _ => "bar" };
}
