using System.Globalization;
using NameBand.Job;
using NameBand.Tests;
using SkiaSharp;

namespace NameBand.Benchmarks;

/// <summary>How large the page for supporters becomes, without photos and with twenty of noise, the worst there is for a JPEG.</summary>
internal static class PublicFigures
{
    private const int Photos = 20;

    public static int Run(string[] counts)
    {
        foreach (int names in (counts.Length > 0 ? counts : ["60", "1000"]).Select(c => int.Parse(c, CultureInfo.InvariantCulture)))
        {
            using var job = new TemporaryFolder();
            string[] first = ["Ada", "Bo", "Cleo", "Dara", "Ewan", "Fern", "Gil", "Ida", "Jory", "Merryn"];
            string[] last = ["Marsh", "Reed", "Weir", "Alder", "Otter", "Sluice", "Brook", "Quill", "Ost", "Holm"];
            var list = Enumerable.Range(0, names)
                .Select(i => $"{first[i % 10]} {last[i / 10 % 10]}{(i < 100 ? "" : " " + (char)('A' + (i / 100)))},yes\n");
            job.With("names.csv", "Name,Show on the web?\n" + string.Concat(list)).With("job.json", """
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "4 m", "turn": 0 }, "strip": { "rounds": "asNeeded" },
                    "lettering": { "height": "9 mm" } }
                """);
            Bander.Make(job.FullPath);
            Print(names, "without photos", Bander.Public(job.FullPath));
            Directory.CreateDirectory(job["photos"]);
            for (int i = 1; i <= Photos; i++)
            {
                Bander.Sewn(job.FullPath, null, new SewingWord(i, SewingDeed.Sewn, null, When: "2026-11-25T20:00"), () => { });
                job.With($"photos/hooping-{i}.jpg", Noise(i));
            }

            Print(names, "with photos", Bander.Public(job.FullPath));
        }

        return 0;
    }

    private static void Print(int names, string what, PublicReport made)
    {
        double megabytes = new FileInfo(Path.Combine(made.Folder!, "index.html")).Length / 1e6;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{names} names, {what}: {made.Shown} shown, {made.Photos} photos, {megabytes:0.00} MB"));
    }

    private static byte[] Noise(int seed)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(1600, 1200, SKColorType.Rgba8888, SKAlphaType.Opaque));
        new Random(seed).NextBytes(bitmap.GetPixelSpan());
        using var encoded = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        return encoded.ToArray();
    }
}
