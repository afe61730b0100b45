using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>The checks that look at several keys together.</summary>
internal static class JobChecks
{
    // 60 weight thread bears letters of 3 to 3.75 mm (madeiramatters.net 2015-06; graphics-pro.com): a lower zone holds none.
    private const double LeastZoneMm = 3;
    internal const double LeastFieldMm = 20; // The least that hoop.along takes: room for one short name.

    /// <summary>Shorter than any garment's edge or waist: a unit was likely forgotten or mistaken. Our assumption.</summary>
    private const double LeastEdgeMm = 300;

    /// <summary>Shorter than any skirt from its waist to its hem. Our assumption.</summary>
    private const double LeastSkirtMm = 100;

    public static void Check(BandJob job, JobValues values)
    {
        CheckHem(job.Hem, job.Strip, values);
        CheckSkirt(job.Hem.Skirt, values);
        AskAboutSmall(job.Hem, values);
        CheckStrip(job.Strip, values);
        CheckHoop(job.Hoop, values);
        CheckLetters(job, values);
        CheckLines(job, values);
        CheckPlaces(job, values);
    }

    /// <summary>A name has no place of its own where the program is to choose the order, or where names share places.</summary>
    private static void CheckPlaces(BandJob job, JobValues values)
    {
        if (!values.AreSound(LayoutKeys.Names) || job.Wishes.All(w => !w.IsOfPlace))
        {
            return;
        }

        if (values.AreSound(JobKeys.Order) && job.Lettering.Order == NameOrder.BestFit)
        {
            values.Refuse(
                LayoutKeys.Names, "Some names have a place of their own, and “bestFit” takes the names in any order.",
                "Take the order “listed” or “alphabetical”, or remove the names’ places.");
        }

        if (values.AreSound(LayoutKeys.Lines) && job.Layout.Lines > 1)
        {
            values.Refuse(
                LayoutKeys.Names, "Some names have a place of their own, and on a strip with two lines a name shares its place "
                    + "with another.",
                "Write \"lines\": 1 in the group “strip”, or remove the names’ places.");
        }
    }

    private static void CheckLetters(BandJob job, JobValues values)
    {
        if (job.Traits.HasLettersOfItsOwn && job.Letters.Sizes.IsEmpty && values.AreSound(LettersKeys.Sizes))
        {
            values.Refuse(
                LettersKeys.Sizes, "The job does not say which letter heights the machine offers.",
                "Add \"letters\": { \"sizes\": [\"8 mm\", \"6 mm\"] } with the heights of its capitals, as you measure them on cloth.");
        }
    }

    /// <summary>Two lines are of names that are all alike: what would bend their base lines is refused before any work is done.</summary>
    private static void CheckLines(BandJob job, JobValues values)
    {
        if (job.Layout.Lines < 2 || !values.AreSound(LayoutKeys.Lines))
        {
            return;
        }

        if (job.Layout.IsCurved)
        {
            values.Refuse(
                LayoutKeys.Lines,
                "Two lines of names on one strip do not go with a strip that is cut to the curve: each line would have a curve of its own.",
                "Write \"lines\": 1 in the group “strip”, or \"shape\": \"straight\".");
        }
    }

    /// <summary>The locale of the alphabetical order, checked against those the system knows; "und" is the root order.</summary>
    public static string Collation(JobValues values)
    {
        string collation = values.Text(JobKeys.Collation)!;
        try
        {
            CultureInfo.GetCultureInfo(collation, predefinedOnly: true);
        }
        catch (CultureNotFoundException)
        {
            values.Refuse(
                JobKeys.Collation, $"“{PlainText.Short(collation)}” is not a language NameBand can order by.",
                "Write a language code such as \"en\", \"sv\" or \"de-AT\", or \"und\" for the order that suits most.");
        }

        return collation;
    }

    private static void CheckHem(HemSettings hem, StripSettings strip, JobValues values)
    {
        bool isMeasured = values.Has(JobKeys.HemLength);
        bool isSkirt = hem.Skirt is not null;
        if (isMeasured && isSkirt)
        {
            values.Refuse(
                "hem.skirt", "The hem has both hem.length and hem.skirt.",
                "Keep hem.length if you measured the edge, or hem.skirt to have it calculated.");
        }
        else if (!isMeasured && !values.Has("hem.skirt") && (!values.Has("hem") || values.HasGroup("hem"))
            && values.AreSound(JobKeys.HemLength) && values.IsSound("hem") && values.IsSound("hem.skirt"))
        {
            values.Refuse(
                "hem", "The job does not say how long the hem is.",
                "Add \"hem\": { \"length\": \"3.66 m\" } with your measured edge, or hem.skirt with circlePart, waist and length.");
        }

        if (isSkirt && values.Has(JobKeys.HemTurn))
        {
            values.Refuse(JobKeys.HemTurn, $"{values.Spelt(JobKeys.HemTurn)} goes with a measured hem.length, and hem.skirt has its own.",
                $"Remove {values.Spelt(JobKeys.HemTurn)}.");
        }

        if (isMeasured && !isSkirt && values.AreSound(JobKeys.HemLength, JobKeys.Rounds, JobKeys.HemTurn))
        {
            CheckRounds(hem, strip, values);
        }
    }

