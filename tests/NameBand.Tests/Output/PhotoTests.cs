using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Tests.CommandLine;
using NameBand.Tests.Outside;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>Photos of what is sewn: without what the camera wrote, and only where every owner of a name on them said yes.</summary>
public sealed partial class PhotoTests(PhotoTests.Sewn sewn) : IClassFixture<PhotoTests.Sewn>
{
    public const string Secret = "Ropewalk 7, by the weir";

    /// <summary>Four hoopings, the last two not logged; in the second somebody said no to the web.</summary>
    public sealed class Sewn : IDisposable
    {
        public Sewn()
        {
            Folder.With(
                "names.csv", "Name,Show on the web?\nAda Marsh,yes\nBo Reed,yes\nCleo Weir,yes\nDara Ost,no\nEwan Pellow,yes\nFern Alder,yes\n")
                .With("job.json",
                    """{ "lists": ["names.csv"], "hem": { "length": "500 mm", "turn": 0, "closed": false }, "lettering": { "height": "9 mm" }, "marks": "drawn" }""");
            var plan = Bander.Make(Folder.FullPath).Plan!;
            Assert.Equal(["Ada Marsh|Bo Reed", "Cleo Weir|Dara Ost", "Ewan Pellow", "Fern Alder"],
                plan.Hoopings.Select(h => string.Join('|', h.Segments.SelectMany(s => s.Segment.Names).Select(n => n.Lettered.Name.Text))));
            Assert.InRange(CliRun.Of("sewn", Folder.FullPath, "1").Status, 0, 1);
            Assert.InRange(CliRun.Of("sewn", Folder.FullPath, "2").Status, 0, 1);
            Directory.CreateDirectory(Folder["photos"]);
            Folder.With("photos/hooping-1.jpg", Photo(400, 300, turned: true)).With("photos/Hooping_001-back.PNG", Photo(80, 40, png: true))
                .With("photos/hooping-2.jpg", Photo(60, 40)).With("photos/hooping-3.jpg", Photo(60, 40))
                    .With("photos/hem.jpg", Photo(60, 40))
                .With("photos/hooping-9.jpg", Photo(60, 40)).With("photos/ada.jpg", Photo(60, 40))
                .With("photos/hooping-1-text.jpg", "this is no photo").With("photos/hooping-1-cut.jpg", Photo(300, 300)[..2500]);
            using (var big = File.Create(Folder["photos/hooping-1-big.jpg"]))
            {
                big.Write(Photo(60, 40));
                big.SetLength(60_000_000);
            }

            Report = Bander.Public(Folder.FullPath);
        }

        public TemporaryFolder Folder { get; } = new();

        public PublicReport Report { get; }

        public void Dispose() => Folder.Dispose();

        /// <summary>Left half red, right half blue, and all that a camera may write beside it.</summary>
        private static byte[] Photo(int wide, int high, bool turned = false, bool png = false)
        {
            using var image = new Image<Rgb24>(wide, high);
            for (int i = 0; i < wide * high; i++)
            {
                image[i % wide, i / wide] = i % wide < wide / 2 ? new Rgb24(200, (byte)(i % 37), 20) : new Rgb24(20, (byte)(i % 41), 200);
            }

            var exif = image.Metadata.ExifProfile = new ExifProfile();
            exif.SetValue(ExifTag.ImageDescription, Secret);
            exif.SetValue(ExifTag.Artist, Secret);
            exif.SetValue(ExifTag.GPSLatitude, [new Rational(51), new Rational(30), new Rational(1)]);
            exif.SetValue(ExifTag.GPSLatitudeRef, "N");
            exif.SetValue(ExifTag.Orientation, (ushort)(turned ? 6 : 1));
            using var stream = new MemoryStream();
            if (png)
            {
                image.Metadata.GetPngMetadata().TextData.Add(new SixLabors.ImageSharp.Formats.Png.PngTextData("Comment", Secret, "", ""));
                image.SaveAsPng(stream);
            }
            else
            {
                image.SaveAsJpeg(stream);
            }

            return stream.ToArray();
        }
    }

