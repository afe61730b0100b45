using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Output;

namespace NameBand;

/// <summary>What lies in the out folder from last time, with the fingerprints its plan gives of it.</summary>
internal sealed class EarlierWorks
{
    private readonly ImmutableDictionary<int, EarlierHooping> _hoopings;
    private readonly ImmutableDictionary<int, EarlierRound> _rounds;

    public EarlierWorks(string outFolder)
    {
        var plan = EarlierPlanFile.Read(Path.Combine(outFolder, OutPaths.Plan), OutPaths.Plan).Value;
        _hoopings = (plan?.Hoopings ?? []).GroupBy(h => h.Number).ToImmutableDictionary(g => g.Key, g => g.First());
        _rounds = (plan?.Rounds ?? []).GroupBy(r => r.Number).ToImmutableDictionary(g => g.Key, g => g.First());
    }

    public EarlierHooping? Hooping(int number) => _hoopings.GetValueOrDefault(number);

    public EarlierRound? Round(int number) => _rounds.GetValueOrDefault(number);
}
