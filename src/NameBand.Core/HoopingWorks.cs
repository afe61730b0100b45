using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Load;
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
    private readonly EarlierWorks _earlier = new(folder.FullPath);
    private readonly ConcurrentDictionary<int, HoopingOrigin> _origins = new();
    private readonly ConcurrentDictionary<int, RoundOrigin> _roundOrigins = new();
    private readonly ConcurrentBag<(int Hooping, Problem Problem)> _problems = [];

    public ImmutableDictionary<int, HoopingOrigin> Origins => _origins.ToImmutableDictionary();

    public ImmutableDictionary<int, RoundOrigin> RoundOrigins => _roundOrigins.ToImmutableDictionary();

    public ImmutableArray<Problem> Problems => [.. _problems.OrderBy(p => p.Hooping).Select(p => p.Problem)];

    public (HoopingFigures Figures, NeedlePath Path, double HolesPerMm2) Make(Hooping hooping)
    {
        string madeFrom = _madeFrom.Of(hooping);
        bool isSewn = made.Begun?.IsSewn(hooping.Number) ?? false;
        var (figures, path) = (isSewn ? TakeSewn(hooping, madeFrom) : null) ?? TakeUnchanged(hooping, madeFrom, isSewn) ?? Sew(hooping, madeFrom, isSewn);
        return (figures, path, _origins[hooping.Number].HolesPerMm2);
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

        Write(OutPaths.NeedlePath(hooping.Number), path);
        Write(OutPaths.HoopingProof(hooping.Number), proof);
        Note(hooping, madeFrom, path, proof, LoadMeter.Measure(read, made.ClothOf(hooping.Number)).WorstLetterPerMm2, isSewn: true);
        return (Measure(hooping, read) with { IsSewn = true }, read);
    }

    private (HoopingFigures, NeedlePath)? TakeUnchanged(Hooping hooping, string madeFrom, bool isSewn)
    {
        if (_earlier.Hooping(hooping.Number) is not { } earlier || earlier.MadeFrom != madeFrom
            || _earlier.File(OutPaths.NeedlePath(hooping.Number), earlier.PathPrint) is not { } path
            || _earlier.File(OutPaths.HoopingProof(hooping.Number), earlier.ProofPrint) is not { } proof
            || NeedlePathReading.Read(path) is not { } read)
        {
            return null;
        }

        foreach (var name in hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs))
        {
            stitcher.Learn(name.Lettered);
        }

        folder.TakeOver(OutPaths.NeedlePath(hooping.Number), path);
        folder.TakeOver(OutPaths.HoopingProof(hooping.Number), proof);
        Note(hooping, madeFrom, path, proof, earlier.HolesPerMm2 ?? LoadMeter.Measure(read, made.Fabric).WorstLetterPerMm2, isSewn);
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
        var pathBytes = csv.GetBuffer().AsSpan(0, (int)csv.Length);
        var proofBytes = png.GetBuffer().AsSpan(0, (int)png.Length);
        Write(OutPaths.NeedlePath(hooping.Number), pathBytes);
        Write(OutPaths.HoopingProof(hooping.Number), proofBytes);
        Note(hooping, madeFrom, pathBytes, proofBytes, LoadMeter.Measure(path, made.Fabric).WorstLetterPerMm2, isSewn);
        return (figures, path);
    }

    /// <summary>The needle path that a hooping has in this plan: what is sewn is never stitched anew.</summary>
    public NeedlePath PathOf(Hooping hooping) => made.KeptPath(hooping.Number) ?? stitcher.SewHooping(_plan, hooping);

    /// <summary>Makes the proof of a round, or takes it from the earlier out folder where it would come out the same.</summary>
    public void MakeRound(Round round, Estimate estimate)
    {
        string madeFrom = _madeFrom.Of(round, estimate.Hoopings.ToDictionary(h => h.Number));
        string relative = OutPaths.RoundProof(round.Number);
        if (_earlier.Round(round.Number) is { } earlier && earlier.MadeFrom == madeFrom && _earlier.File(relative, earlier.ProofPrint) is { } proof)
        {
            folder.TakeOver(relative, proof);
            _roundOrigins[round.Number] = new RoundOrigin(madeFrom, earlier.ProofPrint);
            return;
        }

        using var png = new MemoryStream();
        RoundProof.Draw(png, _plan, round, estimate.Hoopings, name => stitcher.SewName(name.Lettered), captions, made.Fabric.Thread.DiameterMm);
        var drawn = png.GetBuffer().AsSpan(0, (int)png.Length);
        Write(relative, drawn);
        _roundOrigins[round.Number] = new RoundOrigin(madeFrom, MadeFrom.Fingerprint(drawn));
    }

    private void Note(Hooping hooping, string madeFrom, ReadOnlySpan<byte> path, ReadOnlySpan<byte> proof, double holesPerMm2, bool isSewn)
    {
        var last = made.Begun?.Log.Last(hooping.Number)?.Deed;
        _origins[hooping.Number] = new HoopingOrigin(
            madeFrom, MadeFrom.Fingerprint(path), MadeFrom.Fingerprint(proof), holesPerMm2, isSewn, last == SewingDeed.Again, last == SewingDeed.Patch)
        {
            SewnAs = made.SewnAs(hooping.Number),
        };
    }

    private HoopingFigures Measure(Hooping hooping, NeedlePath path) =>
        HoopingMeter.Measure(hooping, _plan, path, made.ClothOf(hooping.Number), made.Job.Machine);

    private void Write(string relative, ReadOnlySpan<byte> bytes)
    {
        using var stream = folder.Create(relative);
        stream.Write(bytes);
    }
}
