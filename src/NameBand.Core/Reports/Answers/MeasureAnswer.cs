using System.Text.Json.Serialization;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Reports.Answers;

/// <summary>What <c>measure</c> answers: what to sew, or what the measured lines say of each letter.</summary>
public sealed record MeasureAnswer : CommandAnswer
{
    public required double HeightMm { get; init; }

    /// <summary>The sheet to fill in, inside the job's folder; null where there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public string? Sheet { get; init; }

    /// <summary>The printed sheets that were just made.</summary>
    public required IReadOnlyList<string> Printed { get; init; }

    public required int Lines { get; init; }

    public required int Unfilled { get; init; }

    /// <summary>Where the alphabet was written; null where it was not.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public string? Alphabet { get; init; }

    /// <summary>Null, as what follows, before any line is measured.</summary>
    public double? GapMm { get; init; }

    public double? GapLowMm { get; init; }

    public double? GapHighMm { get; init; }

    public double? ReadingErrorMm { get; init; }

    /// <summary>Whether the lines themselves show it; else it is assumed.</summary>
    public bool? ReadingErrorIsFound { get; init; }

    public IReadOnlyList<ToldLetter>? Letters { get; init; }

    /// <summary>Letters that the machine was found not to have.</summary>
    public IReadOnlyList<string>? Lacking { get; init; }

    internal static MeasureAnswer Of(MeasureReport report)
    {
        var answer = new MeasureAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            HeightMm = Telling.Thousandth(report.HeightMm),
            Sheet = report.Sheet,
            Printed = report.Printed,
            Lines = report.Lines,
            Unfilled = report.Unfilled,
            Alphabet = report.AlphabetFile,
        };
        return report.Alphabet is not { } alphabet ? answer : answer with
        {
            GapMm = Telling.Thousandth(alphabet.Gap.WidthMm),
            GapLowMm = Telling.Thousandth(alphabet.Gap.LowMm),
            GapHighMm = Telling.Thousandth(alphabet.Gap.HighMm),
            ReadingErrorMm = Telling.Thousandth(report.ReadingErrorMm),
            ReadingErrorIsFound = report.ErrorIsFound,
            Letters = [.. alphabet.Letters.Values.Select(Letter)],
            Lacking = [.. alphabet.Lacking],
        };
    }

    private static ToldLetter Letter(MachineLetter letter) => new()
    {
        Letter = letter.Letter,
        WidthMm = Telling.Thousandth(letter.WidthMm),
        LowMm = Telling.Thousandth(letter.LowMm),
        HighMm = Telling.Thousandth(letter.HighMm),
        Estimated = letter.Origin == WidthOrigin.Estimated,
    };
}

public sealed record ToldLetter
{
    public required string Letter { get; init; }

    public required double WidthMm { get; init; }

    public required double LowMm { get; init; }

    public required double HighMm { get; init; }

    /// <summary>By the proportions of a face, and not from what was sewn.</summary>
    public required bool Estimated { get; init; }
}
