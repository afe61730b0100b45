using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline.Stages;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>Takes the answers of owners from the folder private/ into approvals.csv: only what was answered, never an address.</summary>
internal static class AnswersRun
{
    public static AnswersReport Enter(string jobFolder)
    {
        var read = Planning.ReadNames(jobFolder, new FaceShelf(), default);
        if (read.Value is not { } names || !read.IsUsable)
        {
            return AnswersReport.Refused([.. read.Problems.Where(p => p.Severity == Severity.CannotUse)]);
        }

        var addresses = AddressBook.Read(names.Job);
        var answers = OwnerAnswers.Read(names.Job.Folder);
        if (addresses.Value is not { } book || answers.Value is not { } came)
        {
            return AnswersReport.Refused([.. addresses.Problems, .. answers.Problems]);
        }

        if (came.Files.IsEmpty)
        {
            return AnswersReport.Refused([Problem.CannotUse(
                new Where(OwnerAnswers.Folder), $"There are no answers: no file of it is called {OwnerAnswers.FilesBegin}….csv.",
                $"Save what came back as {OwnerAnswers.Folder}/{OwnerAnswers.FilesBegin}.csv, with the headings address,name,answer,text,web,date.")]);
        }

        var before = JobStore.Read(names.Job.Folder, ApprovalsFile.FileName);
        var entered = AnswerEntry.Of(names.Job.Folder, names.Rows, book, came, names.Job.Asking.AnswerBy);
        var saved = entered.Value is not { } file ? Result.Fail<KeptFile>([.. entered.Problems])
            : file.Entered.IsEmpty ? Result.Of(before)
            : JobStore.Save(names.Job.Folder, ApprovalsFile.FileName, file.Content, before);
        if (saved.Value is null)
        {
            return AnswersReport.Refused(saved.Problems);
        }

        return Told(
            jobFolder, names, entered.Value!.Entered, [.. answers.Problems, .. entered.Problems]) with
        {
            Lines = came.All.Length,
            Files = came.Files.Length
        };
    }

    /// <summary>Says of answers that lie in private/ and are not entered yet that they are not.</summary>
    public static IEnumerable<Problem> NotEntered(BandJob job, NameList rows, AddressBook book)
    {
        var answers = OwnerAnswers.Read(job.Folder);
        if (answers.Value is not { } came)
        {
            return answers.Problems.Select(p => p with { Severity = Severity.NeedsPerson });
        }

        int fresh = AnswerEntry.Of(job.Folder, rows, book, came, null).Value?.Entered.Length ?? 0;
        return fresh == 0 ? [] : [Problem.NeedsPerson(
            new Where(OwnerAnswers.Folder),
            $"Answers for {fresh} {(fresh == 1 ? (Said)"name lie" : "names lie")} here and are not entered, so the letters and reminders do not know of them.",
            "Run invite with --answers, then make and invite again.")];
    }

    private static AnswersReport Told(
        string jobFolder, NamesRead before, ImmutableArray<EnteredAnswer> entered, ImmutableArray<Problem> problems)
    {
        // Read anew: a no to a name that is sewn is told where the list is matched with what is sewn.
        var read = Planning.ReadNames(jobFolder, new FaceShelf(), default);
        var now = read.Value ?? before;
        var known = before.Rows.Rows.ToDictionary(r => r.Row, r => r.Outcome);
        var all = read.Problems.Where(p =>
            p.Severity == Severity.NeedsPerson && entered.Any(e => e.Row.Row == new RowRef(p.Where.File ?? "", p.Where.Line ?? 0)));
        ImmutableArray<Problem> told = [.. problems, .. all.Where(p => !problems.Contains(p))];
        return new AnswersReport(
            told.Any(p => p.Severity == Severity.NeedsPerson) ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced, now.Job.Title, told)
        {
            Entered = entered,
            Approvals = Approvals.Of(now.Job.Folder, now.Rows, now.Corrections),
            IsPlanTouched = now.Rows.Rows.Any(r => known.GetValueOrDefault(r.Row, r.Outcome) != r.Outcome),
        };
    }
}
