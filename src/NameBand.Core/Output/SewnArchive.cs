using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>The files of a sewn hooping, each from a copy that agrees with what was written down of it.</summary>
/// <param name="Path">Null where no copy is whole.</param>
/// <param name="Proof">The same.</param>
internal sealed record KeptHooping(string JobFolder, byte[]? Path, byte[]? Proof, ImmutableDictionary<string, byte[]> FromOut)
{
    /// <summary>Puts back in the folder of what is sewn what had to be taken from the out folder. The caller holds the job's
    /// lock.</summary>
    /// <returns>The files that were put back.</returns>
    public IEnumerable<string> Heal()
    {
        if (FromOut.IsEmpty)
        {
            return [];
        }

        try
        {
            SewnFolder.Put(JobFolder, FromOut);
            return FromOut.Keys.Order(StringComparer.Ordinal);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A job that cannot be written is read all the same.
            return [];
        }
    }
}

/// <summary>
/// Holds what was kept of the sewing, the log, and the out folder against each other, and takes each file from the copy that
/// verifies. Folders of version 0.1 have no list of checksums: there the fingerprints in log and plan have to do.
/// </summary>
internal sealed class SewnArchive(string jobFolder)
{
    // Places are written to a thousandth.
    private const double SamePlaceMm = 0.005;
    private const double SameShortening = 1e-9;

    private readonly Lazy<OutManifest> _list = new(() => InnerFile.Objection(jobFolder, SewnFolder.Place(OutPaths.Manifest)) is null
        ? OutManifest.Read(SewnFolder.Of(jobFolder)) : OutManifest.None);

    private readonly string _outFolder = Path.Combine(jobFolder, OutFolder.Name);

    /// <summary>The plan that the sewn hoopings lie in.</summary>
    public Result<EarlierPlan> Plan(SewingLog log)
    {
        string place = SewnFolder.Place(OutPaths.Plan);
        if (InnerFile.Objection(jobFolder, place) is { } objection)
        {
            return Result.Fail<EarlierPlan>(objection);
        }

        byte[]? kept = SewnFolder.Read(jobFolder, OutPaths.Plan);
        var other = VerifiedOutPlan(log);
        string? listed = _list.Value.HashOf(OutPaths.Plan);
        var read = EarlierPlanFile.Read(jobFolder, place);
        if (listed is not null ? kept is not null && FileHash.Of(kept) == listed : read.Value is not null)
        {
            return listed is null && other is { } made && Moved(read.Value!, made, log) is { } moved
                ? Result.Of(made, [Problem.NeedsPerson(
                    new Where(place),
                        $"This plan has hooping {moved} in another place than the plan in the out folder, which is as make wrote it and "
                        + $"was used.",
                    "Compare the proof with the cloth. Then mark the next hooping as sewn: that keeps the right plan.")])
                : read;
        }

        if (other is not null)
        {
            return Result.Of(other, [Problem.Note(
                new Where(place),
                    "This plan is not as it was kept; the one in the out folder has all that is sewn as it was sewn, and was used.")]);
        }

        return kept is null || listed is null ? read : Result.Fail<EarlierPlan>(Problem.CannotUse(
            new Where(place), "This plan was changed or spoiled since it was kept, and there is no other copy of it.",
            $"Put it back from a copy. If you changed it on purpose, delete {SewnFolder.Place(OutPaths.Manifest)}: then it is believed as it stands."));
    }

    /// <summary>The files of a sewn hooping.</summary>
    /// <param name="said">Fingerprint in the log, or empty.</param>
    /// <param name="planned">The hooping in the plan that was kept, if it is there.</param>
    public KeptHooping Hooping(int number, string said, EarlierHooping? planned)
    {
        var healed = ImmutableDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        string pathPrint = planned?.PathPrint ?? "", proofPrint = planned?.ProofPrint ?? "";
        byte[]? path = said.Length > 0
            ? Find(OutPaths.NeedlePath(number), bytes => SewingPrint.Of(bytes) == said, healed)
            : Find(OutPaths.NeedlePath(number), pathPrint.Length > 0 ? bytes =>
                InputFingerprint.Fingerprint(bytes) == pathPrint : null, healed);
        byte[]? proof =
            Find(OutPaths.HoopingProof(number), proofPrint.Length > 0 ? bytes =>
                InputFingerprint.Fingerprint(bytes) == proofPrint : null, healed);
        return new KeptHooping(jobFolder, path, proof, healed.ToImmutable());
    }

