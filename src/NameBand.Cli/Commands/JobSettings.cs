using NameBand.Cli.Terminal;
using NameBand.Common;
using Spectre.Console;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal class JobSettings : CommandSettings
{
    [CommandArgument(0, "<JOB>")]
    [Told("The job's folder: the one that holds job.json.")]
    public required string Job { get; init; }

    [CommandOption("--json")]
    [Told("Write the report as one JSON object to standard output, and nothing else there.")]
    public bool Json { get; init; }

    internal static ValidationResult Refused(Said why) => ValidationResult.Error(why.ToString());
}
