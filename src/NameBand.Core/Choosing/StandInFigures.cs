using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Choosing;

/// <summary>
/// What hoopings take besides the stitches of their names. Plans that differ in free choices alone sew the same names, so that
/// their costs differ by this and by what is counted from the layout itself; no letter need be worked out for it.
/// </summary>
internal static class StandInFigures
{
    // Two crosses in a segment, each begun with a jump and a cut, of five stitches.
    private const int MarksPerSegment = 2;
    private const int StitchesPerMark = 5;

    public static ImmutableArray<HoopingFigures> Of(StripPlan plan)
    {
        bool areSewn = plan.Marks == MarkMethod.Sewn && plan.HasNeedlePaths;
        return [.. plan.Hoopings.Select(h => Of(h, areSewn && h.HasNeedlePath))];
    }

    private static HoopingFigures Of(Hooping hooping, bool hasSewnMarks)
    {
        int marks = hasSewnMarks ? MarksPerSegment * hooping.Segments.Length : 0;
        return new HoopingFigures(hooping.Number, StitchesPerMark * marks, marks, marks, hasSewnMarks ? 1 : 0, 0, 0, 0);
    }
}
