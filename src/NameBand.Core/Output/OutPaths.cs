using System.Globalization;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>Names of the files inside an out folder, with forward slashes as they stand in plan.json.</summary>
public static class OutPaths
{
    public const string Plan = "plan.json";
    public const string Swatch = "swatch.json";
    public const string ReadMeFirst = "read-me-first.txt";
    public const string Worksheet = "worksheet.csv";
    public const string Changes = "changes.csv";
    public const string EarlierMarks = "earlier-marks.csv";
    public const string KeyInTable = "key-in.csv";
    public const string Manifest = ".made-by-nameband.json";

    public const string CuttingPlan = "proofs/cutting-plan.png";

    public static string NeedlePath(int hooping) => PlanPaths.NeedlePath(hooping);

    /// <param name="paper">The paper size's word.</param>
    public static string KeyIn(string paper) => $"key-in-{paper}.pdf";

    /// <param name="paper">The paper size's word.</param>
    public static string Template(string paper) => $"template-{paper}.pdf";

    public static string HoopingProof(int hooping) => PlanPaths.HoopingProof(hooping);

    public static string LoadMap(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"proofs/load-{hooping:D3}.png");

    public static string RoundProof(int round) =>
        string.Create(CultureInfo.InvariantCulture, $"proofs/round-{round:D2}.png");

    public static string NeedleDrawing(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"needle-paths/hooping-{hooping:D3}.svg");

    public static string NeedleProgram(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"needle-paths/hooping-{hooping:D3}.nc");

    /// <summary>Every file that a hooping may have of its own.</summary>
    public static IEnumerable<string> OfHooping(int hooping) =>
        [NeedlePath(hooping), NeedleDrawing(hooping), NeedleProgram(hooping), HoopingProof(hooping), LoadMap(hooping), Playback(hooping)];

    /// <param name="paper">The paper size's word.</param>
    public static string WorkPacket(string paper) => $"sheets/work-packet-{paper}.pdf";

    /// <summary>One of several makers' own packet; called by her number in the workshop, and by nothing of the person.</summary>
    public static string PersonPacket(int person, string paper) =>
        string.Create(CultureInfo.InvariantCulture, $"sheets/maker-{person}-{paper}.pdf");

    /// <param name="paper">The paper size's word.</param>
    public static string ProofReading(string paper) => $"sheets/proof-reading-{paper}.pdf";

    public static string SwatchNeedlePath(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"needle-paths/swatch-{hooping:D2}.csv");

    public static string SwatchProgram(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"needle-paths/swatch-{hooping:D2}.nc");

    public static string SwatchProof(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"proofs/swatch-{hooping:D2}.png");

    /// <param name="paper">The paper size's word.</param>
    public static string SwatchSheet(string paper) => $"swatch-{paper}.pdf";

    public const string NameFinder = "sheets/name-finder.csv";

    /// <param name="paper">The paper size's word.</param>
    public static string NameFinderSheet(string paper) => $"sheets/name-finder-{paper}.pdf";

    /// <param name="paper">The paper size's word.</param>
    public static string HoopingTemplate(string paper) => $"sheets/template-{paper}.pdf";

    /// <param name="paper">The paper size's word.</param>
    public static string ThanksCards(string paper) => $"sheets/thanks-cards-{paper}.pdf";

    /// <param name="paper">The paper size's word.</param>
    public static string PaperRehearsal(string paper) => $"sheets/paper-rehearsal-{paper}.pdf";

    public const string ThanksTable = "thanks/thanks.csv";

    /// <summary>A number, and nothing of the person: it may be sent as it is, on any system.</summary>
    /// <param name="order">The name's number on the proofs.</param>
    public static string Thanks(int order) =>
        string.Create(CultureInfo.InvariantCulture, $"thanks/name-{order:D4}.png");

    public const string PublicPage = "index.html";
    public const string PublicPlaces = "places.json";

    /// <summary>A number, and nothing of the person.</summary>
    /// <param name="order">The name's number on the proofs.</param>
    public static string PublicPicture(int order) =>
        string.Create(CultureInfo.InvariantCulture, $"pictures/name-{order:D4}.svg");

    public static string Playback(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"playback/playback-{hooping:D3}.png");
}
