using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Load.Swatches;
using NameBand.Output;
using NameBand.Output.Sheets;
using NameBand.Output.Swatches;
using NameBand.Pipeline.Stages;
using NameBand.Pipeline.Ways;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>Makes the swatch of a job, and reads what it showed of the cloth's shortening.</summary>
internal static class Swatching
{
    public const string FolderName = "swatch";

    private const string JobWord = "JOB";

    // A tenth: limp cloth without a hoop loses 2 to 4 % (common practice, no source); more is a reading gone wrong.
    private const double MostShorteningPart = 0.1;

    /// <summary>A reading may be so much over what the marks were, and the cloth simply did not shorten.</summary>
    private const double ReadingErrorMm = 0.5;

    public static SwatchReport Make(string jobFolder, string output, IProgress<Progress>? progress, CancellationToken cancel)
    {
        progress?.Report(new Progress("reading the list and laying it out", 0, 0));
        var read = JobReader.Read(jobFolder);
        if (read.IsUsable && read.Value is { } job && WayChoice.Of(job.Ways).NoSwatch is { } why)
        {
            return Refused([why]);
        }

        var shelf = new FaceShelf();
        var planned = Planning.Run(jobFolder, shelf, cancel);
        if (planned.Value is not { } made || !planned.IsUsable)
        {
            return Refused(planned.Problems);
        }

        var names = made.Plan.OfNeedlePaths.Rounds.SelectMany(r => r.Names).Where(n => !n.IsGone).Select(n => n.Lettered)
            .ToImmutableArray();
        var swatch = SwatchPlanner.Plan(made.Job, made.Fabric, made.Plan.LetterHeightMm, names, made.Face, shelf);
        if (swatch.Value is not { } plan)
        {
            return Refused([.. planned.Problems.Where(p => p.Severity == Severity.CannotUse), .. swatch.Problems]);
        }

        var begun = OutFolder.BeginSwatch(made.Job.Folder, output);
        using var folder = begun.Value;
        if (folder is null || !begun.IsUsable)
        {
            return Refused(begun.Problems);
        }

        progress?.Report(new Progress("sewing the swatch", 0, plan.Hoopings.Length));
        var facts = Sew(made, plan, shelf);
        cancel.ThrowIfCancellationRequested();
        Write(made, facts, folder);
        ImmutableArray<Problem> problems =
        [
            .. begun.Problems, .. StitchSettingNotes.Notes(made.Job, made.Fabric), .. Short(plan), .. folder.Commit(),
        ];
        return new SwatchReport(
            ExitStatus.AllPlaced, made.Job.Title, made.Fabric.Name, plan, facts.Hoopings.Sum(h => h.Stitches),
            facts.Hoopings.Sum(h => h.Minutes), folder.FullPath, problems);
    }

    /// <param name="swatchFolder">Whose marks were measured; where there is none the marks were 100 mm apart.</param>
    /// <param name="set">Whether job.json gets the figure.</param>
    /// <param name="underMm">How much of that length lies under stitches: cloth that no hoop holds keeps its length beside them.
    /// Null: not said.</param>
    public static ShorteningReport Read(string jobFolder, string swatchFolder, double measuredMm, bool set, double? underMm = null)
    {
        double apart = SwatchJson.MarksApartMm(swatchFolder) ?? SwatchPlanner.WishedApartMm;
        var job = JobReader.Read(jobFolder);
        if (job.Value is not { } read || !job.IsUsable)
        {
            return new ShorteningReport(ExitStatus.CannotUse, apart, measuredMm, 0, 0, false, job.Problems);
        }

        double before = read.Strip.Shortening;
        double part = Math.Max(0, Math.Round(1 - (measuredMm / apart), 4));
        if (underMm is { } under)
        {
            double lost = Math.Max(0, apart - measuredMm);
            part = Math.Round(lost / (under + lost), 4);
        }

        if ((Doubt(apart, measuredMm) ?? UnderDoubt(read, measuredMm, underMm)) is { } doubt)
        {
            return new ShorteningReport(ExitStatus.CannotUse, apart, measuredMm, part, before, false, [doubt]);
        }

        var problem = set
            ? JobFileEdit.SetNumber(read.Folder, "strip", "shortening", part.ToString("0.####", CultureInfo.InvariantCulture))
            : null;
        return problem is null
            ? new ShorteningReport(ExitStatus.AllPlaced, apart, measuredMm, part, before, set, [])
            : new ShorteningReport(ExitStatus.CannotUse, apart, measuredMm, part, before, false, [problem]);
    }

