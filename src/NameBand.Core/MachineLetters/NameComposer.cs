using System.Collections.Concurrent;
using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Spelling;
using NameBand.MachineLetters.Widths;
using NameBand.Names;

namespace NameBand.MachineLetters;

/// <summary>One setting of the machine: a letter height and the gap between letters.</summary>
public sealed record SizeStep(double HeightMm, double GapMm);

/// <summary>
/// Letters names in a machine's own letters at one setting. How the letters look is taken from a similar face, each
/// one stretched to the width it has there: only the widths are the machine's.
/// </summary>
internal sealed class NameComposer
{
    /// <summary>A range wider than this part of the length rests on guesses: our assumption.</summary>
    private const double GuessedPart = 0.05;

    /// <summary>A letter's ink is never narrower than this part of its height.</summary>
    private const double LeastInkPart = 0.02;

    private readonly LetterKnowledge _known;
    private readonly Alphabet? _times;
    private readonly double _gapMm;
    private readonly IReadOnlyDictionary<string, LetteredName> _drawn;
    private readonly ConcurrentDictionary<string, ImmutableArray<PlacedPiece>> _pieces = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, LetterMean> _means = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Foretold> _told = new(StringComparer.Ordinal);

    /// <param name="drawn">Letters as a similar face has them, each lettered as a name of its own; letters may be missing.</param>
    internal NameComposer(SizeStep step, LetterKnowledge known, IReadOnlyDictionary<string, LetteredName> drawn)
    {
        Step = step;
        _known = known;
        _drawn = drawn;
        _times = known.Alphabets?.At(step.HeightMm);
        _gapMm = known.Belief.Mean(LetterTerms.Gap(step.HeightMm)) + (known.HasGaps ? step.GapMm : 0);
    }

    public SizeStep Step { get; }

    /// <summary>Which letters are pressed for a name.</summary>
    internal PressedKeys Keys => _known.Keys;

    /// <summary>A name as it will be sewn; null when it has no letter.</summary>
    public LetteredName? Compose(Name name)
    {
        var written = Letters.Of(name.Text);
        var letters = Keys.Of(written);
        if (letters.Count == 0)
        {
            return null;
        }

        var pieces = ImmutableArray.CreateBuilder<PlacedPiece>();
        var ink = new Box(0, 0, LengthMm(letters) / Step.HeightMm, 1);
        double at = -Mean(letters[0]).LeftMm;
        for (int i = 0; i < letters.Count; i++)
        {
            var mean = Mean(letters[i]);
            foreach (var piece in Pieces(written[i]))
            {
                var moved = new PlacedPiece(piece.Piece, piece.At + new Point((at + mean.LeftMm) / Step.HeightMm, 0));
                pieces.Add(moved);
            }

            if (_drawn.TryGetValue(written[i], out var face))
            {
                ink = ink with { BottomMm = Math.Min(ink.BottomMm, face.Ink.BottomMm), TopMm = Math.Max(ink.TopMm, face.Ink.TopMm) };
            }

            at += mean.AdvanceMm + _gapMm;
        }

        return new LetteredName(name, pieces.ToImmutable(), ink);
    }

    /// <summary>The word of a name that begins at a letter, as the sheet draws it for her who adds its marks by hand.</summary>
    /// <param name="word">As it is written, without blanks.</param>
    internal MarkedWord Marked(IReadOnlyList<string> word)
    {
        var pressed = Keys.Of(word);
        var plain = ImmutableArray.CreateBuilder<Outline>();
        var whole = ImmutableArray.CreateBuilder<Outline>();
        for (int i = 0; i < word.Count; i++)
        {
            var at = new Point(StartMm(pressed, i), 0);
            plain.AddRange(Drawn(pressed[i]));
            if (Keys.MarkedOf(word[i]) is not null && IsOfOneFace(word[i], pressed[i]))
            {
                whole.AddRange(Drawn(word[i]));
            }

            IEnumerable<Outline> Drawn(string letter) =>
                Pieces(letter).Select(p => p.Piece.Outline.Moved(p.At).Scaled(Step.HeightMm).Moved(at));
        }

        return new MarkedWord(
            plain.ToImmutable(), whole.ToImmutable(), [.. word.Select(Keys.MarkedOf).OfType<MarkedLetter>()], LengthMm(pressed));
    }

    /// <summary>Only where one face draws both does the mark stand where it belongs.</summary>
    private bool IsOfOneFace(string letter, string plain) =>
        _drawn.TryGetValue(letter, out var one) && _drawn.TryGetValue(plain, out var other)
        && one.Pieces.Select(p => p.Piece.Face).Concat(other.Pieces.Select(p => p.Piece.Face)).Distinct(StringComparer.Ordinal)
            .Count() == 1;

    /// <summary>From the left edge of the first letter to the right edge of the last, as it is most likely.</summary>
    internal double LengthMm(IReadOnlyList<string> letters) => EndMm(letters, letters.Count - 1);