    [Fact]
    public void A_photo_is_shown_only_where_every_name_on_it_said_yes_and_is_sewn()
    {
        Assert.Equal(2, sewn.Report.Photos);
        var photos = Photos();
        Assert.All(photos, p => Assert.Equal([1, 2], p.Names));
        Assert.Equal([(300, 400), (80, 40)], photos.Select(p => (p.Wide, p.High)).OrderDescending());
        var told = sewn.Report.Problems.Where(p => p.Where.File?.StartsWith("photos/", StringComparison.Ordinal) == true)
            .ToDictionary(p => p.Where.File!["photos/".Length..], p => p);
        Assert.Equal("Not shown: 1 of the 2 names on it has no yes to the web.", told["hooping-2.jpg"].Found);
        Assert.Equal(Severity.Note, told["hooping-2.jpg"].Severity);
        Assert.Contains("not logged as sewn", told["hooping-3.jpg"].Found.English, StringComparison.Ordinal);
        Assert.Contains("not logged as sewn", told["hem.jpg"].Found.English, StringComparison.Ordinal);
        Assert.Contains("neither JPEG nor PNG", told["hooping-1-text.jpg"].Found.English, StringComparison.Ordinal);
        Assert.Contains("not whole", told["hooping-1-cut.jpg"].Found.English, StringComparison.Ordinal);
        Assert.Equal("This photo has 60 MB; more than 40 MB are not read.", told["hooping-1-big.jpg"].Found);
        Assert.All(new[] { "ada.jpg", "hooping-9.jpg" }, f => Assert.Contains("not clear", told[f].Found.English, StringComparison.Ordinal));
        Assert.Equal(8, told.Count);
    }

    [Fact]
    public void What_the_camera_wrote_is_in_no_byte_and_the_photo_stands_upright()
    {
        foreach (string file in Directory.GetFiles(sewn.Report.Folder!, "*", SearchOption.AllDirectories))
        {
            Assert.DoesNotContain("Ropewalk", Encoding.Latin1.GetString(File.ReadAllBytes(file)), StringComparison.Ordinal);
        }

        foreach (var photo in Photos())
        {
            Assert.DoesNotContain("Ropewalk", Encoding.Latin1.GetString(photo.Jpeg), StringComparison.Ordinal);
            Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(photo.Jpeg), StringComparison.Ordinal);
        }

