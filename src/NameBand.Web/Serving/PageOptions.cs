namespace NameBand.Web.Serving;

/// <summary>How the page is started.</summary>
/// <param name="JobFolder">Full path; the folder may be empty.</param>
/// <param name="Port">0: a free one.</param>
/// <param name="Lend">Whether the view at the machine is served to the maker's own network.</param>
public sealed record PageOptions(string JobFolder, int Port, bool Lend);

/// <summary>Where the page answers once it is started.</summary>
/// <param name="LendUrl">Where the view at the machine is lent; null: it is not.</param>
public sealed record PageAddress(string Url, string? LendUrl, string? LendCode);
