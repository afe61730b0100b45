using System.Globalization;
using System.Text.Json;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Shaping;
using NameBand.Tests.Lettering;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// Glyphs, places and advance widths of whole names against <c>hb-shape</c> (Debian libharfbuzz-bin 6.0.0; the
/// library in use here is newer, and for these names the two agree to the font unit).
/// </summary>
public class ShapingAgainstHbShapeTests
{
    private static readonly Dictionary<string, string[]> NamesOfScript = new(StringComparer.Ordinal)
    {
        ["Latin"] = ["Ottilie Marshall", "AVATAR To Ty Wa Yo", "Tamsin O’Dell", "fi office ffl Tjaf", "Rafe & Co. No. 7",
            "Jory-Wenna (Tregear)"],
        ["Latin of Central Europe"] = ["Zdeněk Říčný", "Łucja Brzoza", "Žofie Şükrü İpek", "Guđný Őrsi"],
        ["Vietnamese"] = ["Đỗ Thu Lan Nguyễn", "Trần Thị Ngọc Ánh", "Lữ Khắc Phượng"],
        ["Greek"] = ["Σοφία Λυμπέρη", "Άγγελος Τάσσος"],
        ["Cyrillic"] = ["Ваня Речной", "Йожеф Шевчук"],
        ["Armenian"] = ["Հայկ Գայանե"],
        ["Georgian"] = ["ნინო ბერიძე"],
        ["Hebrew"] = ["נועה בן־נחל", "שָׁלוֹם"],
        ["Arabic"] = ["ليلى النهري", "مُحَمَّد", "عبد اللّٰه", "لالا"],
        ["Devanagari"] = ["नदी माथुर", "क्षत्रिय ज्ञान", "कृष्णा र्कि श्री"],
        ["Bengali"] = ["অনন্যা মুখার্জি", "কৌশিক"],
        ["Gurmukhi"] = ["ਗੁਰਪ੍ਰੀਤ ਸਿੰਘ"],
        ["Tamil"] = ["தமிழ்ச்செல்வி", "கௌரி"],
        ["Thai"] = ["สมศรี ใจดี", "น้ำ ปู่"],
        ["Ethiopic"] = ["አበበ በቀለ"],
        ["Japanese kana"] = ["みなと", "タケガワ"],
        ["Korean"] = ["강나루", "김하늘"],
        ["Chinese and Japanese characters"] = ["川上", "王明"],
    };

    public static TheoryData<string> Faces() => new(LetteringRig.Shelf.Cards.Select(c => c.Name));

    [SkippableTheory]
    [MemberData(nameof(Faces))]
    public void Names_are_shaped_as_hb_shape_shapes_them(string faceName)
    {
        OutsideTool.Require("hb-shape", "libharfbuzz-bin");
        var face = LetteringRig.Face(faceName);
        string path = LetteringRig.PathOf(faceName);
        var scripts = LetteringRig.Reports.Single(f => f.Name == faceName).Scripts.Select(s => s.English);
        int compared = 0;
        foreach (string name in scripts.Where(NamesOfScript.ContainsKey).SelectMany(s => NamesOfScript[s]))
        {
            if (!name.EnumerateRunes().All(r => face.Has(r.Value)))
            {
                continue; // the face lacks a letter of this name, so that a fallback would come in
            }

            var ours = LetteringRig.Shape(name, face);
            Assert.All(ours.Glyphs, g => Assert.True(g.Face == face && g.Run == 0, $"{name} was not shaped in one run of {faceName}"));
            Assert.Equal(HbShape(path, name), Described(name, ours, face));
            compared++;
        }

        Assert.True(compared > 0, $"no name could be compared for {faceName}");
    }

    private static string HbShape(string font, string text)
    {
        string json = OutsideTool.Run("hb-shape", ["--output-format=json", "--no-glyph-names", "--language=und", font, text]);
        using var glyphs = JsonDocument.Parse(json);
        int x = 0, y = 0;
        var parts = new List<string>();
        foreach (var glyph in glyphs.RootElement.EnumerateArray())
        {
            int Number(string key) => glyph.GetProperty(key).GetInt32();
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"{Number("g")}@{x + Number("dx")},{y + Number("dy")}"));
            x += Number("ax");
            y += Number("ay");
        }

        return $"{text}: {string.Join(' ', parts)} width {x.ToString(CultureInfo.InvariantCulture)}";
    }

    private static string Described(string name, ShapedName shaped, Face face)
    {
        Assert.Null(shaped.Fault);
        Assert.Empty(shaped.Unshown);
        var parts = shaped.Glyphs.Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Glyph}@{g.XUnits},{g.YUnits}"));
        double width = Math.Round(shaped.AdvanceMm * face.CapHeightUnits, 6);
        return $"{name}: {string.Join(' ', parts)} width {width.ToString(CultureInfo.InvariantCulture)}";
    }
}
