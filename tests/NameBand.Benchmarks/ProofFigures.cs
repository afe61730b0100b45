using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Drawing;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;

namespace NameBand.Benchmarks;

/// <summary>
/// Times what is written for a job: proofs, needle paths against copying the same bytes with cp, and an exchange of
/// folders. Names are set letter by letter from a font file, so the figures are of the Output room alone.
/// </summary>
internal static class ProofFigures
{
    public static int Run(string[] args)
    {
        if (args is not [var jobFolder, var fontFile, .. var rest])
        {
            Console.Error.WriteLine("Benchmarks: proofs JOB FONTFILE [--pictures DIR | --parts]");
            return 64;
        }

        string target = rest is ["--pictures", var folder] ? folder : Directory.CreateTempSubdirectory("nameband-proofs-").FullName;
        Directory.CreateDirectory(target);
        var job = JobReader.Read(jobFolder).Value ?? throw new InvalidDataException("The job cannot be read.");
        var hem = HemPlanner.Plan(job).Value!;
        var fabric = FabricTable.Find(job.Fabric)!;
        using var letters = new FaceFileReader(fontFile);
        var plan = LayoutPlanner.Plan(job, hem, new LetteredList("x", Letter(jobFolder, job, letters), []), fabric).Value!;
        var stitcher = new Stitcher(fabric, plan.LetterHeightMm);
        var paths = plan.Hoopings.ToDictionary(h => h.Number, h => stitcher.SewHooping(plan, h));
        var figures = plan.Hoopings
            .Select(h => HoopingMeter.Measure(h, plan, paths[h.Number], fabric, job.Machine)).ToImmutableArray();
        long steps = paths.Values.Sum(p => (long)p.Steps.Length);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{plan.NameCount} names, {plan.Hoopings.Length} hoopings, {steps} steps, letters {plan.LetterHeightMm:0.0} mm"));

        using var face = CaptionFace.FromFile(fontFile);
        for (int run = 1; run <= 3; run++)
        {
            Measure($"hooping proofs, run {run}", plan.Hoopings.Length, "proof", () =>
            {
                long bytes = 0;
                foreach (var hooping in plan.Hoopings)
                {
                    using var file =
                        new FileStream(
                            Path.Combine(target, Path.GetFileName(OutPaths.HoopingProof(hooping.Number))), FileMode.Create,
                            FileAccess.Write, FileShare.Read, 0);
                    HoopingProof.Draw(
                        file, plan, hooping, paths[hooping.Number], figures.First(f => f.Number == hooping.Number), new ProofLook(face));
                    bytes += file.Length;
                }

                return bytes;
            });
        }

        if (rest is ["--parts"])
        {
            Parts(plan, paths, figures, face);
        }

        for (int run = 1; run <= 2; run++)
        {
            Measure($"round proofs, run {run}", plan.Rounds.Length, "proof", () =>
            {
                long bytes = 0;
                foreach (var round in plan.Rounds)
                {
                    using var file =
                        new FileStream(
                            Path.Combine(target, Path.GetFileName(OutPaths.RoundProof(round.Number))), FileMode.Create, FileAccess.Write,
                            FileShare.Read, 0);
                    RoundProof.Draw(
                        file, plan, round, figures.ToDictionary(f => f.Number), name => stitcher.SewName(name.Lettered),
                        new ProofLook(face));
                    bytes += file.Length;
                }

                return bytes;
            });
        }

        MeasureCsv(target, paths.Values);
        MeasureCsvFiles(target, [.. paths.Values]);
        foreach (double metres in new double[] { 30, 300 })
        {
            MeasureLongRound(plan, metres, stitcher, face);
        }

        return 0;
    }

