using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Smallness;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Asking;
using NameBand.Pipeline;
using NameBand.Pipeline.Plans;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;
using NameBand.Reports;

namespace NameBand;

/// <summary>The front door: one call runs the rooms in order and reports progress.</summary>
public static class Bander
{
    /// <summary>Reads a job's folder and makes its plan, proofs and needle paths, whole or not at all.</summary>
    /// <param name="outFolder">Null: the folder <c>out</c> inside the job's folder.</param>
    /// <param name="isAfresh">What the job leaves free is chosen anew, whatever the earlier plan had.</param>
    /// <exception cref="OperationCanceledException">The earlier output is as it was.</exception>
    /// <exception cref="IOException">The machine could not write; the earlier output is as it was.</exception>
    public static MakeReport Make(
        string jobFolder, string? outFolder = null, IProgress<Progress>? progress = null, CancellationToken cancel = default,
        bool isAfresh = false) =>
        Make(jobFolder, outFolder, null, isAfresh, progress, cancel);

    /// <summary>
    /// Makes what <see cref="Make(string, string?, IProgress{Progress}?, CancellationToken, bool)"/> makes, and the sheets to
    /// print with it.
    /// </summary>
    /// <param name="wishes">What else is made with them; null: the sheets alone.</param>
    /// <inheritdoc cref="Make(string, string?, IProgress{Progress}?, CancellationToken, bool)"/>
    public static MakeReport Print(
        string jobFolder, string? outFolder = null, PrintWishes? wishes = null, IProgress<Progress>? progress = null,
        CancellationToken cancel = default, bool isAfresh = false) =>
        Make(jobFolder, outFolder, wishes ?? new PrintWishes(), isAfresh, progress, cancel);

    private static MakeReport Make(
        string jobFolder, string? outFolder, PrintWishes? wishes, bool isAfresh, IProgress<Progress>? progress, CancellationToken cancel)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        string output = outFolder ?? Path.Combine(jobFolder, OutFolder.Name);
        var mended = MendInterrupted(jobFolder, output);
        progress?.Report(new Progress("reading the list and laying it out", 0, 0));
        var lastTime = JitWarmUp.Run(output, cancel);
        var planned = Planning.Run(
            jobFolder, new FaceShelf(), cancel, () => isAfresh ? null : lastTime.GetAwaiter().GetResult().Kept);
        ImmutableArray<Problem> problems = [.. mended, .. planned.Problems];
        if (planned.Value is not { } made || !planned.IsUsable)
        {
            return new MakeReport(ExitStatus.CannotUse, null, null, null, null, null, problems);
        }

        problems = [.. problems, .. Printing.NotMade(wishes, made.Plan)];

        var begun = OutFolder.Begin(made.Job.Folder, output);
        using var folder = begun.Value;
        if (folder is null || !begun.IsUsable)
        {
            return new MakeReport(ExitStatus.CannotUse, made.Job, made.Rows, made.Plan, null, null, [.. problems, .. begun.Problems]);
        }

