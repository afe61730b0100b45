using System.Globalization;
using NameBand.Layout;
using NameBand.PlanFile;

namespace NameBand.Output.Packet;

/// <summary>Titles as they stand at the foot of a page.</summary>
internal static class PaperTitle
{
    private const int Most = 60;

    /// <summary>The title, and the mark of the plan that the sheet belongs to.</summary>
    public static string WithMark(string title, StripPlan plan) => $"{Short(title)} · plan {SheetMarks.Of(plan)}";

    public static string Short(string title)
    {
        int[] starts = StringInfo.ParseCombiningCharacters(title);
        return starts.Length <= Most ? title : title[..starts[Most]] + "…";
    }
}
