using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Web.Table;

/// <summary>What names go round, as one is asked for it.</summary>
/// <param name="Turn">Part of a full circle; null: to be said in a field of its own.</param>
/// <param name="IsClosed">The edge meets itself.</param>
internal sealed record EdgeShape(string Key, Said Words, Said Means, double? Turn, bool IsClosed)
{
    public static ImmutableArray<EdgeShape> All { get; } =
    [
        new("full", "full circle", "a skirt or a cloak", 1, true),
        new("three-quarter", "three quarters", "of a circle", 0.75, true),
        new("half", "half", "of a circle", 0.5, true),
        new("part", "another part", "of a circle", null, true),
        new("straight", "straight, going round", "gathered or pleated", 0, true),
        new("ends", "two ends", "a banner, a curtain", 0, false),
    ];

    /// <summary>Cut as part of a circle: waist and length give its hem.</summary>
    public bool IsCircle => Turn is not 0;

    public string TurnText => Turn is { } turn ? turn.ToString(CultureInfo.InvariantCulture) : "";

    public static EdgeShape? Of(double? turn, bool isClosed) => turn is not { } part ? isClosed ? null : All[^1]
        : !isClosed ? All[^1] : All.FirstOrDefault(s => s.Turn == part && s.IsClosed) ?? All[3];
}
