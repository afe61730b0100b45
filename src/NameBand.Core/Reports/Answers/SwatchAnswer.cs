using System.Text.Json;
using System.Text.Json.Serialization;
using NameBand.Common;
using NameBand.Load.Swatches;

namespace NameBand.Reports.Answers;

/// <summary>What <c>swatch</c> answers when it has made one.</summary>
public sealed record SwatchAnswer : CommandAnswer
{
    public required string Folder { get; init; }

    public required string Title { get; init; }

    public required Said Cloth { get; init; }

    public required string Word { get; init; }

    public required double MarksApartMm { get; init; }

    public required int Hoopings { get; init; }

    public required int Stitches { get; init; }

    /// <summary>At the machine.</summary>
    public required double Minutes { get; init; }

    public required IReadOnlyList<ToldSample> Samples { get; init; }

    /// <summary>To be measured after sewing; none where the hoop has no room for them.</summary>
    public IReadOnlyList<ToldSwatchColumn> Columns { get; init; } = [];

    internal static CommandAnswer Of(SwatchReport report) => report is { Plan: { } plan, Folder: { } folder }
        ? new SwatchAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            Folder = folder,
            Title = report.Title,
            Cloth = report.Cloth,
            Word = plan.Word,
            MarksApartMm = Telling.Thousandth(plan.MarksApartMm),
            Hoopings = plan.Hoopings.Length,
            Stitches = report.Stitches,
            Minutes = Telling.Thousandth(report.Minutes),
            Samples = [.. plan.Samples.Select(Sample)],
            Columns = [.. plan.Columns.Select(c => new ToldSwatchColumn
            {
                Label = c.Label, IsLevel = c.IsLevel, WidthMm = c.WidthMm, LengthMm = c.LengthMm,
            })],
        }
        : new RefusedSwatchAnswer { Status = (int)report.Status, Problems = report.Problems };

    private static ToldSample Sample(SwatchSample sample) => new()
    {
        Label = sample.Label,
        Changes = JsonNamingPolicy.CamelCase.ConvertName(sample.Row.ToString()),
        SpacingMm = Telling.Thousandth(sample.SpacingMm),
        PullCompensationMm = Telling.Thousandth(sample.PullCompensationMm),
        LetterHeightMm = Telling.Thousandth(sample.LetterHeightMm),
    };
}

/// <summary>A column of satin as it is drawn.</summary>
public sealed record ToldSwatchColumn
{
    public required string Label { get; init; }

    /// <summary>Its stitches run across the strip.</summary>
    public required bool IsLevel { get; init; }

    public required double WidthMm { get; init; }

    public required double LengthMm { get; init; }
}

internal sealed record RefusedSwatchAnswer : CommandAnswer
{
    /// <summary>None was made.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public string? Folder { get; init; }
}

/// <summary>The word, sewn in one way.</summary>
public sealed record ToldSample
{
    public required string Label { get; init; }

    /// <summary>What changes along its row: <c>spacing</c>, <c>pullCompensation</c> or <c>height</c>.</summary>
    public required string Changes { get; init; }

    public required double SpacingMm { get; init; }

    public required double PullCompensationMm { get; init; }

    public required double LetterHeightMm { get; init; }
}

/// <summary>What <c>swatch --measured</c> answers.</summary>
public sealed record ShorteningAnswer : CommandAnswer
{
    /// <summary>Between the marks before sewing.</summary>
    public required double ApartMm { get; init; }

    public required double MeasuredMm { get; init; }

    public required double Shortening { get; init; }

    /// <summary>What the job allows for.</summary>
    [JsonPropertyName("before")]
    public required double BeforePart { get; init; }

    /// <summary>Whether it was written into job.json.</summary>
    public required bool IsSet { get; init; }

    internal static ShorteningAnswer Of(ShorteningReport report) => new()
    {
        Status = (int)report.Status,
        Problems = report.Problems,
        ApartMm = Telling.Thousandth(report.ApartMm),
        MeasuredMm = Telling.Thousandth(report.MeasuredMm),
        Shortening = (double)Math.Round((decimal)report.ShorteningPart, 4),
        BeforePart = (double)Math.Round((decimal)report.BeforePart, 4),
        IsSet = report.IsSet,
    };
}
