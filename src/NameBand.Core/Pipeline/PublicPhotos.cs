using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Output.Public;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline;

/// <summary>The photos that may be shown: only of what is sewn, and only where every owner of a name on it said yes to the web.</summary>
internal static class PublicPhotos
{
    /// <summary>A page is to stay under 2 MB for 60 names and 10 MB for 1,000; in between it grows with them.</summary>
    private const double FewNames = 60, ManyNames = 1000, FewBytes = 2e6, ManyBytes = 10e6;

    /// <summary>More would show nothing more on a screen; our choice.</summary>
    private const long MostBytes = 300_000;

    /// <summary>What stands about photos in the page's text: of all, and of each with its names.</summary>
    private const long TextBytes = 4_000, TextBytesOfEach = 1_000;

    /// <param name="pageBytes">Of the page without photos.</param>
    public static ImmutableArray<PublicPhoto> Of(LaidOut made, WebConsent consent, long pageBytes, List<Problem> problems)
    {
        ImmutableArray<PhotoFile> files =
            [.. PhotoFiles.In(made.Job.Folder, made.Plan, problems).Where(f => MayBeShown(made, consent, f, problems))];
        long room = (long)(RoomFor(made.Plan.NameCount) - pageBytes - TextBytes - (TextBytesOfEach * files.Length)) * 3 / 4;
        var photos = ImmutableArray.CreateBuilder<PublicPhoto>();
        for (int i = 0; i < files.Length; i++)
        {
            var read = PhotoPixels.Read(made.Job.Folder, files[i].File);
            using var pixels = read.Value;
            problems.AddRange(read.Problems.Select(p => p with { Severity = Severity.NeedsPerson }));
            if (pixels is null)
            {
                continue;
            }

            // What one leaves of its share, the next ones have.
            if (pixels.Within(Math.Min(MostBytes, room / (files.Length - i))) is not { } shown)
            {
                problems.Add(Problem.NeedsPerson(
                    new Where(files[i].File),
                    $"There is no room for this photo: with it the page would have more than {RoomFor(made.Plan.NameCount) / 1e6:0.0} MB.",
                    "Remove some of the photos."));
                continue;
            }

            room -= shown.Jpeg.Length;
            photos.Add(new PublicPhoto(
                [.. files[i].Names.Where(n => n.IsOfList).Select(n => n.Order)], files[i].IsOfPart, shown.Jpeg, shown.WidthPx,
                shown.HeightPx));
        }

        return photos.ToImmutable();
    }

    private static double RoomFor(int names) =>
        FewBytes + ((ManyBytes - FewBytes) * Math.Clamp((names - FewNames) / (ManyNames - FewNames), 0, 1));

    private static bool MayBeShown(LaidOut made, WebConsent consent, PhotoFile photo, List<Problem> problems)
    {
        var names = photo.Names.Where(n => n.IsOfList || n.IsGone).ToList();
        int silent = names.Count(n => n.IsGone || !consent.Shown.Contains(n.Lettered.Name.Row));
        int open = photo.Hoopings.Count(h => !IsSewn(made, h));
        if (open > 0)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(photo.File),
                $"Not shown: {open} of the hoopings on it {(open == 1 ? (Said)"is" : "are")} not logged as sewn, so who is on it can still change.",
                "Log them with the command sewn, or remove the photo."));
        }
        else if (silent > 0)
        {
            problems.Add(Problem.Note(
                new Where(photo.File),
                $"Not shown: {silent} of the {names.Count} names on it {(silent == 1 ? (Said)"has" : "have")} no yes to the web."));
        }

        return open == 0 && silent == 0 && names.Count > 0;
    }

    private static bool IsSewn(LaidOut made, Hooping hooping) => made.IsSewn(hooping.Number)
        || (made.Begun is { } begun && !hooping.HasNeedlePath
            && hooping.Segments.All(s => s.Segment.Names.All(n => begun.Log.OfNames.IsSewn(n.Order))));
}
