using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>One answer as it came back. Private: its address is never told, nor is what stands under it in words of its own.</summary>
/// <param name="Address">As it can be compared: small, without blanks; empty where none stands there.</param>
/// <param name="Name">As the owner wrote it; empty where no column asks for it.</param>
/// <param name="State"><see cref="ApprovalState.Unclear"/>: it is none of agreed, change wished, no.</param>
/// <param name="Text">The words that are wished instead.</param>
/// <param name="Date">As it is written there.</param>
internal sealed record OwnerAnswer(string Address, string Name, ApprovalState State, string Text, WebAnswer Web, string Date, Where Where)
{
    /// <summary>What it says of the garment and of the web, to compare with another.</summary>
    public string Says => $"{ApprovalsFile.Word(State)}|{Text}|{Web}";

    /// <summary>The day it was given, where that can be told: a date with slashes means one day here and another there.</summary>
    public DateOnly? Day => AnswerWords.Day(Date);

    public static string AddressKey(string address) => string.Concat(address.Where(c => !char.IsWhiteSpace(c))).ToLowerInvariant();
}

/// <summary>All answers that lie in the folder private/, file by file.</summary>
internal sealed record OwnerAnswers(ImmutableArray<OwnerAnswer> All, ImmutableArray<string> Files)
{
    public const string Folder = "private";

    /// <summary>Files in it that begin so and end in .csv are answers.</summary>
    public const string FilesBegin = "answers";

    public static OwnerAnswers None { get; } = new([], []);

    /// <returns>Problems that name files, lines and headings, and nothing that stands under them. A file that cannot be read
    /// fails.</returns>
    public static Result<OwnerAnswers> Read(string jobFolder)
    {
        if (InnerFile.Objection(jobFolder, Folder) is { } objection)
        {
            return Result.Fail<OwnerAnswers>(objection);
        }

        if (!Directory.Exists(Path.Combine(jobFolder, Folder)))
        {
            return Result.Of(None);
        }

        string[] files = [.. InnerFile.In(jobFolder, Folder).Select(e => e.Name).Where(IsAnswers).Order(StringComparer.Ordinal)];
        var all = ImmutableArray.CreateBuilder<OwnerAnswer>();
        var problems = new List<Problem>();
        foreach (string file in files)
        {
            var table = CsvFile.Read(jobFolder, file);
            problems.AddRange(table.Problems);
            if (table.Value is { } read && AnswerColumns.Find(file, read, problems) is { } columns)
            {
                all.AddRange(read.Rows.Skip(1).Where(r => !r.Fields.All(string.IsNullOrWhiteSpace)).Select(r => columns.Answer(file, r)));
            }
        }

        return problems.Any(p => p.Severity == Severity.CannotUse)
            ? Result.Fail<OwnerAnswers>(problems)
            : Result.Of(new OwnerAnswers(all.ToImmutable(), [.. files]), problems);
    }

    private static bool IsAnswers(string path) => Path.GetFileName(path).StartsWith(FilesBegin, StringComparison.OrdinalIgnoreCase)
        && path.EndsWith(".csv", StringComparison.OrdinalIgnoreCase);
}
