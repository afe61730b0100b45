namespace NameBand.Tests.Outside;

/// <summary>Files of the Unicode Character Database 15.0.0, as Debian's package unicode-data lays them out.</summary>
public static class UnicodeFile
{
    /// <summary>The lines of a file such as <c>BidiTest.txt</c> or <c>emoji/emoji-data.txt</c>.</summary>
    public static IEnumerable<string> Lines(string name)
    {
        string path = "/usr/share/unicode/" + name;
        OutsideTool.RequireFile(path, "unicode-data");
        return File.ReadLines(path);
    }
}
