namespace NameBand.Tests.House;

#pragma warning disable SA1402, SA1649 // Examples of one rule, good and bad.

public sealed class OpenToSome
{
    public HandedOn Given { get; } = new(["a"]);

    public static IReadOnlyList<InAList> All() => [];
}

public sealed record HandedOn(IReadOnlyList<string> Texts);

public sealed record InAList;

public static class Adding
{
    public static void Added(this OpenToSome to) => ArgumentNullException.ThrowIfNull(to);
}

public sealed record OpenToNobody(OpenToNobodyEither Either);

public sealed record OpenToNobodyEither;