    /// <summary>One name between two crosses leaves bare cloth beside it, which no hoop draws in and no figure may count.</summary>
    private static Problem? UnderDoubt(BandJob job, double measuredMm, double? underMm)
    {
        var where = new Where(Key: "--under");
        return underMm is { } under
            ? under > 0 && under <= measuredMm ? null : Problem.CannotUse(
                where, $"{under:0.##} mm under stitches do not lie between crosses {measuredMm:0.##} mm apart.",
                "Add up how long the names between the two crosses came out, each from its first letter’s left edge to its last one’s right edge.")
            : job.IsHooped ? null : Problem.CannotUse(
                where, "Without a hoop the cloth gets shorter under its stitches and not beside them, so it must be known how much of it lies under stitches.",
                $"Measure the name between the crosses too (of several, add them up), and say both: swatch JOB --measured {measuredMm:0.##} --under 62.");
    }

    private static Problem? Doubt(double apartMm, double measuredMm)
    {
        var where = new Where(Key: "--measured");
        Said said = $"{measuredMm:0.##} mm", was = $"{apartMm:0} mm";
        return measuredMm > apartMm + ReadingErrorMm
            ? Problem.CannotUse(
                where, $"The marks were {was} apart and now measure {said}: cloth does not grow as it is sewn.",
                "Measure from the middle of one cross to the middle of the other, with the cloth flat and not stretched.")
            : measuredMm <= apartMm * (1 - MostShorteningPart)
                ? Problem.CannotUse(where,
                    $"The marks were {was} apart and now measure {said}: a tenth and more was lost, which no plan should allow for.",
                    "Measure again. If it is so, the cloth needs a firmer backing: sew the swatch again with that.")
                : null;
    }

    private static SwatchFacts Sew(LaidOut made, SwatchPlan plan, FaceShelf shelf)
    {
        var labels = shelf.Open(SwatchSewer.LabelFace, "").Value
            ?? throw new IOException("The face for the labels is missing: install the program again, with its folder fonts-open.");
        var sewn = plan.Hoopings.Select(hooping =>
        {
            var path = NeedlePathReading.AsWritten(SwatchSewer.Sew(plan, hooping, made.Fabric, made.Face, labels, shelf));
            var figures = HoopingMeter.Measure(hooping.Number, path, made.Fabric, made.Job.Machine);
            return new SewnSwatch(hooping, path, figures.Stitches, figures.MachineMinutes);
        });
        return new SwatchFacts(
            made.Job.Title, made.Fabric, made.Face.Name, made.Plan.LetterHeightMm, made.Job.Strip.Shortening, plan, [.. sewn])
        {
            PlanMark = SheetMarks.Of(made.Plan),
        };
    }

    private static void Write(LaidOut made, SwatchFacts facts, OutFolder folder)
    {
        using var captions = Sewing.OpenCaptionFace();
        foreach (var sewn in facts.Hoopings)
        {
            int number = sewn.Hooping.Number;
            Sewing.Write(folder, OutPaths.SwatchNeedlePath(number), stream => NeedlePathCsv.Write(stream, sewn.Path));
            Sewing.Write(folder, OutPaths.SwatchProof(number), stream => SwatchProof.Draw(stream, facts, sewn, captions));
            if (made.Job.Files.Program)
            {
                Sewing.Write(folder, OutPaths.SwatchProgram(number), stream => NeedlePathProgram.Write(
                    stream, string.Create(CultureInfo.InvariantCulture, $"SWATCH {number}"), sewn.Path, made.Job.Program,
                    made.Job.Machine.StitchesPerMinute));
            }
        }

        foreach (var paper in Paper.Both)
        {
            Sewing.Write(folder, OutPaths.SwatchSheet(paper.Word), stream => SwatchSheet.Write(stream, paper, facts, JobWord));
        }

        Sewing.Write(folder, OutPaths.Swatch, stream => SwatchJson.Write(stream, facts));
    }

    private static IEnumerable<Problem> Short(SwatchPlan plan)
    {
        if (plan.IsShort)
        {
            Said hoopings = plan.Hoopings.Length > 1 ? "in two hoopings, " : "";
            yield return Problem.Note(
                new Where(JobReader.FileName, Key: "hoop"),
                $"The field of this hoop is small, so the swatch is sewn {hoopings}with {plan.Samples.Count()} samples of “{plan.Word}” and marks {plan.MarksApartMm:0} mm apart.");
        }
    }

    private static SwatchReport Refused(IEnumerable<Problem> problems) =>
        new(ExitStatus.CannotUse, "", "", null, 0, 0, null, [.. problems]);
}
