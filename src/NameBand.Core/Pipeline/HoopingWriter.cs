using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Load;
using NameBand.Output;
using NameBand.Output.Drawing;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>
/// Makes the files of one hooping after another: those that are sewn are taken from the folder of what is sewn, byte for
/// byte; those that would come out as they lie in the earlier out folder are taken from there; the others are sewn.
/// </summary>
internal sealed class HoopingWriter(LaidOut made, IPieceSewing sewing, PreviousOutput earlierWorks, OutFolder folder, CaptionFace captions)
{
    private readonly StripPlan _plan = made.Plan;
    private readonly InputFingerprint _madeFrom = new(made.Job, made.Plan, made.Fabric);
    private readonly ConcurrentDictionary<int, HoopingOrigin> _origins = new();
    private readonly ConcurrentDictionary<int, RoundOrigin> _roundOrigins = new();
    private readonly ConcurrentDictionary<int, NameStyle> _styles = new();
    private readonly Lazy<Dictionary<int, string?>> _sewnStyles = new(
        () => made.Begun?.Plan.Names.GroupBy(n => n.Order).ToDictionary(g => g.Key, g => g.First().Style) ?? []);
    private readonly ConcurrentBag<(int Hooping, Problem Problem)> _problems = [];

    public ImmutableDictionary<int, HoopingOrigin> Origins => _origins.ToImmutableDictionary();

    public ImmutableDictionary<int, RoundOrigin> RoundOrigins => _roundOrigins.ToImmutableDictionary();

    /// <summary>Of the names, by their order; those sewn from a plan that did not say are missing.</summary>
    public ImmutableDictionary<int, NameStyle> Styles => _styles.ToImmutableDictionary();

    public ImmutableArray<Problem> Problems => [.. _problems.OrderBy(p => p.Hooping).Select(p => p.Problem)];

    /// <returns>With the needle path, which is read only when it is asked for.</returns>
    public (HoopingFigures Figures, Func<NeedlePath> Path, HoopingLoad Load) Make(Hooping hooping)
    {
        string madeFrom = _madeFrom.Of(hooping, sewing.MadeBy(hooping));
        bool isSewn = made.Begun?.IsSewn(hooping.Number) ?? false;
        var (origin, path) = (isSewn ? TakeSewn(hooping, madeFrom) : null) ?? TakeUnchanged(hooping, madeFrom, isSewn)
            ?? Sew(hooping, madeFrom, isSewn);
        _origins[hooping.Number] = origin;
        NoteStyles(hooping, isSewn);
        return (origin.Figures with { IsSewn = isSewn }, path, new HoopingLoad(hooping.Number, origin.HolesPerMm2, origin.Spot));
    }

    /// <summary>
    /// Of what is sewn as the plan said that it was sewn from, of what is taken over as the earlier plan said: no letter is
    /// worked out for it.
    /// </summary>
    private void NoteStyles(Hooping hooping, bool isSewn)
    {
        bool isTaken = earlierWorks.Hooping(hooping.Number)?.MadeFrom == _origins[hooping.Number].MadeFrom;
        foreach (var name in hooping.Segments.SelectMany(s => s.Segment.Names))
        {
            var style = isSewn ? RoundScribe.StyleOf(_sewnStyles.Value.GetValueOrDefault(name.Order))
                : (isTaken ? earlierWorks.StyleOf(name.Order) : null) ?? sewing.StyleOf(name);
            if (style is { } known)
            {
                _styles[name.Order] = known;
            }
        }
    }

