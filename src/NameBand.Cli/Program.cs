using NameBand.Cli;
using NameBand.Common;

Language.TakeFromEnvironment();
using var host = CliHost.OfThisProcess();
return CliApp.Run(args, host);
