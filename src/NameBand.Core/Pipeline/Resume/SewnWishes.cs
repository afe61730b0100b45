using NameBand.Common;
using NameBand.Job;
using NameBand.Names;

namespace NameBand.Pipeline.Resume;

/// <summary>What is sewn keeps the letters it was sewn in, whatever is wished for it now; an unsewn name takes those that are
/// wished.</summary>
internal sealed class SewnWishes(SewingProgress begun, BandJob job)
{
    /// <summary>Heights of plan.json stand on thousandths of a millimetre.</summary>
    private const double SameFactor = 0.002;

    private readonly Lazy<Dictionary<EarlierName, double>> _plannedMm = new(() => HeightsMm(begun));

    public MatchedList Settled(MatchedList matched)
    {
        var sewn = begun.SewnNames();
        bool IsSewn(Name name) => matched.Before.TryGetValue(name.Row, out var before) && sewn.Contains(before);
        var changed = matched.Rows.Names.Where(n => !IsSewn(n) && matched.Before.TryGetValue(n.Row, out var before)
            && !WayTraits.Of(before.Way).HasLettersOfItsOwn && !IsSame(n.Wish, Of(before, n.Wish))).Select(n => n.Row);
        return matched with
        {
            Rows = matched.Rows with
            {
                Names = [.. matched.Rows.Names.Select(
                n => IsSewn(n) ? n with { Wish = AsSewn(n, matched.Before[n.Row]) } : n)]
            },
            Before = matched.Before.RemoveRange(changed),
            Problems = [.. matched.Problems, .. matched.Rows.Names.Where(
                n => IsSewn(n) && n.Wish is { IsOfLetters: true } && !IsSame(n.Wish, Of(matched.Before[n.Row], n.Wish))).Select(Stays)],
        };
    }

    /// <summary>What was wished for the letters of a name when it was planned; null: nothing.</summary>
    /// <param name="now">What is wished for it now: of a name of a group nothing else tells its own size from the group's.</param>
    public NameWish? Of(EarlierName name, NameWish? now = null)
    {
        double factor = name.LetterHeightMm is { } own && _plannedMm.Value.TryGetValue(name, out double plannedMm) && (
            name.Group is null || now is not null)
            ? own / plannedMm / (job.Groups.Of(name.Group)?.HeightFactor ?? 1) : 1;
        factor = Math.Abs(factor - 1) < SameFactor ? 1 : Math.Round(factor, 4);
        return factor == 1 && name.Face is null ? null : new NameWish(
            name.Text, name.Row.List, name.Row.Line)
        { HeightFactor = factor, Face = name.Face };
    }

    private static Problem Stays(Name name) => Problem.NeedsPerson(
        new Where(JobReader.FileName, Key: LayoutKeys.Names.Path, Name: PlainText.Short(name.Text)),
        "Other letters are wished for this name, and it is sewn: its letters stay as they are.",
        "Remove the wish; or unpick the name, and say with `sewn … --spoiled` that it is to be sewn again.");

    private NameWish? AsSewn(Name name, EarlierName before)
    {
        var was = Of(before, name.Wish);
        return name.Wish is { } wish ? wish with { HeightFactor = was?.HeightFactor ?? 1, Face = was?.Face } : was;
    }

    private static bool IsSame(NameWish? one, NameWish? other) =>
        Math.Abs((one?.HeightFactor ?? 1) - (other?.HeightFactor ?? 1)) < SameFactor && one?.Face == other?.Face;

    /// <summary>Letter height that each name's hooping was planned in.</summary>
    private static Dictionary<EarlierName, double> HeightsMm(SewingProgress begun)
    {
        var hoopingOf = begun.Plan.HoopingOfSegment;
        return begun.Plan.Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names.Select(n => (Name: n, Hooping: hoopingOf[s.Number])))
            .ToDictionary(p => p.Name, p => begun.SewnAs(p.Hooping)?.LetterHeightMm ?? begun.Plan.LetterHeightMm,
                ReferenceEqualityComparer.Instance as IEqualityComparer<EarlierName>);
    }
}
