using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>A place on the centre line of a column where the needle comes to a part.</summary>
internal readonly record struct Door(int Column, double At);

/// <summary>How the sewing of a connected part ends, and so in which order its columns are sewn.</summary>
/// <param name="Tree">The order; the satin of its root is sewn last.</param>
/// <param name="At">Place on the root column where its satin ends.</param>
/// <param name="LeaveFor">The last hole is on the side of the column nearer to this; null when either will do.</param>
/// <param name="Concession">What is given up against the first choice, as if so many mm had to be sewn more.</param>
internal sealed record WayOut(ColumnTree Tree, double At, Vec? LeaveFor, double Concession);
