using NameBand.Output;
using NameBand.Output.Keying;
using NameBand.Output.Tracing;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>Whichever way the names go onto the cloth, the page to read first has the usual cautions.</summary>
public class CautionTests
{
    public static TheoryData<string, Action<Stream>> Pages => new()
    {
        { "keyed", stream => ReadMePage.Write(stream, "Boats", null, KeyInReadMe.Parts("K7Q4", setsOut: true)) },
        { "traced", stream => ReadMePage.Write(stream, "Boats", null, TemplateReadMe.Parts("K7Q4")) },
        { "needle path", stream => ReadMePage.Write(stream, "Boats", null, ReadMeFirst.Parts(OutSample.Plan(), sewnBeforeCutting: true)) },
    };

    [Theory]
    [MemberData(nameof(Pages))]
    public void The_page_to_read_first_names_each_danger_and_who_comes_before_it(string way, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        string text = System.Text.Encoding.UTF8.GetString(stream.ToArray());
        foreach (string word in new[] { "needle", "everything that\n  moves", "Switch the machine off", "Iron and steam burn",
            "rotary cutter", "Good light", "manual, local rules" })
        {
            Assert.True(text.Contains(word, StringComparison.Ordinal), $"{way}: {word}");
        }
    }
}