    /// <summary>The first round's names over and over along a strip of many metres: memory must not follow.</summary>
    private static void MeasureLongRound(StripPlan plan, double metres, Stitcher stitcher, CaptionFace face)
    {
        var round = plan.Rounds[0];
        int times = (int)Math.Ceiling(metres * 1000 / round.LengthMm);
        var segments = Enumerable.Range(0, times).SelectMany(n => round.Segments.Select(s => s with
        {
            StartMm = s.StartMm + (n * round.LengthMm),
            Names = [.. s.Names.Select(name => name with { StartMm = name.StartMm + (n * round.LengthMm) })],
        }));
        var whole = round with { LengthMm = times * round.LengthMm, HemMm = times * round.LengthMm, Segments = [.. segments] };
        var without = plan with { Hoopings = [] };
        GC.Collect();
        long before = GC.GetTotalMemory(true);
        Measure($"round of {metres} m", 1, "proof", () =>
        {
            using var file = File.Create(Path.GetTempFileName(), 1, FileOptions.DeleteOnClose);
            RoundProof.Draw(
                file, without, whole, new Dictionary<int, HoopingFigures>(), name => stitcher.SewName(name.Lettered),
                new ProofLook(face));
            return file.Length;
        });
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"    kept after it {(GC.GetTotalMemory(false) - before) / 1e6:0} MB; largest working set of the run {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB"));
    }

    private static void Parts(StripPlan plan, Dictionary<int, NeedlePath> paths, ImmutableArray<HoopingFigures> figures, CaptionFace face)
    {
        using var picture = new IndexedBitmap(1360, 0, 989, 8);
        for (int run = 0; run < 3; run++)
        {
            Measure("whole, to nowhere", plan.Hoopings.Length, "proof", () =>
            {
                foreach (var h in plan.Hoopings)
                {
                    HoopingProof.Draw(Stream.Null, plan, h, paths[h.Number], figures.First(f => f.Number == h.Number), new ProofLook(face));
                }

                return 0;
            });
            Measure("thread", plan.Hoopings.Length, "proof", () =>
            {
                foreach (var h in plan.Hoopings)
                {
                    ThreadLayer.Draw(
                        picture, paths[h.Number].Steps.AsSpan(), (100, 500), ThreadKinds.Names, (Palette.ThreadAt, Palette.ThreadShades));
                }

                return 0;
            });
            Measure("weave", plan.Hoopings.Length, "proof", () =>
            {
                foreach (var h in plan.Hoopings)
                {
                    ClothWeave.At(8).Lay(picture, 0, 0, 1360, 989, 0);
                }

                return 0;
            });
            Measure("png", plan.Hoopings.Length, "proof", () =>
            {
                foreach (var h in plan.Hoopings)
                {
                    using var png = new PngStream(Stream.Null, 1360, 989, 8, DyePalette.Usual.Colours);
                    png.WriteRows(picture.Bytes);
                }

                return 0;
            });
        }
    }

    private static void MeasureCsv(string target, IEnumerable<NeedlePath> paths)
    {
        // One long path, so that the rate is that of the writing and not of opening files.
        var all = paths.SelectMany(p => p.Steps).ToArray();
        var longPath = new NeedlePath([.. Enumerable.Range(0, Math.Max(1, 4_000_000 / all.Length)).SelectMany(_ => all)]);
        string one = Path.Combine(target, "long.csv");
        string other = Path.Combine(target, "copy.csv");
        for (int run = 1; run <= 3; run++)
        {
            File.Delete(one);
            Measure($"needle path CSV, run {run}", longPath.Steps.Length / 1_000_000.0, "million rows", () =>
            {
                using var file = new FileStream(one, FileMode.Create, FileAccess.Write, FileShare.Read, 0);
                NeedlePathCsv.Write(file, longPath);
                return file.Length;
            });
            File.Delete(other);
            Measure($"cp of the same bytes, run {run}", 1, "file", () =>
            {
                using var copy = Process.Start("cp", ["--reflink=never", one, other]);
                copy.WaitForExit();
                return new FileInfo(other).Length;
            });
        }

        File.Delete(one);
        File.Delete(other);
    }

    /// <summary>The job's own files over and over, on as many cores as a whole command uses.</summary>
    private static void MeasureCsvFiles(string target, NeedlePath[] paths)
    {
        const int Files = 6000;
        string one = Path.Combine(target, "paths");
        string other = Path.Combine(target, "copies");
        for (int run = 1; run <= 3; run++)
        {
            Directory.CreateDirectory(one);
            Measure($"{Files} needle paths, run {run}", Files, "file", () =>
            {
                long bytes = 0;
                Parallel.For(0, Files, i =>
                {
                    using var file =
                        new PrintedFile(
                            new FileStream(Path.Combine(one, $"{i}.csv"), FileMode.Create, FileAccess.Write, FileShare.Read, 0), _ => { });
                    NeedlePathCsv.Write(file, paths[i % paths.Length]);
                    file.Flush();
                    Interlocked.Add(ref bytes, new FileInfo(Path.Combine(one, $"{i}.csv")).Length);
                });
                return bytes;
            });
            Measure($"cp -r of the same files, run {run}", Files, "file", () =>
            {
                using var copy = Process.Start("cp", ["-r", "--reflink=never", one, other]);
                copy.WaitForExit();
                return Directory.EnumerateFiles(other).Sum(f => new FileInfo(f).Length);
            });
            Directory.Delete(one, recursive: true);
            Directory.Delete(other, recursive: true);
        }
    }

    private static void Measure(string what, double count, string unit, Func<long> work)
    {
        var cpu = Process.GetCurrentProcess().TotalProcessorTime;
        long before = GC.GetTotalAllocatedBytes();
        var watch = Stopwatch.StartNew();
        long bytes = work();
        watch.Stop();
        double cpuMs = (Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalMilliseconds;
        double ms = watch.Elapsed.TotalMilliseconds;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what,-28} {ms,8:0.0} ms wall {cpuMs,8:0.0} ms processor {ms / count,8:0.00} ms/{unit}, {bytes / 1e6:0.00} MB, {bytes / 1e6 / (ms / 1000):0} MB/s, {(GC.GetTotalAllocatedBytes() - before) / 1e6:0.0} MB allocated"));
    }

    private static ImmutableArray<LetteredName> Letter(string jobFolder, BandJob job, FaceFileReader letters)
    {
        var names = ImmutableArray.CreateBuilder<LetteredName>();
        string[] lines = File.ReadAllLines(Path.Combine(jobFolder, job.Lists[0]));
        for (int i = 1; i < lines.Length; i++)
        {
            string text = lines[i].Split(',')[0].Trim();
            if (text.Length > 0 && letters.Has(text))
            {
                var (pieces, ink) = letters.Line(text);
                names.Add(new LetteredName(new Name(text, new RowRef(job.Lists[0], i + 1)), pieces, ink));
            }
        }

        return names.ToImmutable();
    }
}
