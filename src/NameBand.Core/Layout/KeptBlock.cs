using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Layout;

/// <summary>A segment of an earlier plan that stays, with the names that are still in it from left to right.</summary>
internal sealed record KeptBlock(
    int Round, int Segment, int Hooping, double StartMm, double LengthMm, bool IsSewn, ImmutableArray<PlacedName> Names)
{
    /// <summary>What was planned between its names, as long as they are the same names.</summary>
    public ImmutableArray<PlacedName> Motifs { get; init; } = [];

    /// <summary>Names and motifs.</summary>
    public IEnumerable<PlacedName> Sewn => Names.Concat(Motifs);

    /// <summary>Where it lies on the cloth, when that is settled; else it follows from its start.</summary>
    public double? ClothStartMm { get; init; }

    /// <summary>Names that were sewn one after the other, keyed in or traced: nobody goes back to sew between them.</summary>
    public bool IsClosed => IsSewn && Names.All(n => !WayTraits.Of(n.Lettered.Way).FollowsCoordinates);

    public double FirstMm => Names[0].StartMm;

    public double LastMm => Names.Max(n => n.EndMm);
}

/// <summary>Clear room on a round, between kept names or an end of the strip.</summary>
/// <param name="AfterName">A kept name stands at its left end.</param>
/// <param name="BeforeName">A kept name stands at its right end.</param>
internal sealed record FreeStretch(int Round, double StartMm, double EndMm, bool AfterName, bool BeforeName)
{
    /// <summary>A join of two pieces lies at its left end.</summary>
    public bool AfterJoin { get; init; }

    /// <summary>A join of two pieces lies at its right end.</summary>
    public bool BeforeJoin { get; init; }

    /// <summary>The same room as a stretch whose ends each keep half a gap.</summary>
    public FreeInterval AsStretch(double gapMm, bool closed)
    {
        double left = StartMm + (AfterName ? gapMm / 2 : closed || AfterJoin ? 0 : -gapMm / 2);
        double right = EndMm - (BeforeName ? gapMm / 2 : closed || BeforeJoin ? 0 : -gapMm / 2);
        return new FreeInterval(Round, left, right - left, HasOpenEnds: false);
    }

    /// <summary>Blank that has to stay at each end: a whole gap beside a name, half a one where the strip's ends meet, none at an
    /// open end.</summary>
    public (double Left, double Right) Ends(double gapMm, bool closed) =>
        (AfterName ? gapMm : closed || AfterJoin ? gapMm / 2 : 0, BeforeName ? gapMm : closed || BeforeJoin ? gapMm / 2 : 0);

    /// <summary>Room the stretch offers when each name brings one gap along.</summary>
    public double OfferMm(double gapMm, bool closed)
    {
        var (left, right) = Ends(gapMm, closed);
        return EndMm - StartMm - left - right + gapMm;
    }
}
