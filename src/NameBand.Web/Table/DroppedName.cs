using NameBand.Common;

namespace NameBand.Web.Table;

/// <summary>Where a name was let go that was carried along the strips.</summary>
/// <param name="Other">The name it was let go beside; null: the round has no other.</param>
/// <param name="IsAfter">Right of that name, else left of it.</param>
/// <param name="Round">The round it was let go on.</param>
public sealed record DroppedName(RowRef Row, string? Other, bool IsAfter, int Round);
