using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Widths;

namespace NameBand.MachineLetters;

/// <param name="Of">What was read.</param>
internal sealed record LengthReading(SewnLength Of, WidthReading Reading);

/// <summary>Lengths of sewn names as readings of the model, and what is doubtful of them.</summary>
internal static class LengthReadings
{
    /// <summary>Two readings of one sewn name may differ by the ruler; by more, one of them is wrong.</summary>
    private const double SameLengthMm = 1.5;

    /// <summary>An alphabet that so many lengths lie so far from is another machine's.</summary>
    private const double FarOff = 3.5;

    public static List<LengthReading> Of(LettersSettings settings, SewnLengths lengths, SizeStep at, int firstPiece, List<Problem> problems)
    {
        var readings = new List<LengthReading>();
        foreach (var length in Single(lengths, at, problems))
        {
            double height = length.HeightMm ?? at.HeightMm;
            if (settings.Sizes.All(s => Math.Abs(s.Mm - height) > Tolerance.HeightMm))
            {
                problems.Add(Problem.CannotUse(
                    new Where(SewnLengths.FileName, length.FileLine),
                    $"The machine has no letters {height:0.##} mm high.",
                    $"Take one of letters.sizes ({string.Join(", ", settings.Sizes.Select(s => s.InMillimetres()))}), or add it there."));
                continue;
            }

            double? spacing = LetterKnowledge.HasSpacings(settings) ? length.SpacingMm ?? at.GapMm : null;
            int piece = firstPiece + readings.Count;
            readings.Add(new LengthReading(
                length, new WidthReading(LetterTerms.Length(length.Keyed, height, spacing), length.LengthMm, piece)));
            if (length.Blank is { } blank)
            {
                int word = length.Keyed.IndexOf(Letters.Blank);
                readings.Add(new LengthReading(
                    length, new WidthReading(LetterTerms.Length([.. length.Keyed.Take(word)], height, spacing), blank.EndMm, piece)));
                readings.Add(new LengthReading(
                    length, new WidthReading(LetterTerms.Start(length.Keyed, word + 1, height, spacing), blank.BeginMm, piece)));
            }
        }

        return readings;
    }

    /// <summary>Readings that do not go with the others.</summary>
    public static IEnumerable<Problem> Doubts(WidthBelief belief, IReadOnlyList<LengthReading> sewn)
    {
        foreach (var doubt in belief.Doubtful.Where(d => d.Reading < sewn.Count))
        {
            var (length, reading) = sewn[doubt.Reading];
            bool isWrong = belief.Wrong.Contains(doubt.Reading);
            Said what = reading.LengthMm == length.LengthMm ? "was measured as" : "has its blank at";
            yield return Problem.NeedsPerson(
                new Where(SewnLengths.FileName, length.FileLine, Name: Shown(length)),
                $"“{Shown(length)}” {what} {reading.LengthMm:0.#} mm, and by all other measures it should be about {doubt.ExpectedMm:0.#} mm{(isWrong ? (Said)": it is not counted" : "")}.",
                "Measure it again, from the first letter’s left edge to the last one’s right edge, and write the new length.");
        }
    }

    /// <summary>What to say where lengths of names and a measured alphabet cannot be of one machine; null where they can.</summary>
    public static (Said Found, Said Mend)? ContradictAlphabet(WidthModel model, List<WidthReading> alphabet, List<LengthReading> sewn)
    {
        var whole = sewn.Where(s => s.Reading.LengthMm == s.Of.LengthMm).ToList();
        if (alphabet.Count < 2 || whole.Count < 2)
        {
            return null;
        }

        var belief = new WidthBelief(model, alphabet);
        int far = whole.Count(s =>
        {
            var told = belief.Foretell(s.Reading.Sum);
            double error = Math.Pow(model.ReadingErrorMm, 2) + Math.Pow(model.FeedPart * s.Reading.LengthMm, 2) + Math.Pow(told.SdMm, 2);
            return Math.Abs(s.Reading.LengthMm - told.MeanMm) > FarOff * Math.Sqrt(error);
        });
        if (far < 2 || 2 * far <= whole.Count)
        {
            return null;
        }

        return (
            $"{far} of {whole.Count} measured names do not come out as this alphabet says, so it is ignored: is it of another "
                + $"machine, or of another set of letters?",
            $"If it is, rename it. If it is this machine’s, look at the lengths in {SewnLengths.FileName} again.");
    }

    /// <summary>Each sewn name once: two readings of it are their mean where they agree.</summary>
    private static IEnumerable<SewnLength> Single(SewnLengths lengths, SizeStep at, List<Problem> problems)
    {
        // A name that is given without its number is the one that is given with it, where there is but one.
        var numbers = lengths.All.Where(l => l.Number is not null).GroupBy(l => l.Name, StringComparer.Ordinal)
            .Where(g => g.Select(l => l.Number).Distinct().Count() == 1)
                .ToDictionary(g => g.Key, g => g.First().Number, StringComparer.Ordinal);
        foreach (var same in lengths.All.GroupBy(l => (
            l.Number ?? numbers.GetValueOrDefault(l.Name), l.Name, string.Concat(l.Keyed), l.HeightMm ?? at.HeightMm,
            l.SpacingMm ?? at.GapMm)))
        {
            foreach (var scrap in same.Where(l => l.IsScrap))
            {
                yield return scrap;
            }

            var sewn = same.Where(l => !l.IsScrap).ToList();
            if (sewn.Count == 0)
            {
                continue;
            }

            if (sewn.Max(l => l.LengthMm) - sewn.Min(l => l.LengthMm) > SameLengthMm)
            {
                problems.Add(Problem.NeedsPerson(
                    new Where(SewnLengths.FileName, sewn[^1].FileLine, Name: Shown(sewn[0])),
                    $"“{Shown(sewn[0])}” has two lengths, {sewn[0].LengthMm:0.#} mm in line {sewn[0].FileLine} and {sewn[^1].LengthMm:0.#} mm in line {sewn[^1].FileLine}; neither is counted.",
                    $"Keep the line that is right. If one was sewn on a scrap, write {SewnLengths.ScrapWord} into its column sewn_on."));
                continue;
            }

            yield return sewn[0] with
            {
                LengthMm = sewn.Average(l => l.LengthMm),
                Blank = sewn.Select(l => l.Blank).FirstOrDefault(b => b is not null)
            };
        }
    }

    private static string Shown(SewnLength length) => PlainText.Short(length.Name.Length > 0 ? length.Name : string.Concat(length.Keyed));
}
