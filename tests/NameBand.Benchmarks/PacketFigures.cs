using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using NameBand.Estimating;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Output;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;

namespace NameBand.Benchmarks;

/// <summary>
/// What printing costs: the packet of the sample beside its proofs, and the memory of a packet as the list grows. Each
/// run is a process of its own, so that its highest memory is its own. Figures only; nothing is judged here.
/// </summary>
internal static class PacketFigures
{
    private const int Runs = 5;

    public static int Run(string[] args)
    {
        if (args is ["child", var job, var what])
        {
            return Child(job, what);
        }

        if (!File.Exists("samples/lantern-walk/job.json"))
        {
            Console.Error.WriteLine("Run it in the project's folder.");
            return 2;
        }

        Times("samples/lantern-walk");
        string scratch = Directory.CreateTempSubdirectory("nameband-bench-").FullName;
        try
        {
            foreach (string kind in new[] { "print", "thanks" })
            {
                double before = 0;
                foreach (int count in new[] { 300, 3000 })
                {
                    before = Memory(scratch, count, kind, before);
                }
            }

            return 0;
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    /// <summary>Drawing alone, on one core, nothing written to a disk: the PNG proofs of the sample, and its packet on one paper.</summary>
    private static void Times(string job)
    {
        var made = Planning.Run(job, new FaceShelf(), default).Value!;
        var plan = made.Plan;
        using var captions = Sewing.OpenCaptionFace();
        var ratios = new List<double>();
        for (int run = 0; run <= Runs; run++)
        {
            // A stitcher of its own for each, so that neither finds letters that the other has worked out.
            var proofStitcher = new Stitcher(made.Fabric, plan.LetterHeightMm);
            var figures = ImmutableArray.CreateBuilder<HoopingFigures>();
            var watch = Stopwatch.StartNew();
            foreach (var hooping in plan.Hoopings)
            {
                var path = proofStitcher.SewHooping(plan, hooping);
                figures.Add(HoopingMeter.Measure(hooping, plan, path, made.Fabric, made.Job.Machine));
                HoopingProof.Draw(Stream.Null, plan, hooping, path, figures[^1], new ProofLook(captions));
            }

            var estimate = Estimator.Make(made.Job, plan, figures.ToImmutable());
            foreach (var round in plan.Rounds)
            {
                RoundProof.Draw(
                    Stream.Null, plan, round, estimate.ByNumber(), name => proofStitcher.SewName(name.Lettered), new ProofLook(captions));
            }

            double proofs = watch.Elapsed.TotalMilliseconds;
            var stitcher = new Stitcher(made.Fabric, plan.LetterHeightMm);
            watch.Restart();
            WorkPacket.Write(Stream.Null, Paper.A4, Sewing.PrintMatter(made, estimate, h => stitcher.SewHooping(plan, h)));
            double packet = watch.Elapsed.TotalMilliseconds;

            // The first pays for compiling.
            if (run > 0)
            {
                ratios.Add(packet / proofs);
                Say($"sample: PNG proofs {proofs:0} ms, work packet {packet:0} ms, {packet / proofs:0.00} times");
            }
        }

        Say($"median: {ratios.Order().ElementAt(Runs / 2):0.00} times");
    }

    private static double Memory(string scratch, int count, string what, double previous)
    {
        string job = Path.Combine(scratch, what + count.ToString(CultureInfo.InvariantCulture));
        Directory.CreateDirectory(job);
        WholeJob.WriteJob(Environment.CurrentDirectory, job, count);
        var (milliseconds, peakMb) = Start(job, what);
        Say($"{what}, {count} names: {milliseconds / 1000:0.0} s, peak memory {peakMb:0} MB{(previous > 0 ? $", {peakMb / previous:0.00} times that of a tenth" : "")}");
        return peakMb;
    }

    private static (double Milliseconds, double PeakMb) Start(string job, string what)
    {
        var start = OwnProgram.Again();
        start.RedirectStandardOutput = true;
        foreach (string word in new[] { "packet", "child", job, what })
        {
            start.ArgumentList.Add(word);
        }

        using var process = Process.Start(start)!;
        string[] said = process.StandardOutput.ReadToEnd().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        return (double.Parse(said[0], CultureInfo.InvariantCulture), double.Parse(said[1], CultureInfo.InvariantCulture));
    }

    /// <summary>One piece of work; prints its milliseconds and the process's highest memory in MB.</summary>
    private static int Child(string job, string what)
    {
        var watch = Stopwatch.StartNew();
        var report = Bander.Print(job, wishes: new PrintWishes(Thanks: what == "thanks"));
        double milliseconds = watch.Elapsed.TotalMilliseconds;
        using var self = Process.GetCurrentProcess();
        Say($"{milliseconds:0} {self.PeakWorkingSet64 / 1048576.0:0.0}");
        return report.Plan is null ? 1 : 0;
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
