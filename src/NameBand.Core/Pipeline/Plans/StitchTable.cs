using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Load;
using NameBand.Names;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Plans;

/// <summary>
/// What the names of a plan take, to be looked up for other plans of the same letters. At its own height they take the same
/// wherever they lie. At another one the letters that come most often are worked out, and all the rest is taken to grow or
/// shrink as they do: letters are read at steps in proportion to their height, so that they are sewn alike.
/// </summary>
internal sealed class StitchTable
{
    // Part of all stitching that the letters which are worked out make up, and how many of them do at most: our choice.
    private const double SampledPart = 0.6;
    private const int MostLetters = 14;

    /// <summary>The fullest letters, which are worked out too: by them it is told whether the cloth bears them.</summary>
    private const int FullestLetters = 2;

    private const double TailM = HoopingMeter.TailMm / 1000; // The tail left at each cut, in the unit of thread.

    private readonly LaidOut _laid;
    private readonly Dictionary<RowRef, double> _shares;
    private readonly double _shareOfMm;
    private readonly Thread _all;
    private readonly ImmutableArray<Letter> _letters;
    private readonly double _fullest;

    /// <summary>What names take, marks and what hangs from each cut left out.</summary>
    private readonly record struct Thread(
        double Stitches, double Minutes, double NeedleM, double BobbinM, double Starts, double Cuts, double Snips)
    {
        public static Thread Of(HoopingFigures f) => new(
            f.Stitches, f.StitchingMinutes, f.NeedleThreadM - (TailM * (1 + f.Trims)), f.BobbinThreadM - (TailM * (1 + f.Trims)),
            f.Jumps + 1, f.Trims, f.Snips);

        public Thread Plus(Thread other, double times) => new(
            Stitches + (times * other.Stitches), Minutes + (times * other.Minutes), NeedleM + (times * other.NeedleM),
            BobbinM + (times * other.BobbinM), Starts + (times * other.Starts), Cuts + (times * other.Cuts), Snips + (times * other.Snips));
    }

    private sealed record Letter(LetterPiece Piece, int Count, Thread Takes, double Fullest);

    /// <param name="figures">Of all hoopings, in the plan's order.</param>
    /// <param name="fullest">Needle holes in each mm² of the fullest letter of all.</param>
    public StitchTable(LaidOut laid, IPieceSewing sewing, ImmutableArray<HoopingFigures> figures, double fullest)
    {
        (_laid, _fullest) = (laid, fullest);
        var marks = laid.Plan.Hoopings.Select(h => MarksOf(h, laid, sewing)).ToList();
        for (int i = 0; i < figures.Length; i++)
        {
            _all = _all.Plus(Thread.Of(figures[i]), 1);
            _all = marks[i] is { } own ? _all.Plus(Thread.Of(own), -1) : _all;
        }

        var names = laid.Plan.Rounds.SelectMany(r => r.Names).ToDictionary(n => n.Order);
        double thread = figures.Sum(f => f.Names.Where(n => names.ContainsKey(n.Order)).Sum(n => n.NeedleM));
        _shares = figures.SelectMany(f => f.Names).Where(n => names.ContainsKey(n.Order))
            .GroupBy(n => names[n.Order].Lettered.Name.Row).ToDictionary(g => g.Key, g => g.Sum(n => n.NeedleM) / thread);
        _shareOfMm = 1 / names.Values.Sum(n => n.Lettered.Ink.WidthMm);
        _letters = Sample(laid, sewing);
    }

    /// <summary>Whether plans of other letters could be looked up as a measure.</summary>
    public bool IsEmpty => _letters.IsEmpty;

    /// <summary>Whether a plan has the same letters, and as many motifs.</summary>
    public bool Has(LaidOut other) => ReferenceEquals(other.Way, _laid.Way) && other.Fabric == _laid.Fabric
        && other.Job.CutsThread == _laid.Job.CutsThread && Motifs(other.Plan) == Motifs(_laid.Plan);

    public bool IsSmaller(LaidOut other) => other.Plan.LetterHeightMm < _laid.Plan.LetterHeightMm;

    /// <returns>The figures of all hoopings of another plan, and the holes in each mm² of its fullest letter.</returns>
    public (ImmutableArray<HoopingFigures> Figures, double Fullest) Look(LaidOut other, IPieceSewing sewing, CancellationToken cancel)
    {
        bool isSame = Has(other) && other.Plan.LetterHeightMm == _laid.Plan.LetterHeightMm;
        var (all, fullest) = isSame ? (_all, _fullest) : AtHeightOf(other, sewing, cancel);
        return ([.. other.Plan.Hoopings.Select(h => FiguresOf(h, all, other, sewing))], fullest);
    }

