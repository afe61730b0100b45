using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>A place on an edge of a column.</summary>
/// <param name="Side">0 for the left edge, 1 for the right one.</param>
internal readonly record struct EdgePlace(int Column, double At, int Side);

/// <summary>Where the needle may come in to a part from another one.</summary>
/// <param name="Edge">The hole of the part's own satin at that place, under which it goes.</param>
/// <param name="Hole">The first needle point, a little inside.</param>
internal readonly record struct WayIn(EdgePlace Place, Point Edge, Point Hole);

/// <summary>How the sewing of a connected part ends, and so in which order its columns are sewn.</summary>
/// <param name="Tree">The order; the satin of its root is sewn last.</param>
/// <param name="At">Place on the root column where its satin ends.</param>
/// <param name="Side">The last hole is on this edge of the column; null when either will do.</param>
/// <param name="Concession">What is given up against the first choice, as if so many mm had to be sewn more.</param>
internal sealed record WayOut(ColumnTree Tree, double At, int? Side, double Concession);

/// <summary>A small part (a dot, an accent) that is sewn on the way through a larger one.</summary>
/// <param name="HostAt">Place on the host's column where the needle leaves for it and comes back to.</param>
internal sealed record Guest(int HostColumn, double HostAt, IReadOnlyList<Needle> Run);
