using System.IO.Compression;
using System.Text;

namespace NameBand.Tests.Hostile;

/// <summary>
/// A workbook as text, so that it can be spoilt where it matters: each part begins with a line “== place in the package”. What
/// begins as a package does is one already.
/// </summary>
internal static class PackedBook
{
    private const string Mark = "== ";

    /// <summary>A small workbook of two sheets, with shared texts, numbers in formats, a formula and a fault (ECMA-376 part 1).</summary>
    public static byte[] Parts { get; } = """
        == xl/workbook.xml
        <workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"
         xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>
        <sheet name="Friends" sheetId="1" r:id="r1"/><sheet name="Crew" sheetId="2" r:id="r2"/></sheets></workbook>
        == xl/_rels/workbook.xml.rels
        <Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
        <Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet"
         Target="worksheets/sheet1.xml"/>
        <Relationship Id="r2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet"
         Target="worksheets/sheet2.xml"/>
        <Relationship Id="r3" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings"
         Target="sharedStrings.xml"/>
        <Relationship Id="r4" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/>
        </Relationships>
        == xl/worksheets/sheet1.xml
        <worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><dimension ref="A1:C4"/><sheetData><row r="1">
        <c r="A1" t="s"><v>0</v></c><c r="B1" t="inlineStr"><is><t>Paid</t></is></c><c r="C1" t="str"><v>May we show it?</v></c></row>
        <row r="2" ht="0"><c r="A2" t="s"><v>1</v></c><c r="B2" s="1"><v>12.5</v></c><c r="C2" t="b"><v>1</v></c></row><row r="4">
        <c r="A4" t="inlineStr"><is><r><t>Bo </t></r><r><t>Lind</t></r></is></c><c r="B4" s="2"><f>1+1</f><v>45627</v></c>
        <c r="C4" t="e"><v>#N/A</v></c></row></sheetData></worksheet>
        == xl/worksheets/sheet2.xml
        <worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData/></worksheet>
        == xl/sharedStrings.xml
        <sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" count="2" uniqueCount="2"><si><t>Name</t></si><si>
        <t xml:space="preserve"> Ana Brook</t></si></sst>
        == xl/styles.xml
        <styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="1">
        <numFmt numFmtId="164" formatCode="[Red]#,##0.00;-0;&quot;none&quot;;@"/></numFmts><cellXfs count="3"><xf numFmtId="0"/>
        <xf numFmtId="164"/><xf numFmtId="15"/></cellXfs></styleSheet>
        """u8.ToArray();

    public static byte[] Of(byte[] text)
    {
        if (text.AsSpan().StartsWith("PK"u8))
        {
            return text;
        }

        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (string part in Encoding.Latin1.GetString(text).Split(Mark).Where(p => p.Length > 0))
            {
                string[] both = part.Split('\n', 2);
                string place = both[0].TrimEnd('\r') is { Length: > 0 and < 200 } told ? told : "x";
                var entry = archive.CreateEntry(place, CompressionLevel.NoCompression);
                entry.LastWriteTime = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
                using var content = entry.Open();
                content.Write(Encoding.Latin1.GetBytes(both.Length > 1 ? both[1] : ""));
            }
        }

        return stream.ToArray();
    }
}
