using NameBand.Common;
using NameBand.Output;
using NameBand.Output.Sheets;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>Keeps in mind which marks the hoopings had in the plan that lies in the out folder still, and in those before it.</summary>
internal static class KeepingMarks
{
    /// <param name="wishes">Null: no sheets are printed.</param>
    public static void Run(LaidOut made, PreviousOutput earlier, OutFolder folder, PrintWishes? wishes)
    {
        // Only hoopings that are sewn from needle paths are marked as sewn.
        if (!made.Plan.HasNeedlePaths)
        {
            return;
        }

        bool wasPrinted = Paper.Both.Any(p => InnerFile.IsPlain(folder.FullPath, OutPaths.WorkPacket(p.Word)));
        var marks = EarlierMarks.After(
            [.. EarlierMarks.Read(folder.FullPath), .. earlier.Marks.Select(m => new EarlierMark(m.Hooping, m.Mark, wasPrinted))],
            made.Plan.Hoopings.ToDictionary(h => h.Number, h => SheetMarks.Of(made.Plan, h)), wishes is not null);
        if (!marks.IsEmpty)
        {
            Sewing.Write(folder, OutPaths.EarlierMarks, stream => EarlierMarks.Write(stream, marks));
        }
    }
}
