using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>
/// Keeps what can be undone in the job's folder, so that it is there after a restart: each content once, and the steps by their
/// fingerprints. It is the worktable's own file: nothing lends, packs or prints it.
/// </summary>
internal static class HistoryFile
{
    public const string Name = ".nameband-undo";

    /// <summary>More than this is not kept: the oldest steps go first.</summary>
    private const int MostBytes = 8_000_000;

    private sealed record Kept(int Format, Dictionary<string, string> Files, KeptStep Now, KeptStep[] Back, KeptStep[] Forth);

    /// <param name="Files">Fingerprints of job.json, corrections.csv and workshop.json.</param>
    private sealed record KeptStep(string What, string[] Files);

    /// <summary>Steps that can be undone and done again, the next one last, and how the files stood when they were kept.</summary>
    public sealed record Steps(
        JobFiles Now, ImmutableArray<(Said What, JobFiles Files)> Back, ImmutableArray<(Said What, JobFiles Files)> Forth);

    /// <exception cref="IOException">The machine could not write.</exception>
    public static void Keep(string folder, Steps steps)
    {
        var back = steps.Back;
        byte[] bytes = Bytes(steps);
        while (bytes.Length > MostBytes && !back.IsEmpty)
        {
            back = back.RemoveRange(0, (back.Length + 1) / 2);
            bytes = Bytes(steps with { Back = back });
        }

        JobStore.Save(folder, Name, bytes.Length > MostBytes ? KeptFile.None : KeptFile.Of(bytes), JobStore.Read(folder, Name));
    }

    /// <summary>What was kept; null where nothing was. A file that cannot be read says so, and nothing can be undone.</summary>
    public static (Steps? Steps, bool IsDamaged) Read(string folder)
    {
        try
        {
            var there = JobStore.Read(folder, Name);
            if (!there.IsThere)
            {
                return (null, false);
            }

            var kept = JsonSerializer.Deserialize<Kept>(there.Bytes.AsSpan());
            var files = kept!.Files.Select(f => (f.Key, File: KeptFile.Of(Convert.FromBase64String(f.Value)))).ToList();
            if (kept.Format != 1 || files.Exists(f => f.File.Fingerprint != f.Key))
            {
                return (null, true);
            }

            var byPrint = files.ToDictionary(f => f.Key, f => f.File);
            byPrint[KeptFile.None.Fingerprint] = KeptFile.None;
            return (new Steps(Of(kept.Now).Files, [.. kept.Back.Select(Of)], [.. kept.Forth.Select(Of)]), false);

            (Said What, JobFiles Files) Of(KeptStep step) =>
                (Said.Plain(PlainText.Short(step.What, 200)),
                    new JobFiles(byPrint[step.Files[0]], byPrint[step.Files[1]], byPrint[step.Files[2]]));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or FormatException
            or KeyNotFoundException or IndexOutOfRangeException or NullReferenceException or ArgumentNullException)
        {
            return (null, true);
        }
    }

    private static byte[] Bytes(Steps steps)
    {
        var files = new Dictionary<string, string>(StringComparer.Ordinal);
        var kept = new Kept(1, files, Of("", steps.Now), [.. steps.Back.Select(s => Of(s.What.English, s.Files))],
            [.. steps.Forth.Select(s => Of(s.What.English, s.Files))]);
        return JsonSerializer.SerializeToUtf8Bytes(kept);

        KeptStep Of(string what, JobFiles of) => new(what, [Print(of.Job), Print(of.Corrections), Print(of.Workshop)]);

        string Print(KeptFile file)
        {
            if (file.IsThere)
            {
                files.TryAdd(file.Fingerprint, Convert.ToBase64String(file.Bytes.AsSpan()));
            }

            return file.Fingerprint;
        }
    }
}
