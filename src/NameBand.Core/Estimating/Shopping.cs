using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>One thing to buy.</summary>
/// <param name="Needed">What the work uses, waste included, in words.</param>
/// <param name="Amount">How many of <paramref name="Unit"/> the shop has to hand over.</param>
/// <param name="Price">In the job's currency; null where no price was given.</param>
public sealed record BuyLine(Said What, Said Needed, double Amount, Said Unit, double? Price)
{
    /// <summary>The amount as it is said in a shop: <c>2 3/8 yd</c>, <c>1.3 m</c>, <c>3</c>.</summary>
    public Said InShop { get; init; } = Said.Nothing;
}

/// <summary>What to buy, and what it costs.</summary>
/// <param name="Worth">What the hours are worth at the job's price for an hour; null where none was given.</param>
public sealed record ShoppingList(ImmutableArray<BuyLine> Lines, string Currency, double? Worth)
{
    /// <summary>Sum of the prices that are known; null when none is.</summary>
    public double? Total => Lines.Any(l => l.Price is not null) ? Lines.Sum(l => l.Price ?? 0) : null;

    /// <summary>Lines whose price was not given, which the total leaves out.</summary>
    public IEnumerable<Said> WithoutPrice => Lines.Where(l => l.Price is null).Select(l => l.What);
}

/// <summary>Turns metres of thread and strips of cloth into what a shop sells.</summary>
public static class Shopping
{
    public static ShoppingList For(BandJob job, StripPlan plan, Estimate estimate)
    {
        var shop = job.Shop;
        double needleM = estimate.NeedleThreadM * (1 + shop.ThreadWastePart);
        double bobbinM = estimate.BobbinThreadM * (1 + shop.ThreadWastePart);
        double hours = estimate.MachineMinutes.Likely / 60;
        double bobbinSpools = Whole(bobbinM / shop.BobbinSpoolM);
        double needles = hours > 0 ? Whole(hours / shop.HoursPerNeedle) : 0;
        BuyLine[] lines =
        [
            .. NeedleThreads(job, plan, estimate, needleM),
            Spools(
                job.Colours.Bobbin is { } bobbin ? (Said)$"bobbin thread, {bobbin.InWords}" : "bobbin thread",
                Said.Plural(
                    estimate.Bobbins, $"{Metres(bobbinM)}, {estimate.Bobbins} bobbin of {Metres(job.Bobbin.HoldsM)}",
                    $"{Metres(bobbinM)}, {estimate.Bobbins} bobbins of {Metres(job.Bobbin.HoldsM)}"),
                bobbinSpools, shop.BobbinSpoolM, job.Prices.BobbinSpool),
            Cloth(job, plan),
            Backing(job, plan),
            .. StiffeningBuy.Of(job, plan),
            new BuyLine(
                "needles", $"{Duration.InWords(hours * 60)} of sewing", needles, Said.Plural((long)needles, "needle", "needles"),
                job.Prices.Needle * needles)
            {
                InShop = Said.Plural((long)needles, $"{needles:0} needle", $"{needles:0} needles"),
            },
        ];
        double worth = (estimate.MachineMinutes.Likely + estimate.HandsOnMinutes.Likely) / 60;
        return new ShoppingList(
            [.. lines.Where(l => l.Amount > 0)],
            job.Prices.Currency,
            job.Prices.Hour is { } hour ? Math.Round(worth * hour, 2) : null);
    }

    /// <summary>A line for each colour, with the spools of it; what belongs to no name, such as ends of thread, goes with the
    /// names.</summary>
    private static IEnumerable<BuyLine> NeedleThreads(BandJob job, StripPlan plan, Estimate estimate, double allM)
    {
        var metres = ThreadMetres.Of(plan, estimate);
        double named = metres.Sum(m => m.Metres);
        foreach (var (thread, m) in metres)
        {
            double neededM = named > 0 ? allM * m / named : allM;
            double spools = Whole(neededM / job.Shop.SpoolM);
            bool isSaid = metres.Length > 1 || job.Colours.Thread is not null || thread != ColourSettings.UsualThread;
            yield return Spools(
                isSaid ? (Said)$"needle thread, {thread.InWords}" : "needle thread", Metres(neededM), spools, job.Shop.SpoolM,
                job.Prices.Spool);
        }
    }

