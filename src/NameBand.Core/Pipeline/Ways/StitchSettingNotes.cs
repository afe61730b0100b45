using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Pipeline.Ways;

/// <summary>Says what a job's own thread, spacing and compensation come to, where they are not the table's.</summary>
internal static class StitchSettingNotes
{
    public static IEnumerable<Problem> Notes(BandJob job, Fabric fabric)
    {
        if (FabricTable.Find(job.Fabric) is not { } found || JobCloth.Cut(found, job.Layout.IsBias) is not { } table || fabric == table)
        {
            yield break;
        }

        bool isOwnThread = fabric.Thread != table.Thread;
        Said said = $"Thread {fabric.Thread.InWords}, needle {fabric.Needle}, crossings {fabric.SpacingMm:0.00} mm apart, {fabric.PullCompensationMm:0.00} mm pull compensation.";
        yield return Problem.Note(
            new Where(JobReader.FileName, Key: isOwnThread ? StitchKeys.Thread.Path : "stitches"), said,
            isOwnThread
                ? "The width of a thread grows with the root of its tex, from 0.40 mm for 40 wt; see docs/cloths.md. A swatch tells whether it covers."
                : "");
    }
}
