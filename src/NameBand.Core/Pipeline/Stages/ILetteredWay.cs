using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters;
using NameBand.Pipeline.Resume;

namespace NameBand.Pipeline.Stages;

/// <summary>A way that knows its names' letters: how it lays them out and sews them.</summary>
internal interface ILetteredWay
{
    /// <summary>A cloth as this way treats it.</summary>
    Fabric On(Fabric fabric);

    Result<StripPlan> LayOut(NamesRead names, HemPlan hem, Fabric fabric);

    /// <summary>The settings that its letters come in, largest first; empty where they come at any height.</summary>
    ImmutableArray<SizeStep> Steps(BandJob job) => [];

    /// <summary>Its names at one of its settings.</summary>
    LetteredList At(SizeStep step, LetteredList own) => own;

    /// <summary>How many times as high as the others a group's letters are at a setting; null: as the job has it.</summary>
    double? FactorAt(SizeStep step, string? group) => null;

    /// <summary>What is to be known of a setting.</summary>
    IEnumerable<Problem> Notes(BandJob job, SizeStep step) => [];

    /// <summary>What is to be told of its sewn names as they came out, where the marks after them stay.</summary>
    IEnumerable<Problem> CameOut(StripPlan plan, SewingProgress begun) => [];

    /// <summary>How the pieces of a layout are sewn.</summary>
    IPieceSewing Sew(LaidOut made);

    /// <summary>What is doubtful of a layout before anything of it is sewn.</summary>
    ImmutableArray<Problem> Doubts(LaidOut made);

    /// <summary>Faces to choose from, the job's own first.</summary>
    ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf);

    /// <summary>The same names in another of <see cref="Faces"/>.</summary>
    LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel);

    /// <summary>The letter height from which all of them can be sewn as they are drawn; 0 where any height can.</summary>
    double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf);
}
