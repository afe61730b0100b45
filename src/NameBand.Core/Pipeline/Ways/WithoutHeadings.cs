using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;

namespace NameBand.Pipeline.Ways;

/// <summary>Letters names without what is sewn beside them.</summary>
internal static class WithoutHeadings
{
    public static BandJob Of(BandJob job) =>
        job with { Groups = job.Groups with { All = [.. job.Groups.All.Select(g => g with { Heading = null })] } };

    public static LetteredList? Letter(BandJob job, NameList names, Face face, FaceShelf shelf, CancellationToken cancel) =>
        GroupLetterer.Letter(Of(job), names, face, shelf, cancel).Value;
}
