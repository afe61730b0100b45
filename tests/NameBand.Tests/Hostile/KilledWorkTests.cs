using System.Diagnostics;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>Kills at random moments; the benchmark "kills" does the same a thousand times.</summary>
public class KilledWorkTests
{
    private const int Kills = 6;

    [SkippableFact]
    public void Killed_at_any_moment_nothing_is_lost_and_nothing_lies_about()
    {
        Skip.If(OperatingSystem.IsWindows(), "skipped: needs kill -9 (a process ended by the system without a word)");
        using var folder = new TemporaryFolder();
        KilledWork.Begin(folder.FullPath);
        var child = new ProcessStartInfo(CliProcess.DotNet, ["exec", typeof(KilledWorkTests).Assembly.Location, KilledWork.Verb]);
        var killing = new Killing(folder.FullPath, child, seed: 7);
        for (int kill = 0; kill < Kills; kill++)
        {
            string? fault = killing.Once();
            Assert.True(fault is null, $"kill {kill}: {fault}");
        }

        Assert.NotEmpty(killing.Done);
        Assert.NotEmpty(killing.KilledIn);
    }
}
