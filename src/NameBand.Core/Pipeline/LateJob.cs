using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Pipeline.Stages;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>
/// A strip or labels for names that came when the garment was finished: a job in a folder of its own inside the job's, in the face, height,
/// cloth and colours of what is sewn, with list, hours, sheets, proofs and log like any other. The names leave the plan of the garment.
/// </summary>
internal static class LateJob
{
    private const string ListName = "names.csv";

    /// <summary>Keys that belong to the garment, its list or its rounds.</summary>
    private static readonly ImmutableArray<string> OfTheGarment =
    [
        "columns", "groups", "moreToCome", "asking", "finishBy", "sewing", LayoutKeys.Lanes.Path,
        "strip.keepFree", "strip.piece", "strip.shape", "strip.closingBlank", "strip.join", "strip.tucks", "strip.lines",
        "lettering.motif", "lettering.order", "lettering.agreedFirst",
    ];

    /// <returns>The folder inside the job's; null where a problem says why nothing was written.</returns>
    /// <exception cref="IOException">The machine could not write; the names are where they were.</exception>
    public static Result<TakenLate> Make(LaidOut made, LateOffer offer, KeptFile jobFile)
    {
        var names = Latecomers.Of(made.Plan, made.Begun?.Log);
        string job = made.Job.Folder;
        string folder = Enumerable.Range(1, int.MaxValue).Select(n => string.Create(CultureInfo.InvariantCulture, $"late-{n}"))
            .First(f => !Path.Exists(Path.Combine(job, f)));
        byte[]? file = JobEditing.Apply(jobFile.Bytes.AsSpan(), [.. OfTheGarment.Select(JobEdit.Remove), .. Edits(made, names, offer)]);
        if (file is null)
        {
            return Result.Fail<TakenLate>(
                Problem.CannotUse(new Where(JobReader.FileName), "One of its keys is there twice.", "Take one of the two out."));
        }

        string inside = Path.Combine(job, folder);
        Disk.MakeFolder(inside);
        foreach (string brought in Brought(made.Job))
        {
            string to = Path.Combine(inside, brought);
            Disk.MakeFolder(Path.GetDirectoryName(to)!);
            WholeFile.Put(to, InnerFile.Bytes(job, brought));
        }

        // Nothing but the names comes along: no address, no answer, no remark.
        string list = "Name\r\n" + string.Concat(names.Select(n => CsvText.Row([n.Lettered.Name.Text], ',') + "\r\n"));
        WholeFile.Put(Path.Combine(inside, ListName), Encoding.UTF8.GetBytes(list));
        var keep = CorrectionsEditing.Apply(inside, [.. names.Select((n, i) => new RowDecision(
            new RowRef(ListName, i + 2), n.Lettered.Name.Text, Decision.Keep, "", ((Said)"settled in the list of the garment").English))]);
        WholeFile.Put(Path.Combine(inside, Corrections.FileName), keep.Value!.Bytes.AsSpan());
        WholeFile.Put(Path.Combine(inside, JobReader.FileName), file);

        // They leave the garment's plan only when the job that has them lies there whole.
        var rows = made.Rows.Rows.ToDictionary(r => r.Row);
        var before = JobStore.Read(job, Corrections.FileName);
        var edited = CorrectionsEditing.Apply(job, [.. names.Select(n => rows[n.Lettered.Name.Row]).Select(r =>
            new RowDecision(r.Row, r.Was, Decision.Elsewhere, folder, offer.Place.English) { Details = r.DetailsPrint, Show = r.Show })]);
        var saved = edited.Value is { } lines ? JobStore.Save(job, Corrections.FileName, lines, before) : edited;
        return saved.Value is null
            ? Result.Fail<TakenLate>(saved.Problems)
            : Result.Of(new TakenLate(offer.Place, folder, [.. names.Select(n => n.Lettered.Name.Text)]));
    }

