using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>What a person decided about a row in corrections.csv.</summary>
public enum Decision
{
    /// <summary>The decision is still blank: the row stays as the check finds it.</summary>
    NotYet,

    /// <summary>Sew it (as <see cref="Correction.Text"/>, where that is given), whatever the check asks.</summary>
    Keep,

    LeaveOut,

    /// <summary>Sew <see cref="Correction.Text"/> instead, once it has passed the same checks.</summary>
    Change,

    /// <summary>
    /// It is sewn in another place, which <see cref="Correction.Text"/> names: a job in a folder of its own, or whatever she writes.
    /// </summary>
    Elsewhere,

    /// <summary>The line cannot be understood; its row is held rather than sewn against a wish.</summary>
    Unclear,
}

/// <summary>One line of corrections.csv.</summary>
/// <param name="Row">The row it is about; the list as written, with forward slashes.</param>
/// <param name="Was">The row's name as it stood when the decision was made.</param>
/// <param name="FileLine">Physical line in corrections.csv.</param>
public sealed record Correction(RowRef Row, string Was, Decision Decision, string Text, string Why, int FileLine)
{
    /// <summary>Fingerprint of what stood beside the name; empty where the file does not say.</summary>
    public string Details { get; init; } = "";

    /// <summary>What the row answered to whether its name may be shown; empty where the file does not say, as in version 0.1.</summary>
    public string Show { get; init; } = "";

    /// <summary>Mark of the lines that ask the same; empty: none.</summary>
    public string Alike { get; init; } = "";

    /// <summary>The decision is for all lines of the mark that have none of their own.</summary>
    public bool IsForAll { get; init; }
}

/// <summary>What corrections.csv in a job's folder says; no file is no corrections.</summary>
/// <param name="FileExists">Whether there is a file with its header, so that lines can be added under it.</param>
/// <param name="Separator">The separator of the file, to be used for lines that are added.</param>
public sealed record Corrections(ImmutableArray<Correction> Lines, bool FileExists, char Separator)
{
    public const string FileName = "corrections.csv";

    public static Corrections None { get; } = new([], false, ',');

    /// <summary>Columns of the file, in order.</summary>
    public static ImmutableArray<string> Columns { get; } = ["list", "line", "was", "decision", "text", "why", "details", "show", "alike"];

    /// <summary>The file's own header; files need not have all columns.</summary>
    public ImmutableArray<string> Header { get; init; } = Columns;

    /// <summary>
    /// Reads corrections.csv in a job's folder. A line that cannot be understood is a problem of its own and the
    /// others still apply; a file that cannot be read at all stops the job, since decisions in it would be passed over.
    /// </summary>
    public static Result<Corrections> Read(string jobFolder) => CorrectionsReader.Read(jobFolder);
}