    private (HoopingOrigin, Func<NeedlePath>)? TakeSewn(Hooping hooping, string madeFrom)
    {
        var kept = made.Begun!.Kept(hooping.Number);
        var (path, proof) = (kept.Path, kept.Proof);
        string said = made.Begun!.Log.Last(hooping.Number)?.Path ?? "";
        string print = path is null ? "" : InputFingerprint.Fingerprint(path);
        var known = print.Length > 0 && earlierWorks.Hooping(hooping.Number) is { IsSewn: true } earlier && earlier.MadeFrom == madeFrom
            && earlier.PathPrint == print
            ? Known(hooping, earlier) : null;
        var read = path is null || known is not null ? null : NeedlePathReading.Read(path);
        if (path is null || (known is null && read is null))
        {
            _problems.Add((hooping.Number, Problem.NeedsPerson(
                new Where($"{SewnFolder.Name}/{OutPaths.NeedlePath(hooping.Number)}"),
                $"Hooping {hooping.Number} is sewn, and its kept files are missing or no longer whole; they were made again, and "
                    + $"may differ from what is on the cloth.",
                $"Put the folder “{SewnFolder.Name}” back from a copy, if there is one.")));
            return null;
        }

        if (said.Length > 0 && said != SewingPrint.Of(path))
        {
            _problems.Add((hooping.Number, Problem.NeedsPerson(
                new Where(SewingLogFile.FileName),
                $"The log's hooping {hooping.Number} was sewn from another needle path ({said}) than the one that is kept ({SewingPrint.Of(path)}).",
                "The kept one was used. Compare its proof with the cloth; if they differ, put back the right files from a copy.")));
        }

        foreach (string healed in kept.Heal())
        {
            _problems.Add((hooping.Number, Problem.Note(
                new Where($"{SewnFolder.Name}/{healed}"),
                $"This file of hooping {hooping.Number}, which is sewn, was not as it was kept; the same one in the out folder was, and has been put in its place.")));
        }

        string pathPrint = folder.Create(OutPaths.NeedlePath(hooping.Number), stream => stream.Write(path));
        var measured = known ?? Measure(hooping, read!);
        NeedlePath Path() => read ?? NeedlePathReading.Read(path)!;
        if (proof is null)
        {
            _problems.Add((hooping.Number, Problem.Note(
                new Where(SewnFolder.Place(OutPaths.HoopingProof(hooping.Number))),
                $"The kept proof of hooping {hooping.Number} is missing or no longer whole; it was drawn again from the needle path "
                    + $"that was sewn.")));
        }

        string proofPrint = folder.Create(OutPaths.HoopingProof(hooping.Number), stream => Proof(stream, Path, measured.Figures));
        return (Origin(hooping, measured, madeFrom, pathPrint, proofPrint, isSewn: true), Path);

        void Proof(Stream stream, Func<NeedlePath> sewn, HoopingFigures figures)
        {
            if (proof is not null)
            {
                stream.Write(proof);
            }
            else
            {
                DrawProof(stream, hooping, sewn(), figures with { IsSewn = true });
            }
        }
    }

    private (HoopingOrigin, Func<NeedlePath>)? TakeUnchanged(Hooping hooping, string madeFrom, bool isSewn)
    {
        string relative = OutPaths.NeedlePath(hooping.Number);
        if (earlierWorks.Hooping(hooping.Number) is not { } earlier || earlier.MadeFrom != madeFrom
            || !folder.HasEarlier(OutPaths.HoopingProof(hooping.Number), earlier.ProofPrint)
            || (hooping.HasNeedlePath && !folder.HasEarlier(relative, earlier.PathPrint)))
        {
            return null;
        }

        NeedlePath? read = null;
        var known = Known(hooping, earlier);
        if (known is null && (!hooping.HasNeedlePath || (read = EarlierPath(relative)) is null))
        {
            return null;
        }

        if (hooping.HasNeedlePath)
        {
            folder.TakeOver(relative);
        }

        folder.TakeOver(OutPaths.HoopingProof(hooping.Number));
        var origin = Origin(hooping, known ?? Measure(hooping, read!), madeFrom, earlier.PathPrint, earlier.ProofPrint, isSewn) with
        {
            // Letters that could not be read are worked out again, for the stitcher to speak of them.
            LettersRead = earlier.LettersRead is true || sewing.AreLettersRead(hooping),
        };
        return (origin, () => read ?? (hooping.HasNeedlePath ? EarlierPath(relative)! : sewing.PathOf(hooping)));
    }

