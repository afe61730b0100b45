using System.Collections.Immutable;
using System.Globalization;
using NameBand.Job;

namespace NameBand.MachineLetters.Widths;

/// <summary>A measure of a letter before anything of the machine is known, in hundredths of the letter height.</summary>
/// <param name="Own">Standard deviation of what it does by itself.</param>
/// <param name="Loads">How far it goes with each of the things that letters have in common.</param>
internal sealed record PriorMeasure(double Mean, double Own, ImmutableArray<double> Loads);

/// <param name="Left">Clear space inside its advance before the ink; <paramref name="Right"/>: behind it.</param>
internal sealed record PriorLetter(PriorMeasure Advance, PriorMeasure Left, PriorMeasure Right);

/// <summary>Letters of one look.</summary>
/// <param name="SpaceMean">Left and right of a letter together, in the mean of the small letters.</param>
internal sealed record LookPrior(LetterLook Look, ImmutableSortedDictionary<string, PriorLetter> Letters, double SpaceMean)
{
    /// <summary>How many things in common are told apart.</summary>
    public const int Factors = 4;
}

/// <summary>
/// How wide letters are over many faces: a table made from the faces that the benchmark letter-prior lists, none of them a
/// machine's. docs/machine-letters.md says which, and how well it foretells faces that it does not know.
/// </summary>
internal sealed class LetterPrior
{
    private const string Resource = "NameBand.MachineLetters.letter-prior.csv";

    private static readonly Lazy<LetterPrior> Read1 = new(() =>
    {
        using var stream = typeof(LetterPrior).Assembly.GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"{Resource} is not built in.");
        using var reader = new StreamReader(stream);
        return Read(reader.ReadToEnd());
    });

    private LetterPrior(ImmutableArray<LookPrior> looks) => Looks = looks;

    public static LetterPrior Shipped => Read1.Value;

    public ImmutableArray<LookPrior> Looks { get; }

    public static LetterPrior Read(string table)
    {
        var looks = ImmutableArray.CreateBuilder<LookPrior>();
        var rows = table.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Split('\t'));
        foreach (var look in rows.GroupBy(r => r[0], StringComparer.Ordinal))
        {
            var letters = look.GroupBy(r => r[1], StringComparer.Ordinal).ToImmutableSortedDictionary(
                g => g.Key,
                g =>
                {
                    var byMeasure = g.ToDictionary(r => r[2], Measure, StringComparer.Ordinal);
                    return new PriorLetter(byMeasure["advance"], byMeasure["left"], byMeasure["right"]);
                },
                StringComparer.Ordinal);
            double space = letters.Where(l => l.Key is [>= 'a' and <= 'z']).Average(l => l.Value.Left.Mean + l.Value.Right.Mean);
            looks.Add(new LookPrior(Enum.Parse<LetterLook>(look.Key, ignoreCase: true), letters, space));
        }

        return new LetterPrior(looks.ToImmutable());
    }

    private static PriorMeasure Measure(string[] row) => new(
        Number(row[3]), Number(row[4]), [.. row.Skip(5).Take(LookPrior.Factors).Select(Number)]);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