        var earlier = lastTime.GetAwaiter().GetResult().AsOf(folder.FullPath);
        var sewn = Sewing.Run(made, earlier, folder, wishes, progress, cancel);
        made = sewn.LetOut ?? made;
        var changes = PlanDiff.Run(made, earlier, folder);
        KeepingMarks.Run(made, earlier, folder, wishes);
        var (machine, hands) = LoggedPace.Of(made.Begun?.Log, LoggedPace.Estimated(sewn.Estimate));
        problems = [.. problems, .. begun.Problems, .. sewn.Problems, .. folder.Commit()];
        return new MakeReport(
            Judging.StatusOf(made.Rows, problems, sewn.Verdicts), made.Job, made.Rows, made.Plan, sewn.Estimate, folder.FullPath, problems)
        {
            Changes = changes,
            Verdicts = sewn.Verdicts,
            Machine = machine,
            Hands = hands,
            RehearsalSheets = sewn.RehearsalSheets,
        };
    }

    /// <summary>Checks the lists of a job, as far as whether the faces have all letters, and writes nothing.</summary>
    public static NamesReport CheckNames(string jobFolder)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        var mended = MendInterrupted(jobFolder, Path.Combine(jobFolder, OutFolder.Name));
        var read = Planning.ReadNames(jobFolder, new FaceShelf(), default);
        ImmutableArray<Problem> problems = [.. mended, .. read.Problems];
        if (read.Value is not { } names || !read.IsUsable)
        {
            return new NamesReport(ExitStatus.CannotUse, null, [], problems);
        }

        var approvals = Approvals.Of(names.Job.Folder, names.Rows, names.Corrections);
        problems = [.. problems, .. approvals?.Problems ?? []];
        var toAdd = CorrectionLines.ToAdd(names.Rows, names.Corrections);
        return new NamesReport(Judging.StatusOf(names.Rows, problems, []), names.Rows, toAdd, problems)
        {
            Approvals = approvals,
        };
    }

    /// <summary>Reads the lists of a job that is still to be begun as <see cref="CheckNames"/> does, and writes nothing.</summary>
    /// <param name="begun">What is known of the job so far, its lists among it; how long its edge is need not be.</param>
    public static NamesReport ReadLists(string jobFolder, ImmutableArray<JobEdit> begun)
    {
        var job = BegunJob.Check(JobReader.FolderOf(jobFolder), begun);
        var read = Planning.ReadNames(JobReader.FolderOf(jobFolder), new FaceShelf(), default, job);
        return read.Value is { } names && read.IsUsable
            ? new NamesReport(Judging.StatusOf(names.Rows, read.Problems, []), names.Rows, [], read.Problems)
            : new NamesReport(ExitStatus.CannotUse, null, [], read.Problems);
    }

    /// <summary>
    /// Checks the lists as <see cref="CheckNames"/> does, and writes what waits for a decision into corrections.csv, each with
    /// an empty one.
    /// </summary>
    /// <exception cref="IOException">The machine could not write; corrections.csv is as it was.</exception>
    public static NamesReport SettleNames(string jobFolder)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        var report = CheckNames(jobFolder);
        if (report.Names is not { } names)
        {
            return report;
        }

        // What an owner wishes, she wrote down when it was agreed: it needs no second decision.
        var wishes = report.Approvals?.Wishes ?? [];
        ImmutableArray<RowDecision> questions =
            [.. CorrectionLines.Questions(names).Where(q => wishes.All(w => w.Row != q.Row)), .. wishes];
        if (questions.IsEmpty)
        {
            return report with { Written = 0 };
        }

        var before = JobStore.Read(jobFolder, Corrections.FileName);
        var content = CorrectionsEditing.Apply(jobFolder, questions);
        var saved = content.Value is { } file ? JobStore.Save(jobFolder, Corrections.FileName, file, before) : content;
        return saved.Value is null
            ? new NamesReport(ExitStatus.CannotUse, null, [], saved.Problems)
            : CheckNames(jobFolder) with { Written = questions.Length - wishes.Length, WishesWritten = wishes.Length };
    }

    /// <summary>Calculates the hours, what to buy and the evenings of a job, and writes nothing.</summary>
    /// <param name="eveningMinutes">Length of an evening; null: as job.json says, if it does.</param>
    /// <param name="today">For a job with a day to be done by; null: evenings are counted and not dated.</param>
    public static HoursReport Hours(
        string jobFolder, double? eveningMinutes = null, IProgress<Progress>? progress = null, CancellationToken cancel = default,
        DateOnly? today = null) =>
        Estimation.Run(JobReader.FolderOf(jobFolder), eveningMinutes, today, progress, cancel);

    /// <summary>Finds the plans there are for a job, to choose from; writes nothing.</summary>
    /// <param name="why">Mark of the plan whose work is to stand beside another's; null: of none.</param>
    public static PlansReport Plans(
        string jobFolder, string? why = null, IProgress<Progress>? progress = null, CancellationToken cancel = default) =>
        PlansRun.Run(JobReader.FolderOf(jobFolder), why, progress, cancel);

    /// <summary>Writes what the plan of a mark changes into job.json, the rest of which stays as it is.</summary>
    /// <exception cref="IOException">The machine could not write; job.json is as it was.</exception>
    public static PlansReport TakePlan(
        string jobFolder, string mark, IProgress<Progress>? progress = null, CancellationToken cancel = default) =>
        PlansRun.Take(JobReader.FolderOf(jobFolder), mark, progress, cancel);

    /// <summary>Makes a job of its own, inside the job's folder, for names that came when the garment was finished.</summary>
    /// <param name="place"><c>partRound</c> or <c>label</c>.</param>
    /// <exception cref="IOException">The machine could not write; the names are where they were.</exception>
    public static PlansReport TakeLate(string jobFolder, string place, IProgress<Progress>? progress = null,
        CancellationToken cancel = default) =>
        PlansRun.TakeLate(JobReader.FolderOf(jobFolder), place, progress, cancel);

    /// <summary>Writes down what a person says of a hooping, keeps its files, and tells how the sewing stands.</summary>
    /// <param name="outFolder">The folder it was sewn from; null: the folder <c>out</c> inside the job's folder.</param>
    /// <param name="word">Null: only look.</param>
    /// <param name="wait">Waits a moment while another program writes in the job's folder.</param>
    /// <exception cref="IOException">The machine could not write; nothing was said.</exception>
    public static SewingReport Sewn(string jobFolder, string? outFolder, SewingWord? word, Action wait)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        string output = outFolder ?? Path.Combine(jobFolder, OutFolder.Name);
        var mended = MendInterrupted(jobFolder, output);
        var report = SewingLogUpdate.Run(jobFolder, output, word, wait);
        return report with { Problems = [.. mended, .. report.Problems] };
    }

    /// <summary>What can be done about a hooping, or a name, that went wrong; writes nothing.</summary>
    /// <param name="isName">The number is that of a name, not of a hooping.</param>
    public static SpoiledReport Spoiled(string jobFolder, string? outFolder, int number, bool isName)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        return SpoiledAdvice.Of(jobFolder, outFolder ?? Path.Combine(jobFolder, OutFolder.Name), number, isName);
    }

    /// <summary>Says whether list, plan, files, needle paths, log and what is kept of the sewing are whole and agree; writes
    /// nothing.</summary>
    /// <param name="outFolder">Null: the folder <c>out</c> inside the job's folder.</param>
    public static CheckReport Check(string jobFolder, string? outFolder = null)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        string output = outFolder ?? Path.Combine(jobFolder, OutFolder.Name);
        var mended = MendInterrupted(jobFolder, output);
        var report = Checking.Run(jobFolder, output);
        return report with { Problems = [.. mended, .. report.Problems] };
    }

    /// <summary>The faces that travel with the program, measured.</summary>
    public static FacesReport Faces()
    {
        var measured = FaceReport.OfShelf(new FaceShelf());
        var faces = measured.Value?.Faces ?? [];
        bool isUsable = measured.IsUsable && !faces.IsEmpty;
        return new FacesReport(isUsable ? ExitStatus.AllPlaced : ExitStatus.CannotUse, faces, measured.Problems);
    }

    /// <summary>
    /// Writes the sheet of lines by which a machine's own letters are measured, or, once it is filled in, works out the
    /// alphabet from it. Writes into the job's folder.
    /// </summary>
    /// <param name="size">Which of the machine's letter heights; null: the first of letters.sizes.</param>
    /// <param name="mostLines">Null: as many lines as all letters need.</param>
    /// <exception cref="IOException">The machine could not write.</exception>
    public static MeasureReport Measure(string jobFolder, Length? size = null, int? mostLines = null) =>
        MeasureRun.Run(JobReader.FolderOf(jobFolder), size, mostLines);

    /// <summary>Makes the swatch of a job, whole or not at all; the out folder is not touched.</summary>
    /// <param name="swatchFolder">Null: the folder <c>swatch</c> inside the job's folder.</param>
    /// <exception cref="OperationCanceledException">An earlier swatch is as it was.</exception>
    /// <exception cref="IOException">The machine could not write; an earlier swatch is as it was.</exception>
    public static SwatchReport Swatch(
        string jobFolder, string? swatchFolder = null, IProgress<Progress>? progress = null, CancellationToken cancel = default)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        string output = swatchFolder ?? Path.Combine(jobFolder, Swatching.FolderName);
        var mended = Directory.Exists(jobFolder) ? OutFolder.MendInterruptedSwatch(jobFolder, output) : [];
        var report = Swatching.Make(jobFolder, output, progress, cancel);
        return report with { Problems = [.. mended, .. report.Problems] };
    }

    /// <summary>Says what the measured length between a swatch's marks makes of strip.shortening.</summary>
    /// <param name="set">Writes it into job.json, the rest of which stays as it is.</param>
    /// <exception cref="IOException">The machine could not write; job.json is as it was.</exception>
    public static ShorteningReport ReadSwatch(string jobFolder, string? swatchFolder, Length measured, bool set, Length? under = null)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        return Swatching.Read(jobFolder, swatchFolder ?? Path.Combine(jobFolder, Swatching.FolderName), measured.Mm, set, under?.Mm);
    }

    /// <summary>Says what the measured columns of a swatch make of the keys of pull and push.</summary>
    /// <param name="measured">Widths and lengths in the order of the swatch.</param>
    /// <param name="set">Writes them into job.json, the rest of which stays as it is.</param>
    /// <exception cref="IOException">The machine could not write; job.json is as it was.</exception>
    public static PullReport ReadSwatchColumns(
        string jobFolder, string? swatchFolder, IReadOnlyList<(Length Width, Length Length)> measured, bool set)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        return SwatchColumnReading.Read(
            jobFolder, swatchFolder ?? Path.Combine(jobFolder, Swatching.FolderName),
            [.. measured.Select(m => (m.Width.Mm, m.Length.Mm))], set);
    }

    /// <summary>Writes the letters to the owners of the names into the folder <c>private</c> of the job; out/ is not touched,
    /// nothing is sent.</summary>
    /// <param name="today">By which it is known whether the day to answer is past; null: it is not asked.</param>
    /// <exception cref="OperationCanceledException">Earlier letters are as they were.</exception>
    /// <exception cref="IOException">The machine could not write; earlier letters are as they were.</exception>
    public static InviteReport Invite(
        string jobFolder, DateOnly? today = null, IProgress<Progress>? progress = null, CancellationToken cancel = default)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        var mended = Directory.Exists(jobFolder)
            ? OutFolder.MendInterrupted(jobFolder, Path.Combine(jobFolder, AskingFiles.FolderName), OutKind.Private) : [];
        var report = InviteRun.Make(jobFolder, today, progress, cancel);
        return report with { Problems = [.. mended, .. report.Problems] };
    }

    /// <summary>Enters what the owners answered, from the folder <c>private</c> of the job, into approvals.csv.</summary>
    /// <exception cref="IOException">The machine could not write; approvals.csv is as it was.</exception>
    public static AnswersReport EnterAnswers(string jobFolder) => AnswersRun.Enter(JobReader.FolderOf(jobFolder));

    /// <summary>Makes the page for supporters of the names whose owners said yes to it, whole or not at all; out/ is not touched.</summary>
    /// <param name="publicFolder">Null: the folder <c>public</c> inside the job's folder.</param>
    /// <exception cref="OperationCanceledException">An earlier page is as it was.</exception>
    /// <exception cref="IOException">The machine could not write; an earlier page is as it was.</exception>
    public static PublicReport Public(
        string jobFolder, string? publicFolder = null, IProgress<Progress>? progress = null, CancellationToken cancel = default)
    {
        jobFolder = JobReader.FolderOf(jobFolder);
        string output = publicFolder ?? Path.Combine(jobFolder, PublicRun.FolderName);
        var mended = Directory.Exists(jobFolder) ? OutFolder.MendInterrupted(jobFolder, output, OutKind.Public) : [];
        var report = PublicRun.Make(jobFolder, output, progress, cancel);
        return report with { Problems = [.. mended, .. report.Problems] };
    }

    private static ImmutableArray<Problem> MendInterrupted(string jobFolder, string output) =>
        Directory.Exists(jobFolder) ? OutFolder.MendInterrupted(jobFolder, output) : [];
}