    /// <summary>What make says of names that lie in such a folder.</summary>
    public static IEnumerable<Problem> Told(string jobFolder, NameList rows)
    {
        foreach (var folder in rows.Rows.Where(r => r is { Decided: Decision.Elsewhere, Outcome: RowOutcome.LeftOut, SewnIn.Length: > 0 })
            .GroupBy(r => r.SewnIn).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            string names = string.Join("; ", folder.Take(6).Select(r => PlainText.Short(r.Was, 80)));
            Said more = folder.Count() > 6 ? (Said)$" and {folder.Count() - 6} more" : "";
            var gone = folder.Where(r => r.AsksNotToBeShown).ToList();
            if (gone.Count > 0)
            {
                string asked = string.Join("; ", gone.Take(6).Select(r => PlainText.Short(r.Was, 80)));
                yield return Problem.NeedsPerson(
                    new Where(PlainText.Short(folder.Key, 80)), $"Asked not to be shown since it was taken there: {asked}.",
                    "Take the name out of the list in that folder. If it is sewn there already, unpick it.");
            }

            if (folder.Any(r => !r.AsksNotToBeShown) && InnerFile.IsPlain(jobFolder, folder.Key + "/" + JobReader.FileName))
            {
                yield return Problem.Note(
                    new Where(PlainText.Short(folder.Key, 80)), $"Sewn in a job of its own: {names}{more}.",
                        $"nameband make JOB/{folder.Key} makes its sheets, nameband hours JOB/{folder.Key} its hours.");
            }
        }
    }

    private static IEnumerable<JobEdit> Edits(LaidOut made, ImmutableArray<PlacedName> names, LateOffer offer)
    {
        var (plan, hem) = (made.Plan, made.Plan.Hem);
        bool isLabel = offer.Kind == LateKind.Label;
        int parts = isLabel ? (names.Length + Latecomers.MostOnLabel - 1) / Latecomers.MostOnLabel : 1;
        double gap = made.Job.Lettering.Gap?.Mm ?? (Sizing.GapFactor * plan.LetterHeightMm);
        double longest = names.Chunk((names.Length + parts - 1) / parts)
            .Max(c => c.Sum(n => n.WidthMm / n.Lettered.Standing.HeightFactor) + ((c.Length - 1) * gap)) + (2 * hem.Strip.MarginMm);
        double length = Math.Max(JobKeys.HemLength.LowMm, Math.Ceiling(longest) + 1);
        int above = plan.Rounds.Length;
        double around = plan.Rounds[^1].HemMm;
        double turn = isLabel ? 0 : Math.Round(hem.TurnRad / (2 * Math.PI) * length / around, 4);
        double lift = isLabel ? 0 : hem.LiftMm + (above * hem.RoundStepMm);
        double edge = length + (2 * Math.PI * turn * lift);
        ImmutableArray<CssColour?> threads = [.. names.Select(plan.Colours.OfThread).Distinct()];

        yield return JobEdit.Text("title", $"{made.Job.Title}: {offer.Place.English}");
        yield return new JobEdit("lists", $"[\"{ListName}\"]");
        string lengths = string.Join(", ", Enumerable.Repeat($"\"{Mm(edge)}\"", parts));
        yield return new JobEdit("hem", string.Create(
            CultureInfo.InvariantCulture,
            $$"""{ "length": {{(parts > 1 ? $"[{lengths}]" : lengths)}}, "circlePart": {{turn}}, "closed": false }"""));
        yield return new JobEdit("strip.rounds", parts.ToString(CultureInfo.InvariantCulture));
        yield return JobEdit.Text("strip.lift", Mm(lift));
        yield return new JobEdit("strip.shortening", plan.Shortening.ToString("0.######", CultureInfo.InvariantCulture));
        yield return JobEdit.Text("lettering.height", Mm(plan.LetterHeightMm));
        yield return JobEdit.Text("lettering.face", made.Job.Lettering.Face);
        yield return JobEdit.Text("fabric", made.Job.Fabric);
        if (isLabel)
        {
            yield return JobEdit.Text("strip.side", hem.Side == GarmentSide.Outside ? "inside" : "outside");
            yield return JobEdit.Text("strip.readBy", "viewer");
        }

        if (threads is [{ } thread])
        {
            yield return JobEdit.Text("colours.thread", thread.ToString());
        }
    }

    /// <summary>Files inside the job's folder that its keys name: a face, a measured alphabet, a picture.</summary>
    private static IEnumerable<string> Brought(BandJob job) =>
        new[] { job.Lettering.Face, job.Letters.Alphabet, WorkshopEditing.FileName }.Distinct()
            .Where(f => f is { Length: > 0 } && InnerFile.Objection(job.Folder, f) is null && InnerFile.IsPlain(job.Folder, f));

    private static string Mm(double lengthMm) => string.Create(CultureInfo.InvariantCulture, $"{lengthMm:0.####} mm");
}
