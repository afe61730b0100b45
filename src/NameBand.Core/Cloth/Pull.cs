namespace NameBand.Cloth;

/// <summary>
/// How much cloth draws in under satin, beside the one figure that a cloth or a job states: that of a column
/// <see cref="StatedAtMm"/> wide in the mean of all directions. Where the numbers come from: docs/cloths.md.
/// </summary>
/// <param name="GrowingPart">What of that figure grows with the length of the stitches; the rest is the same at any width.</param>
/// <param name="AlongFactor">How hard stitches that run along the strip draw, beside the mean of all directions.</param>
/// <param name="AslantFactor">The same at 45° to it.</param>
/// <param name="AcrossFactor">The same across it.</param>
public sealed record Pull(double GrowingPart, double AlongFactor, double AslantFactor, double AcrossFactor)
{
    /// <summary>The stated figure is that of a column so wide.</summary>
    public const double StatedAtMm = 2;

    /// <summary>Letters hardly have wider strokes, as a part of their height: from looking at bold faces.</summary>
    private const double WidestStrokePart = 0.2;

    /// <summary>What the sheet of cloth foretells by width, beside the stated one; from 7 mm on stitches grow no longer.</summary>
    private static readonly (double WidthMm, double Part)[] Growth = [(0, 0), (1, 0.51), (2, 1), (4, 1.93), (7, 3.13)];

    /// <summary>How much farther ends are pushed out where stitches run aslant to the strip, beside those along and across it.</summary>
    public double PushAslantFactor { get; init; } = 1;

    /// <summary>The same of stitches along the strip and across it: over 1 where the strip is cut on the bias.</summary>
    public double PushStraightFactor { get; init; } = 1;

    /// <summary>Stiff along both its threads and soft aslant.</summary>
    public static Pull FirmWoven { get; } = new(0.5, 0.75, 1.13, 0.99) { PushAslantFactor = 2 };

    public static Pull LooseWoven { get; } = new(0.5, 0.77, 1.12, 0.99) { PushAslantFactor = 2 };

    /// <summary>Alike in all directions.</summary>
    public static Pull Felted { get; } = new(0.5, 1, 1, 1);

    public static Pull Knitted { get; } = new(0.5, 0.91, 1.02, 1.05) { PushAslantFactor = 1.4 };

    /// <summary>The same cloth in a strip cut at 45° to its threads.</summary>
    public Pull OnBias() => this with
    {
        AlongFactor = AslantFactor,
        AslantFactor = (AlongFactor + AcrossFactor) / 2,
        AcrossFactor = AslantFactor,
        PushAslantFactor = PushStraightFactor,
        PushStraightFactor = PushAslantFactor,
    };

    /// <summary>Where a swatch has shown how much harder stitches across the strip draw than those along it.</summary>
    public Pull WithAcross(double acrossFactor)
    {
        double both = AlongFactor + AcrossFactor;
        return this with { AlongFactor = both / (1 + acrossFactor), AcrossFactor = both * acrossFactor / (1 + acrossFactor) };
    }

    /// <summary>How stitches draw that run in a direction: cloth has two threads, so the same there and back.</summary>
    internal double Towards(double x, double y)
    {
        double twice = CosineOfTwice(x, y);
        double fourfold = (2 * twice * twice) - 1;
        double straight = (AlongFactor + AcrossFactor) / 2;
        return ((straight + AslantFactor) / 2) + ((AlongFactor - AcrossFactor) / 2 * twice) + ((straight - AslantFactor) / 2 * fourfold);
    }

    /// <summary>What the stated figure is to be multiplied by for a column of a width, sewn by stitches that run in a direction.</summary>
    internal double Factor(double widthMm, double x, double y) => 1 - GrowingPart + (GrowingPart * GrownFactor(widthMm) * Towards(x, y));

    /// <summary>The same for the widest strokes of letters of a height; never under 1.</summary>
    public double LettersFactor(double heightMm) => Math.Max(1, 1 - GrowingPart + (GrowingPart * GrownFactor(WidestStrokePart * heightMm)));

    /// <summary>What the stated push is to be multiplied by at the end of a column whose stitches run in a direction.</summary>
    internal double PushFactor(double x, double y)
    {
        double twice = CosineOfTwice(x, y);
        return PushStraightFactor + ((PushAslantFactor - PushStraightFactor) * (1 - (twice * twice)));
    }

    /// <summary>How much more a column draws in than one of the stated width, by the length of its stitches alone.</summary>
    public static double GrownFactor(double widthMm)
    {
        for (int i = 1; i < Growth.Length; i++)
        {
            if (widthMm <= Growth[i].WidthMm)
            {
                var (before, after) = (Growth[i - 1], Growth[i]);
                double way = Math.Max(0, widthMm - before.WidthMm) / (after.WidthMm - before.WidthMm);
                return before.Part + ((after.Part - before.Part) * way);
            }
        }

        return Growth[^1].Part;
    }

    private static double CosineOfTwice(double x, double y)
    {
        double squared = (x * x) + (y * y);
        return squared < 1e-18 ? 1 : ((x * x) - (y * y)) / squared;
    }
}
