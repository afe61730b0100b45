using NameBand.Common;

namespace NameBand.Garment;

/// <summary>How far a strip may be from its hem and still be said to meet it: a length, or a part of the hem where that is more.</summary>
/// <param name="Part">0 where the job says the length itself.</param>
public sealed record HemTolerance(double LeastMm, double Part)
{
    public double OfMm(double hemMm) => Math.Max(LeastMm, Part * hemMm);

    /// <summary>What these rounds may be off, each: “18.3 mm”, or “17.1 to 18.3 mm”.</summary>
    public Said InWords(IEnumerable<double> hemsMm)
    {
        double[] each = [.. hemsMm.Select(OfMm).DefaultIfEmpty(LeastMm).Order()];
        Said least = $"{each[0]:0.#}", most = $"{each[^1]:0.#}";
        return least == most ? (Said)$"{most} mm" : $"{least} to {most} mm";
    }
}

/// <summary>The strip of one round beside its hem.</summary>
/// <param name="AllowedMm">How much longer or shorter it may be.</param>
public sealed record RoundFit(int Number, double LengthMm, double HemMm, double AllowedMm)
{
    /// <summary>Above 0 where the strip is the longer one.</summary>
    public double OverMm => LengthMm - HemMm;

    public bool Meets => Math.Abs(OverMm) <= AllowedMm;

    public bool RunsOver => OverMm > AllowedMm;

    public Verdict Judged() => new(Fact.Hem, Number, Meets ? VerdictKind.Good : VerdictKind.NeedsAPerson, InWords());

    private Said InWords() => Meets
        ? (Said)$"The strip of round {Number} is {LengthMm:0.0} mm long and meets its hem of {HemMm:0.0} mm; {AllowedMm:0.#} mm is allowed."
        : RunsOver
        ? (Said)$"The names need {Length.FromMm(LengthMm).InMetres()} and the garment has {Length.FromMm(HemMm).InMetres()} there: the strip is {OverMm:0} mm too long."
        : $"The strip is {Length.FromMm(LengthMm).InMetres()} long and the garment has {Length.FromMm(HemMm).InMetres()} there: it is {-OverMm:0} mm too short.";
}
