using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>A job of which the edge is not known yet, so that no job.json can be written: its lists can be read all the same.</summary>
public static class BegunJob
{
    /// <summary>Nothing that is read of a list depends on it.</summary>
    private static readonly JobEdit AnyEdge = JobEdit.Text(JobKeys.HemLength.Path, "1 m");

    /// <param name="known">What job.json will say, as far as it is known.</param>
    public static Result<BandJob> Check(string jobFolder, ImmutableArray<JobEdit> known) =>
        JobReader.Check(jobFolder, JobEditing.Apply([], [AnyEdge, .. known])
            ?? throw new ArgumentException("One of the edits is no JSON.", nameof(known)));
}
