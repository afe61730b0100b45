using System.Globalization;

namespace NameBand.Reports.Answers;

/// <summary>What <c>invite</c> answers: who is asked and who is missing. No address is in it.</summary>
public sealed record InviteAnswer : CommandAnswer
{
    public required string Folder { get; init; }

    public required string Title { get; init; }

    /// <summary>Owners with a letter.</summary>
    public required int Letters { get; init; }

    /// <summary>Those of them whose address is not known.</summary>
    public required int WithoutAddress { get; init; }

    /// <summary>Names that wait for a decision and have no letter yet.</summary>
    public required int Held { get; init; }

    public required int Agreed { get; init; }

    public required int ChangeWished { get; init; }

    /// <summary>Names whose owners have not answered.</summary>
    public required IReadOnlyList<string> Missing { get; init; }

    /// <summary>ISO 8601; null where the job does not say.</summary>
    public string? AnswerBy { get; init; }

    public required bool IsPast { get; init; }

    public required bool SilenceLeavesOut { get; init; }

    /// <summary>approvals.csv was begun, with a line for each name.</summary>
    public required bool ApprovalsBegun { get; init; }

    /// <summary>Lines for corrections.csv that leave out who was silent.</summary>
    public required IReadOnlyList<string> LeaveOutLines { get; init; }

    internal static CommandAnswer Of(InviteReport report) => report is { Job: { } job, Folder: { } folder }
        ? new InviteAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            Folder = folder,
            Title = job.Title,
            Letters = report.Owners.Length,
            WithoutAddress = report.Owners.Count(o => o.Address.Length == 0),
            Held = report.Held,
            Agreed = report.Owners.Count(o => o.State == "agreed"),
            ChangeWished = report.Owners.Count(o => o.State == ToldApproval.ChangeWished),
            Missing = [.. report.Owners.Where(o => o.IsMissing).Select(o => o.Found.Text)],
            AnswerBy = job.Asking.AnswerBy?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            IsPast = report.IsPast,
            SilenceLeavesOut = job.Asking.SilenceLeavesOut,
            ApprovalsBegun = report.IsBegun,
            LeaveOutLines = report.LeaveOutLines,
        }
        : RefusedAnswer.Of(report.Status, report.Problems);
}
