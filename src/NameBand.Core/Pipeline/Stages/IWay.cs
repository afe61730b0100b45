using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline.Resume;

namespace NameBand.Pipeline.Stages;

/// <summary>
/// One way for names to get onto the cloth. What the ways do differently stands behind this interface and the two that
/// follow from it, <see cref="ILetteredWay"/> and <see cref="IPieceSewing"/>; all else is done once for all of them.
/// </summary>
internal interface IWay
{
    /// <summary>Why no swatch is made in this way; null where one is.</summary>
    Problem? NoSwatch { get; }

    /// <summary>Letters the names of a checked list, and holds those that this way cannot sew.</summary>
    Result<NamesRead> Letter(CheckedList list, FaceShelf shelf, CancellationToken cancel);

    /// <summary>
    /// The face on the shelf that looks most like what this way sews, for names that go another way beside it; null: any face will do.
    /// </summary>
    Face? LooksLike(CheckedList list, FaceShelf shelf) => null;

    /// <summary>
    /// The rows of those names that this way can sew as they are written, and is sure of, so that another way need not.
    /// A problem is one that keeps any name from being told.
    /// </summary>
    Result<ImmutableHashSet<RowRef>> Able(CheckedList list, FaceShelf shelf, CancellationToken cancel);
}

/// <summary>A list whose rows are all accounted for, not yet lettered.</summary>
/// <param name="InOrder">The names in the order in which they are to be sewn.</param>
/// <param name="Begun">Null until something has been sewn, and so is <paramref name="Matched"/>.</param>
internal sealed record CheckedList(
    BandJob Job, Corrections Corrections, Face Face, NameList InOrder, SewingProgress? Begun, MatchedList? Matched);
