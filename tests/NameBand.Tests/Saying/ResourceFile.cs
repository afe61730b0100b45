using System.Xml.Linq;
using NameBand.Tests.House;

namespace NameBand.Tests.Saying;

/// <summary>Texts.resx: the English texts that translators start from. No program reads it in English.</summary>
internal static class ResourceFile
{
    public const string FileName = "src/NameBand.Core/Common/Texts.resx";

    public static SortedDictionary<string, string> Read()
    {
        var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var data in XDocument.Parse(Repository.Read(FileName), LoadOptions.PreserveWhitespace).Root!.Elements("data"))
        {
            texts.Add(data.Attribute("name")!.Value, data.Element("value")!.Value);
        }

        return texts;
    }

    /// <param name="places">Where each text stands, for whoever translates it.</param>
    public static void Write(SortedDictionary<string, string> texts, ILookup<string, string> places)
    {
        var old = XDocument.Parse(Repository.Read(FileName)).Root!;
        var root = new XElement("root", old.Elements("resheader"), texts.Select(t => new XElement(
            "data", new XAttribute("name", t.Key), new XAttribute(XNamespace.Xml + "space", "preserve"),
            new XElement("value", t.Value), new XElement("comment", string.Join("; ", places[t.Key].Distinct().Order(StringComparer.Ordinal))))));
        File.WriteAllText(
            Path.Combine(Repository.Root, FileName),
            "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n" + root.ToString().Replace("\r\n", "\n", StringComparison.Ordinal) + "\n");
    }
}