        // Turned a quarter to the right, as the camera said: what lay left lies above.
        using var upright = Image.Load<Rgb24>(Photos().Single(p => p.High == 400).Jpeg);
        Assert.True(upright[150, 40] is { R: > 150, B: < 90 }, $"{upright[150, 40]}");
        Assert.True(upright[150, 360] is { R: < 90, B: > 150 }, $"{upright[150, 360]}");
    }

    [SkippableFact]
    public void Another_reader_finds_nothing_but_pixels()
    {
        OutsideTool.Require("exiftool", "libimage-exiftool-perl");
        Assert.Contains(
            "Ropewalk", OutsideTool.Run("exiftool", ["-a", "-G1", sewn.Folder["photos/hooping-1.jpg"]]), StringComparison.Ordinal);
        foreach (var photo in Photos())
        {
            using var folder = new TemporaryFolder().With("shown.jpg", photo.Jpeg);
            string[] groups =
                [.. OutsideTool.Run("exiftool", ["-a", "-u", "-G1", "-s", folder["shown.jpg"]])
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Select(l => l.Split(']')[0].TrimStart('[')).Distinct()];
            Assert.Equal([], groups.Except(["ExifTool", "System", "File", "JFIF", "Composite"]));
        }
    }

    /// <summary>
    /// Photos of noise, the worst there is for a JPEG: large ones are made smaller, and of too many the last ones are told.
    /// </summary>
    [Fact]
    public void The_page_stays_under_its_size_with_photos()
    {
        using var job = new TemporaryFolder();
        foreach (string file in Directory.GetFiles(sewn.Folder.FullPath, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(sewn.Folder.FullPath, f)))
        {
            if (!file.StartsWith("photos", StringComparison.Ordinal) && !file.StartsWith("public", StringComparison.Ordinal))
            {
                Directory.CreateDirectory(Path.GetDirectoryName(job[file])!);
                job.With(file, File.ReadAllBytes(sewn.Folder[file]));
            }
        }

        Directory.CreateDirectory(job["photos"]);
        for (int i = 0; i < 6; i++)
        {
            job.With($"photos/hooping-1-{i:00}.jpg", Noise(760, 570, i));
        }

        var few = Bander.Public(job.FullPath);
        Assert.Equal(6, few.Photos);
        Assert.InRange(new FileInfo(Path.Combine(few.Folder!, "index.html")).Length, 1_000_000, 2_000_000);

        byte[] small = Noise(280, 210, 99);
        for (int i = 6; i < 66; i++)
        {
            job.With($"photos/hooping-1-{i:00}.jpg", small);
        }

        var many = Bander.Public(job.FullPath);
        Assert.InRange(new FileInfo(Path.Combine(many.Folder!, "index.html")).Length, 1_000_000, 2_000_000);
        int told = many.Problems.Count(p =>
            p.Found.English.StartsWith("There is no room for this photo: with it the page would have more than 2.0 MB.", StringComparison.Ordinal));
        Assert.Equal(66, many.Photos + told);
        Assert.InRange(told, 1, 65);
    }

    /// <summary>Names of two rounds lie in one hooping, and are logged one by one: until the last is, who is on it can
    /// still change.</summary>
    [Fact]
    public void A_hooping_of_typed_names_is_shown_once_those_of_every_strip_are_sewn()
    {
        using var job = new TemporaryFolder()
            .With("names.csv", "Name,Show on the web?\nAda Marsh,yes\nBo Reed,yes\nCleo Weir,yes\nDara Ost,yes\n")
            .With("job.json", """
                { "lists": ["names.csv"], "hem": { "length": "300 mm", "turn": 0 }, "way": "machineLetters",
                  "letters": { "hooped": true, "sizes": ["9 mm"] }, "strip": { "rounds": 2, "stripsSideBySide": 2 } }
                """);
        var plan = Bander.Make(job.FullPath).Plan!;
        int[] onIt = [.. plan.Hoopings[0].Segments.SelectMany(s => s.Segment.Names).Select(n => n.Order)];
        Assert.Equal(2, plan.Hoopings[0].Segments.Length);
        Directory.CreateDirectory(job["photos"]);
        job.With("photos/hooping-1.jpg", Noise(60, 40, 1));

        for (int sewn = 0; sewn < onIt.Length; sewn++)
        {
            Assert.Equal(0, Bander.Public(job.FullPath).Photos);
            Assert.InRange(CliRun.Of("sewn", job.FullPath, FormattableString.Invariant($"n{onIt[sewn]}")).Status, 0, 1);
        }

        Assert.Equal(1, Bander.Public(job.FullPath).Photos);
    }

    private static byte[] Noise(int wide, int high, int seed)
    {
        var random = new Random(seed);
        using var image = new Image<Rgb24>(wide, high);
        for (int i = 0; i < wide * high; i++)
        {
            image[i % wide, i / wide] = new Rgb24((byte)random.Next(256), (byte)random.Next(256), (byte)random.Next(256));
        }

        using var stream = new MemoryStream();
        image.SaveAsJpeg(stream);
        return stream.ToArray();
    }

    private List<(int[] Names, byte[] Jpeg, int Wide, int High)> Photos()
    {
        string page = File.ReadAllText(Path.Combine(sewn.Report.Folder!, "index.html"));
        using var data = JsonDocument.Parse(Data().Match(page).Groups[1].Value);
        return [.. data.RootElement.GetProperty("photos").EnumerateArray().Select(p => (
            p.GetProperty("n").EnumerateArray().Select(n => n.GetInt32()).ToArray(), p.GetProperty("j").GetBytesFromBase64(),
            p.GetProperty("w").GetInt32(), p.GetProperty("h").GetInt32()))];
    }

    [GeneratedRegex("id=\"data\">(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Data();
}
