using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;
using NameBand.MachineLetters.Spelling;
using NameBand.MachineLetters.Widths;

namespace NameBand.MachineLetters;

/// <summary>
/// What is known of a machine's letters: lengths of sewn names, lines of a measuring sheet and a measured alphabet are readings of
/// one and the same model.
/// </summary>
internal sealed class LetterKnowledge
{
    /// <summary>From so many measured names on the plan counts as told by them.</summary>
    public const int EnoughNames = 3;

    private readonly LettersSettings _settings;
    private readonly WidthModel _model;

    private LetterKnowledge(LettersSettings settings, WidthModel model, WidthBelief belief, MeasuredAlphabets? alphabets)
    {
        Keys = new PressedKeys(MachineSpelling.Has(settings, alphabets));
        (_settings, _model, Belief, Alphabets) = (settings, model, belief, alphabets);
    }

    public WidthBelief Belief { get; }

    /// <summary>Which letters are pressed for a name.</summary>
    public PressedKeys Keys { get; }

    /// <summary>Times of letters, and which the machine lacks; null where no alphabet was measured.</summary>
    public MeasuredAlphabets? Alphabets { get; }

    /// <summary>Measured names that count, on scraps and on the strip.</summary>
    public int NamesRead { get; private init; }

    /// <summary>Whether lengths rest on measures of this machine, and not on what letters are like in general.</summary>
    public bool IsMeasured { get; private init; }

    /// <summary>Lengths of names on the strip that count: none that is taken for wrong, and none twice.</summary>
    public ImmutableArray<SewnLength> OnStrip { get; private init; } = [];

    private ImmutableArray<double> Heights { get; init; } = [];

    /// <summary>Something of that height was read.</summary>
    public bool IsReadAt(double heightMm) => Heights.Any(h => Math.Abs(h - heightMm) < 0.05);

    /// <summary>How much the feed makes the same name differ, as a standard deviation.</summary>
    public double FeedPart => _settings.FeedVariationPart;

    /// <summary>The first letter is sewn first.</summary>
    public bool IsForward => SewingDirection.FirstLetterFirst(_settings);

    public bool HasGaps => _model.HasSpacings;

    /// <summary>Letter heights the machine has.</summary>
    public IEnumerable<double> SizesMm => _settings.Sizes.Select(s => s.Mm);

    /// <summary>Gaps between letters are a setting of the machine, the same for letters of every height.</summary>
    public bool HasSpacingChoice => !_settings.Spacings.IsEmpty;

    /// <summary>The gap is told, by the machine's settings or in job.json.</summary>
    public static bool HasSpacings(LettersSettings settings) => !settings.Spacings.IsEmpty || settings.Gap is not null;

    /// <param name="alphabets">As read; null: there is none.</param>
    /// <param name="lines">Lines of measuring sheets, by the height they were sewn at.</param>
    /// <param name="at">The setting a length was sewn at where it does not say so itself.</param>
    public static Result<LetterKnowledge> Of(
        LettersSettings settings, MeasuredAlphabets? alphabets, IReadOnlyList<(double HeightMm, LineSet Set)> lines, SewnLengths lengths,
        SizeStep at)
    {
        var problems = new List<Problem>();
        var model = new WidthModel(settings.Look, HasSpacings(settings), settings.ReadingError.Mm, settings.FeedVariationPart);
        var sheets = new List<WidthReading>();
        foreach (var (height, set) in lines)
        {
            sheets.AddRange(OfLines(set, height, settings, alphabets, sheets.Count));
        }

        bool isOnSheet(Alphabet a) => lines.Any(l => Math.Abs(l.HeightMm - a.HeightMm) < 0.05);
        var alphabet = alphabets?.BySize.Where(a => !isOnSheet(a)).SelectMany(a => OfAlphabet(a, HasSpacings(settings))).ToList() ?? [];
        var keys = new PressedKeys(MachineSpelling.Has(settings, alphabets));
        var pressed = new SewnLengths([.. lengths.All.Select(l => l with { Keyed = [.. keys.Of(l.Keyed)] })]);
        var sewn = LengthReadings.Of(settings, pressed, at, firstPiece: 1_000_000, problems);
        if (problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<LetterKnowledge>(problems);
        }

        if (LengthReadings.ContradictAlphabet(model, alphabet, sewn) is { } foreign)
        {
            problems.Add(Problem.NeedsPerson(new Where(settings.Alphabet), foreign.Found, foreign.Mend));
            alphabet = [];
        }

        ImmutableArray<WidthReading> all = [.. sewn.Select(s => s.Reading), .. sheets, .. alphabet];
        var belief = new WidthBelief(model, all);
        problems.AddRange(LengthReadings.Doubts(belief, sewn));
        int names = sewn.Select(s => s.Reading.Piece).Distinct().Count();
        return Result.Of(
            new LetterKnowledge(settings, model, belief, alphabets)
            {
                NamesRead = names,
                OnStrip = [.. sewn.Where((s, i) =>
                    !s.Of.IsScrap && s.Of.IsWhole && s.Reading.LengthMm == s.Of.LengthMm && !belief.Wrong.Contains(i)).Select(s => s.Of)],
                Heights = [.. all.Select(r => r.Sum.HeightMm).Distinct()],
                IsMeasured = names >= EnoughNames || alphabet.Count > 1 || sheets.Count > 0,
            },
            problems);
    }

