using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>How the page is started.</summary>
/// <param name="JobFolder">Full path; the folder may be empty.</param>
/// <param name="Port">0: a free one.</param>
/// <param name="Lend">Whether the view at the machine is served to the maker's own network.</param>
public sealed record PageOptions(string JobFolder, int Port, bool Lend)
{
    /// <summary>The line that starts it again in a terminal.</summary>
    public string StartLine { get; init; } = "";
}

/// <summary>Where the page answers once it is started.</summary>
/// <param name="Url">The whole address, with the word that opens it.</param>
/// <param name="LendUrl">Where the view at the machine is lent; null: it is not.</param>
public sealed record PageAddress(string Url, string? LendUrl, string? LendCode)
{
    /// <summary>A file of this account that leads a browser to the address; null: there is none.</summary>
    public string? Opener { get; init; }

    /// <summary>What the maker has to know of the address.</summary>
    public ImmutableArray<Problem> Notes { get; init; } = [];
}
