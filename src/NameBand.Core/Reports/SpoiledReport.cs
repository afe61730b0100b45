using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Reports;

/// <summary>One way to meet a name that went wrong.</summary>
/// <param name="IsSound">Whether the cloth bears it; else <paramref name="Why"/> says why not.</param>
/// <param name="Why">What speaks for it or against it: cloth and looks.</param>
/// <param name="Say">What is said to the log when it is to be sewn so, after <c>sewn JOB</c>.</param>
public sealed record SpoiledWay(Said What, double Minutes, bool IsSound, Said Why, Said Steps, string Say);

/// <summary>What can be done about a name that was misspelt or spoiled; nothing is written down.</summary>
/// <param name="Title">Null: it cannot be told.</param>
public sealed record SpoiledReport(ExitStatus Status, string? Title, ImmutableArray<Problem> Problems)
{
    /// <summary>Such as <c>hooping 12</c> or <c>name 12</c>.</summary>
    public string Spoiled { get; init; } = "";

    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>What the cloth bears comes first, and of that the least work.</summary>
    public ImmutableArray<SpoiledWay> Ways { get; init; } = [];

    public static SpoiledReport Refused(ImmutableArray<Problem> problems) => new(ExitStatus.CannotUse, null, problems);
}
