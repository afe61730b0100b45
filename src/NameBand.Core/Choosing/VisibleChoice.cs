using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Choosing;

/// <summary>What a plan would have otherwise in job.json: keys, each with the value that would stand there.</summary>
/// <param name="Edits">In the order of their keys; those that would change nothing are left out.</param>
internal sealed record VisibleChoice(ImmutableArray<JobEdit> Edits)
{
    public static VisibleChoice AsSet { get; } = new(ImmutableArray<JobEdit>.Empty);

    public bool IsAsSet => Edits.IsEmpty;

    /// <summary>Equal for choices that come to the same job.json.</summary>
    public string Key => string.Join('\n', Edits.Select(e => $"{e.Path}={e.Json ?? "none"}"));
}

/// <summary>A job.json as she wrote it, and what stands in it once some of its keys are set otherwise.</summary>
internal sealed class JobAsWritten(ImmutableArray<byte> file)
{
    public ImmutableArray<byte> File => file;

    public bool Has(string path) => ValueOf(path) is not null;

    public string? ValueOf(string path) => JobEditing.ValueOf(file.AsSpan(), path);

    /// <summary>A choice with more keys set; one that comes back to what is written is no change.</summary>
    public VisibleChoice With(VisibleChoice choice, params ReadOnlySpan<JobEdit> edits)
    {
        var all = choice.Edits.ToDictionary(e => e.Path, StringComparer.Ordinal);
        foreach (var edit in edits)
        {
            all[edit.Path] = edit;
        }

        return new VisibleChoice(
            [.. all.Values.Where(e => e.Json != JobEditing.ValueOf(file.AsSpan(), e.Path)).OrderBy(e => e.Path, StringComparer.Ordinal)]);
    }

    /// <summary>The file with a choice in it, byte for byte as it is where nothing changes; null where it cannot be changed.</summary>
    public byte[]? Bytes(VisibleChoice choice) => choice.IsAsSet ? [.. file] : JobEditing.Apply(file.AsSpan(), choice.Edits);
}
