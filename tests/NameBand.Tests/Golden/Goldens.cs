namespace NameBand.Tests.Golden;

/// <summary>What whole jobs came to, kept beside the tests: renewed and shown on request (DEVELOPERS.md).</summary>
internal static class Goldens
{
    public const string Renewing = "NAMEBAND_RENEW_GOLDENS";
    public const string Showing = "NAMEBAND_GOLDENS_TO";

    public static bool AreRenewed => Environment.GetEnvironmentVariable(Renewing) == "1";

    /// <summary>A folder of the asker's for what is made of a job, to compare with what another build makes; null: not asked.</summary>
    public static string? ShownIn(string job) => Environment.GetEnvironmentVariable(Showing) is { Length: > 0 } to
        ? Directory.CreateDirectory(Path.Combine(to, job)).FullName : null;

    public static void Show(string job, string made)
    {
        if (ShownIn(job) is not { } to)
        {
            return;
        }

        foreach (string file in Directory.GetFiles(made, "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(to, Path.GetRelativePath(made, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy, overwrite: true);
        }
    }
}
