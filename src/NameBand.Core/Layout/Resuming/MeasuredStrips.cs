using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout.Resuming;

/// <summary>How much the cloth really got shorter, from pieces measured after sewing and pressing.</summary>
internal static class MeasuredStrips
{
    /// <summary>No plan allows for more, and with none that grows.</summary>
    private const double MostPart = 0.1;

    /// <summary>
    /// Part by which the measured pieces came out shorter than they lay on the cloth, all of them together; what the
    /// job says where nothing was measured. A length that no cloth comes to is left aside and told of.
    /// </summary>
    public static (double Part, ImmutableArray<Problem> Problems) Shortening(SewingLog log, EarlierPlan plan, double askedPart)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var seen = new HashSet<(int Hooping, int Strip)>();
        double onCloth = 0;
        double measured = 0;
        foreach (var entry in log.Measured.Where(e => log.IsSewn(e.Hooping)))
        {
            if (SewnStrip.Of(plan, entry) is not { } piece || !seen.Add((piece.Hooping, piece.Strip)))
            {
                continue;
            }

            if (piece.CanBe(entry.MeasuredMm!.Value, isSure: true))
            {
                onCloth += piece.OnClothMm;
                measured += entry.MeasuredMm.Value;
                continue;
            }

            Said strip = piece.Strips == 1 ? "" : (Said)$" --strip {piece.Strip}";
            problems.Add(Problem.NeedsPerson(
                new Where(SewingLogFile.FileName),
                $"Hooping {piece.Hooping} is logged as measured {entry.MeasuredMm.Value:0.##} mm long, and no cloth comes to that: "
                        + $"{piece.ExpectedMm:0.0} mm were expected. It is ignored.",
                $"Measure it once more and say what it is, which counts instead: sewn JOB {piece.Hooping} --measured \"… mm\"{strip}"));
        }

        return (onCloth > 0 ? Math.Clamp(1 - (measured / onCloth), 0, MostPart) : askedPart, problems.ToImmutable());
    }
}
