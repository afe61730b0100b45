using NameBand.Job;
using NameBand.Lettering;
using NameBand.Names;

namespace NameBand.Pipeline.Ways;

/// <summary>Letters names without what is sewn beside them.</summary>
internal static class WithoutHeadings
{
    public static LetteredList? Letter(BandJob job, NameList names, Face face, FaceShelf shelf, CancellationToken cancel)
    {
        var plain = job with { Groups = job.Groups with { All = [.. job.Groups.All.Select(g => g with { Heading = null })] } };
        return GroupLetterer.Letter(plain, names, face, shelf, cancel).Value;
    }
}
