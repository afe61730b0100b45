using System.Text.Json.Serialization;
using NameBand.Cloth;

namespace NameBand.Reports.Answers;

/// <summary>What <c>swatch --columns</c> answers.</summary>
public sealed record PullAnswer : CommandAnswer
{
    public required IReadOnlyList<ToldMeasuredColumn> Columns { get; init; }

    /// <summary>On each side of a column 2 mm wide; null where nothing can be said, and so are the others.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public double? PullCompensationMm { get; init; }

    /// <summary>The part of it that grows with the length of the stitches.</summary>
    [JsonPropertyName("pullGrowth")]
    public double? PullGrowthPart { get; init; }

    /// <summary>How much more stitches across the strip draw than those along it; null where only one direction was measured.</summary>
    [JsonPropertyName("pullAcross")]
    public double? PullAcrossFactor { get; init; }

    public double? PushMm { get; init; }

    /// <summary>How far the column that suits the others least lies from what is foretold of it, on a side.</summary>
    public double? WorstMm { get; init; }

    /// <summary>What the job allows for.</summary>
    public ToldPull? Before { get; init; }

    /// <summary>Whether it was written into job.json.</summary>
    public required bool IsSet { get; init; }

    internal static PullAnswer Of(PullReport report) => new()
    {
        Status = (int)report.Status,
        Problems = report.Problems,
        IsSet = report.IsSet,
        Columns =
        [
            .. report.Columns.Select(c => new ToldMeasuredColumn
            {
                Label = c.Label,
                WidthMm = Telling.Thousandth(c.WidthMm),
                LengthMm = Telling.Thousandth(c.LengthMm),
                MeasuredWidthMm = Telling.Thousandth(c.MeasuredWidthMm),
                MeasuredLengthMm = Telling.Thousandth(c.MeasuredLengthMm),
                NarrowerMm = Telling.Thousandth(c.NarrowerMm),
                LongerMm = Telling.Thousandth(c.LongerMm),
                AllowedMm = report.Before is { } cloth
                    ? Telling.Thousandth(PullFit.ForetoldMm(cloth.PullCompensationMm, cloth.Pull, c)) : 0,
            }),
        ],
        PullCompensationMm = report.Fit?.PullCompensationMm,
        PullGrowthPart = report.Fit?.GrowingPart,
        PullAcrossFactor = report.Fit?.AcrossFactor,
        PushMm = report.Fit?.PushMm,
        WorstMm = report.Fit is { } fit ? Telling.Thousandth(fit.WorstMm) : null,
        Before = report.Before is { } before
            ? new ToldPull
            {
                PullCompensationMm = Telling.Thousandth(before.PullCompensationMm),
                PullGrowthPart = Telling.Thousandth(before.Pull.GrowingPart),
                PullAcrossFactor = Telling.Thousandth(before.Pull.AcrossFactor / before.Pull.AlongFactor),
                PushMm = Telling.Thousandth(before.PushCompensationMm),
            }
            : null,
    };
}

/// <summary>A column of satin, sewn and measured.</summary>
public sealed record ToldMeasuredColumn
{
    public required string Label { get; init; }

    public required double WidthMm { get; init; }

    public required double LengthMm { get; init; }

    public required double MeasuredWidthMm { get; init; }

    public required double MeasuredLengthMm { get; init; }

    /// <summary>On each side.</summary>
    public required double NarrowerMm { get; init; }

    /// <summary>At each end.</summary>
    public required double LongerMm { get; init; }

    /// <summary>How much narrower on each side the job takes it to come out.</summary>
    public required double AllowedMm { get; init; }
}

/// <summary>How much a cloth is taken to draw in.</summary>
public sealed record ToldPull
{
    public required double PullCompensationMm { get; init; }

    [JsonPropertyName("pullGrowth")]
    public required double PullGrowthPart { get; init; }

    [JsonPropertyName("pullAcross")]
    public required double PullAcrossFactor { get; init; }

    public required double PushMm { get; init; }
}
