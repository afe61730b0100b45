using NameBand.Common;

namespace NameBand.Job;

/// <summary>The part of a job that a swatch decides.</summary>
internal static partial class JobAssembly
{
    private static StitchSettings Stitches(JobValues values) => new(
        values.Length(StitchKeys.Spacing)?.Mm, values.Length(StitchKeys.PullCompensation)?.Mm, Thread(values))
    {
        PullGrowthPart = values.Number(StitchKeys.PullGrowth),
        PullAcrossFactor = values.Number(StitchKeys.PullAcross),
        PushMm = values.Length(StitchKeys.Push)?.Mm,
    };

    private static ThreadSize Thread(JobValues values)
    {
        string text = values.Text(StitchKeys.Thread)!;
        if (ThreadSize.Parse(text) is not { } size)
        {
            values.Refuse(
                StitchKeys.Thread, $"“{PlainText.Short(text)}” is not the size of a thread.",
                "Write it as it stands on the spool: \"40 wt\", \"60 wt\", \"27 tex\", \"ticket 120\" or \"240 den\".");
            return ThreadSize.FortyWeight;
        }

        if (size.Tex is < ThreadSize.FinestTex or > ThreadSize.ThickestTex)
        {
            values.Refuse(
                StitchKeys.Thread,
                $"“{PlainText.Short(text)}” comes to {size.Tex:0.#} tex, and threads for embroidery have {ThreadSize.FinestTex:0} to {ThreadSize.ThickestTex:0}.",
                "Look at the spool again: 40 weight is \"40 wt\".");
            return ThreadSize.FortyWeight;
        }

        return size;
    }
}
