using NameBand.Tests.House;
using NameBand.Tests.Lettering;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>
/// Files from strangers, spoilt with fixed seeds: each is used or refused with a reason and a mend, and none ends the
/// program. The benchmark "hostile" reads a million of them.
/// </summary>
public sealed class HostileInputTests : IDisposable
{
    private readonly TemporaryFolder _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("job.json", 1500)]
    [InlineData("list", 800)]
    [InlineData("corrections", 400)]
    [InlineData("approvals", 500)]
    [InlineData("sewing log", 800)]
    [InlineData("letters", 800)]
    [InlineData("measured lines", 800)]
    [InlineData("drift", 800)]
    [InlineData("spreadsheet", 150)]
    [InlineData("workshop", 500)]
    [InlineData("manifest", 300)]
    [InlineData("font guard", 300)]
    [InlineData("out plan", 300)]
    [InlineData("sewn plan", 40)]
    [InlineData("face", 60)]
    [InlineData("face made", 6)]
    public void A_spoilt_file_is_used_or_refused_with_a_reason(string name, int inputs)
    {
        var kinds = new HostileKinds(
            Path.Combine(Repository.Root, "samples"), Path.Combine(AppContext.BaseDirectory, "fonts-open"), _scratch.FullPath);
        var kind = kinds.Of(name);
        int usable = 0;
        for (int seed = 0; seed < inputs; seed++)
        {
            string? fault = kind.Fault(seed, out bool used);
            Assert.True(fault is null, $"{name}, seed {seed}: {fault}");
            usable += used ? 1 : 0;
        }

        Assert.True(usable > 0, "No input could be used: the inputs are spoilt too much to try anything.");
        Assert.True(usable < inputs || kind.IsAlwaysUsable, "Every input could be used: they are spoilt too little to try anything.");
    }

    /// <summary>What the benchmark “fuzz” found by following the branches of each reader, in minutes and not in a second.</summary>
    [Fact]
    public void What_guided_spoiling_found_is_used_or_refused_with_a_reason()
    {
        string kept = Path.Combine(Repository.Root, FuzzedInputs.Place);
        string[] kinds = [.. FuzzedInputs.Kinds(kept).Where(k => k != HostileRequest.Kind)];
        Assert.True(kinds.Length >= 11, "The file of what was found is missing or has lost kinds.");
        foreach (string name in kinds)
        {
            using var scratch = new TemporaryFolder();
            string fonts = Path.Combine(AppContext.BaseDirectory, "fonts-open");
            var kind = new HostileKinds(Path.Combine(Repository.Root, "samples"), fonts, scratch.FullPath).Of(name);
            Assert.All(FuzzedInputs.Of(kept, name).Index(), found =>
            {
                string? fault = kind.FaultOf(found.Item, out _);
                Assert.True(fault is null, $"{name}/{found.Index:00}: {fault}");
            });
        }
    }
}
