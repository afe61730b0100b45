using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>
/// A made-up machine whose letters are those of a face: advances rounded to a quarter of a millimetre, its size and the gap it
/// leaves its own. Sewn names are read with an error, now and then with a gross one.
/// </summary>
internal sealed class SimulatedMachine
{
    public const double HeightMm = 9;
    private const double GrossOneIn = 30;

    private static readonly string[] Given =
    [
        "Hesper", "Tobin", "Ada", "Rufus", "Maren", "Cressida", "Jonty", "Ibukun", "Nell", "Zoe", "Gideon", "Lowenna", "Wilf", "Xanthe",
        "Bartholomew", "Dilys", "Kit", "Peregrine", "Yusra", "Fern", "Ottoline", "Vikram", "Emil", "Una", "Quentin", "Saoirse", "Magnus",
        "Philippa", "Jory", "Tamsin", "Edric", "Winifred", "Oswald", "Beatrix", "Kazimir", "Leocadia", "Hugh", "Ivo", "Margery", "Theodora",
    ];

    private static readonly string[] Family =
    [
        "Quayle", "Marsh", "Willowby", "Penhale", "Lovdal", "Fane", "Braithe", "Sallow", "Harrowgate", "Tidewell", "Sprake", "Pascoe",
        "Cobbold", "Morrow", "Underhill-Vane", "Evander", "Farthing", "Oakes", "Delamere", "Jessop", "Crake", "Seaborne", "Roscarrock",
        "Thistlewood", "Abara", "Wexcombe", "Ostler", "Fairweather", "Grimshaw", "Kellaway", "Nightingale", "Ruddock", "Yarrow", "Zennor",
        "Blackwater", "Trelissick", "Amory", "Dunnock", "Halloran", "Inchbald",
    ];

    private readonly Random _random;
    private readonly FaceMetrics _face;
    private readonly double _scale;
    private readonly double _gapMm;
    private readonly double _blankMm;

    public SimulatedMachine(FaceMetrics face, int seed)
    {
        _random = new Random(seed);
        _face = face;
        _scale = 1 + (0.04 * ((2 * _random.NextDouble()) - 1));
        _gapMm = 1.5 * _random.NextDouble();
        _blankMm = HeightMm * (0.3 + (0.5 * _random.NextDouble()));
    }

    public FaceMetrics Face => _face;

    /// <summary>Different invented names, drawn.</summary>
    public List<string> Names(int count)
    {
        var names = new List<string>();
        while (names.Count < count)
        {
            string name = $"{Given[_random.Next(Given.Length)]} {Family[_random.Next(Family.Length)]}";
            if (!names.Contains(name))
            {
                names.Add(name);
            }
        }

        return names;
    }

    /// <summary>As it comes out where the feed does nothing of its own.</summary>
    public double TrueMm(string text)
    {
        double length = (text.Length - 1) * _gapMm;
        foreach (char c in text)
        {
            length += c == ' ' ? _blankMm : Math.Round(4 * Mm(c).Advance) / 4;
        }

        return length - Mm(text[0]).Left - Mm(text[^1]).Right;
    }

    /// <summary>Where the first word ends and the second begins.</summary>
    public (double EndMm, double BeginMm) TrueBlank(string text)
    {
        int at = text.IndexOf(' ', StringComparison.Ordinal);
        return (TrueMm(text[..at]), TrueMm(text[..(at + 2)]) - InkMm(text[at + 1]));
    }

    /// <summary>What is read of a length.</summary>
    /// <param name="feedPart">The feed's own variation, as a standard deviation.</param>
    public double Read(double trueMm, double errorMm = 0.5, double feedPart = 0, bool hasGross = true)
    {
        double read = (trueMm * (1 + (feedPart * Noise()))) + (errorMm * Noise());
        bool isGross = _random.NextDouble() < 1 / GrossOneIn && hasGross;
        double by = (3 + (7 * _random.NextDouble())) * (_random.Next(2) == 0 ? -1 : 1);
        LastGrossMm = isGross ? by : 0;
        return read + LastGrossMm;
    }

    /// <summary>How far the last reading was grossly out; 0 where it was not.</summary>
    public double LastGrossMm { get; private set; }

    private double InkMm(char c) => (Math.Round(4 * Mm(c).Advance) / 4) - Mm(c).Left - Mm(c).Right;

    private (double Advance, double Left, double Right) Mm(char c)
    {
        var m = _face.Letters[c.ToString()];
        double part = _scale * HeightMm / 100;
        return (m.Advance * part, m.Left * part, m.Right * part);
    }

    /// <summary>Standard normal, by Box and Muller.</summary>
    private double Noise() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
