namespace NameBand.Common;

/// <summary>Something in a job's folder that is not opened: a link, or what is no file.</summary>
public sealed class RefusedEntryException(Problem problem) : IOException(problem.Found.English)
{
    public Problem Problem => problem;
}
