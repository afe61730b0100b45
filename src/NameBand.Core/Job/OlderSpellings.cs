using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>Keys of job.json that were called otherwise in earlier versions; a file is read by either name for ever.</summary>
internal static class OlderSpellings
{
    private static readonly ImmutableDictionary<string, string> Today = ImmutableDictionary.CreateRange(
        StringComparer.Ordinal, new Dictionary<string, string>
        {
            ["hem.turn"] = JobKeys.HemTurn.Path,
            ["hem.skirt.turn"] = JobKeys.SkirtTurn.Path,
            ["strip.lanes"] = LayoutKeys.Lanes.Path,
        });

    private static readonly ImmutableDictionary<string, string> Before =
        ImmutableDictionary.CreateRange(StringComparer.Ordinal, Today.Select(t => KeyValuePair.Create(t.Value, t.Key)));

    public static IEnumerable<string> All => Today.Keys.Order(StringComparer.Ordinal);

    /// <summary>The path by which a key goes now.</summary>
    public static string ToToday(string path) => Today.GetValueOrDefault(path, path);

    /// <summary>What a key was called before; null where it was always called so.</summary>
    public static string? Of(string path) => Before.GetValueOrDefault(path);
}
