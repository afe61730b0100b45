using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using NameBand.Names;

namespace NameBand.Lettering;

/// <summary>Letters names group by group, and those of a face or size of their own: headings before them, and all in the order of the
/// groups' places.</summary>
internal static class GroupLetterer
{
    /// <param name="chosen">The face of names whose group has none of its own.</param>
    public static Result<LetteredList> Letter(BandJob job, NameList names, Face chosen, FaceShelf shelf, CancellationToken cancel = default)
    {
        var lettered = LetterGroups(job, names, chosen, shelf, cancel);
        if (job.Motif.Kind == MotifKind.None || lettered.Value is not { } list)
        {
            return lettered;
        }

        var motif = MotifMaker.Make(job, chosen, shelf);
        return Result.Of(list with { Motif = motif.Value }, [.. lettered.Problems, .. motif.Problems]);
    }

    private static Result<LetteredList> LetterGroups(BandJob job, NameList names, Face chosen, FaceShelf shelf, CancellationToken cancel)
    {
        if (job.Groups.All.IsEmpty && names.Names.All(n => n.Wish is not { IsOfLetters: true }))
        {
            return Letterer.Letter(names, chosen, shelf, cancel);
        }

        var problems = ImmutableArray.CreateBuilder<Problem>();
        var faces = Faces(job, chosen, shelf, problems);
        var ownFaces = OwnFaces(job, names, shelf, problems);
        if (problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<LetteredList>(problems);
        }

        ImmutableArray<Name> all = [.. GroupOrder.Headings(job.Groups, names.Names), .. names.Names];
        var order = new GroupOrder(job.Groups, g => (faces.TryGetValue(g.Name, out var face) ? face : chosen).Name, chosen.Name);
        var scales = new Dictionary<double, ScaledName>();
        var made = new Dictionary<Name, LetteredName>();
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        foreach (var byFace in all.GroupBy(n => n.Wish?.Face is { } own ? ownFaces[own] : FaceOf(n, faces, chosen)))
        {
            var lettered = Letterer.Letter(new NameList([], [.. byFace]), byFace.Key, shelf, cancel);
            problems.AddRange(lettered.Problems);
            held.AddRange(lettered.Value!.Held);
            foreach (var name in lettered.Value.Names)
            {
                var standing = order.Of(name.Name).Wished(name.Name.Wish, byFace.Key.Name);
                if (!scales.TryGetValue(standing.HeightFactor, out var scale))
                {
                    scales[standing.HeightFactor] = scale = new ScaledName(standing.HeightFactor);
                }

                made.Add(name.Name, scale.Of(name) with { Standing = standing });
            }
        }

        problems.AddRange(held.Where(h => GroupOrder.IsHeading(h.Row))
            .Select(h => GroupOrder.HeldHeading(all.First(n => n.Row == h.Row).Text, h)));
        return Result.Of(
            new LetteredList(
                chosen.Name,
                [.. all.Where(made.ContainsKey).Select(n => made[n]).OrderBy(n => n.Standing.Block)],
                [.. held.Where(h => !GroupOrder.IsHeading(h.Row))]),
            problems.Distinct());
    }

    /// <summary>Faces that are wished for single names, by the words they are wished in.</summary>
    private static Dictionary<string, Face> OwnFaces(BandJob job, NameList names, FaceShelf shelf, ImmutableArray<Problem>.Builder problems)
    {
        var faces = new Dictionary<string, Face>(StringComparer.Ordinal);
        foreach (var name in names.Names)
        {
            if (name.Wish?.Face is { } wished && !faces.ContainsKey(wished))
            {
                var opened = shelf.Open(wished, job.Folder);
                problems.AddRange(opened.Problems.Select(
                    p => p with { Where = Where.Of(JobReader.FileName, $"names, face of “{PlainText.Short(name.Text)}”") }));
                if (opened.Value is { } face)
                {
                    faces[wished] = face;
                }
            }
        }

        return faces;
    }

    private static Dictionary<string, Face> Faces(BandJob job, Face chosen, FaceShelf shelf, ImmutableArray<Problem>.Builder problems)
    {
        var faces = new Dictionary<string, Face>(StringComparer.Ordinal);
        foreach (var group in job.Groups.All)
        {
            if (group.Face is { } wished)
            {
                var opened = shelf.Open(wished, job.Folder);
                problems.AddRange(opened.Problems.Select(p =>
                    p with { Where = Where.Of(JobReader.FileName, $"groups, face of “{PlainText.Short(group.Name)}”") }));
                faces[group.Name] = opened.Value ?? chosen;
            }
        }

        return faces;
    }

    private static Face FaceOf(Name name, Dictionary<string, Face> faces, Face chosen) =>
        name.Group is { } group && faces.TryGetValue(group, out var face) ? face : chosen;
}
