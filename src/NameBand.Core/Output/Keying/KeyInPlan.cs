using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Spelling;
using NameBand.PlanFile;

namespace NameBand.Output.Keying;

/// <summary>Works out what to key in, in which order, and where each piece starts.</summary>
internal static class KeyInPlan
{
    /// <param name="composerOf">At the setting that the machine is set to for a name.</param>
    /// <param name="motif">What is sewn between names; null for nothing.</param>
    internal static ImmutableArray<KeyInName> Of(
        StripPlan plan, Func<PlacedName, NameComposer> composerOf, LettersSettings settings, MachineMotif? motif = null)
    {
        bool forward = SewingDirection.FirstLetterFirst(settings);
        var hoopings = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (Hooped: s, Hooping: h)))
            .ToDictionary(p => p.Hooped.Segment.Number);
        var marks = plan.Hoopings.ToDictionary(h => h.Number, h => SheetMarks.Of(plan, h));
        var names = ImmutableArray.CreateBuilder<KeyInName>(plan.NameCount);
        foreach (var round in plan.Rounds)
        {
            var row = round.Segments.SelectMany(s => s.Names.Select(n => (Segment: s, Name: n))).ToList();
            if (!forward)
            {
                row.Reverse();
            }

            row = plan.LineStepMm > 0 ? LineByLine(row, forward) : row;

            var rulers = ClothRuler.Of(plan, round);
            double? lastEndMm = null;
            for (int i = 0; i < row.Count; i++)
            {
                var (segment, name) = row[i];
                double along = forward ? name.StartMm : round.LengthMm - name.EndMm;
                bool isSewn = i < (round.Sewn?.SewnNames ?? 0);
                double start = isSewn ? along : OnStripNow(plan, round, along);
                lastEndMm = i > 0 && row[i - 1].Name.Line != name.Line ? null : lastEndMm;
                lastEndMm = round.Sewn is { } sewn && i == sewn.SewnNames ? sewn.SewnToMm : lastEndMm;
                var (hooped, hooping) = hoopings[segment.Number];

                // Where the round's left end would lie on the ruler of this name's cloth.
                double leftMm = plan.OnClothMm(hooping, hooped, name) - plan.OnClothMm(name.StartMm);
                var sewnFrom =
                    new SewnFrom(
                        forward, forward ? leftMm : leftMm + OnStripNow(plan, round, round.LengthMm))
                    { Arc = Arc(plan, round, name) };
                start += sewnFrom.Arc?.InPlaceMm ?? 0;
                var composer = composerOf(name);
                foreach (var between in MotifsBefore(row, i, forward))
                {
                    double at = forward ? between.StartMm : round.LengthMm - between.EndMm;
                    at = isSewn ? at : OnStripNow(plan, round, at);
                    var keyed = Motif(motif!, at, lastEndMm, composerOf(between), settings) with { OnClothMm = sewnFrom.At(at) };
                    names.Add(new KeyInName(names.Count + 1, 0, "", new RowRef("", 0), round.Number, hooping.Number, [keyed])
                    {
                        With = name.Order,
                        Step = composer.Step,
                        Line = name.Line,
                        IsSewn = isSewn,
                        Ruler = ClothRuler.At(rulers, between.StartMm),
                        Mark = marks[hooping.Number],
                    });
                    lastEndMm = at + keyed.ExpectedMm;
                }

                var parts = Parts(name, start, lastEndMm, composer, settings, sewnFrom);
                names.Add(new KeyInName(
                    names.Count + 1, name.Order, name.Lettered.Name.Text, name.Lettered.Name.Row, round.Number, hooping.Number, parts)
                {
                    With = name.Order,
                    Step = composer.Step,
                    Line = name.Line,
                    IsSewn = isSewn,
                    Ruler = ClothRuler.At(rulers, name.StartMm),
                    Mark = marks[hooping.Number],
                    MarkedWords = Marked(name.Lettered.Name.Text, composer),
                });
                lastEndMm = parts[^1].FromEndMm + (parts[^1].ExpectedMm * (sewnFrom.Arc?.Along ?? 1));
            }
        }

        return names.ToImmutable();
    }

    /// <summary>What is sewn between a name and the one sewn before it: it is keyed with the later of the two.</summary>
    private static IEnumerable<PlacedName> MotifsBefore(List<(Segment Segment, PlacedName Name)> row, int at, bool forward)
    {
        var (segment, name) = row[at];
        if (at == 0 || row[at - 1].Segment.Number != segment.Number || row[at - 1].Name.Line != name.Line)
        {
            return [];
        }

        var before = row[at - 1].Name;
        var (left, right) = forward ? (before, name) : (name, before);

        // Between two lines a motif is sewn with the upper one.
        return name.Line == 2 ? [] : segment.Motifs.Where(m => m.StartMm > left.StartMm && m.EndMm < right.EndMm);
    }

    private static KeyInPart Motif(
        MachineMotif motif, double startMm, double? lastEndMm, NameComposer composer, LettersSettings settings)
    {
        var told = motif.Foretell(composer, settings.ReadingError.Mm);
        return new KeyInPart(
            motif.Keyed, 0, startMm, lastEndMm is { } last ? startMm - last : null, told.MeanMm, composer.Seconds(Letters.Of(motif.Keyed)),
            false)
        {
            LeastMm = told.LowMm,
            MostMm = told.HighMm,
            FeedMm = composer.FeedMm(told.MeanMm),
        };
    }

    /// <summary>Of each piece the upper line from end to end, then the lower one: nobody moves the strip to and fro for every
    /// pair.</summary>
    private static List<(Segment Segment, PlacedName Name)> LineByLine(List<(Segment Segment, PlacedName Name)> row, bool forward) =>
    [
        .. row.GroupBy(n => n.Segment.Number).SelectMany(s => s.OrderBy(n => n.Name.Line)
            .ThenBy(n => forward ? n.Name.StartMm : -n.Name.EndMm)),
    ];

    /// <summary>Its words that get marks by hand.</summary>
    private static ImmutableArray<MarkedWord> Marked(string text, NameComposer composer) =>
        composer.Keys.MarksOf(text).IsEmpty
            ? [] : [.. text.Split(' ').Where(w => !composer.Keys.MarksOf(w).IsEmpty).Select(w => composer.Marked(Letters.Of(w)))];

    /// <summary>
    /// Where a place of the finished strip lies on the strip as it is now: what is not sewn yet is longer by what sewing
    /// will take, and by as much as sewing took so far.
    /// </summary>
    private static double OnStripNow(StripPlan plan, Round round, double alongMm) => round.Sewn is { } sewn
        ? sewn.SewnToMm + ((alongMm - sewn.SewnToMm) / ((1 - plan.Shortening) * sewn.Factor))
        : plan.OnClothMm(alongMm);

    /// <summary>The end of the strip that is sewn first, and where on the cloth's ruler it lies.</summary>
    private readonly record struct SewnFrom(bool IsLeft, double OnClothMm)
    {
        public NameOnArc? Arc { get; init; }

        public double At(double fromEndMm) => IsLeft ? OnClothMm + fromEndMm : OnClothMm - fromEndMm;
    }

    /// <summary>A name on a strip that is cut to the curve: its marks lie on the lower edge, and it stands straight on its base
    /// line.</summary>
    /// <param name="Along">Length along the lower edge for one on the base line.</param>
    /// <param name="InPlaceMm">Blank before it within its place.</param>
    /// <param name="ByWord">It would leave its line too far as a whole.</param>
    private sealed record NameOnArc(double WidthMm, double Along, double InPlaceMm, bool ByWord);

    private static NameOnArc? Arc(StripPlan plan, Round round, PlacedName name)
    {
        if (StripCurve.Of(plan.Hem, round.Number) is not { } curve)
        {
            return null;
        }

        double width = name.WidthMm - (2 * plan.InsetMm(name));
        double along = curve.AlongFactor(name.BaselineYMm);
        return new NameOnArc(width, along, (name.WidthMm - (width * along)) / 2, !StraightOnArc.MayStand(width, curve, name.BaselineYMm));
    }

    private static ImmutableArray<KeyInPart> Parts(
        PlacedName name, double startMm, double? lastEndMm, NameComposer composer, LettersSettings settings, SewnFrom end)
    {
        var letters = composer.Keys.Of(name.Lettered.Name.Text);
        IReadOnlyList<string> sewn = end.IsLeft ? letters : [.. letters.Reverse()];
        var parts = ImmutableArray.CreateBuilder<KeyInPart>();

        // A strip that was found to come out longer or shorter than planned has its names planned so too.
        double whole = composer.LengthMm(letters);
        double scale = (end.Arc?.WidthMm ?? name.WidthMm) / whole;
        double along = end.Arc?.Along ?? 1;
        foreach (var part in end.Arc is { ByWord: true }
            ? NameParts.ByWord(sewn, settings.Holds) : NameParts.Cut(sewn, settings.Holds, settings.KeepsLeadingBlanks))
        {
            double before = along * scale
                * (end.IsLeft ? composer.StartMm(letters, part.First) : whole - composer.EndMm(letters, letters.Count - 1 - part.First));
            double at = startMm + before;
            IEnumerable<string> inked = part.Keyed.Reverse().SkipWhile(l => l == Letters.Blank);
            string[] read = [.. end.IsLeft ? inked.Reverse() : inked];
            var told = composer.Foretell(read);
            double expected = scale * composer.LengthMm(read);
            parts.Add(new KeyInPart(
                string.Concat(part.Keyed), end.At(at), at, lastEndMm is { } last ? at - last : null, expected, composer.Seconds(read),
                composer.IsEstimated(read))
            {
                LeastMm = expected - (scale * (told.MeanMm - told.LowMm)),
                MostMm = expected + (scale * (told.HighMm - told.MeanMm)),
                FeedMm = composer.FeedMm(expected),
            });
            lastEndMm = at + (along * expected);
        }

        return parts.ToImmutable();
    }
}
