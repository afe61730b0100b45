using NameBand.Common;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>Whether what stands at a place may be renewed as an out folder.</summary>
internal static class OutTaking
{
    /// <summary>By which it is known that the folder is still the one that was looked into; null: it has to be looked into.</summary>
    public static (long Bytes, DateTime At)? PlanStamp(OutSiblings at) =>
        new FileInfo(Path.Combine(at.Out, at.Kind.File)) is { Exists: true } plan ? (plan.Length, plan.LastWriteTimeUtc) : null;

    public static Problem? Refusal(OutSiblings at)
    {
        try
        {
            if (!Directory.Exists(at.Out) || OutMending.IsEmptyFolder(at.Out))
            {
                return null;
            }
        }
        catch (UnauthorizedAccessException e)
        {
            return Problem.CannotUse(new Where(at.Out), $"This folder cannot be read: {e.Message}", "Choose another folder with --out.");
        }

        return OutManifest.Format(at.Out, at.Kind) switch
        {
            PlanJson.Format => null,
            { } newer and > PlanJson.Format => Problem.CannotUse(
                new Where(at.Out),
                $"The plan in this folder is of format {newer}, which a newer NameBand made; this one writes format {PlanJson.Format}.",
                "Use the newer NameBand, or choose another folder with --out."),
            null when OutManifest.IsSpoiledOurs(at.Out, at.Kind) => null,
            _ => Problem.CannotUse(
                new Where(at.Out),
                $"This folder holds something already, and no {at.Kind.File} of ours is among it.",
                "Nothing in it was touched. Choose an empty or new folder with --out."),
        };
    }
}
