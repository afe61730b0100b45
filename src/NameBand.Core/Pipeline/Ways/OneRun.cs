using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Pipeline.Ways;

/// <summary>A strip that is fed under the presser foot, or traced, has no field’s end: it is sewn in one run.</summary>
internal static class OneRun
{
    /// <summary>Longer than any strip: 10 km.</summary>
    private const double NoFieldMm = 10_000_000;

    /// <summary>A proof of a curved run is at most so many strips high: our choice.</summary>
    private const double DrawnFactor = 2.5;

    /// <summary>A job whose field is endless. The best fit is to the field; where there is none, the order stays as it is listed.</summary>
    public static BandJob WithoutField(BandJob job) => job with
    {
        Hoop = new HoopSettings(Length.FromMm(NoFieldMm), Across(job), Length.FromMm(0)),

        // No hoop holds the ends: the cloth is as long as its strip is cut.
        Layout = job.Layout with { EndCloth = Length.FromMm(0) },
        Lettering = job.Lettering.Order == NameOrder.BestFit ? job.Lettering with { Order = NameOrder.Listed } : job.Lettering,
    };

    /// <summary>A strip that is cut to the curve is drawn in runs whose arcs a proof can hold; the cloth itself has no bound
    /// across.</summary>
    private static Length Across(BandJob job) =>
        job.Layout.IsCurved ? Length.FromMm(DrawnFactor * job.Strip.CutWidth.Mm) : job.Strip.CutWidth;

    /// <summary>A strip sewn in one run has a field as long as it is.</summary>
    public static StripPlan Of(StripPlan plan) => plan with
    {
        FieldAlongMm = plan.Rounds.SelectMany(r => r.Segments).Select(s => plan.OnClothMm(s.LengthMm)).DefaultIfEmpty(0).Max(),
    };
}
