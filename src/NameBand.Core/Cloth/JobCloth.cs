using System.Globalization;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Cloth;

/// <summary>The cloth of a job: the table's, with the job's own thread and what its swatch has shown.</summary>
internal static class JobCloth
{
    /// <summary>Up to this thickness the needle of the usual 40-weight thread serves: our assumption.</summary>
    private const double MostForUsualNeedleTex = 32;

    /// <summary>60-weight thread goes with a 65/9 needle (Bommarito 2015, see docs/data-sources.md); a little room for sorting.</summary>
    private const double MostForFineNeedleTex = 19;

    /// <returns>Null when the table does not have the cloth.</returns>
    public static Fabric? Of(BandJob job) =>
        FabricTable.Find(job.Fabric) is { } cloth ? With(Cut(cloth, job.Layout.IsBias), job.Stitches) : null;

    /// <summary>A cloth as it lies in a strip.</summary>
    public static Fabric Cut(Fabric cloth, bool isBias) => isBias ? cloth with { Pull = cloth.Pull.OnBias() } : cloth;

    public static Fabric With(Fabric cloth, StitchSettings stitches)
    {
        var threaded = stitches.Thread is { } size && Math.Abs(size.Tex - cloth.Thread.Tex) > 1e-9
            ? Threaded(cloth, SewingThread.Of(size)) : cloth;
        return threaded with
        {
            SpacingMm = stitches.SpacingMm ?? threaded.SpacingMm,
            PullCompensationMm = stitches.PullCompensationMm ?? threaded.PullCompensationMm,
            PushCompensationMm = stitches.PushMm ?? threaded.PushCompensationMm,
            Pull = Shown(threaded.Pull, stitches),
        };
    }

    private static Pull Shown(Pull pull, StitchSettings stitches)
    {
        var grown = stitches.PullGrowthPart is { } part ? pull with { GrowingPart = part } : pull;
        return stitches.PullAcrossFactor is { } across ? grown.WithAcross(across) : grown;
    }

    /// <summary>
    /// A finer thread wants its crossings closer, in proportion to its width, and a finer needle; the cloth then bears more holes,
    /// in proportion to their smaller area (our assumption).
    /// </summary>
    private static Fabric Threaded(Fabric cloth, SewingThread thread)
    {
        var needle = Needle(cloth.Needle, thread.Tex);
        double hole = HoleMm(needle) / HoleMm(cloth.Needle);
        return cloth with
        {
            Thread = thread,
            SpacingMm = cloth.SpacingMm * thread.DiameterMm / cloth.Thread.DiameterMm,
            Needle = needle,
            MostPenetrationsPerMm2 = cloth.MostPenetrationsPerMm2 / (hole * hole),
        };
    }

    /// <summary>
    /// A needle's metric number is its width in hundredths of a millimetre, and so is its hole (Printwear, 12/2016: 75/11 leaves
    /// 0.75 mm).
    /// </summary>
    public static double HoleMm(Said needle)
    {
        string size = needle.English[..needle.English.IndexOf('/', StringComparison.Ordinal)];
        return int.Parse(size, NumberStyles.None, CultureInfo.InvariantCulture) / 100.0;
    }

    /// <summary>Sizes over 65/9: common practice, no source.</summary>
    private static Said Needle(Said usual, double tex)
    {
        if (tex is > MostForFineNeedleTex and <= MostForUsualNeedleTex)
        {
            return usual;
        }

        string size = tex <= MostForFineNeedleTex ? "65/9" : tex <= 60 ? "90/14" : tex <= 110 ? "100/16" : "110/18";
        return usual.English.EndsWith("sharp", StringComparison.Ordinal) ? (Said)$"{size} sharp" : $"{size} ball point";
    }
}