    private static void CheckRounds(HemSettings hem, StripSettings strip, JobValues values)
    {
        int lengths = hem.Lengths.Length;
        if (lengths > 1 && strip.Rounds is null)
        {
            values.Refuse(
                JobKeys.HemLength, $"hem.length has {lengths} lengths, and strip.rounds is \"asNeeded\".",
                $"Write \"rounds\": {lengths} in strip, or give one length and hem.circlePart.");
        }
        else if (lengths > 1 && lengths != strip.Rounds)
        {
            values.Refuse(
                JobKeys.HemLength, $"hem.length has {lengths} lengths, and strip.rounds is {strip.Rounds}.",
                $"Write \"rounds\": {lengths} in strip, or one length for each round.");
        }
        else if (lengths == 1 && strip.Rounds != 1 && hem.Turn is null)
        {
            values.Refuse(
                JobKeys.HemTurn,
                "With more than one round NameBand must know how much shorter the higher ones are, and hem.circlePart is not given.",
                "Add \"circlePart\" to hem: the part of a full circle, such as 0.75, or 0 for a straight edge. "
                + "Or measure each round and give all lengths.");
        }
    }

    private static void CheckSkirt(SkirtSettings? skirt, JobValues values)
    {
        if (skirt is null)
        {
            return;
        }

        foreach (JobKey key in new JobKey[] { JobKeys.SkirtTurn, JobKeys.SkirtWaist, JobKeys.SkirtLength })
        {
            if (!values.Has(key) && values.AreSound(key))
            {
                Said example = key == JobKeys.SkirtTurn
                    ? "\"circlePart\": 0.75 for three quarters of a circle" : (Said)$"\"{key.Path.Split('.')[^1]}\": \"70 cm\"";
                values.Refuse(key, $"{key.Path} is missing.", $"Add for example {example}.");
            }
        }

        if (values.AreSound(JobKeys.SkirtTurn, JobKeys.SkirtWaist, JobKeys.SkirtLength, JobKeys.SkirtTakenUp))
        {
            var hem = Length.FromMm(skirt.Waist.Mm + (2 * Math.PI * skirt.Turn * skirt.Length.Mm));
            if (skirt.TakenUp.Mm >= hem.Mm)
            {
                values.Refuse(
                    JobKeys.SkirtTakenUp, $"Seams and placket take up {skirt.TakenUp.InMetres()}, and the whole hem is {hem.InMetres()}.",
                    "Check hem.skirt.takenUp.");
            }
        }
    }

    /// <summary>A bare number is millimetres by contract; whoever forgot to write centimetres or inches is asked.</summary>
    private static void AskAboutSmall(HemSettings hem, JobValues values)
    {
        foreach (var length in hem.Lengths)
        {
            AskIfBelow(LeastEdgeMm, "The edge", JobKeys.HemLength, length, values);
        }

        if (hem.Skirt is { } skirt)
        {
            AskIfBelow(LeastEdgeMm, "The waist", JobKeys.SkirtWaist, skirt.Waist, values);
            AskIfBelow(LeastSkirtMm, "The skirt from waist to hem", JobKeys.SkirtLength, skirt.Length, values);
        }
    }

    private static void AskIfBelow(double leastMm, Said what, JobKey key, Length length, JobValues values)
    {
        if (length.Mm > 0 && length.Mm < leastMm && values.AreSound(key) && values.Has(key))
        {
            Said why = values.HasBareNumber(key) ? " A number without a unit is taken as millimetres." : "";
            values.Note(
                key, $"{what} is {Both(length)} long, which is little for a garment.{why}",
                "If it is right, leave it. Otherwise write what you measured with its unit, such as \"70 cm\" or \"28 in\".");
        }
    }

    private static void CheckStrip(StripSettings strip, JobValues values)
    {
        if (!values.AreSound(JobKeys.CutWidth, JobKeys.TurnIn, JobKeys.Margin))
        {
            return;
        }

        var finished = Length.FromMm(strip.CutWidth.Mm - (2 * strip.TurnIn.Mm));
        var zone = Length.FromMm(finished.Mm - (2 * strip.Margin.Mm));
        if (finished.Mm <= 0)
        {
            values.Refuse(
                JobKeys.TurnIn, $"Two turn-ins of {Both(strip.TurnIn)} use up the whole cut width of {Both(strip.CutWidth)}.",
                "Turn in less, or cut the strip wider.");
        }
        else if (zone.Mm < LeastZoneMm)
        {
            Said left = zone.Mm > 0 ? (Said)$"only {zone.InMillimetres()}" : "nothing";
            values.Refuse(
                JobKeys.Margin,
                $"The finished strip is {Both(finished)} wide, and two margins of {Both(strip.Margin)} leave {left} for letters.",
                "Make the margin or the turn-in smaller, or cut the strip wider.");
        }
    }

    private static void CheckHoop(HoopSettings hoop, JobValues values)
    {
        double leftMm = hoop.Along.Mm - (2 * hoop.Spare.Mm);
        if (values.AreSound(JobKeys.Along, JobKeys.Spare) && leftMm < LeastFieldMm)
        {
            Said left = leftMm > 0 ? (Said)$"only {Length.FromMm(leftMm).InMillimetres()}" : "nothing";
            values.Refuse(
                JobKeys.Spare,
                $"Leaving {Both(hoop.Spare)} free at each end of a sewing field of {Both(hoop.Along)} leaves {left} to sew in.",
                "Make hoop.spare smaller, or give the true sewing field in hoop.along.");
        }
    }

    private static string Both(Length length) => $"{length.InMillimetres()} ({length.InInches()})";
}
