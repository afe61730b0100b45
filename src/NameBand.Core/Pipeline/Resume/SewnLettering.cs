using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;

namespace NameBand.Pipeline.Resume;

/// <summary>Letters sewn names as they were sewn, where the rest of the job has another face or letter height.</summary>
internal sealed class SewnLettering(BandJob job, SewingProgress begun, FaceShelf shelf, CancellationToken cancel)
{
    private readonly ImmutableDictionary<EarlierName, int> _hoopingOf = HoopingOf(begun.Plan);
    private readonly double _restHeightMm = begun.RestHeightMm(job);

    /// <param name="before">What the earlier plan had of a name; null for nothing.</param>
    public ImmutableArray<LetteredName> Letter(ImmutableArray<LetteredName> names, Func<LetteredName, EarlierName?> before)
    {
        var sewn = names.Select(n => (Name: n, As: SewnIn(before(n)))).Where(p => p.As is not null)
            .ToLookup(p => (p.As!.Face, p.As.LetterHeightMm), p => p.Name);
        var made = sewn.SelectMany(g => InFace(g.Key.Face, g.Key.LetterHeightMm, [.. g])).ToDictionary(n => n.Name);
        return made.Count == 0 ? names : [.. names.Select(n => made.GetValueOrDefault(n.Name, n))];
    }

    /// <summary>Null unless the name is sewn in another face or height than the rest has.</summary>
    private SewnAs? SewnIn(EarlierName? name) =>
        name is not null && _hoopingOf.TryGetValue(name, out int hooping) && begun.IsSewn(hooping) && begun.SewnAs(hooping) is { } sewn
        && (sewn.Face != job.Lettering.Face || sewn.LetterHeightMm != _restHeightMm)
            ? sewn : null;

    private IEnumerable<LetteredName> InFace(string faceName, double heightMm, ImmutableArray<LetteredName> names)
    {
        var scale = new ScaledName(heightMm / _restHeightMm);
        if (shelf.Open(faceName, job.Folder).Value is not { } face)
        {
            // Its kept files are what is sewn; without its face only the picture of the round shows other letters.
            return [];
        }

        var old = job with
        {
            Lettering = job.Lettering with { Face = faceName },
            Groups = job.Groups with { All = [.. job.Groups.All.Select(g => g with { Heading = null })] }
        };
        var list = new NameList([], [.. names.Select(n => n.Name)]);
        var lettered = GroupLetterer.Letter(old, list, face, shelf, cancel).Value?.Names ?? [];
        var standing = names.ToDictionary(n => n.Name, n => n.Standing);
        return lettered.Select(n => scale.Of(n) with
        {
            Standing = standing[n.Name] with
            {
                HeightFactor = standing[n.Name].HeightFactor * heightMm / _restHeightMm,
                Face = n.Standing.Face ?? face.Name
            },
        });
    }

    private static ImmutableDictionary<EarlierName, int> HoopingOf(EarlierPlan plan)
    {
        var hoopingOf = plan.HoopingOfSegment;
        return plan.Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names.Select(n => (Name: n, Segment: s.Number)))
            .ToImmutableDictionary(p => p.Name, p => hoopingOf[p.Segment]);
    }
}
