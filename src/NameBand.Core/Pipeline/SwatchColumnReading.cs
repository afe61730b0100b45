using System.Collections.Immutable;
using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Load.Swatches;
using NameBand.Output.Swatches;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>Reads what the columns of a swatch measured, and says what the cloth draws in.</summary>
internal static class SwatchColumnReading
{
    private const string Option = "--columns";

    /// <summary>A reading may be so much over what was sewn, and the cloth simply did not draw in.</summary>
    private const double ReadingErrorMm = 0.3;
    private const double LeastPart = 0.5; // Of the width sewn: a column drawn in to less than half was misread. Our assumption.
    // The sheet of docs/cloths.md foretells a third of that at most: a reading gone wrong. Our assumption.
    private const double MostLongerMm = 1.5;

    public static PullReport Read(
        string jobFolder, string swatchFolder, ImmutableArray<(double WidthMm, double LengthMm)> measured, bool set)
    {
        var read = JobReader.Read(jobFolder);
        if (read.Value is not { } job || !read.IsUsable || JobCloth.Of(job) is not { } cloth)
        {
            return Refused(read.Problems);
        }

        var sewn = SwatchJson.Columns(swatchFolder);
        if (Doubt(sewn, measured) is { } doubt)
        {
            return Refused([doubt]);
        }

        ImmutableArray<MeasuredColumn> columns =
        [
            .. measured.Zip(sewn, (m, s) => new MeasuredColumn(s.Label, s.IsLevel, s.WidthMm, s.LengthMm, m.WidthMm, m.LengthMm)),
        ];
        if (columns.Select(Implausible).FirstOrDefault(p => p is not null) is { } wrong)
        {
            return Refused([wrong]);
        }

        var fit = PullFit.Of(columns, cloth.Pull);
        var problem = set ? JobFileEdit.SetAll(job.Folder, "stitches", Values(fit)) : null;
        return problem is null
            ? new PullReport(ExitStatus.AllPlaced, columns, fit, cloth, set, [])
            : new PullReport(ExitStatus.CannotUse, columns, fit, cloth, false, [problem]);
    }

    private static List<(string Key, string Value)> Values(PullFit fit)
    {
        string Mm(double mm) => string.Create(CultureInfo.InvariantCulture, $"\"{mm:0.##} mm\"");
        List<(string, string)> values =
        [
            (LastOf(StitchKeys.PullCompensation), Mm(fit.PullCompensationMm)),
            (LastOf(StitchKeys.PullGrowth), fit.GrowingPart.ToString("0.##", CultureInfo.InvariantCulture)),
        ];
        if (fit.AcrossFactor is { } across)
        {
            values.Add((LastOf(StitchKeys.PullAcross), across.ToString("0.##", CultureInfo.InvariantCulture)));
        }

        values.Add((LastOf(StitchKeys.Push), Mm(fit.PushMm)));
        return values;
    }

    private static string LastOf(JobKey key) => key.Path[(key.Path.LastIndexOf('.') + 1)..];

    private static Problem? Doubt(ImmutableArray<SewnColumn> sewn, ImmutableArray<(double WidthMm, double LengthMm)> measured)
    {
        var where = new Where(Key: Option);
        return sewn.IsEmpty
            ? Problem.CannotUse(
                where, "The swatch has no columns to be measured: an earlier version made it, its hoop is too small, or none was made.",
                "Make it and sew it again: swatch JOB.")
            : measured.Length is 2 or 4 && measured.Length <= sewn.Length ? null
            : Problem.CannotUse(
                where, $"{measured.Length} columns were measured, and the swatch has {sewn.Length}.",
                $"Give the width and the length of {Wording.List([.. sewn.Select(c => c.Label)])} in this order, or of the first two: "
                    + $"{Option} \"1.2x9.1 4.1x9.2\".");
    }

    private static Problem? Implausible(MeasuredColumn column)
    {
        Said Measures(double sewnMm, string how, double mm) =>
            $"{column.Label} was sewn {sewnMm:0.##} mm {how} and now measures {mm:0.##} mm";
        Said width = Measures(column.WidthMm, "wide", column.MeasuredWidthMm);
        Said length = Measures(column.LengthMm, "long", column.MeasuredLengthMm);
        Said? found = column.MeasuredWidthMm > column.WidthMm + ReadingErrorMm
            ? (Said)($"{width}: satin does not come out wider than its stitches are long.")
            : column.MeasuredWidthMm < LeastPart * column.WidthMm ? (Said)($"{width}: less than half is left.")
            : Math.Abs(column.MeasuredLengthMm - column.LengthMm) > MostLongerMm ? (Said)($"{length}.")
            : null;
        return found is null ? null : Problem.CannotUse(
            new Where(Key: Option), found,
            "Measure again, from thread to thread, the width along the stitches, and give each column as width x length.");
    }

    private static PullReport Refused(IEnumerable<Problem> problems) => new(ExitStatus.CannotUse, [], null, null, false, [.. problems]);
}
