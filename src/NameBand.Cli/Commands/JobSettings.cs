using System.ComponentModel;
using Spectre.Console.Cli;

namespace NameBand.Cli.Commands;

internal class JobSettings : CommandSettings
{
    [CommandArgument(0, "<JOB>")]
    [Description("The job's folder: the one that holds job.json.")]
    public required string Job { get; init; }

    [CommandOption("--json")]
    [Description("Write the report as one JSON object to standard output, and nothing else there.")]
    public bool Json { get; init; }
}
