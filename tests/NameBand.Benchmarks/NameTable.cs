using System.Diagnostics;
using System.Globalization;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Geometry;
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
            "face, mm | trims | least | loose threads, mm | over satin % mean, 95th, worst | of it over the stitch it leaves, mean "
            + "| the same in sight, worst | joins mm | longest | lock | crowded % | load | stitches | ms");
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
            Number(100 * paths.Average(LeavingPart), 2),
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

    /// <summary>
    /// Travel that lies over the satin stitch which the needle comes from, as a part of all thread: so much is over satin wherever a
    /// column is left sideways, in whatever order columns are sewn.
    /// </summary>
    private static double LeavingPart(NeedlePath path)
    {
        const double StepMm = 0.05; // As the measure of all travel over satin.
        double half = LetterTrial.Cotton.Thread.DiameterMm / 2;
        var (leaving, all) = (0.0, 0.0);
        for (int i = 1; i < path.Steps.Length; i++)
        {
            var (a, b) = (path.Steps[i - 1], path.Steps[i]);
            if (b.Action != NeedleAction.Stitch)
            {
                continue;
            }

            double length = a.At.DistanceTo(b.At);
            all += length;
            if (i < 2 || a is not { Action: NeedleAction.Stitch, Kind: StitchKind.Satin }
                || b.Kind is not (StitchKind.Travel or StitchKind.Underlay))
            {
                continue;
            }

            var from = Vec.From(path.Steps[i - 2].At);
            int parts = Math.Max(1, (int)(length / StepMm));
            for (int k = 0; k < parts; k++)
            {
                var p = Vec.From(a.At + ((b.At - a.At) * ((k + 0.5) / parts)));
                leaving += p.DistanceToSegment(from, Vec.From(a.At)) <= half ? length / parts : 0;
            }
        }

        return leaving / all;
    }

    private static string Number(double value, int places) =>
        Math.Round(value, places).ToString("F" + places, CultureInfo.InvariantCulture).PadLeft(6);
}