    /// <summary>
    /// Rounds lie side by side along the cloth, as many as its width holds, so that no round needs a join in the
    /// middle; the cloth is as long as the longest of each such row.
    /// </summary>
    private static BuyLine Cloth(BandJob job, StripPlan plan)
    {
        var lengths = Estimator.BandLengthsMm(plan).ToList();
        double bandMm = Estimator.BandWidthMm(job, plan);
        int beside = (int)Math.Max(1, Math.Floor((job.Shop.ClothWidthMm / bandMm) + Tolerance.Rounding));
        double lengthMm = (plan.Cloths.IsEmpty ? Rows(lengths, beside) : CutPlan.Of(plan, job.Shop, job.Layout.IsBias).BoughtMm)
            * (1 + job.Shop.ClothWastePart);
        return Measured(
            "cloth", plan.Hem.IsCurved
            ? Said.Plural(
                lengths.Count, $"{lengths.Count} piece of a ring, nested in cloth {job.Shop.ClothWidthMm / 1000:0.##} m wide",
                $"{lengths.Count} pieces of a ring, nested in cloth {job.Shop.ClothWidthMm / 1000:0.##} m wide")
                : InLengths(job, plan, (lengths.Count, bandMm, beside), lengthMm),
            lengthMm, job.Shop.Metric, job.Prices.ClothPerUnit);
    }

    /// <summary>What of the cloth's width the lengths use; and where most of it would be left over, what joins would save.</summary>
    private static Said InLengths(BandJob job, StripPlan plan, (int Count, double WidthMm, int Most) lengths, double boughtMm)
    {
        int beside = Math.Min(lengths.Count, lengths.Most);
        Said wide = Said.Plural(
            lengths.Count, $"{lengths.Count} length {lengths.WidthMm:0} mm wide", $"{lengths.Count} lengths {lengths.WidthMm:0} mm wide");
        Said side = beside <= 1 ? wide
            : beside == lengths.Count ? (Said)$"{wide}, beside each other" : $"{wide}, {beside} beside each other";
        Said use = $"{side}: {beside * lengths.WidthMm / 1000:0.00} m of the {job.Shop.ClothWidthMm / 1000:0.##} m that the cloth is wide";
        return InPieces(job, plan, lengths.Most, boughtMm) is { } pieces ? $"{use}; {pieces}" : use;
    }

    /// <summary>Fewer joins than this are few: pieces no shorter than a metre (our choice).</summary>
    private const double FewJoinsMm = 1000;

    /// <summary>Half a gap and half a name by which a join may lie off an even division: our assumption.</summary>
    private const double OffEvenMm = 80;

    /// <summary>Joins are seen, so that they are hers: it is said what they would save.</summary>
    private static Said? InPieces(BandJob job, StripPlan plan, int most, double boughtMm)
    {
        if (job.Layout.Piece is not null || job.Layout.IsBias || plan.Cloths.IsEmpty || plan.Rounds.IsEmpty || most < 2)
        {
            return null;
        }

        double round = plan.Rounds.Max(r => r.LengthMm);
        int pieces = Math.Min(most / plan.Cloths.Length, (int)(round / FewJoinsMm));
        if (pieces < 2)
        {
            return null;
        }

        double piece = Math.Ceiling(((round / pieces) + OffEvenMm) / 10) * 10;
        double around = plan.Cloths.Max(c => c.LengthMm) - plan.OnClothMm(round) + (2 * job.Layout.JoinAllowance.Mm);
        double neededMm = (plan.OnClothMm(piece) + around) / (1 - job.Shop.ClothShrinkagePart) * (1 + job.Shop.ClothWastePart);
        Said would = Measured("", "", neededMm, job.Shop.Metric, null).InShop;
        return boughtMm - neededMm < FewJoinsMm / 2 ? null
            : (Said)$"in pieces of at most {piece:0} mm (\"piece\" in the group “strip”; joins are seen) {would} would do";
    }

