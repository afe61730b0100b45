using System.Globalization;
using NameBand.Tests.CommandLine;

namespace NameBand.Tests.WholeLine;

/// <summary>What a process finds around it that must not be seen in what it makes.</summary>
internal sealed record Surroundings(int Cores, string Culture, string TimeZone, string WorkingFolder)
{
    public const string Verb = "surroundings";

    /// <summary>One core, no language, Greenwich; then all that may differ from them, at once.</summary>
    public static Surroundings[] All(TemporaryFolder job) =>
    [
        new(1, "", "UTC", job.FullPath),
        new(2, "tr-TR", "Pacific/Kiritimati", "/"),
        new(2, "ar-SA", "America/St_Johns", Path.GetTempPath()),
        new(1, "de-DE", "Asia/Kathmandu", AppContext.BaseDirectory),
    ];

    /// <summary>Prints a job into a folder, both named from where the process stands.</summary>
    public CliProcess Print(string job, string to, params string[] more) => Start(
        CliProcess.Program, ["print", Path.GetRelativePath(WorkingFolder, job), .. more, "--out", Path.GetRelativePath(WorkingFolder, to)]);

    /// <summary>What a process in these surroundings says that it finds.</summary>
    public string Found() => Start(typeof(Surroundings).Assembly.Location, [Verb]).Out;

    public string Expected() => Words(Cores, Culture, TimeZone, WorkingFolder);

    /// <summary>For the process that <see cref="Found"/> starts.</summary>
    public static int Say()
    {
        Console.Write(Words(
            Environment.ProcessorCount, CultureInfo.CurrentCulture.Name, TimeZoneInfo.Local.Id, Environment.CurrentDirectory));
        return 0;
    }

    private static string Words(int cores, string culture, string zone, string folder) =>
        FormattableString.Invariant($"{cores} “{culture}” {zone} {Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder))}");

    private CliProcess Start(string program, string[] args)
    {
        string locale = Culture.Length == 0 ? "C" : Culture.Replace('-', '_') + ".UTF-8";
        return CliProcess.Run(
            program, args, WorkingFolder,
            ("DOTNET_PROCESSOR_COUNT", Cores.ToString(CultureInfo.InvariantCulture)), ("LC_ALL", locale), ("LANG", locale),
            ("TZ", TimeZone));
    }
}
