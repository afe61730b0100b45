using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.Names;

namespace NameBand.Web.Table;

/// <summary>CSV files of the job's folder that the job itself writes or reads, which are no lists of names.</summary>
internal static class OwnFiles
{
    private static readonly string[] Names =
        [Corrections.FileName, SewingLogFile.FileName, ApprovalsFile.FileName, DriftFile.FileName, ReadProofsFile.FileName];

    /// <summary>By the name alone, in any case: some file systems take <c>Drift.csv</c> for <c>drift.csv</c>.</summary>
    public static bool Has(string fileName) => Names.Contains(fileName, StringComparer.OrdinalIgnoreCase);
}
