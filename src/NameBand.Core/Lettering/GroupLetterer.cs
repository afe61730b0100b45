using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;

namespace NameBand.Lettering;

/// <summary>Letters names group by group: each in its face and size, headings before them, and all in the order of the groups' places.</summary>
public static class GroupLetterer
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
        if (job.Groups.All.IsEmpty)
        {
            return Letterer.Letter(names, chosen, shelf, cancel);
        }

        var problems = ImmutableArray.CreateBuilder<Problem>();
        var faces = Faces(job, chosen, shelf, problems);
        if (problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<LetteredList>(problems);
        }

        ImmutableArray<Name> all = [.. Headings(job.Groups, names), .. names.Names];
        var standings = Standings(job.Groups, faces, chosen);
        var scales = job.Groups.All.Select(g => g.HeightFactor).Distinct().ToDictionary(f => f, f => new ScaledName(f));
        var made = new Dictionary<Name, LetteredName>();
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        foreach (var byFace in all.GroupBy(n => FaceOf(n, faces, chosen)))
        {
            var lettered = Letterer.Letter(new NameList([], [.. byFace]), byFace.Key, shelf, cancel);
            problems.AddRange(lettered.Problems);
            held.AddRange(lettered.Value!.Held);
            foreach (var name in lettered.Value.Names)
            {
                var standing = StandingOf(name.Name, standings);
                var scaled = standing.HeightFactor == 1 ? name : scales[standing.HeightFactor].Of(name);
                made.Add(name.Name, scaled with { Standing = standing with { IsHeading = IsHeading(name.Name) } });
            }
        }

        problems.AddRange(held.Where(h => h.Row.List == JobReader.FileName).Select(h => HeldHeading(job.Groups, h)));
        return Result.Of(
            new LetteredList(
                chosen.Name,
                [.. all.Where(made.ContainsKey).Select(n => made[n]).OrderBy(n => n.Standing.Block)],
                [.. held.Where(h => h.Row.List != JobReader.FileName)]),
            problems.Distinct());
    }

    /// <summary>A heading stands in the file of the job and not in a list.</summary>
    public static bool IsHeading(Name name) => name.Row.List == JobReader.FileName;

    /// <summary>Says that a heading cannot be sewn, and why.</summary>
    public static Problem HeldHeading(GroupSettings groups, HeldRow held) => Problem.NeedsPerson(
        new Where(JobReader.FileName, Key: "groups"),
        $"The heading “{PlainText.Short(groups.All[held.Row.Line - 1].Heading ?? "")}” is not sewn: {held.Reason}.",
        "Write another heading, or take it away.");

    private static Dictionary<string, Face> Faces(BandJob job, Face chosen, FaceShelf shelf, ImmutableArray<Problem>.Builder problems)
    {
        var faces = new Dictionary<string, Face>(StringComparer.Ordinal);
        foreach (var group in job.Groups.All)
        {
            if (group.Face is { } wished)
            {
                var opened = shelf.Open(wished, job.Folder);
                problems.AddRange(opened.Problems.Select(p => p with { Where = new Where(JobReader.FileName, Key: $"groups, face of “{PlainText.Short(group.Name)}”") }));
                faces[group.Name] = opened.Value ?? chosen;
            }
        }

        return faces;
    }

    private static IEnumerable<Name> Headings(GroupSettings groups, NameList names)
    {
        var met = names.Names.Select(n => n.Group).ToHashSet();
        return groups.All
            .Select((g, i) => (Group: g, Row: new RowRef(JobReader.FileName, i + 1)))
            .Where(g => g.Group.Heading is not null && met.Contains(g.Group.Name))
            .Select(g => new Name(g.Group.Heading!, g.Row) { Group = g.Group.Name });
    }

    private static Face FaceOf(Name name, Dictionary<string, Face> faces, Face chosen) =>
        name.Group is { } group && faces.TryGetValue(group, out var face) ? face : chosen;

    private static Standing StandingOf(Name name, Dictionary<string, Standing> standings) =>
        standings[name.Group is { } group && standings.ContainsKey(group) ? group : ""];

    /// <summary>First ones first, then all without a place, then last ones, then those on rounds of their own; each as the job lists them.</summary>
    private static Dictionary<string, Standing> Standings(GroupSettings groups, Dictionary<string, Face> faces, Face chosen)
    {
        NameGroup[] Of(GroupPlace place) => [.. groups.All.Where(g => g.Place == place)];

        var standings = new Dictionary<string, Standing>(StringComparer.Ordinal);
        var (first, last, own) = (Of(GroupPlace.First), Of(GroupPlace.Last), Of(GroupPlace.OwnRound));
        standings[""] = new Standing(Block: first.Length, Face: chosen.Name);
        foreach (var group in groups.All)
        {
            int ownRounds = Array.IndexOf(own, group) + 1;
            int block = group.Place switch
            {
                GroupPlace.First => Array.IndexOf(first, group),
                GroupPlace.Last => first.Length + 1 + Array.IndexOf(last, group),
                GroupPlace.OwnRound => first.Length + last.Length + ownRounds,
                _ => first.Length,
            };
            standings[group.Name] = new Standing(
                group.HeightFactor, (faces.TryGetValue(group.Name, out var face) ? face : chosen).Name, block, ownRounds)
            { Group = group.Name };
        }

        return standings;
    }
}
