namespace NameBand.Reports.Answers;

/// <summary>What <c>public</c> answers when it has made the page for supporters.</summary>
public sealed record PublicAnswer : CommandAnswer
{
    public required string Folder { get; init; }

    public required string Title { get; init; }

    /// <summary>Names on the page.</summary>
    public required int Shown { get; init; }

    /// <summary>Names to be sewn whose owners said no to the web, or whose answer cannot be read.</summary>
    public required int Refusing { get; init; }

    /// <summary>Names to be sewn whose owners did not say: as good as a no.</summary>
    public required int Unanswered { get; init; }

    /// <summary>Photos on it: those on which every owner of a name said yes.</summary>
    public required int Photos { get; init; }

    /// <summary>Size of the page.</summary>
    public required long PageBytes { get; init; }

    internal static CommandAnswer Of(PublicReport report) => report.Folder is { } folder
        ? new PublicAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            Folder = folder,
            Title = report.Title,
            Shown = report.Shown,
            Refusing = report.Refusing,
            Unanswered = report.Unanswered,
            Photos = report.Photos,
            PageBytes = report.PageBytes,
        }
        : RefusedAnswer.Of(report.Status, report.Problems);
}
