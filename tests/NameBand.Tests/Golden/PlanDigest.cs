using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Tests.WholeLine;
using SixLabors.ImageSharp;
using UglyToad.PdfPig;

namespace NameBand.Tests.Golden;

/// <summary>An out folder on one line: what a person wants to know of it, and a fingerprint of each kind of its files.</summary>
internal static partial class PlanDigest
{
    private const int ShownDigits = 10;

    public static string Of(string outFolder)
    {
        var files = MadeFolder.Bytes(outFolder);
        byte[] plan = files["plan.json"];
        return string.Join(" | ", Summary(plan), string.Join(
            ", ",
            "plan " + Print([Encoding.UTF8.GetBytes(Steady(plan))]),
            "paths " + Print(files.Where(f => IsPath(f.Key)).Select(f => f.Value)),
            "worksheet " + Print(files.Where(f => f.Key == "worksheet.csv").Select(f => f.Value)),
            "key-in " + Print(files.Where(f => f.Key == "key-in.csv").Select(f => f.Value)),
            "sizes " + Print(files.Where(f => IsDrawn(f.Key)).Select(f => Encoding.UTF8.GetBytes(Size(f.Key, f.Value))))));
    }

    /// <summary>plan.json without the fingerprints of this build and of its pictures, and without the unrounded measurements.</summary>
    public static string Steady(byte[] plan) => OfThisBuild().Replace(Encoding.UTF8.GetString(plan), "");

    private static string Summary(byte[] bytes)
    {
        using var plan = JsonDocument.Parse(bytes);
        var totals = plan.RootElement.GetProperty("totals");
        string Of(string key) => totals.GetProperty(key).GetRawText();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"names {Of("names")}, rounds {plan.RootElement.GetProperty("rounds").GetArrayLength()}, hoopings {Of("hoopings")}, " +
            $"height {plan.RootElement.GetProperty("letterHeightMm").GetRawText()} mm, stitches {Of("stitches")}, " +
            $"minutes {Of("machineMinutes")} by machine and {Of("handsOnMinutes")} by hand");
    }

    private static bool IsPath(string file) => Path.GetDirectoryName(file) == "needle-paths" && Path.GetExtension(file) == ".csv";

    private static bool IsDrawn(string file) => Path.GetExtension(file) is ".png" or ".pdf";

    private static string Size(string file, byte[] bytes)
    {
        if (file.EndsWith(".pdf", StringComparison.Ordinal))
        {
            using var pdf = PdfDocument.Open(bytes);
            return string.Create(CultureInfo.InvariantCulture, $"{file} {pdf.NumberOfPages} pages\n");
        }

        var image = Image.Identify(bytes);
        return string.Create(CultureInfo.InvariantCulture, $"{file} {image.Width} x {image.Height}\n");
    }

    /// <returns>A dash for no file.</returns>
    public static string Print(IEnumerable<byte[]> files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        int count = 0;
        foreach (byte[] file in files)
        {
            hash.AppendData(file);
            count++;
        }

        return count == 0 ? "-" : Convert.ToHexStringLower(hash.GetHashAndReset())[..ShownDigits];
    }

    [GeneratedRegex("""^ *"(madeFrom|needlePathPrint|proofPrint|measured)": .*\n""", RegexOptions.Multiline)]
    private static partial Regex OfThisBuild();
}
