using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// The threads that a machine which does not cut leaves between the places where the needle path asks for a cut. Each is locked at both
/// ends and clipped there by hand; the short stitches that join letters have no locks and stay.
/// </summary>
internal static class ThreadsToClip
{
    /// <summary>From where each leaves the stitches to where the needle goes down again.</summary>
    public static ImmutableArray<(Point From, Point To)> Of(NeedlePath path)
    {
        var threads = ImmutableArray.CreateBuilder<(Point From, Point To)>();
        Point? cut = null;
        foreach (var step in path.Steps)
        {
            switch (step.Action)
            {
                case NeedleAction.Trim:
                    cut = step.At;
                    break;
                case NeedleAction.Stop:
                    cut = null;
                    break;
                case NeedleAction.Stitch when cut is { } from:
                    threads.Add((from, step.At));
                    cut = null;
                    break;
            }
        }

        return threads.ToImmutable();
    }

    /// <summary>Said on the proof and on the sheet; places count along the flat cloth from its cut left end.</summary>
    /// <param name="zeroMm">Where the path's origin lies there.</param>
    public static Said InWords(NeedlePath path, double zeroMm)
    {
        var threads = Of(path);
        string places =
            string.Join(", ", threads.Select(t => FormattableString.Invariant($"{zeroMm + t.From.XMm:0}–{zeroMm + t.To.XMm:0}")));
        return threads.IsEmpty
            ? (Said)"no thread to clip but the last one"
            : Said.Plural(
                threads.Length, $"clip the last thread and {threads.Length} more at both ends, at {places} mm on the cloth; shorter threads between letters stay",
                $"clip the last thread and {threads.Length} more at both ends, at {places} mm on the cloth; shorter threads between letters stay");
    }
}
