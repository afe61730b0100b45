using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;

namespace NameBand;

/// <summary>The exit status of a command; 64 (a wrong command line) belongs to the command line itself.</summary>
public enum ExitStatus
{
    AllPlaced = 0,
    NeedsPerson = 1,
    CannotUse = 2,
}

/// <summary>How far a long piece of work has come.</summary>
public readonly record struct Progress(string What, int Done, int Of);

/// <summary>What <see cref="Bander.Make"/> made; the parts after a failed one are null.</summary>
public sealed record MakeReport(
    ExitStatus Status, BandJob? Job, NameList? Names, StripPlan? Plan, Estimate? Estimate, string? OutFolder,
    ImmutableArray<Problem> Problems);

/// <summary>The check of the lists alone, with the corrections.csv lines that would settle what is held.</summary>
public sealed record NamesReport(
    ExitStatus Status, NameList? Names, ImmutableArray<string> LinesToAdd, ImmutableArray<Problem> Problems);

/// <summary>The front door: one call runs the rooms in order and reports progress.</summary>
public static class Bander
{
    /// <summary>Reads a job's folder and makes its plan, proofs and needle paths, whole or not at all.</summary>
    /// <param name="outFolder">Null: the folder <c>out</c> inside the job's folder.</param>
    /// <exception cref="OperationCanceledException">The earlier output is as it was.</exception>
    /// <exception cref="IOException">The machine could not write; the earlier output is as it was.</exception>
    public static MakeReport Make(
        string jobFolder, string? outFolder = null, IProgress<Progress>? progress = null, CancellationToken cancel = default) =>
        throw new NotSupportedException();

    /// <summary>Checks the lists of a job and writes nothing.</summary>
    public static NamesReport CheckNames(string jobFolder) => throw new NotSupportedException();
}
