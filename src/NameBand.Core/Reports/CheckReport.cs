using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Reports;

/// <summary>One part of a job that was looked at.</summary>
/// <param name="Name">What it is, in a word or three.</param>
/// <param name="IsWhole">Null where there is nothing of it yet.</param>
/// <param name="Found">What was looked at and found, in few words.</param>
public sealed record CheckedPart(Said Name, bool? IsWhole, Said Found);

/// <summary>Whether all that a job consists of is whole and agrees.</summary>
public sealed record CheckReport(ExitStatus Status, string Title, ImmutableArray<CheckedPart> Parts, ImmutableArray<Problem> Problems);
