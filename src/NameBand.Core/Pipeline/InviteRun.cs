using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Asking;
using NameBand.Output.Packet;
using NameBand.Output.Public;
using NameBand.Output.Sending;
using NameBand.Pipeline.Stages;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>Writes the asking round: one text and one table that join address, name, picture and place. Sends nothing.</summary>
internal static class InviteRun
{
    public static InviteReport Make(string jobFolder, DateOnly? today, IProgress<Progress>? progress, CancellationToken cancel)
    {
        progress?.Report(new Progress("reading the list and laying it out", 0, 0));
        var planned = Planning.Run(jobFolder, new FaceShelf(), cancel);
        if (planned.Value is not { } made || !planned.IsUsable)
        {
            return InviteReport.Refused([.. planned.Problems.Where(p => p.Severity == Severity.CannotUse)]);
        }

        var addresses = AddressBook.Read(made.Job);
        var places = MadePlaces.Read(Path.Combine(made.Job.Folder, OutFolder.Name));
        if (addresses.Value is not { } book || places.Value is not { } known)
        {
            return InviteReport.Refused([.. addresses.Problems, .. places.Problems]);
        }

        var names = FoundName.InSewingOrder(made.Plan).RemoveAll(f => !f.Placed.IsOfList || known.IsHeld(f));
        if (names.FirstOrDefault(f => !known.Has(f)) is { } moved)
        {
            return InviteReport.Refused([MadePlaces.Moved(moved, "invite")]);
        }

        var corrections = Corrections.Read(made.Job.Folder).Value ?? Corrections.None;
        var report = Approvals.Of(made.Job.Folder, made.Rows, corrections);
        var sewing = made.Way.Sew(made);
        var states = (report?.Names ?? []).ToDictionary(n => n.Row.Row, n => n.State);
        ImmutableArray<AskedOwner> owners = [.. names.Select(f => new AskedOwner(
            f, book.Of(f.Placed.Lettered.Name.Row), PublicName.PlaceInWords(made.Plan, f), ApprovedLooks.Of(made, sewing, f.Placed),
            ApprovalsFile.Word(states.GetValueOrDefault(f.Placed.Lettered.Name.Row))))];
        var begun = OutFolder.Begin(made.Job.Folder, Path.Combine(made.Job.Folder, AskingFiles.FolderName), OutKind.Private);
        using var folder = begun.Value;
        if (folder is null || !begun.IsUsable)
        {
            return InviteReport.Refused(begun.Problems);
        }

        Write(made, owners, sewing, folder, progress, cancel);
        var committed = folder.Commit();
        folder.Dispose();
        bool isBegun = report is null && Begin(made, owners);
        ImmutableArray<Problem> problems =
        [
            .. begun.Problems, .. addresses.Problems, .. report?.Problems ?? [], .. ApprovedLooks.Check(made, sewing), .. NoDay(made.Job),
            .. AnswersRun.NotEntered(made.Job, made.Rows, book), .. committed,
        ];
        bool isPast = made.Job.Asking.AnswerBy < today;
        return new InviteReport(
            problems.Any(p => p.Severity == Severity.NeedsPerson) ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced, made.Job,
            folder.FullPath, problems)
        {
            Owners = owners,
            Held = made.Rows.Rows.Count(r => r.Outcome == RowOutcome.Held),
            IsPast = isPast,
            IsBegun = isBegun,
            LeaveOutLines = isPast && made.Job.Asking.SilenceLeavesOut ? Silent(made, owners, corrections) : [],
        };
    }

    private static void Write(
        LaidOut made, ImmutableArray<AskedOwner> owners, IPieceSewing sewing, OutFolder folder, IProgress<Progress>? progress,
        CancellationToken cancel)
    {
        Sewing.Write(folder, AskingFiles.Ignore, AskingFiles.WriteIgnore);
        Sewing.Write(folder, AskingFiles.Facts, stream => AskingFiles.WriteFacts(stream, made.Job, owners));
        Sewing.Write(
            folder, AskingFiles.Letter, stream => AskingFiles.WriteText(stream, AskingLetter.Text(made.Job, AskingLetter.ToFillIn)));
        Sewing.Write(folder, AskingFiles.MailMerge, stream => AskingFiles.WriteTable(stream, made.Job, owners));
        Sewing.Write(folder, AskingFiles.Reminders, stream => AskingFiles.WriteTable(stream, made.Job, owners.Where(o => o.IsMissing)));
        using var captions = new ThanksCaptions(made.Job.Title, made.Job.Show.ThanksWidthPixels);
        int done = 0;
        Cores.ForEach(owners.Length, cancel, i =>
        {
            var owner = owners[i];
            Sewing.Write(
                folder, AskingFiles.LetterOf(owner.Found.Placed.Order), stream => AskingFiles.WriteLetter(stream, made.Job, owner));
            Sewing.Write(folder, owner.Picture, stream => ThankYouPicture.Draw(
                stream, made.Plan, owner.Found, sewing.PathOf(owner.Found.Placed), made.Fabric.Thread.DiameterMm, captions));
            progress?.Report(new Progress("writing the letters", Interlocked.Increment(ref done), owners.Length));
        });
    }

    /// <summary>A file for the answers, with a line for each name, where there is none yet.</summary>
    private static bool Begin(LaidOut made, ImmutableArray<AskedOwner> owners)
    {
        var rows = made.Rows.Rows.ToDictionary(r => r.Row);
        string lines =
            string.Concat(owners.Select(o => (o, Row: rows[o.Found.Placed.Lettered.Name.Row]))
            .OrderBy(p => p.Row.Row.List, StringComparer.Ordinal)
            .ThenBy(p => p.Row.Row.Line).Select(p => ApprovalsFile.NewLine(p.Row, p.o.Look)));
        return JobStore.Save(
            made.Job.Folder, ApprovalsFile.FileName, KeptFile.Of(System.Text.Encoding.UTF8.GetBytes(ApprovalsFile.NewHeader + lines)),
            KeptFile.None).Value is not null;
    }

    private static ImmutableArray<string> Silent(LaidOut made, ImmutableArray<AskedOwner> owners, Corrections corrections)
    {
        var missing = owners.Where(o => o.IsMissing).Select(o => o.Found.Placed.Lettered.Name.Row).ToHashSet();
        return [.. made.Rows.Rows.Where(r => missing.Contains(r.Row)).Select(r => CorrectionLines.Line(
            new RowDecision(
                r.Row, r.Was, Decision.LeaveOut, "", ((Said)"no answer by the day that was set").English) { Details = r.DetailsPrint, Show = r.Show },
                corrections))];
    }

    private static IEnumerable<Problem> NoDay(BandJob job)
    {
        if (job.Asking.AnswerBy is null)
        {
            yield return Problem.Note(
                new Where(JobReader.FileName, Key: AskingKeys.AnswerBy.Path), "The letters do not say until when to answer.",
                "Write for example \"asking\": { \"answerBy\": \"2027-03-01\", \"silence\": \"leftOut\" }, and run invite again.");
        }
    }
}
