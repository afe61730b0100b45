using NameBand.Common;
using NameBand.Job;

namespace NameBand.Reports;

/// <summary>Whether people will read the names while it is worn, where job.json does not say, and what to write so that it does.</summary>
/// <param name="Text">What is assumed: a whole sentence.</param>
public sealed record AssumedReading(Said Text, string Line)
{
    /// <summary>Null where the job says it.</summary>
    public static AssumedReading? Of(BandJob job) => job.ReadWhileWorn is not null ? null : new AssumedReading(
        $"Nobody reads the names while it is worn, so that letters of about {StartingValues.UnreadHeightMm:0.#} mm are enough (common practice, no source).",
        "\"plan\": { \"readWhileWorn\": true }");
}
