using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Output;
using NameBand.Output.Drawing;
using NameBand.Stitching;

namespace NameBand;

/// <summary>
/// Makes the files of one hooping after another: those that are sewn are taken from the folder of what is sewn, byte for
/// byte; those that would come out as they lie in the earlier out folder are taken from there; the others are sewn.
/// </summary>
internal sealed class HoopingWorks(Planning.Planned made, Stitcher stitcher, OutFolder folder, CaptionFace captions)
{
    private readonly StripPlan _plan = made.Plan;
    private readonly MadeFrom _madeFrom = new(made.Job, made.Plan, made.Fabric);
    private readonly ImmutableDictionary<string, EarlierHooping> _earlier = Earlier(folder.FullPath);
    private readonly ConcurrentDictionary<int, HoopingOrigin> _origins = new();
    private readonly ConcurrentBag<(int Hooping, Problem Problem)> _problems = [];

    public ImmutableDictionary<int, HoopingOrigin> Origins => _origins.ToImmutableDictionary();

    public ImmutableArray<Problem> Problems => [.. _problems.OrderBy(p => p.Hooping).Select(p => p.Problem)];

    public (HoopingFigures Figures, NeedlePath Path) Make(Hooping hooping)
    {
        string madeFrom = _madeFrom.Of(hooping);
        bool isSewn = made.Begun?.IsSewn(hooping.Number) ?? false;
        return (isSewn ? TakeSewn(hooping, madeFrom) : null) ?? TakeUnchanged(hooping, madeFrom, isSewn) ?? Sew(hooping, madeFrom, isSewn);
    }

    private (HoopingFigures, NeedlePath)? TakeSewn(Hooping hooping, string madeFrom)
    {
        byte[]? path = SewnFolder.Read(made.Job.Folder, OutPaths.NeedlePath(hooping.Number));
        byte[]? proof = SewnFolder.Read(made.Job.Folder, OutPaths.HoopingProof(hooping.Number));
        string said = made.Begun!.Log.Last(hooping.Number)?.Path ?? "";
        if (path is null || proof is null || NeedlePathReading.Read(path) is not { } read)
        {
            _problems.Add((hooping.Number, Problem.NeedsPerson(
                new Where($"{SewnFolder.Name}/{OutPaths.NeedlePath(hooping.Number)}"),
                FormattableString.Invariant($"Hooping {hooping.Number} is sewn, and its kept files are missing or no longer whole; they were made anew, and may differ from what is on the cloth."),
                $"Put the folder “{SewnFolder.Name}” back from a copy, if there is one.")));
            return null;
        }

        if (said.Length > 0 && said != SewingPrint.Of(path))
        {
            _problems.Add((hooping.Number, Problem.NeedsPerson(
                new Where(SewingLogFile.FileName),
                FormattableString.Invariant($"The log's hooping {hooping.Number} was sewn from another needle path ({said}) than the one that is kept ({SewingPrint.Of(path)})."),
                "The kept one was used. Compare its proof with the cloth; if they differ, put back the right files from a copy.")));
        }

        Keep(hooping, madeFrom, path, proof, isSewn: true);
        return (Measure(hooping, read) with { IsSewn = true }, read);
    }

    private (HoopingFigures, NeedlePath)? TakeUnchanged(Hooping hooping, string madeFrom, bool isSewn)
    {
        if (!_earlier.TryGetValue(madeFrom, out var earlier) || earlier.Number != hooping.Number
            || Earlier(OutPaths.NeedlePath(hooping.Number), earlier.PathPrint) is not { } path
            || Earlier(OutPaths.HoopingProof(hooping.Number), earlier.ProofPrint) is not { } proof
            || NeedlePathReading.Read(path) is not { } read)
        {
            return null;
        }

        foreach (var name in hooping.Segments.SelectMany(s => s.Segment.Names))
        {
            stitcher.Learn(name.Lettered);
        }

        Keep(hooping, madeFrom, path, proof, isSewn);
        return (Measure(hooping, read) with { IsSewn = isSewn }, read);
    }

    private (HoopingFigures, NeedlePath) Sew(Hooping hooping, string madeFrom, bool isSewn)
    {
        var path = NeedlePathReading.AsWritten(stitcher.SewHooping(_plan, hooping));
        var figures = Measure(hooping, path) with { IsSewn = isSewn };
        using var csv = new MemoryStream();
        NeedlePathCsv.Write(csv, path);
        using var png = new MemoryStream();
        HoopingProof.Draw(png, _plan, hooping, path, figures, captions, made.Job.Strip.SewnBeforeCutting, made.Fabric.Thread.DiameterMm);
        Keep(hooping, madeFrom, csv.GetBuffer().AsSpan(0, (int)csv.Length), png.GetBuffer().AsSpan(0, (int)png.Length), isSewn);
        return (figures, path);
    }

    private void Keep(Hooping hooping, string madeFrom, ReadOnlySpan<byte> path, ReadOnlySpan<byte> proof, bool isSewn)
    {
        Write(OutPaths.NeedlePath(hooping.Number), path);
        Write(OutPaths.HoopingProof(hooping.Number), proof);
        var last = made.Begun?.Log.Last(hooping.Number)?.Deed;
        _origins[hooping.Number] = new HoopingOrigin(
            madeFrom, MadeFrom.Fingerprint(path), MadeFrom.Fingerprint(proof), isSewn, last == SewingDeed.Again, last == SewingDeed.Patch);
    }

    private HoopingFigures Measure(Hooping hooping, NeedlePath path) =>
        HoopingMeter.Measure(hooping, _plan, path, made.Fabric, made.Job.Machine);

    private void Write(string relative, ReadOnlySpan<byte> bytes)
    {
        using var stream = folder.Create(relative);
        stream.Write(bytes);
    }

    /// <summary>A file of the earlier out folder, if it is still as we wrote it.</summary>
    private byte[]? Earlier(string relative, string print)
    {
        string path = Path.Combine(folder.FullPath, relative);
        return print.Length > 0 && File.Exists(path) && File.ReadAllBytes(path) is var bytes && MadeFrom.Fingerprint(bytes) == print ? bytes : null;
    }

    private static ImmutableDictionary<string, EarlierHooping> Earlier(string outFolder)
    {
        var plan = EarlierPlanFile.Read(Path.Combine(outFolder, OutPaths.Plan), OutPaths.Plan).Value;
        return (plan?.Hoopings ?? []).Where(h => h.MadeFrom.Length > 0).GroupBy(h => h.MadeFrom).ToImmutableDictionary(g => g.Key, g => g.First());
    }
}
