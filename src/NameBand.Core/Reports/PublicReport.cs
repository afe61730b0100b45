using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Reports;

/// <summary>The page for supporters that was made, or why none was.</summary>
/// <param name="Folder">Null: none was made.</param>
public sealed record PublicReport(ExitStatus Status, string Title, string? Folder, ImmutableArray<Problem> Problems)
{
    /// <summary>Names on it.</summary>
    public int Shown { get; init; }

    /// <summary>Names to be sewn whose owners said no, or whose answer cannot be read.</summary>
    public int Refusing { get; init; }

    /// <summary>Names to be sewn whose owners did not say.</summary>
    public int Unanswered { get; init; }

    /// <summary>Photos on it.</summary>
    public int Photos { get; init; }

    public long PageBytes { get; init; }

    public static PublicReport Refused(ImmutableArray<Problem> problems) => new(ExitStatus.CannotUse, "", null, problems);
}
