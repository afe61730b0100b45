using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Output.Keying;
using NameBand.Stitching;

namespace NameBand.Pipeline.Stages;

/// <summary>
/// How the pieces of one layout are sewn in one way: the thread of each, what it takes, and the papers to sew by. Safe to
/// use from several threads.
/// </summary>
internal interface IPieceSewing
{
    /// <summary>
    /// The thread of a hooping as it lies on the cloth, as far as it is known; origin: left end of its first segment, on
    /// its strip's centre line.
    /// </summary>
    NeedlePath PathOf(Hooping hooping);

    /// <summary>
    /// The thread of one name; origin: the left edge of its width, on its base line; on a curved strip the middle of its
    /// width, on the strip's centre line.
    /// </summary>
    /// <param name="curve">Null: as on a straight strip.</param>
    NeedlePath PathOf(PlacedName name, StripCurve? curve = null);

    /// <summary>What a hooping takes.</summary>
    HoopingFigures FiguresOf(Hooping hooping, NeedlePath path);

    /// <summary>The same, where not its path is known but what its thread was counted to be.</summary>
    HoopingFigures FiguresOf(Hooping hooping, HoopingFigures counted);

    /// <summary>Equal where <see cref="PathOf(Hooping)"/> and <see cref="FiguresOf(Hooping, NeedlePath)"/> give the same for the
    /// same outlines, cloth
    /// and machine.</summary>
    string MadeBy(Hooping hooping);

    /// <summary>Whether all letters of a hooping could be worked out as they are drawn.</summary>
    bool AreLettersRead(Hooping hooping);

    /// <summary>How the strokes of a name are sewn; null where the machine or a hand makes its letters.</summary>
    NameStyle? StyleOf(PlacedName name);

    /// <summary>Whether the letters of a name could be read as strokes, where that has to be; nothing is sewn for it.</summary>
    bool AreStrokesRead(PlacedName name) => true;

    /// <summary>What the ways ask for besides the stitches; every hooping is sewn in one of them.</summary>
    ImmutableArray<WayActs> Acts { get; }

    /// <summary>The plan that a hooping is drawn by: of what is sewn as it is.</summary>
    StripPlan PlanOf(Hooping hooping);

    /// <summary>What was found while sewing; complete once every hooping was.</summary>
    ImmutableArray<Problem> Problems { get; }

    /// <summary>The same of another layout of the same names at the same height: letters that were worked out are kept.</summary>
    IPieceSewing Of(LaidOut other);

    /// <summary>What to key in, in the order of sewing; empty where nothing is.</summary>
    ImmutableArray<KeyInName> KeyIns { get; }

    /// <summary>The papers that this way is sewn by, besides proofs and needle paths: file inside out/, and what writes it.</summary>
    IEnumerable<(string File, Action<Stream> Write)> Papers(Estimate estimate);

    /// <summary>What the page to read first says of this way, part by part.</summary>
    ImmutableArray<Said> ReadMe { get; }
}
