using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Serialization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>
/// Fingerprints of all that the files of a hooping are made from, this build of the program included. Where it is the
/// same as last time, so would be every byte of the files, and they need not be made again.
/// </summary>
internal sealed partial class InputFingerprint(BandJob job, StripPlan plan, Fabric fabric)
{
    private const int FingerprintBytes = 16; // 128 bits: two jobs alike by chance are never met.

    private readonly ConcurrentDictionary<LetterPiece, string> _outlines = new();


    private readonly string _common = InLanguage(new FingerprintBuilder())
        .Add(typeof(InputFingerprint).Assembly.ManifestModule.ModuleVersionId.ToByteArray())
        .Add(JsonSerializer.SerializeToUtf8Bytes(fabric, Settings.Default.Fabric))
        .Add(JsonSerializer.SerializeToUtf8Bytes(job.Machine, Settings.Default.MachineSettings))
        .Add(JsonSerializer.SerializeToUtf8Bytes(job.Bobbin, Settings.Default.BobbinSettings))
        .Add(JsonSerializer.SerializeToUtf8Bytes(plan.Hem.Strip, Settings.Default.StripWidths))
        .Add(job.Strip.SewnBeforeCutting).Add(plan.Hem.Closed).Add(plan.Hem.OverlapMm).Add(plan.LetterHeightMm).Add(plan.PullCompensationMm)
        .Add(plan.Shortening).Add(plan.FieldAlongMm).Add(plan.FieldAcrossMm).Add(plan.SpareMm).Add(plan.BaselineYMm).Add(plan.MarkYMm)
        .Add(job.Colours.Cloth?.ToString() ?? "").Add(job.Colours.Thread?.ToString() ?? "")
        .Add(string.Join(' ', job.Groups.All.Select(g => $"{g.Thread} {g.Name}")))
        .Add(job.Traced.AlongOutline).Add((int)plan.Marks)
        .Add(plan.Hem.IsCurved ? plan.Hem.TurnRad : -1).Add(plan.Hem.IsCurved ? (int)plan.Hem.ReadBy : -1)
        .Fingerprint();

    /// <param name="madeBy">How it is sewn, as far as outlines, cloth and machine do not tell.</param>
    public string Of(Hooping hooping, string madeBy = "")
    {
        var values = new FingerprintBuilder().Add(_common).Add(madeBy).Add(hooping.Number).Add(hooping.Cloth).Add(hooping.OnClothMm);
        if (hooping.Frame is { } frame)
        {
            values.Add(frame.Name).Add(frame.Along.Mm).Add(frame.Across.Mm);
        }

        foreach (var placed in hooping.Segments)
        {
            values.Add(placed.XMm).Add(placed.YMm).Add(placed.Round.Number).Add(placed.Round.LengthMm)
                .Add(plan.Hem.RoundMm(placed.Round.Number));
            Add(values, placed.Segment);
        }

        // Of one thread nothing is said, as before there were several.
        if (plan.Threads.Of(hooping.Number) is { } threads)
        {
            values.Add(string.Join(' ', threads.Order)).Add(plan.Threads.Threads.Length);
        }

        return values.Fingerprint();
    }

    /// <summary>Of a round's proof.</summary>
    /// <param name="figures">Those of all hoopings: the proof shows the minutes of its own.</param>
    public string Of(Round round, IReadOnlyDictionary<int, HoopingFigures> figures)
    {
        var values = new FingerprintBuilder().Add(_common).Add(round.Number).Add(round.LengthMm).Add(round.HemMm).Add(round.GapMm)
            .Add(plan.FitOf(round).AllowedMm).Add(SheetMarks.Of(plan, round));
        foreach (var ruler in ClothRuler.Of(plan, round))
        {
            values.Add(ruler.Cloth).Add(ruler.StartMm).Add(ruler.EndMm).Add(ruler.OnClothMm).Add(ruler.BeforeMm).Add(ruler.AfterMm);
        }

        foreach (var (hooping, _) in plan.HoopedIn(round))
        {
            values.Add(hooping.Number).Add((double)Thousandths.Tenths(figures[hooping.Number].MachineMinutes));
        }

        foreach (var segment in round.Segments)
        {
            Add(values, segment);
        }

        foreach (var tuck in RoundTucks.Of(plan, round))
        {
            values.Add(tuck.AtMm).Add(tuck.WidthMm);
        }

        return values.Fingerprint();
    }

    /// <summary>The first half of a SHA-256, as letters and figures.</summary>
    public static string Fingerprint(ReadOnlySpan<byte> bytes) => InWords(FileHash.Of(bytes));

    /// <summary>How a SHA-256 is written as a fingerprint.</summary>
    /// <param name="sha256">As letters and figures.</param>
    internal static string InWords(string sha256) => sha256[..(2 * FingerprintBytes)];

    /// <summary>A proof has words on it. Of English nothing is said, as before there were other languages.</summary>
    private static FingerprintBuilder InLanguage(FingerprintBuilder values) =>
        Language.Now is { } language ? values.Add(language.Culture.Name) : values;

    private void Add(FingerprintBuilder values, Segment segment)
    {
        values.Add(segment.Number).Add(segment.StartMm).Add(segment.LengthMm).Add(segment.ClothStartMm);
        foreach (var name in segment.NamesAndMotifs)
        {
            values.Add(name.Order).Add(name.Line).Add(name.IsGone).Add(name.StartMm).Add(name.WidthMm).Add(name.BaselineYMm)
                .Add(name.Lettered.Name.Text)
                .Add(name.Lettered.Ink).Add(name.IsHeading).Add(name.Lettered.Standing.HeightFactor).Add(name.Lettered.Pieces.Length);
            foreach (var piece in name.Lettered.Pieces)
            {
                values.Add(_outlines.GetOrAdd(piece.Piece, OutlineOf)).Add(piece.At);
            }
        }
    }

    private static string OutlineOf(LetterPiece piece)
    {
        var values = new FingerprintBuilder().Add(piece.Key).Add(piece.Face);
        foreach (var ring in piece.Outline.Rings)
        {
            values.Add(ring.Points.Length);
            foreach (var point in ring.Points)
            {
                values.Add(point);
            }
        }

        return values.Fingerprint();
    }

    /// <summary>Writes every value of the records that bear on all hoopings, those added later included.</summary>
    [JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Serialization)]
    [JsonSerializable(typeof(Fabric))]
    [JsonSerializable(typeof(MachineSettings))]
    [JsonSerializable(typeof(BobbinSettings))]
    [JsonSerializable(typeof(StripWidths))]
    private sealed partial class Settings : JsonSerializerContext;
}
