using System.Globalization;
using NameBand.Common;
using NameBand.Layout;
using NameBand.PlanFile;

namespace NameBand.Output.Packet;

/// <summary>Titles as they stand at the foot of a page.</summary>
internal static class PaperTitle
{
    private const int MostCharacters = 60; // Characters: with the mark and the page's number it fills one line of a foot.

    /// <summary>The title, and the mark of the plan that the sheet belongs to.</summary>
    public static Said WithMark(string title, StripPlan plan) => $"{Short(title)} · plan {SheetMarks.Of(plan)}";

    public static string Short(string title)
    {
        int[] starts = StringInfo.ParseCombiningCharacters(title);
        return starts.Length <= MostCharacters ? title : title[..starts[MostCharacters]] + "…";
    }
}
