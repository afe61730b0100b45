using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>A made-up machine whose true letter widths are known, sewn and measured with a stated error.</summary>
internal sealed class FakeMachine
{
    public const double HeightMm = 8;
    private readonly Random _random;
    private readonly double _errorMm;

    public FakeMachine(int seed, IEnumerable<string> letters, double errorMm = 0.5, double gapMm = 0.9)
    {
        _random = new Random(seed);
        _errorMm = errorMm;
        GapMm = gapMm;
        foreach (string letter in letters)
        {
            FaceMm[letter] = 2 + (5 * _random.NextDouble());
            WidthMm[letter] = Math.Max(0.6, 0.4 + (0.9 * FaceMm[letter]) + (0.5 * Noise()));
            Seconds[letter] = 1.5 + (0.8 * WidthMm[letter]);
        }
    }

    public double GapMm { get; }

    public Dictionary<string, double> WidthMm { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, double> FaceMm { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, double> Seconds { get; } = new(StringComparer.Ordinal);

    public Priors Priors => new(HeightMm, 0.5, l => FaceMm.TryGetValue(l, out double mm) ? mm / HeightMm : null);

    public LinePlan Design(LineBounds? bounds = null) => LineDesign.Choose(
        WidthMm.Keys.Select((l, i) => (l, i)).ToDictionary(p => p.l, p => 100 - p.i, StringComparer.Ordinal),
        l => FaceMm[l] + 1, bounds ?? new LineBounds());

    public double TrueMm(KeyInLine line) => line.Letters.Sum(l => WidthMm[l]) + ((line.Letters.Count - 1) * GapMm);

    public KeyInLine Measured(KeyInLine line) => line with
    {
        LengthMm = TrueMm(line) + (_errorMm * Noise()),
        Seconds = 3 + line.Letters.Sum(l => l == " " ? 0 : Seconds[l]) + (0.5 * Noise()),
    };

    public List<KeyInLine> Measured(IEnumerable<KeyInLine> lines) => [.. lines.Select(Measured)];

    /// <summary>Standard normal, by Box and Muller.</summary>
    private double Noise() =>
        Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    public static string[] Alphabet(int count) =>
        [.. "aeinrolstmdhukgbcywpvfzjqxASMLJBCDEFGHIKNOPRTUVWYZQX-'.&".Select(c => c.ToString()).Take(count)];
}
