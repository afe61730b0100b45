using System.Collections.Concurrent;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NameBand.Cloth;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;

namespace NameBand.Output;

/// <summary>
/// Fingerprints of all that the files of a hooping are made from, this build of the program included. Where it is the
/// same as last time, so would be every byte of the files, and they need not be made again.
/// </summary>
public sealed class MadeFrom(BandJob job, StripPlan plan, Fabric fabric)
{
    private readonly ConcurrentDictionary<LetterPiece, string> _outlines = new();

    private readonly string _common = string.Join(
        '|', typeof(MadeFrom).Assembly.ManifestModule.ModuleVersionId, Json(fabric), Json(job.Machine), job.Strip.SewnBeforeCutting,
        Json(job.Bobbin), Json(plan.Hem.Strip), plan.Hem.Closed, Exact(plan.Hem.OverlapMm), Exact(plan.LetterHeightMm), Exact(plan.PullCompensationMm),
        Exact(plan.Shortening), Exact(plan.FieldAlongMm), Exact(plan.FieldAcrossMm), Exact(plan.SpareMm), Exact(plan.BaselineYMm), Exact(plan.MarkYMm),
        plan.Hem.IsCurved ? FormattableString.Invariant($"{plan.Hem.TurnRad:R} {plan.Hem.ReadBy}") : "");

    public string Of(Hooping hooping)
    {
        var text = new StringBuilder(_common).Append('|').Append(Plain(hooping));
        foreach (var placed in hooping.Segments)
        {
            text.Append('\n').Append(Exact(placed.XMm)).Append(' ').Append(Exact(placed.YMm)).Append(' ').Append(placed.Round.Number).Append(' ').Append(Exact(placed.Round.LengthMm)).Append(' ').Append(Exact(plan.Hem.RoundMm(placed.Round.Number)));
            Add(text, placed.Segment);
        }

        return Fingerprint(Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>Of a round's proof.</summary>
    /// <param name="figures">Those of all hoopings: the proof shows the minutes of its own.</param>
    public string Of(Round round, IReadOnlyDictionary<int, HoopingFigures> figures)
    {
        var text = new StringBuilder(_common).Append('|').Append(round.Number).Append(' ').Append(Exact(round.LengthMm)).Append(' ')
            .Append(Exact(round.HemMm)).Append(' ').Append(Exact(round.GapMm)).Append(' ').Append(Exact(plan.Hem.ToleranceMm));
        foreach (int hooping in plan.Hoopings.Where(h => h.Segments.Any(s => s.Round.Number == round.Number)).Select(h => h.Number))
        {
            text.Append(' ').Append(hooping).Append(':').Append(Thousandths.Tenths(figures[hooping].MachineMinutes).ToString(CultureInfo.InvariantCulture));
        }

        foreach (var segment in round.Segments)
        {
            Add(text, segment);
        }

        return Fingerprint(Encoding.UTF8.GetBytes(text.ToString()));
    }

    /// <summary>The first half of a SHA-256, as letters and figures.</summary>
    public static string Fingerprint(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes)[..16]);

    private void Add(StringBuilder text, Segment segment)
    {
        text.Append('\n').Append(segment.Number).Append(' ').Append(Exact(segment.StartMm)).Append(' ').Append(Exact(segment.LengthMm)).Append(' ').Append(Exact(segment.ClothStartMm));
        foreach (var name in segment.NamesAndMotifs)
        {
            text.Append('\n').Append(name.Order).Append(' ').Append(name.IsGone).Append(' ').Append(Exact(name.StartMm)).Append(' ').Append(Exact(name.WidthMm)).Append(' ')
                .Append(Exact(name.BaselineYMm)).Append(' ').Append(name.Lettered.Name.Text).Append(' ').Append(Json(name.Lettered.Ink))
                .Append(' ').Append(name.IsHeading).Append(' ').Append(Exact(name.Lettered.Standing.HeightFactor));
            foreach (var piece in name.Lettered.Pieces)
            {
                text.Append(' ').Append(_outlines.GetOrAdd(piece.Piece, OutlineOf)).Append(' ').Append(Exact(piece.At.XMm)).Append(' ').Append(Exact(piece.At.YMm));
            }
        }
    }

    private static string OutlineOf(LetterPiece piece)
    {
        var text = new StringBuilder(piece.Key).Append('|').Append(piece.Face);
        foreach (var ring in piece.Outline.Rings)
        {
            text.Append('\n');
            foreach (var point in ring.Points)
            {
                text.Append(Exact(point.XMm)).Append(',').Append(Exact(point.YMm)).Append(' ');
            }
        }

        return Fingerprint(Encoding.UTF8.GetBytes(text.ToString()));
    }

    private static string Plain(Hooping hooping) => Json(hooping with { Segments = [] });

    /// <summary>All values of a record, written the same in every culture.</summary>
    private static string Json<T>(T value) => System.Text.Json.JsonSerializer.Serialize(value, JsonOptions);

    private static readonly System.Text.Json.JsonSerializerOptions JsonOptions = new()
    {
        NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    private static string Exact(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
