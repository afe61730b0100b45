namespace NameBand.Reports.Answers;

/// <summary>What <c>fit</c> answers: the choices side by side, the job's own face first.</summary>
public sealed record FitAnswer : CommandAnswer
{
    public required string Title { get; init; }

    /// <summary>Whether the cloth is hooped; else each strip is sewn in one run.</summary>
    public required bool Hooped { get; init; }

    /// <summary>Whether the machine's own letters are keyed in.</summary>
    public required bool OwnLetters { get; init; }

    public required IReadOnlyList<ToldChoice> Choices { get; init; }

    internal static FitAnswer Of(FitReport report) => new()
    {
        Status = (int)report.Status,
        Problems = report.Problems,
        Title = report.Job?.Title ?? "",
        Hooped = report.Job?.IsHooped ?? true,
        OwnLetters = report.Job?.Traits.HasLettersOfItsOwn ?? false,
        Choices = [.. report.Choices.Select(Choice)],
    };

    private static ToldChoice Choice(FitChoice choice)
    {
        double tooLong = Telling.Thousandth(choice.TooLongMm);
        return new ToldChoice
        {
            Face = choice.Face,
            Rounds = choice.Rounds,
            LetterHeightMm = Telling.Thousandth(choice.HeightMm),
            Fits = tooLong <= 0,
            TooLongMm = tooLong,
            LeastHeightMm = Telling.Thousandth(choice.LeastHeightMm),
            TooSmall = choice.IsTooSmall,
            Held = choice.Held,
            Hoopings = choice.Hoopings,
            MachineMinutes = Telling.Thousandth(choice.MachineMinutes),
            HandsOnMinutes = Telling.Thousandth(choice.HandsOnMinutes),
            Lanes = choice.Lanes,
            LaneHoopings = choice.LaneHoopings,
            LaneMachineMinutes = Telling.Thousandth(choice.LaneMachineMinutes),
            LaneHandsOnMinutes = Telling.Thousandth(choice.LaneHandsOnMinutes),
        };
    }
}

public sealed record ToldChoice
{
    public required string Face { get; init; }

    public required int Rounds { get; init; }

    public required double LetterHeightMm { get; init; }

    public required bool Fits { get; init; }

    public required double TooLongMm { get; init; }

    public required double LeastHeightMm { get; init; }

    public required bool TooSmall { get; init; }

    /// <summary>Names that could not be placed.</summary>
    public required int Held { get; init; }

    public required int Hoopings { get; init; }

    public required double MachineMinutes { get; init; }

    public required double HandsOnMinutes { get; init; }

    /// <summary>Strips side by side that the field holds; the three below are with as many.</summary>
    public required int Lanes { get; init; }

    public required int LaneHoopings { get; init; }

    public required double LaneMachineMinutes { get; init; }

    public required double LaneHandsOnMinutes { get; init; }
}