    /// <summary>The gap a setting is made with: as the machine is set, or as it comes out.</summary>
    public double GapMm(double heightMm, IReadOnlyList<string> letters) => _settings.Gap?.Mm
        ?? Math.Max(0, Belief.Mean(LetterTerms.Space([.. letters.Where(l => l != Letters.Blank).DefaultIfEmpty("n")], heightMm)));

    public WidthSum Length(IReadOnlyList<string> letters, SizeStep step) =>
        LetterTerms.Length(letters, step.HeightMm, HasSpacings(_settings) ? step.GapMm : null);

    /// <summary>The names to measure first so that all are known best, by their places; the most telling first.</summary>
    public ImmutableArray<int> First(IReadOnlyList<IReadOnlyList<string>> names, SizeStep step, int count) =>
        NameDesign.Choose(_model, [.. names.Select(n => Length(n, step))], count);

    private static IEnumerable<WidthReading> OfLines(
        LineSet set, double heightMm, LettersSettings settings, MeasuredAlphabets? alphabets, int firstPiece)
    {
        double? spacing = !HasSpacings(settings) ? null
            : settings.Spacings.IsEmpty ? settings.Gap!.Value.Mm
            : alphabets?.BySize.FirstOrDefault(a => Math.Abs(a.HeightMm - heightMm) < 0.05) is { } known
                ? settings.Spacings.MinBy(s => Math.Abs(s.Mm - known.Gap.WidthMm)).Mm
                : settings.Spacings[0].Mm;
        return set.Lines.Where(l => l.LengthMm is not null).Select((l, i) => new WidthReading(
            LetterTerms.Length(l.Letters, heightMm, spacing), l.LengthMm!.Value, firstPiece + i));
    }

    /// <summary>
    /// A measured alphabet tells how far each letter moves on: its width and the gap. Where the machine's gaps are told the gap of the
    /// alphabet is one of them.
    /// </summary>
    private static IEnumerable<WidthReading> OfAlphabet(Alphabet alphabet, bool hasSpacings)
    {
        double gap = hasSpacings ? 0 : alphabet.Gap.WidthMm;
        var known = alphabet.Letters.Values.Where(l => l.Origin == WidthOrigin.Measured).ToList();
        foreach (var letter in known)
        {
            yield return new WidthReading(
                LetterTerms.Pitch(letter.Letter, alphabet.HeightMm), letter.WidthMm + gap, -1, Math.Max(0.05, letter.HalfRangeMm / 1.96))
            { IsSettled = true };
        }

        if (known.Exists(l => l.Letter != Letters.Blank) && alphabet.Gap.Origin == WidthOrigin.Measured)
        {
            yield return new WidthReading(
                LetterTerms.Space([.. known.Select(l => l.Letter).Where(l => l != Letters.Blank)], alphabet.HeightMm), gap, -1,
                Math.Max(0.1, alphabet.Gap.HalfRangeMm / 1.96))
            { IsSettled = true };
        }
    }
}
