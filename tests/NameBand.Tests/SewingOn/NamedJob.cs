using System.Globalization;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using NameBand.Reports;

namespace NameBand.Tests.SewingOn;

/// <summary>A small job whose names are keyed in, or traced, and logged one by one. Every letter of the machine is 5 mm wide and
/// takes 6 s.</summary>
internal sealed class NamedJob : IDisposable
{
    public const string Keyed = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"], \"holds\": \"any\" }";
    public const string Hooped = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"], \"hooped\": true }";
    public const string Traced = "\"way\": \"traced\", \"lettering\": { \"height\": \"8 mm\" }";

    private readonly TemporaryFolder _folder = new();

    public NamedJob(string way, string hem = "{ \"length\": \"1 m\", \"closed\": false }")
    {
        _folder.With("job.json", $"{{ \"format\": 1, \"title\": \"Crew\", \"lists\": [\"crew.csv\"], \"hem\": {hem}, {way} }}");
        Letters(5);
    }

    public List<string> Names { get; } =
        ["Hesper Quayle", "Tobin Marsh", "Ada Willowby", "Rufus Penhale", "Maren Lovdal", "Kit Farthing"];

    public string Folder => _folder.FullPath;

    public string this[string relative] => _folder[relative];

    public void Letters(double widthMm) => _folder.With(
        "letters.csv", "letter,width_mm,seconds\n" + string.Concat(
            "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
            .Select(c => string.Create(CultureInfo.InvariantCulture, $"{c},{widthMm},6\n")))
            + "blank,4,0\ngap,1,\nstart,,2\n");

    public void With(string file, string text) => _folder.With(file, text);

    public MakeReport Make(string header = "Name")
    {
        _folder.With("crew.csv", header + "\n" + string.Concat(Names.Select(n => n + "\n")));
        return Bander.Make(Folder);
    }

    public SewingReport Say(
        int first, int? last = null, SewingDeed deed = SewingDeed.Sewn, double? minutes = null, double? hands = null, string mark = "") =>
        Bander.Sewn(
            Folder, null, new SewingWord(0, deed, minutes, hands, When: "2026-11-25T20:00") { Names = (first, last ?? first), Mark = mark },
            () => Thread.Sleep(20));

    public SewingReport Finish(FinishingStep step, int round = 0, bool undone = false) => Bander.Sewn(
        Folder, null,
        new SewingWord(0, undone ? SewingDeed.Undone : SewingDeed.Done, When: "2026-11-25T20:00") { Step = step, Round = round },
        () => Thread.Sleep(20));

    public JsonElement Plan() => JsonDocument.Parse(File.ReadAllBytes(this["out/plan.json"])).RootElement;

    /// <summary>Number, place and width of each name of the plan by its text.</summary>
    public Dictionary<string, (int Number, double StartMm, double WidthMm)> Places() => Plan().GetProperty("rounds").EnumerateArray()
        .SelectMany(r => r.GetProperty("segments").EnumerateArray())
        .SelectMany(s =>
            s.GetProperty("names").EnumerateArray().Concat(s.TryGetProperty("gone", out var gone) ? gone.EnumerateArray() : []))
        .ToDictionary(
            n => n.GetProperty("text").GetString()!,
            n => (n.GetProperty("order").GetInt32(), n.GetProperty("startMm").GetDouble(), n.GetProperty("widthMm").GetDouble()));

    public List<Dictionary<string, string>> Sheet()
    {
        var table = CsvFile.Read(this["out"], "key-in.csv").Value!;
        return [.. table.Rows.Skip(1).Select(r => table.Rows[0].Fields.Zip(r.Fields).ToDictionary(p => p.First, p => p.Second))];
    }

    public void Dispose() => _folder.Dispose();
}
