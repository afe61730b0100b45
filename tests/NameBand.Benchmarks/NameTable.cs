using System.Diagnostics;
using System.Globalization;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;

namespace NameBand.Benchmarks;

/// <summary>Prints how whole names are gone through (cuts, loose threads, travel), and draws them.</summary>
internal static class NameTable
{
    public static int Run(string[] args)
    {
        List<double> heights = [];
        List<string> folders = [];
        IReadOnlyList<string> texts = TrialNames.All;
        string? pictures = null;
        float scale = 12;
        var settings = new SewingSettings();
        for (int i = 0; i < args.Length; i++)
        {
            switch (args[i])
            {
                case "--height":
                    heights.Add(double.Parse(args[++i], CultureInfo.InvariantCulture));
                    break;
                case "--join":
                    settings = new SewingSettings(double.Parse(args[++i], CultureInfo.InvariantCulture));
                    break;
                case "--names":
                    texts = args[++i].Split(',');
                    break;
                case "--scale":
                    scale = float.Parse(args[++i], CultureInfo.InvariantCulture);
                    break;
                case "--pictures":
                    pictures = args[++i];
                    break;
                default:
                    folders.Add(args[i]);
                    break;
            }
        }

        heights = heights.Count > 0 ? heights : [8, 10, 12];
        var shelf = new FaceShelf();
        Console.WriteLine(
            "face, mm | trims | least | loose threads, mm | over satin % mean, 95th, worst | the same in sight, worst "
            + "| joins mm | longest | lock | crowded % | load | stitches | ms");
        foreach (string folder in folders.Count > 0 ? folders : ["nunito-bold", "vollkorn-bold", "roboto-slab-bold", "pacifico"])
        {
            var face = shelf.Open(shelf.Cards.Single(c => c.Folder == folder)).Value!;
            Name[] names = [.. texts.Select((t, i) => new Name(t, new RowRef("names.csv", i + 2)))];
            var lettered = Letterer.Letter(new NameList([], [.. names]), face, shelf).Value!.Names;
            foreach (double height in heights)
            {
                One(folder, lettered, height, settings, (pictures, scale));
            }
        }

        return 0;
    }

    private static void One(
        string folder, IReadOnlyList<LetteredName> names, double height, SewingSettings settings, (string? Folder, float Scale) pictures)
    {
        var stitcher = new Stitcher(LetterTrial.Cotton, height, settings);
        var clock = Stopwatch.StartNew();
        var paths = names.Select(stitcher.SewName).ToList();
        double ms = clock.Elapsed.TotalMilliseconds / names.Count;
        var outlines = names.Select(n => NameMeasure.OutlineOf(n, height)).ToList();
        var all = names.Select((n, i) => NameMeasure.Of(paths[i], outlines[i], LetterTrial.Cotton.Thread.DiameterMm)).ToList();
        double least = names.Average(n => 1.0 + CutBound.Of(n, height, 2.4));
        double Part(double part, Func<NameMeasure, double> of) => all.Select(of).Order().ElementAt((int)(part * (all.Count - 1)));
        string[] cells =
        [
            $"{folder,-20} {height,3}", Number(all.Average(m => m.Trims), 2), Number(least, 2), Number(all.Average(m => m.LooseThreads), 1),
            Number(all.Average(m => m.LooseMm), 1), Number(100 * all.Average(m => m.OverSatinPart), 2),
            Number(100 * Part(0.95, m => m.OverSatinPart), 2), Number(100 * Part(1, m => m.OverSatinPart), 2),
            Number(100 * Part(1, m => m.OverSatinSeenPart), 2),
            Number(all.Average(m => m.JoinsMm), 1),
            Number(all.Max(m => m.LongestJoinMm), 2), Number(all.Min(m => m.ShortestLockMm), 2), Number(100 * Part(0.5, m => m.Crowded), 1),
            Number(Part(1, m => m.Load), 1), Number(all.Average(m => m.Stitches), 0), Number(ms, 1),
        ];
        Console.WriteLine(string.Join("  ", cells));
        if (pictures.Folder is { } to)
        {
            Directory.CreateDirectory(to);
            var drawn = names.Select((n, i) => ($"{n.Name.Text}, {all[i].Trims} trims", outlines[i], paths[i])).ToList();
            string file = string.Create(CultureInfo.InvariantCulture, $"{folder}-{height}.png");
            ThreadPicture.SaveNames(Path.Combine(to, file), drawn, pictures.Scale, 0.4);
        }
    }

    private static string Number(double value, int places) =>
        Math.Round(value, places).ToString("F" + places, CultureInfo.InvariantCulture).PadLeft(6);
}
