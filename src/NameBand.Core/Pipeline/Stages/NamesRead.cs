using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Pieces;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline.Resume;

namespace NameBand.Pipeline.Stages;

/// <summary>A checked list with its letters: what the lists come to once the letters have been looked up.</summary>
/// <param name="Rows">Every row with what became of it so far.</param>
internal sealed record NamesRead(
    BandJob Job, Corrections Corrections, Face Face, LetteredList Lettered, NameList Rows, ILetteredWay Way)
{
    /// <summary>What to go on from, once something has been sewn.</summary>
    public (SewingProgress Begun, Continuation From)? Sewn { get; init; }

    /// <summary>How strips lie side by side where the job leaves it free; null: one by one.</summary>
    public LaneChoice? Beside { get; init; }

    /// <summary>For each sewn name that was changed in the list since: what the list says. Null until something has been sewn.</summary>
    public ImmutableDictionary<RowRef, string>? SewnThenChanged { get; init; }
}
