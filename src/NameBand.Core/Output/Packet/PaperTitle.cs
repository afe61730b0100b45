using System.Globalization;

namespace NameBand.Output.Packet;

/// <summary>Titles as they stand at the foot of a page.</summary>
internal static class PaperTitle
{
    private const int Most = 60;

    public static string Short(string title)
    {
        int[] starts = StringInfo.ParseCombiningCharacters(title);
        return starts.Length <= Most ? title : title[..starts[Most]] + "…";
    }
}
