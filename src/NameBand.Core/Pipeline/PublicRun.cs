using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Packet;
using NameBand.Output.Public;
using NameBand.Pipeline.Stages;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>Makes the page for supporters: the names that may be shown on the web, where they lie in the plan of out/.</summary>
internal static class PublicRun
{
    public const string FolderName = "public";

    public static PublicReport Make(string jobFolder, string output, IProgress<Progress>? progress, CancellationToken cancel)
    {
        progress?.Report(new Progress("reading the list and laying it out", 0, 0));
        var planned = Planning.Run(jobFolder, new FaceShelf(), cancel);
        if (planned.Value is not { } made || !planned.IsUsable)
        {
            return PublicReport.Refused([.. planned.Problems.Where(p => p.Severity == Severity.CannotUse)]);
        }

        var consent = WebConsent.Of(made.Job.Folder, made.Rows);
        var places = MadePlaces.Read(Path.Combine(made.Job.Folder, OutFolder.Name));
        if (consent.Value is not { } said || places.Value is not { } known)
        {
            return PublicReport.Refused([.. consent.Problems, .. places.Problems]);
        }

        var names = FoundName.Sorted(made.Plan, made.Job.Lettering.Collation)
            .RemoveAll(f => !f.Placed.IsOfList || !said.Shown.Contains(f.Placed.Lettered.Name.Row) || known.IsHeld(f));
        if (names.FirstOrDefault(f => !known.Has(f)) is { } moved)
        {
            return PublicReport.Refused([MadePlaces.Moved(moved, "public")]);
        }

        var begun = OutFolder.Begin(made.Job.Folder, output, OutKind.Public);
        using var folder = begun.Value;
        if (folder is null || !begun.IsUsable)
        {
            return PublicReport.Refused(begun.Problems);
        }

        var matter = new PublicMatter(
            made.Job.Title, made.Plan, made.Job.Colours.OfCloth, made.Fabric.Thread.DiameterMm, Drawn(made, names, progress, cancel));
        var ofPhotos = new List<Problem>();
        using (var bare = new MemoryStream())
        {
            PublicPage.Write(bare, matter);
            matter = matter with { Photos = PublicPhotos.Of(made, said, bare.Length, ofPhotos) };
        }

        Sewing.Write(folder, OutPaths.PublicPage, stream => PublicPage.Write(stream, matter));
        Sewing.Write(folder, OutPaths.PublicPlaces, stream => PublicPlaces.Write(stream, matter));
        foreach (var name in matter.Names)
        {
            Sewing.Write(folder, OutPaths.PublicPicture(name.Number), stream => PublicPicture.Write(stream, matter, name));
        }

        ImmutableArray<Problem> problems = [.. begun.Problems, .. said.Problems, .. Nobody(names), .. ofPhotos, .. folder.Commit()];
        bool needsPerson = problems.Any(p => p.Severity == Severity.NeedsPerson);
        return new PublicReport(needsPerson ? ExitStatus.NeedsPerson : ExitStatus.AllPlaced, made.Job.Title, folder.FullPath, problems)
        {
            Shown = names.Length,
            Refusing = said.Refused,
            Unanswered = said.Unanswered,
            Photos = matter.Photos.Length,
            PageBytes = InnerFile.Length(folder.FullPath, OutPaths.PublicPage),
        };
    }

    private static PublicName[] Drawn(
        LaidOut made, ImmutableArray<FoundName> names, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var sewing = made.Way.Sew(made);
        var drawn = new PublicName[names.Length];
        int done = 0;
        Cores.ForEach(names.Length, cancel, i =>
        {
            var group = made.Job.Groups.Of(names[i].Placed.Lettered.Name.Group);
            drawn[i] = PublicName.Of(names[i], made.Job.Colours.OfThread(group), sewing.PathOf(names[i].Placed));
            progress?.Report(new Progress("drawing the names", Interlocked.Increment(ref done), names.Length));
        });
        return drawn;
    }

    private static IEnumerable<Problem> Nobody(ImmutableArray<FoundName> names)
    {
        if (names.IsEmpty)
        {
            yield return Problem.NeedsPerson(
                new Where(ApprovalsFile.FileName), "Nobody has said yes to being shown on the web, so the page shows no name.",
                $"Ask, and write yes in the column “{ApprovalsFile.WebColumn}” of {ApprovalsFile.FileName}, or in a column of the list such as “Show on the web?”.");
        }
    }
}