    /// <summary>From the left edge of the first letter to that of another.</summary>
    internal double StartMm(IReadOnlyList<string> letters, int to) =>
        letters.Take(to).Sum(l => Mean(l).AdvanceMm + _gapMm) - Mean(letters[0]).LeftMm + Mean(letters[to]).LeftMm;

    /// <summary>From the left edge of the first letter to the right edge of another.</summary>
    internal double EndMm(IReadOnlyList<string> letters, int to) =>
        letters.Take(to + 1).Sum(l => Mean(l).AdvanceMm) + (to * _gapMm) - Mean(letters[0]).LeftMm - Mean(letters[to]).RightMm;

    /// <summary>The length with its range, the feed's own variation apart.</summary>
    internal Foretold Foretell(IReadOnlyList<string> letters) => _told.GetOrAdd(
        string.Concat(letters), _ => _known.Belief.Foretell(_known.Length(letters, Step)));

    /// <summary>How far the feed alone may make a length differ, 9 times in 10.</summary>
    internal double FeedMm(double lengthMm) => Normal.InvCDF(0, 1, 0.95) * _known.FeedPart * lengthMm;

    /// <summary>Time the machine runs for a piece keyed in at one go; null when no letter was timed.</summary>
    internal double? Seconds(IReadOnlyList<string> letters)
    {
        if (_times is null || !_times.Letters.Values.Any(l => l.Seconds is > 0))
        {
            return null;
        }

        // A letter that was never timed takes as long, for its width, as those that were.
        var timed = _times.Letters.Values.Where(l => l.Seconds is > 0).ToList();
        double perMm = timed.Sum(l => l.Seconds!.Value) / timed.Sum(l => l.WidthMm);
        return letters.Sum(l => l == Letters.Blank ? 0 : _times.Letters.GetValueOrDefault(l)?.Seconds ?? (perMm * Mean(l).InkMm))
            + _times.StartSeconds;
    }

    internal bool IsEstimated(IReadOnlyList<string> letters) =>
        Foretell(letters) is var told && told.HighMm - told.LowMm > 2 * GuessedPart * Math.Max(told.MeanMm, Step.HeightMm);

    private LetterMean Mean(string letter) => _means.GetOrAdd(letter, l => new LetterMean(
        _known.Belief.Mean(LetterTerms.Single(l, TermKind.Advance, Step.HeightMm)),
        l == Letters.Blank ? 0 : _known.Belief.Mean(LetterTerms.Single(l, TermKind.Left, Step.HeightMm)),
        l == Letters.Blank ? 0 : _known.Belief.Mean(LetterTerms.Single(l, TermKind.Right, Step.HeightMm)),
        LeastInkPart * Step.HeightMm));

    /// <summary>A letter as it is most likely.</summary>
    private readonly record struct LetterMean(double AdvanceMm, double LeftMm, double RightMm, double LeastMm)
    {
        public double InkMm => Math.Max(LeastMm, AdvanceMm - LeftMm - RightMm);
    }

    /// <summary>A sign as a similar face has it, as wide as is said; empty where that has none. At a letter height of 1 mm.</summary>
    internal ImmutableArray<PlacedPiece> Stretched(string sign, double widthMm) =>
        !_drawn.TryGetValue(sign, out var face) || face.Ink.WidthMm <= 0 ? []
        : [.. face.Pieces.Select(p => new PlacedPiece(
            Stretched(p.Piece, widthMm / face.Ink.WidthMm),
            new Point((p.At.XMm - face.Ink.LeftMm) * widthMm / face.Ink.WidthMm, p.At.YMm)))];

    /// <summary>A letter's pieces with its left edge at 0, at a letter height of 1 mm, stretched to the width it has.</summary>
    private ImmutableArray<PlacedPiece> Pieces(string letter) => _pieces.GetOrAdd(letter, l =>
    {
        if (!_drawn.TryGetValue(l, out var face) || face.Ink.WidthMm <= 0)
        {
            return [];
        }

        // A letter whose marks come by hand is stretched as the plain one is, and stands where that does.
        string pressed = Keys.MarkedOf(l)?.Plain ?? l;
        var ink = pressed != l && IsOfOneFace(l, pressed) ? _drawn[pressed].Ink : face.Ink;
        double stretch = Mean(pressed).InkMm / Step.HeightMm / ink.WidthMm;
        return [.. face.Pieces.Select(p => new PlacedPiece(
            Stretched(p.Piece, stretch), new Point((p.At.XMm - ink.LeftMm) * stretch, p.At.YMm)))];
    });

    private static LetterPiece Stretched(LetterPiece piece, double stretch)
    {
        var outline = new Outline([.. piece.Outline.Rings.Select(
            r => new Ring([.. r.Points.Select(p => new Point(p.XMm * stretch, p.YMm))]))]);
        return new LetterPiece(
            FormattableString.Invariant($"{piece.Key} × {stretch:R}"), piece.Face, piece.Text, outline, outline.Bounds());
    }
}