    /// <param name="agrees">Whether bytes are those that were written down; null where nothing was.</param>
    /// <returns>Null where the kept file is gone or spoiled and there is no copy; one that only the log disagrees with comes
    /// back.</returns>
    private byte[]? Find(string relative, Func<byte[], bool>? agrees, ImmutableDictionary<string, byte[]>.Builder healed)
    {
        byte[]? kept = SewnFolder.Read(jobFolder, relative);
        string? listed = _list.Value.HashOf(relative);
        bool isAsListed = kept is not null && (listed is null || FileHash.Of(kept) == listed);
        if (isAsListed && agrees?.Invoke(kept!) != false)
        {
            return kept;
        }

        byte[]? other = InnerFile.ObjectionBelow(jobFolder, _outFolder) is null && InnerFile.IsPlain(_outFolder, relative)
            ? InnerFile.Bytes(_outFolder, relative) : null;
        if (other is not null && (listed is null || FileHash.Of(other) == listed) && (agrees?.Invoke(other) ?? listed is not null))
        {
            healed[relative] = other;
            return other;
        }

        return isAsListed ? kept : null;
    }

    /// <summary>The plan in the out folder, where it is as make wrote it and has all that is sewn as the log says; else null.</summary>
    private EarlierPlan? VerifiedOutPlan(SewingLog log)
    {
        if (InnerFile.ObjectionBelow(jobFolder, _outFolder) is not null || !InnerFile.IsPlain(_outFolder, OutPaths.Plan)
            || OutManifest.Read(_outFolder).HashOf(OutPaths.Plan) is not { } listed || FileHash.Of(_outFolder, OutPaths.Plan) != listed
            || EarlierPlanFile.Read(_outFolder, OutPaths.Plan).Value is not { } plan)
        {
            return null;
        }

        var hoopings = plan.Hoopings.ToDictionary(h => h.Number);
        var names = plan.Names.Select(n => n.Order).ToHashSet();
        return log.OfNames.Sewn.All(names.Contains)
            && log.Sewn.All(h => hoopings.TryGetValue(h, out var hooping) && log.Last(h)!.Path is var said
            && (said.Length == 0 || SewingPrint.OfFingerprint(hooping.PathPrint) == said)) ? plan : null;
    }

    /// <summary>
    /// The first sewn hooping that lies elsewhere in one plan than in the other; null when none does. Along the finished
    /// round names follow the shortening as it is known better; on the cloth they lie fast.
    /// </summary>
    public static int? Moved(EarlierPlan kept, EarlierPlan made, SewingLog log)
    {
        bool isShortenedAlike = Math.Abs(kept.Shortening - made.Shortening) < SameShortening;
        foreach (int number in log.Sewn.Where(s => made.Hoopings.Any(h => h.Number == s && h.IsSewn)))
        {
            if (!AreSame(OnCloth(kept, number), OnCloth(made, number))
                || (isShortenedAlike && !AreSame(Along(kept, number), Along(made, number))))
            {
                return number;
            }
        }

        return null;
    }

    /// <summary>The first name, of those that are logged by themselves and sewn, that lies elsewhere in one plan than in the
    /// other; null when none does.</summary>
    public static int? MovedName(EarlierPlan kept, EarlierPlan made, SewingLog log)
    {
        var (before, now) = (PlacesByNumber(kept), PlacesByNumber(made));
        var both = log.OfNames.Sewn.Where(n => before.ContainsKey(n) && now.ContainsKey(n));

        // A name that was measured keeps the end that it begins at, the left or the right one.
        bool IsElsewhere(int n) =>
            Math.Abs(before[n].StartMm - now[n].StartMm) > SamePlaceMm && Math.Abs(before[n].EndMm - now[n].EndMm) > SamePlaceMm;
        return both.Where(n => before[n].Round != now[n].Round || IsElsewhere(n) || before[n].Text != now[n].Text)
            .Select(n => (int?)n).FirstOrDefault();
    }

    private static Dictionary<int, (int Round, double StartMm, double EndMm, string Text)> PlacesByNumber(EarlierPlan plan)
    {
        var flat = new FlatCloth(plan.Shortening);
        return plan.Rounds.SelectMany(r => r.Segments.SelectMany(s => s.Names).Select(n => (
                n.Order, Place: (r.Number, flat.OnClothMm(n.StartMm), flat.OnClothMm(n.StartMm + n.WidthMm), n.Text))))
            .GroupBy(p => p.Order).ToDictionary(g => g.Key, g => g.First().Place);
    }

    private static bool AreSame(double[] one, double[] other) =>
        one.Length == other.Length && one.Zip(other).All(p => Math.Abs(p.First - p.Second) <= SamePlaceMm);

    private static double[] Along(EarlierPlan plan, int hooping) =>
        [.. Segments(plan, hooping).SelectMany(s => s.Names).Select(n => n.StartMm).Order()];

    private static double[] OnCloth(EarlierPlan plan, int hooping)
    {
        var flat = new FlatCloth(plan.Shortening);
        return [.. Segments(plan, hooping).SelectMany(s => s.Names.Select(n => s.ClothStartMm + flat.OnClothMm(n.StartMm - s.StartMm)))
            .Order()];
    }

    private static IEnumerable<EarlierSegment> Segments(EarlierPlan plan, int hooping)
    {
        var lying = plan.Hoopings.Where(h => h.Number == hooping).SelectMany(h => h.Segments).Select(s => s.Segment).ToHashSet();
        return plan.Rounds.SelectMany(r => r.Segments).Where(s => lying.Contains(s.Number));
    }
}