    private (HoopingOrigin, Func<NeedlePath>) Sew(Hooping hooping, string madeFrom, bool isSewn)
    {
        var path = hooping.HasNeedlePath ? NeedlePathReading.AsWritten(sewing.PathOf(hooping)) : sewing.PathOf(hooping);
        var measured = Measure(hooping, path);
        string pathPrint = hooping.HasNeedlePath
            ? folder.Create(OutPaths.NeedlePath(hooping.Number), stream => NeedlePathCsv.Write(stream, path)) : "";
        string proofPrint = folder.Create(OutPaths.HoopingProof(hooping.Number), stream => DrawProof(
            stream, hooping, path, measured.Figures with { IsSewn = isSewn }));
        return (Origin(hooping, measured, madeFrom, pathPrint, proofPrint, isSewn) with { LettersRead = sewing.AreLettersRead(hooping) },
            () => path);
    }

    private void DrawProof(Stream stream, Hooping hooping, NeedlePath path, HoopingFigures figures) => HoopingProof.Draw(
        stream, sewing.PlanOf(hooping), hooping, path, figures with { IsCutByHand = hooping.HasNeedlePath && !made.Job.CutsThread },
        new ProofLook(captions, made.Fabric.Thread.DiameterMm, made.Job.Strip.SewnBeforeCutting));

    /// <summary>Makes the proof of a round, or takes it from the earlier out folder where it would come out the same.</summary>
    /// <param name="figures">Of all hoopings, by their numbers.</param>
    public void MakeRound(Round round, IReadOnlyDictionary<int, HoopingFigures> figures)
    {
        string madeFrom = _madeFrom.Of(round, figures);
        string relative = OutPaths.RoundProof(round.Number);
        if (earlierWorks.Round(round.Number) is { } earlier && earlier.MadeFrom == madeFrom
            && folder.HasEarlier(relative, earlier.ProofPrint))
        {
            folder.TakeOver(relative);
            _roundOrigins[round.Number] = new RoundOrigin(madeFrom, earlier.ProofPrint);
            return;
        }

        // The letters of hoopings that were taken over have not been worked out; one by one, as they are drawn, leaves cores idle.
        var names = round.NamesAndMotifs.ToImmutableArray();
        Cores.ForEach(names.Length, default, i => sewing.PathOf(names[i]));
        string print = folder.Create(relative, stream => RoundProof.Draw(
            stream, _plan, round, figures, name => sewing.PathOf(name), new ProofLook(captions, made.Fabric.Thread.DiameterMm)));
        _roundOrigins[round.Number] = new RoundOrigin(madeFrom, print);
    }

    private HoopingOrigin Origin(
        Hooping hooping, (HoopingFigures Figures, HoopingLoad Load) measured, string madeFrom, string pathPrint, string proofPrint,
        bool isSewn)
    {
        var last = made.Begun?.Log.Last(hooping.Number)?.Deed;
        return new HoopingOrigin(
            madeFrom, pathPrint, proofPrint, measured.Load.HolesPerMm2, isSewn, last == SewingDeed.Again, last == SewingDeed.Patch)
        {
            Figures = measured.Figures,
            Spot = measured.Load.Spot,
            SewnAs = made.SewnAs(hooping.Number),
        };
    }

    /// <summary>What was measured last time, where the path lay on the same cloth then; null: it has to be measured again.</summary>
    private (HoopingFigures Figures, HoopingLoad Load)? Known(Hooping hooping, EarlierHooping earlier) =>
        earlier is { HolesPerMm2: { } holes, SpotHolesPerMm2: { } spot, MostLayers: { } layers }
            && earlier.SewnAs == made.SewnAs(hooping.Number)
        && MeasuredHooping.Read(hooping.Number, earlier.Measured.AsSpan()) is { } figures
            ? (figures, new HoopingLoad(hooping.Number, holes, new WorstSpot(spot, layers))) : null;

    private (HoopingFigures Figures, HoopingLoad Load) Measure(Hooping hooping, NeedlePath path)
    {
        var cloth = made.ClothOf(hooping.Number);
        var load = hooping.HasNeedlePath ? LoadMeter.Measure(path, cloth) : null;
        return (sewing.FiguresOf(hooping, path), load is null ? default
            : new HoopingLoad(hooping.Number, load.WorstLetterPerMm2, load.Spot));
    }

    private NeedlePath? EarlierPath(string relative) => NeedlePathReading.Read(folder.Earlier(relative));
}
