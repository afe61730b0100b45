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

        string pathPrint = folder.Create(OutPaths.NeedlePath(hooping.Number), stream => stream.Write(path));
        string proofPrint = folder.Create(OutPaths.HoopingProof(hooping.Number), stream => stream.Write(proof));
        double holes = LoadMeter.Measure(read, made.ClothOf(hooping.Number)).WorstLetterPerMm2;
        Note(hooping, new HoopingOrigin(madeFrom, pathPrint, proofPrint, holes, IsSewn: true));
        return (Measure(hooping, read) with { IsSewn = true }, read);
    }

    private (HoopingFigures, NeedlePath)? TakeUnchanged(Hooping hooping, string madeFrom, bool isSewn)
    {
        if (_earlier.Hooping(hooping.Number) is not { } earlier || earlier.MadeFrom != madeFrom
            || folder.Earlier(OutPaths.NeedlePath(hooping.Number), earlier.PathPrint) is not { } path
            || !folder.HasEarlier(OutPaths.HoopingProof(hooping.Number), earlier.ProofPrint)
            || NeedlePathReading.Read(path) is not { } read)
        {
            return null;
        }

        folder.TakeOver(OutPaths.NeedlePath(hooping.Number));
        folder.TakeOver(OutPaths.HoopingProof(hooping.Number));
        double holes = earlier.HolesPerMm2 ?? LoadMeter.Measure(read, made.Fabric).WorstLetterPerMm2;
        Note(hooping, new HoopingOrigin(madeFrom, earlier.PathPrint, earlier.ProofPrint, holes, isSewn)
        {
            // Letters that could not be read are worked out again, for the stitcher to speak of them.
            LettersRead = earlier.LettersRead is true || AreLettersRead(hooping),
        });
        return (Measure(hooping, read) with { IsSewn = isSewn }, read);
    }

    private (HoopingFigures, NeedlePath) Sew(Hooping hooping, string madeFrom, bool isSewn)
    {
        var path = NeedlePathReading.AsWritten(stitcher.SewHooping(_plan, hooping));
        var figures = Measure(hooping, path) with { IsSewn = isSewn };
        string pathPrint = folder.Create(OutPaths.NeedlePath(hooping.Number), stream => NeedlePathCsv.Write(stream, path));
        string proofPrint = folder.Create(OutPaths.HoopingProof(hooping.Number), stream => HoopingProof.Draw(
            stream, _plan, hooping, path, figures, captions, made.Job.Strip.SewnBeforeCutting, made.Fabric.Thread.DiameterMm));
        Note(hooping, new HoopingOrigin(madeFrom, pathPrint, proofPrint, LoadMeter.Measure(path, made.Fabric).WorstLetterPerMm2, isSewn)
        {
            LettersRead = AreLettersRead(hooping),
        });
        return (figures, path);
    }

    private bool AreLettersRead(Hooping hooping)
    {
        bool areRead = true;
        foreach (var name in hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs))
        {
            areRead &= stitcher.IsRead(name.Lettered);
        }

        return areRead;
    }

    /// <summary>The needle path that a hooping has in this plan: what is sewn is never stitched anew.</summary>
    public NeedlePath PathOf(Hooping hooping) => made.KeptPath(hooping.Number) ?? stitcher.SewHooping(_plan, hooping);

    /// <summary>Makes the proof of a round, or takes it from the earlier out folder where it would come out the same.</summary>
    /// <param name="figures">Of all hoopings, by their numbers.</param>
    public void MakeRound(Round round, IReadOnlyDictionary<int, HoopingFigures> figures)
    {
        string madeFrom = _madeFrom.Of(round, figures);
        string relative = OutPaths.RoundProof(round.Number);
        if (_earlier.Round(round.Number) is { } earlier && earlier.MadeFrom == madeFrom && folder.HasEarlier(relative, earlier.ProofPrint))
        {
            folder.TakeOver(relative);
            _roundOrigins[round.Number] = new RoundOrigin(madeFrom, earlier.ProofPrint);
            return;
        }

        string print = folder.Create(relative, stream => RoundProof.Draw(
            stream, _plan, round, figures, name => stitcher.SewName(name.Lettered), captions, made.Fabric.Thread.DiameterMm));
        _roundOrigins[round.Number] = new RoundOrigin(madeFrom, print);
    }

    private void Note(Hooping hooping, HoopingOrigin origin)
    {
        var last = made.Begun?.Log.Last(hooping.Number)?.Deed;
        _origins[hooping.Number] = origin with
        {
            IsAgain = last == SewingDeed.Again,
            IsPatch = last == SewingDeed.Patch,
            SewnAs = made.SewnAs(hooping.Number),
        };
    }

    private HoopingFigures Measure(Hooping hooping, NeedlePath path) =>
        HoopingMeter.Measure(hooping, _plan, path, made.ClothOf(hooping.Number), made.Job.Machine);
}
