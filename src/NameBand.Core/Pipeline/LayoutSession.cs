using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Shaping;
using NameBand.Names;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline;

/// <summary>What laying out came to; <see cref="Laid"/> is null where something keeps the job from being laid out.</summary>
public sealed record LayReport(BandJob? Job, LaidOutJob? Laid, ImmutableArray<Problem> Problems);

/// <summary>
/// Lays one job out again and again as it is changed. The checked and lettered list is kept as long as nothing it was
/// made from has changed, so that a new height costs only its layout. Used by one caller at a time.
/// </summary>
/// <param name="jobFolder">Full path of the job's folder.</param>
public sealed class LayoutSession(string jobFolder)
{
    private static readonly string[] LayoutGroups =
        ["hem", "strip", "hoop", "machine", "hands", "bobbin", "shop", "prices", "stitches", "fabric", "files", "show"];
    private static readonly string[] LayoutLettering = ["height", "least", "gap", "mostGap", "spread"];

    private readonly FaceShelf _shelf = new();
    private (string Key, Result<NamesRead> Names, ImmutableArray<Problem> OfTheJob)? _kept;

    /// <summary>Names of the faces that travel with the program, the usual ones first.</summary>
    public ImmutableArray<string> FaceNames =>
        [.. _shelf.Cards.OrderBy(c => c.Fallback is null ? 0 : 1).ThenBy(c => c.Name, StringComparer.Ordinal).Select(c => c.Name)];

    /// <summary>Whether a face that travels with the program draws too few of the names to be chosen by how they look in it.</summary>
    public bool IsMostlyHelped(string faceName, IReadOnlyCollection<string> names) =>
        _shelf.Open(faceName, jobFolder).Value is { } face && HelpingFaces.IsMostlyHelped(new FaceChain(face, _shelf), names);

    /// <summary>Reads the job's folder and lays it out; writes nothing.</summary>
    /// <exception cref="OperationCanceledException">The work was given up.</exception>
    /// <exception cref="IOException">The machine could not read.</exception>
    public LayReport Lay(CancellationToken cancel = default)
    {
        var job = JobReader.Read(jobFolder);
        var names = Names(job, cancel);
        cancel.ThrowIfCancellationRequested();
        var planned = Planning.Lay(names);
        return new LayReport(
            job.Value, planned.Value is { } made && planned.IsUsable ? new LaidOutJob(made) : null, planned.Problems);
    }

    /// <summary>Lays out what the job would be with keys set otherwise; writes nothing.</summary>
    /// <exception cref="OperationCanceledException">The work was given up.</exception>
    /// <exception cref="IOException">The machine could not read.</exception>
    public LayReport Try(ImmutableArray<JobEdit> edits, CancellationToken cancel = default)
    {
        if (JobEditing.Apply(JobStore.Read(jobFolder, JobReader.FileName).Bytes.AsSpan(), edits) is not { } bytes)
        {
            return new LayReport(null, null, []);
        }

        var job = JobReader.Check(jobFolder, bytes);
        var planned = Planning.Lay(Planning.ReadNames(jobFolder, _shelf, cancel, job), findsMends: false);
        return new LayReport(job.Value, planned.Value is { } made && planned.IsUsable ? new LaidOutJob(made) : null, planned.Problems);
    }

    private Result<NamesRead> Names(Result<BandJob> job, CancellationToken cancel)
    {
        if (job.Value is not { } read || !job.IsUsable || KeyOf(read) is not { } key)
        {
            return Planning.ReadNames(jobFolder, _shelf, cancel);
        }

        if (_kept is not { } kept || kept.Key != key)
        {
            var names = Planning.ReadNames(jobFolder, _shelf, cancel);
            _kept = kept = (key, names, job.Problems);
        }

        // Problems of job.json itself stand first and are those of the file as it is now.
        ImmutableArray<Problem> problems = [.. job.Problems, .. kept.Names.Problems.Skip(kept.OfTheJob.Length)];
        return new Result<NamesRead>(kept.Names.Value is { } value ? value with { Job = read } : null, problems);
    }

    /// <summary>
    /// Equal for the same files and the same job but for what only the layout reads; null once sewing has begun. What is
    /// not known to be the layout's alone counts, so that nothing stale is ever shown.
    /// </summary>
    private string? KeyOf(BandJob job)
    {
        if (InnerFile.IsThere(jobFolder, SewingLogFile.FileName) || WithoutLayout() is not { } rest)
        {
            return null;
        }

        var faces = job.Groups.All.Select(g => g.Face).Append(job.Motif.Face).Append(job.Lettering.Face).OfType<string>()
            .Distinct(StringComparer.Ordinal);
        // A workshop may answer for the letters of the machine, and lies where it is not looked at below.
        var key = new StringBuilder(rest).Append('\n').Append(job.Letters).AppendJoin(' ', job.Letters.Sizes)
            .AppendJoin(' ', job.Letters.Spacings).Append('\n');
        foreach (string file in (IEnumerable<string>)[.. job.Lists.Select(ListFile.FileOf), .. job.Lists.Where(ListFile.IsWorkbook),
            Corrections.FileName, ApprovalsFile.FileName, job.Letters.Alphabet, .. faces])
        {
            key.Append(file).Append(' ');
            if (!Path.IsPathRooted(file) && InnerFile.IsPlain(jobFolder, file))
            {
                key.Append(Convert.ToHexString(SHA256.HashData(InnerFile.Bytes(jobFolder, file))));
            }

            key.Append('\n');
        }

        return key.ToString();
    }

    /// <summary>job.json without the groups and keys that the layout alone reads; null where it cannot be taken apart.</summary>
    private string? WithoutLayout()
    {
        try
        {
            if (JsonNode.Parse(JobStore.Read(jobFolder, JobReader.FileName).Bytes.AsSpan()) is not JsonObject job)
            {
                return null;
            }

            foreach (string group in LayoutGroups)
            {
                job.Remove(group);
            }

            foreach (string key in LayoutLettering)
            {
                (job["lettering"] as JsonObject)?.Remove(key);
            }

            return job.ToJsonString();
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }
}
