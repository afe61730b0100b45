using NameBand.Common;

namespace NameBand.Job;

/// <summary>What follows from the way names go, for whoever need not know which it is.</summary>
/// <param name="FollowsCoordinates">A machine sews them from needle paths that the program works out.</param>
/// <param name="HasLettersOfItsOwn">The machine's letters are used: they come in its sizes, and faces only draw them.</param>
/// <param name="IsFollowedByHand">A person follows a template, at a pace and with thread of their own.</param>
public sealed record WayTraits(bool FollowsCoordinates, bool HasLettersOfItsOwn, bool IsFollowedByHand)
{
    /// <summary>How such names get onto the cloth, beside others that go otherwise: <c>4 names keyed in</c>.</summary>
    public Said How => FollowsCoordinates ? "from needle paths" : HasLettersOfItsOwn ? "keyed in" : "traced";

    /// <summary>The way of names that are typed into a machine's own letters.</summary>
    public static Way Typed => Way.MachineLetters;

    /// <summary>The way of names that a machine sews from needle paths.</summary>
    public static Way FromNeedlePaths => Way.NeedlePath;

    /// <summary>The way of names that a hand follows on a template.</summary>
    public static Way ByHand => Way.Traced;

    private static readonly WayTraits[] Known = [.. Enum.GetValues<Way>().Select(
        way => new WayTraits(way == Way.NeedlePath, way == Way.MachineLetters, way == Way.Traced))];

    public static WayTraits Of(Way way) => Known[(int)way];

    /// <summary>What any of the ways has.</summary>
    public static WayTraits OfAny(IReadOnlyCollection<Way> ways) => new(
        ways.Any(w => Of(w).FollowsCoordinates), ways.Any(w => Of(w).HasLettersOfItsOwn), ways.Any(w => Of(w).IsFollowedByHand));
}