    private (Thread All, double Fullest) AtHeightOf(LaidOut other, IPieceSewing sewing, CancellationToken cancel)
    {
        var pieces = other.Plan.Rounds.SelectMany(r => r.Names).SelectMany(n => n.Lettered.Pieces).Select(p => p.Piece).Distinct().ToList();
        var byKey = pieces.ToDictionary(p => p.Key, StringComparer.Ordinal);
        var byText = pieces.GroupBy(p => p.Text, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var pairs = _letters.Select(l => (Then: l, Now: byKey.GetValueOrDefault(l.Piece.Key) ?? byText.GetValueOrDefault(l.Piece.Text)))
            .Where(p => p.Now is not null).ToList();
        if (pairs.Count == 0)
        {
            return (new Thread(), 0);
        }

        var now = new (Thread Takes, double Fullest)[pairs.Count];
        Cores.ForEach(pairs.Count, cancel, i => now[i] = Measure(pairs[i].Now!, other, sewing));
        var (was, becomes) = (new Thread(), new Thread());
        for (int i = 0; i < pairs.Count; i++)
        {
            was = was.Plus(pairs[i].Then.Takes, pairs[i].Then.Count);
            becomes = becomes.Plus(now[i].Takes, pairs[i].Then.Count);
        }

        double full = pairs.Max(p => p.Then.Fullest);
        return (
            _all with
            {
                Stitches = _all.Stitches * becomes.Stitches / was.Stitches,
                Minutes = _all.Minutes * becomes.Minutes / was.Minutes,
                NeedleM = _all.NeedleM * becomes.NeedleM / was.NeedleM,
                BobbinM = _all.BobbinM * becomes.BobbinM / was.BobbinM,
            },
            full > 0 ? _fullest * now.Max(n => n.Fullest) / full : 0);
    }

    private HoopingFigures FiguresOf(Hooping hooping, Thread all, LaidOut laid, IPieceSewing sewing)
    {
        var names = hooping.Segments.SelectMany(s => s.Segment.Names)
            .Select(n => (n.Order, Share: _shares.GetValueOrDefault(n.Lettered.Name.Row, _shareOfMm * n.Lettered.Ink.WidthMm))).ToList();
        var marks = MarksOf(hooping, laid, sewing);
        var takes = new Thread().Plus(all, names.Sum(n => n.Share));
        takes = marks is null ? takes : takes.Plus(Thread.Of(marks), 1);
        double tails = TailM * (1 + takes.Cuts);
        var counted = new HoopingFigures(
            hooping.Number, Whole(takes.Stitches), Math.Max(0, Whole(takes.Starts) - 1), Whole(takes.Cuts),
            (marks?.Stops ?? 0) + Math.Max(0, (laid.Plan.Threads.Of(hooping.Number)?.Order.Length ?? 1) - 1),
            takes.NeedleM + tails, takes.BobbinM + tails, 0)
        {
            StitchingMinutes = takes.Minutes,
            Snips = Whole(takes.Snips),
            Names =
            [
                new NameThread(0, marks?.NeedleThreadM ?? TailM, marks?.BobbinThreadM ?? TailM),
                .. names.Select(n =>
                    new NameThread(n.Order, ((all.Cuts * TailM) + all.NeedleM) * n.Share, ((all.Cuts * TailM) + all.BobbinM) * n.Share)),
            ],
        };
        return sewing.FiguresOf(hooping, HoopingMeter.Timed(counted, laid.Job.Machine));
    }

    /// <summary>A hooping's sewn marks alone; null where none are sewn.</summary>
    private static HoopingFigures? MarksOf(Hooping hooping, LaidOut laid, IPieceSewing sewing)
    {
        if (laid.Plan.Marks != Job.MarkMethod.Sewn || !laid.Plan.HasNeedlePaths || !hooping.HasNeedlePath)
        {
            return null;
        }

        var bare = hooping with
        {
            Segments =
            [.. hooping.Segments.Select(s => s with { Segment = s.Segment with { Names = [], Motifs = [] } })]
        };
        return sewing.FiguresOf(bare, sewing.PathOf(bare));
    }

    /// <summary>The letters that take most of all stitching, and the fullest.</summary>
    private static ImmutableArray<Letter> Sample(LaidOut laid, IPieceSewing sewing)
    {
        var counted = laid.Plan.Rounds.SelectMany(r => r.Names).SelectMany(n => n.Lettered.Pieces).GroupBy(p => p.Piece)
            .OrderBy(g => g.Key.Key, StringComparer.Ordinal).ToList();
        var letters = new Letter[counted.Count];
        Cores.ForEach(letters.Length, default, i =>
        {
            var (takes, fullest) = Measure(counted[i].Key, laid, sewing);
            letters[i] = new Letter(counted[i].Key, counted[i].Count(), takes, fullest);
        });
        double all = letters.Sum(l => l.Count * l.Takes.Minutes);
        var sample = new List<Letter>();
        foreach (var letter in letters.Where(l => l.Takes.Minutes > 0).OrderByDescending(l => l.Count * l.Takes.Minutes))
        {
            if (sample.Count >= MostLetters || sample.Sum(l => l.Count * l.Takes.Minutes) >= SampledPart * all)
            {
                break;
            }

            sample.Add(letter);
        }

        return [.. sample.Union(letters.Where(l => l.Takes.Minutes > 0).OrderByDescending(l => l.Fullest).Take(FullestLetters))];
    }

    private static (Thread Takes, double Fullest) Measure(LetterPiece piece, LaidOut laid, IPieceSewing sewing)
    {
        var alone = new LetteredName(new Name(piece.Text, new RowRef("", 0)), [new PlacedPiece(piece, new Point(0, 0))], piece.Ink);
        var path = sewing.PathOf(new PlacedName(alone, 0, 0, 0, 0));
        return (Thread.Of(HoopingMeter.Measure(0, path, laid.Fabric, laid.Job.Machine)), LoadMeter.FullestPerMm2(path, laid.Fabric));
    }

    private static int Motifs(StripPlan plan) => plan.Rounds.Sum(r => r.Segments.Sum(s => s.Motifs.Length));

    private static int Whole(double count) => (int)Math.Round(count);
}
