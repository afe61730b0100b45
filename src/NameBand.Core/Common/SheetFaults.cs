using System.Collections.Immutable;
using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;

namespace NameBand.Common;

/// <summary>Cells of a workbook that show a fault such as <c>#N/A</c>, which the reader of its rows takes for empty ones.</summary>
internal static class SheetFaults
{
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static readonly XNamespace Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    /// <summary>ECMA-376 part 1, annex on the transitional and strict forms: the strict one has namespaces of its own.</summary>
    private static readonly XNamespace StrictMain = "http://purl.oclc.org/ooxml/spreadsheetml/main";
    private static readonly XNamespace StrictRelations = "http://purl.oclc.org/ooxml/officeDocument/relationships";

    /// <returns>What the cell of a reference such as <c>B7</c> shows.</returns>
    /// <exception cref="InvalidDataException">The sheet's part cannot be found.</exception>
    public static ImmutableDictionary<string, string> Of(byte[] packed, string sheet)
    {
        using var archive = new ZipArchive(new MemoryStream(packed), ZipArchiveMode.Read);
        var faults = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.OrdinalIgnoreCase);
        using var content = PartOf(archive, sheet).Open();
        using var xml = XmlReader.Create(content, new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null });
        while (xml.Read())
        {
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "c" } && xml.GetAttribute("t") == "e" && xml.GetAttribute("r") is { } at)
            {
                using var cell = xml.ReadSubtree();
                faults[at] = cell.ReadToFollowing("v", xml.NamespaceURI) ? cell.ReadElementContentAsString() : "#";
            }
        }

        return faults.ToImmutable();
    }

    private static ZipArchiveEntry PartOf(ZipArchive archive, string sheet)
    {
        var book = Load(archive, "xl/workbook.xml");
        var entry = book.Descendants()
            .FirstOrDefault(e => (e.Name == Main + "sheet" || e.Name == StrictMain + "sheet") && (string?)e.Attribute("name") == sheet);
        string? id = (string?)entry?.Attribute(Relations + "id") ?? (string?)entry?.Attribute(StrictRelations + "id");
        string? target = (string?)Load(archive, "xl/_rels/workbook.xml.rels").Root!.Elements()
            .FirstOrDefault(e => (string?)e.Attribute("Id") == id)?.Attribute("Target");
        string path = target is null ? "" : target.StartsWith('/') ? target[1..] : "xl/" + target;
        return archive.GetEntry(path) ?? throw new InvalidDataException("The part of the sheet is missing.");
    }

    private static XDocument Load(ZipArchive archive, string part)
    {
        using var content = (archive.GetEntry(part) ?? throw new InvalidDataException($"{part} is missing.")).Open();
        using var xml = XmlReader.Create(content, new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null });
        return XDocument.Load(xml);
    }
}
