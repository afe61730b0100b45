using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;

namespace NameBand.Tests.Hostile;

/// <summary>Starts <see cref="KilledWork"/> as a process of its own, kills it at a random moment and looks at what is left.</summary>
/// <param name="child">The command of the child, to which folder and seed are added.</param>
internal sealed class Killing(string folder, ProcessStartInfo child, int seed)
{
    private readonly Random _random = new(seed);
    private ImmutableArray<string> _said = [];
    private int _number = 1_000_000 + (seed * 100_000);

    /// <summary>How often each deed was under way when the kill came.</summary>
    public SortedDictionary<string, int> KilledIn { get; } = new(StringComparer.Ordinal);

    /// <summary>How often each deed was done before it.</summary>
    public SortedDictionary<string, int> Done { get; } = new(StringComparer.Ordinal);

    /// <returns>What is wrong afterwards; null when nothing is.</returns>
    public string? Once()
    {
        var start = new ProcessStartInfo(child.FileName, [.. child.ArgumentList, folder, _number.ToString(CultureInfo.InvariantCulture)])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        _number += 1000;
        using var process = Process.Start(start)!;
        var lines = new List<string>();
        int whole = 1 + _random.Next(5);
        while (lines.Count < whole && process.StandardOutput.ReadLine() is { } line)
        {
            lines.Add(line);
        }

        // Most deeds are over in a moment, a whole job takes longer.
        Thread.Sleep(_random.Next(3) == 0 ? _random.Next(15) : _random.Next(500));
        bool ended = process.HasExited;
        process.Kill();
        process.WaitForExit();
        lines.AddRange(process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries));
        if (ended)
        {
            return "the child ended by itself: " + process.StandardError.ReadToEnd();
        }

        Count(lines);
        _said = [.. _said, .. lines];
        return lines.FirstOrDefault(l => l.StartsWith("refused", StringComparison.Ordinal)) is { } refused
            && !refused.Contains("sewn", StringComparison.Ordinal)
            ? refused : KilledWork.Fault(folder, _said);
    }

    private void Count(List<string> lines)
    {
        foreach (string line in lines.Where(l => l.StartsWith("done ", StringComparison.Ordinal)))
        {
            string deed = line.Split(' ')[1];
            Done[deed] = Done.GetValueOrDefault(deed) + 1;
        }

        if (lines[^1].StartsWith("do ", StringComparison.Ordinal))
        {
            string deed = lines[^1].Split(' ')[1];
            KilledIn[deed] = KilledIn.GetValueOrDefault(deed) + 1;
        }
    }
}
