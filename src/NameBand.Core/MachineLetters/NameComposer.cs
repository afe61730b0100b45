using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Names;

namespace NameBand.MachineLetters;

/// <summary>One setting of the machine: a letter height and the gap between letters.</summary>
public sealed record SizeStep(double HeightMm, double GapMm);

/// <summary>
/// Letters names in a machine's own letters at one setting. How the letters look is taken from a similar face, each
/// one stretched to its measured width: only the widths are the machine's.
/// </summary>
public sealed class NameComposer
{
    /// <summary>Sewing the same thing twice comes out this much different: our assumption, beside the ruler's error.</summary>
    private const double UnevenPart = 0.01;

    private readonly Alphabet _alphabet;
    private readonly IReadOnlyDictionary<string, LetteredName> _drawn;
    private readonly Dictionary<string, ImmutableArray<PlacedPiece>> _pieces = new(StringComparer.Ordinal);
    private readonly double _readingErrorMm;

    /// <param name="alphabet">At the step's height.</param>
    /// <param name="drawn">Letters as a similar face has them, each lettered as a name of its own; letters may be missing.</param>
    public NameComposer(SizeStep step, Alphabet alphabet, IReadOnlyDictionary<string, LetteredName> drawn, double readingErrorMm)
    {
        Step = step;
        _alphabet = alphabet;
        _drawn = drawn;
        _readingErrorMm = readingErrorMm;
    }

    public SizeStep Step { get; }

    /// <summary>A name as it will be sewn; null when the alphabet has no width for one of its letters.</summary>
    public LetteredName? Compose(Name name)
    {
        var letters = Letters.Of(name.Text);
        if (letters.Count == 0 || !letters.All(_alphabet.Has))
        {
            return null;
        }

        var pieces = ImmutableArray.CreateBuilder<PlacedPiece>();
        var ink = new Box(0, 0, LengthMm(letters) / Step.HeightMm, 1);
        double at = 0;
        foreach (string letter in letters)
        {
            foreach (var piece in Pieces(letter))
            {
                var moved = new PlacedPiece(piece.Piece, piece.At + new Point(at, 0));
                pieces.Add(moved);
                var box = piece.Piece.Ink.Moved(moved.At);
                ink = ink with { BottomMm = Math.Min(ink.BottomMm, box.BottomMm), TopMm = Math.Max(ink.TopMm, box.TopMm) };
            }

            at += (_alphabet.Letters[letter].WidthMm + Step.GapMm) / Step.HeightMm;
        }

        return new LetteredName(name, pieces.ToImmutable(), ink);
    }

    /// <summary>From the left edge of the first letter to the right edge of the last.</summary>
    internal double LengthMm(IReadOnlyList<string> letters) =>
        letters.Sum(l => _alphabet.Letters[l].WidthMm) + (Math.Max(0, letters.Count - 1) * Step.GapMm);

    /// <summary>
    /// How far a sewn length may be from the expected one, 19 times in 20: the letters' ranges (a letter that comes
    /// twice is wrong twice), the gap's, the ruler's, and the machine's own unevenness.
    /// </summary>
    internal double ToleranceMm(IReadOnlyList<string> letters)
    {
        double squares = letters.GroupBy(l => l, StringComparer.Ordinal)
            .Sum(g => Math.Pow(g.Count() * _alphabet.Letters[g.Key].HalfRangeMm, 2));
        double gaps = Math.Max(0, letters.Count - 1) * _alphabet.Gap.HalfRangeMm;
        double uneven = 2 * UnevenPart * LengthMm(letters);
        double reading = 2 * _readingErrorMm;
        return Math.Sqrt(squares + (gaps * gaps) + (uneven * uneven) + (reading * reading));
    }

    /// <summary>Time the machine runs for a piece keyed in at one go; null when no letter was timed.</summary>
    internal double? Seconds(IReadOnlyList<string> letters) =>
        letters.All(l => _alphabet.Letters[l].Seconds is not null)
            ? letters.Sum(l => _alphabet.Letters[l].Seconds!.Value) + _alphabet.StartSeconds
            : null;

    internal bool IsEstimated(IReadOnlyList<string> letters) =>
        letters.Any(l => _alphabet.Letters[l].Origin == WidthOrigin.Estimated);

    /// <summary>A letter's pieces with its left edge at 0, at a letter height of 1 mm, stretched to the measured width.</summary>
    private ImmutableArray<PlacedPiece> Pieces(string letter)
    {
        if (_pieces.TryGetValue(letter, out var made))
        {
            return made;
        }

        made = [];
        if (_drawn.TryGetValue(letter, out var face) && face.Ink.WidthMm > 0)
        {
            double stretch = _alphabet.Letters[letter].WidthMm / Step.HeightMm / face.Ink.WidthMm;
            made = [.. face.Pieces.Select(p => new PlacedPiece(
                Stretched(p.Piece, stretch), new Point((p.At.XMm - face.Ink.LeftMm) * stretch, p.At.YMm)))];
        }

        _pieces[letter] = made;
        return made;
    }

    private static LetterPiece Stretched(LetterPiece piece, double stretch)
    {
        var outline = new Outline([.. piece.Outline.Rings.Select(
            r => new Ring([.. r.Points.Select(p => new Point(p.XMm * stretch, p.YMm))]))]);
        return new LetterPiece(
            FormattableString.Invariant($"{piece.Key} × {stretch:R}"), piece.Face, piece.Text, outline, outline.Bounds());
    }
}
