using System.Collections.Immutable;

namespace NameBand.MachineLetters.Measuring;

/// <summary>Gives letters that have no measured width one by the proportions of a similar face.</summary>
internal static class AlphabetCompletion
{
    /// <param name="measured">Null: nothing is measured, and every width is the face's own.</param>
    /// <param name="wanted">Letters that must have a width.</param>
    public static MeasuredAlphabets Complete(
        MeasuredAlphabets? measured, IReadOnlyCollection<string> wanted, double heightMm, double readingErrorMm, Func<string, double?> faceWidthMm)
    {
        if (measured is null)
        {
            return new MeasuredAlphabets([WidthSolver.Solve([], wanted, new Priors(heightMm, readingErrorMm, faceWidthMm)).Alphabet]);
        }

        return new MeasuredAlphabets([.. measured.BySize.Select(a => Complete(a, wanted, new Priors(a.HeightMm, readingErrorMm, faceWidthMm)))]);
    }

    private static Alphabet Complete(Alphabet alphabet, IReadOnlyCollection<string> wanted, Priors priors)
    {
        string[] missing = [.. wanted.Where(l => !alphabet.Has(l) && !alphabet.Lacking.Contains(l)).Order(StringComparer.Ordinal)];
        if (missing.Length == 0)
        {
            return alphabet;
        }

        var proportions = new FaceProportions(priors);
        var known = alphabet.Letters.Values.Where(l => l.Origin == WidthOrigin.Measured).ToList();
        proportions.Learn(known, alphabet.Gap.HalfRangeMm);

        // A letter that was never timed takes as long, for its width, as those that were.
        var timed = known.Where(l => l.Seconds is > 0).ToList();
        double? secondsPerMm = timed.Count > 0 ? timed.Sum(l => l.Seconds!.Value) / timed.Sum(l => l.WidthMm) : null;
        return alphabet with
        {
            Letters = alphabet.Letters.AddRange(missing.Select(proportions.Estimate).Select(
                l => KeyValuePair.Create(l.Letter, l with { Seconds = l.Letter == Letters.Blank ? 0 : secondsPerMm * l.WidthMm }))),
        };
    }
}
