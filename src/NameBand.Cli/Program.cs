using NameBand.Cli;

using var host = CliHost.OfThisProcess();
return CliApp.Run(args, host);
