using System.Text.Json;
using NameBand.Job;

namespace NameBand.Tests.SewingOn;

/// <summary>A small job in a folder of its own that is made, sewn from and made again.</summary>
internal sealed class SewnJob : IDisposable
{
    public static readonly string[] TenNames =
        ["Bo Reed", "Ilse Varga", "Jo Marsh", "Tobiah Quill", "Nia Yeo", "Wenna Tregear", "Rafe Holm", "Merryn Hobbs", "Piran Jago",
            "Zofia Kay"];

    private readonly TemporaryFolder _folder = new();

    public SewnJob(params string[] names)
    {
        Names = [.. names];
        Settings("");
    }

    public List<string> Names { get; }

    public string Folder => _folder.FullPath;

    public void Settings(string strip, string more = "", string lettering = "") => _folder.With(
        "job.json",
        $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "900 mm" }, "strip": { {{strip}} }, "lettering": { "least": "5 mm"{{lettering}} }{{more}} }""");

    public MakeReport Make()
    {
        _folder.With("names.csv", "name\r\n" + string.Concat(Names.Select(n => n + "\r\n")));
        return Bander.Make(Folder);
    }

    public SewingReport Say(
        int hooping, SewingDeed deed = SewingDeed.Sewn, double? minutes = null, double? measuredMm = null, int? strip = null) =>
            Bander.Sewn(
        Folder, null, new SewingWord(hooping, deed, minutes, MeasuredMm: measuredMm, When: "2026-11-25T20:00")
        {
            Strip = strip,
            Mark = deed == SewingDeed.Sewn ? MarkOf(hooping) : "",
        }, () => Thread.Sleep(20));

    /// <summary>What stands on the newest sheet of a hooping; empty where there is none.</summary>
    private string MarkOf(int hooping) => !File.Exists(this["out/plan.json"]) ? "" : Plan().GetProperty("hoopings").EnumerateArray()
        .Where(h => h.GetProperty("number").GetInt32() == hooping && h.TryGetProperty("mark", out _))
            .Select(h => h.GetProperty("mark").GetString()!).FirstOrDefault("");

    public byte[] Path(int hooping, string inside = "out") => File.ReadAllBytes(this[$"{inside}/needle-paths/hooping-{hooping:000}.csv"]);

    public byte[] Proof(int hooping, string inside = "out") => File.ReadAllBytes(this[$"{inside}/proofs/hooping-{hooping:000}.png"]);

    public JsonElement Plan() => JsonDocument.Parse(File.ReadAllBytes(this["out/plan.json"])).RootElement;

    /// <summary>Cloth start of every hooping's first segment, by number.</summary>
    public Dictionary<int, double> ClothStarts()
    {
        var plan = Plan();
        var starts = plan.GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .ToDictionary(s => s.GetProperty("number").GetInt32(), s => s.GetProperty("clothStartMm").GetDouble());
        return plan.GetProperty("hoopings").EnumerateArray().ToDictionary(
            h => h.GetProperty("number").GetInt32(), h => starts[h.GetProperty("segments")[0].GetProperty("number").GetInt32()]);
    }

    public string[] PlacedTexts() =>
        [.. Plan().GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .SelectMany(s => s.GetProperty("names").EnumerateArray()).Select(n => n.GetProperty("text").GetString()!)];

    public string this[string relative] => _folder[relative];

    public void Dispose() => _folder.Dispose();
}
