using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Load;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>Says what can be done about a name that was misspelt or spoiled: by the plan it was sewn from, the cloth, and the
/// work of each way.</summary>
internal static class SpoiledAdvice
{
    /// <summary>Unpicking one edge of a strip that is sewn down: our assumption.</summary>
    private const double OpeningMinutesPerMetre = 12;

    /// <summary>Margin of a patch round a name, its edges turned under: our choice.</summary>
    private const double PatchMarginMm = 12;

    private sealed record Wrong(
        int Hooping, ImmutableArray<WrittenName> Names, double MachineMinutes, double? HolesPerMm2, double StripMm, int Round,
        bool HasPath);

    public static SpoiledReport Of(string jobFolder, string outFolder, int number, bool isName)
    {
        var job = JobReader.Read(jobFolder);
        var log = SewingLogFile.Read(jobFolder);
        var plan = EarlierPlanFile.Read(outFolder, OutPaths.Plan, p => p);
        if (job.Value is not { } set || plan.Value is not { } written)
        {
            return SpoiledReport.Refused([.. job.Problems.Where(p => p.Severity == Severity.CannotUse), .. plan.Problems]);
        }

        if (Find(written, number, isName) is not { } wrong)
        {
            Said what = isName ? "name" : "hooping";
            return SpoiledReport.Refused([Problem.CannotUse(
                new Where(OutPaths.Plan), $"There is no {what} {number} in the plan.",
                $"Take the number of a {what} from its sheet.")]);
        }

        var fabric = JobCloth.Of(set with { Fabric = written.Fabric ?? set.Fabric });
        bool isDown = log.Finishing.IsDone(FinishingStep.Lower, wrong.Round);
        SpoiledWay[] ways =
            [Again(set.Hands, wrong, fabric, isDown, isName), Over(set.Hands, wrong, isName), Joined(set.Hands, wrong, isDown, isName)];
        return new SpoiledReport(ExitStatus.AllPlaced, written.Title, [])
        {
            Spoiled = FormattableString.Invariant($"{(isName ? "name" : "hooping")} {number}"),
            Names = [.. wrong.Names.Select(n => n.Text)],
            Ways = [.. ways.OrderByDescending(w => w.IsSound).ThenBy(w => w.Minutes)],
        };
    }

    private static Wrong? Find(WrittenPlan plan, int number, bool isName)
    {
        foreach (var hooping in plan.Hoopings)
        {
            var segments = hooping.Segments.Select(s => s.Number).ToHashSet();
            var on = plan.Rounds.SelectMany(r =>
                r.Segments.Where(s => segments.Contains(s.Number)).Select(s => (Round: r.Number, Segment: s))).ToList();
            ImmutableArray<WrittenName> all = [.. on.SelectMany(s => s.Segment.Names)];
            ImmutableArray<WrittenName> names = isName ? all.RemoveAll(n => n.Order != number) : hooping.Number == number ? all : [];
            if (!names.IsEmpty)
            {
                return new Wrong(
                    hooping.Number, names, (double)hooping.Minutes / all.Length, hooping.HolesPerMm2, (double)plan.Strip.FinishedWidthMm,
                    on[0].Round, hooping.NeedlePath is not null);
            }
        }

        return null;
    }

    private static SpoiledWay Again(HandSettings hands, Wrong wrong, Fabric? fabric, bool isDown, bool isName)
    {
        double minutes = Sewn(hands, wrong) + Rested(hands, hands.UnpickingMinutesPerName + (isDown ? Opening(hands, wrong) : 0));
        bool isSound = true;
        Said why = "Holes of the first time close when the cloth is damp and rubbed; where they stay open or threads are cut, take another way.";
        if (fabric is not null && wrong.HolesPerMm2 is { } holes and > 0)
        {
            // What was pierced once is pierced once more at the same places or beside them.
            double twice = 2 * holes;
            isSound = LoadMeter.VerdictOf(twice, fabric) != LoadVerdict.Overworked;
            why = $"The needle has made {holes:0.0} holes on each mm² of the fullest letter, and sewn twice it makes {twice:0.0}; {fabric.Name} bears {fabric.MostPenetrationsPerMm2:0.0}. "
                + $"{(isSound ? why : "It is overworked by that.")}";
        }

        return new SpoiledWay(
            "Unpick it and sew it again on the same cloth", minutes, isSound, why,
            $"{(isDown ? (Said)"Open both edges of the strip along it. " : "")}"
            + $"Unpick from the wrong side, damp the cloth, rub the holes closed, press; hoop it again by its marks and sew.",
            $"{Word(wrong, isName)} --again");
    }

    private static SpoiledWay Over(HandSettings hands, Wrong wrong, bool isName)
    {
        double round = 2 * (wrong.Names.Average(n => (double)n.WidthMm) + (2 * PatchMarginMm) + wrong.StripMm) / 1000;
        double minutes = Sewn(hands, wrong)
            + Rested(hands, round * (hands.TurningInMinutesPerMetre + hands.SewingLowerEdgeMinutesPerMetre));
        return new SpoiledWay(
            "Sew a piece with it over the old one", minutes, true,
            "The hem is thicker there, and the edges of the piece are seen from near.",
            "Sew the name on a scrap of the same cloth, cut it as high as the strip and 12 mm longer at each end, turn its edges in, and sew it down over the old name.",
            $"{Word(wrong, isName)} {(isName ? "--again" : "--patch")}");
    }

    private static SpoiledWay Joined(HandSettings hands, Wrong wrong, bool isDown, bool isName)
    {
        double minutes = Sewn(hands, wrong) + Rested(hands, (2 * hands.JoinMinutes) + (isDown ? Opening(hands, wrong) : 0));
        return new SpoiledWay(
            "Cut it out and let a new piece in", minutes, true,
            "The cloth is new; two seams stand in the gaps beside it, and the gaps have to be wide enough for them.",
            $"{(isDown ? (Said)"Open both edges of the strip along it. " : "")}"
            + $"Sew the name on a piece of its own, with cloth for a seam at each end; cut the old one out in the middle of the gaps, and join.",
            $"{Word(wrong, isName)} {(isName ? "--again" : "--patch")}");
    }

    private static double Opening(HandSettings hands, Wrong wrong) => (wrong.Names.Average(n => (double)n.WidthMm) + 120) / 1000
        * ((2 * OpeningMinutesPerMetre) + hands.SewingLowerEdgeMinutesPerMetre + hands.SewingUpperEdgeMinutesPerMetre);

    /// <summary>Hooping, sewing, clipping and tearing away of one name.</summary>
    private static double Sewn(HandSettings hands, Wrong wrong) => wrong.MachineMinutes
        + Rested(hands, (wrong.HasPath ? hands.HoopingMinutes : 0) + hands.ClippingMinutesPerName + hands.TearAwayMinutesPerName);

    private static double Rested(HandSettings hands, double minutes) => minutes * (1 + hands.RestAllowance);

    private static string Word(Wrong wrong, bool isName) =>
        FormattableString.Invariant($"{(isName ? "n" : "")}{(isName ? wrong.Names[0].Order : wrong.Hooping)}");
}
