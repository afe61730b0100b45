using System.Collections.Immutable;
using System.Security.Cryptography;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>A small file of a job's folder as it was read.</summary>
public sealed class KeptFile
{
    private KeptFile(ImmutableArray<byte> bytes, bool isThere)
    {
        Bytes = bytes;
        IsThere = isThere;
        Fingerprint = isThere ? Convert.ToHexString(SHA256.HashData(bytes.AsSpan())) : "none";
    }

    /// <summary>What stands for a file that is not there.</summary>
    public static KeptFile None { get; } = new([], false);

    /// <summary>Empty where there is no file.</summary>
    public ImmutableArray<byte> Bytes { get; }

    public bool IsThere { get; }

    /// <summary>Equal for equal content.</summary>
    public string Fingerprint { get; }

    public static KeptFile Of(ReadOnlySpan<byte> bytes) => new([.. bytes], true);
}

/// <summary>
/// Reads and writes the small files of a job's folder for a program that keeps them in mind: whole or not at all, under
/// the job's lock, and never over a change somebody else made in the meantime.
/// </summary>
public static class JobStore
{
    /// <summary>What is there; a link, or what is no file, counts as nothing.</summary>
    /// <exception cref="IOException">The machine could not read.</exception>
    public static KeptFile Read(string jobFolder, string name) =>
        InnerFile.IsPlain(jobFolder, name) ? KeptFile.Of(InnerFile.Bytes(jobFolder, name)) : KeptFile.None;

    /// <summary>Puts new content in a file's place in one step.</summary>
    /// <param name="content"><see cref="KeptFile.None"/>: the file is taken away.</param>
    /// <param name="expected">What is thought to be there; anything else there is a problem, and nothing is written.</param>
    /// <returns>What is there now.</returns>
    /// <exception cref="IOException">The machine could not write; the file is as it was.</exception>
    public static Result<KeptFile> Save(string jobFolder, string name, KeptFile content, KeptFile expected)
    {
        var taken = JobLock.Take(jobFolder);
        using var held = taken.Value;
        if (held is null)
        {
            return Result.Fail<KeptFile>(taken.Problems);
        }

        if (InnerFile.Objection(jobFolder, name) is { } objection)
        {
            return Result.Fail<KeptFile>(objection);
        }

        if (Read(jobFolder, name).Fingerprint != expected.Fingerprint)
        {
            return Result.Fail<KeptFile>(Problem.CannotUse(
                new Where(name), $"{name} was changed by somebody else in the meantime, so your change was not written over it.",
                "Take up the file as it is now, and make the change again."));
        }

        string path = Path.Combine(jobFolder, name);
        if (!content.IsThere)
        {
            Disk.RemoveFile(path);
            Disk.TryFlushFolder(jobFolder);
        }
        else
        {
            WholeFile.Put(path, content.Bytes.AsSpan());
        }

        return Result.Of(content);
    }
}