    private static BuyLine Backing(BandJob job, StripPlan plan)
    {
        var pieces = Estimator.BackingPieces(plan);
        double best = pieces.Sum(p => Math.Min(Length(p.Count, p.LengthMm, p.WidthMm), Length(p.Count, p.WidthMm, p.LengthMm)));

        // Under a run without a hoop lies one strip of backing as long as it is.
        double runsMm = Estimator.RunBackingsMm(plan).Sum();
        double runWidthMm = Estimator.RunBackingWidthMm(plan);
        best += runsMm / Math.Max(1, Math.Floor((job.Shop.BackingWidthMm / runWidthMm) + Tolerance.Rounding));
        Said[] runs = runsMm > 0 ? [$"strips {runWidthMm:0} mm wide, {runsMm / 1000:0.0} m in all"] : [];
        Said cut = Said.Join(
            ", ", pieces.Select(p => (p.Count, Size: Wording.Size($"{p.LengthMm:0}", $"{p.WidthMm:0}")))
                .Select(p => Said.Plural(p.Count, $"{p.Count} piece {p.Size}", $"{p.Count} pieces {p.Size}")).Concat(runs));
        return Measured(
            "backing", $"{cut} from a roll {job.Shop.BackingWidthMm / 1000:0.##} m wide",
            best, job.Shop.Metric, job.Prices.BackingPerUnit);

        double Length(int count, double downMm, double besideMm)
        {
            int beside = (int)Math.Floor((job.Shop.BackingWidthMm / besideMm) + Tolerance.Rounding);
            return beside < 1 ? count * Math.Max(downMm, besideMm) : Math.Ceiling(count / (double)beside) * downMm;
        }
    }

    private static double Rows(IEnumerable<double> lengthsMm, int beside) =>
        lengthsMm.OrderDescending().Chunk(beside).Sum(row => row[0]);

    private static BuyLine Spools(Said what, Said needed, double amount, double spoolM, double? price) =>
        new(
            what, needed, amount, Said.Plural((long)amount, $"spool of {Metres(spoolM)}", $"spools of {Metres(spoolM)}"), price * amount)
        {
            InShop = Said.Plural((long)amount, $"{amount:0} spool of {Metres(spoolM)}", $"{amount:0} spools of {Metres(spoolM)}"),
        };

    /// <summary>Cloth is cut to the tenth of a metre, or to the eighth of a yard.</summary>
    internal static BuyLine Measured(Said what, Said needed, double lengthMm, bool metric, double? price)
    {
        double steps = metric ? 10 : 8;
        double unitMm = metric ? 1000 : 914.4;
        double amount = Math.Ceiling((lengthMm / unitMm * steps) - Tolerance.Rounding) / steps;
        Said inShop = metric ? (Said)$"{amount:0.0} m" : $"{Eighths(amount)} yd";
        return new BuyLine(what, needed, amount, metric ? "m" : "yd", price * amount) { InShop = inShop };
    }

    /// <summary>A number of eighths as people write it: <c>2 3/8</c>, <c>1/2</c>, <c>4</c>.</summary>
    internal static string Eighths(double number)
    {
        int eighths = (int)Math.Round(number * 8);
        int top = eighths % 8;
        int bottom = 8;
        while (top > 0 && top % 2 == 0)
        {
            top /= 2;
            bottom /= 2;
        }

        string fraction = top == 0 ? "" : FormattableString.Invariant($"{top}/{bottom}");
        string whole = eighths >= 8 || top == 0 ? FormattableString.Invariant($"{eighths / 8}") : "";
        return (whole + " " + fraction).Trim();
    }

    private static Said Metres(double m) => $"{m:0.#} m";

    private static double Whole(double number) => Math.Ceiling(number - Tolerance.Rounding);
}
