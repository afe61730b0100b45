using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>A name so long that it alone makes everybody's letters smaller, and what it costs.</summary>
/// <param name="WithMm">Letter height with it.</param>
/// <param name="WithoutMm">Letter height if it were of the usual length.</param>
internal sealed record OddLongName(LetteredName Name, double WithMm, double WithoutMm)
{
    public HeldRow Held => new(Name.Name.Row, $"so long that it alone makes all letters {WithMm:0.0} mm high, which would be {WithoutMm:0.0} mm without it. "
        + $"Keep it if that is right, or agree a shorter form with its owner")
    {
        IsForItsSize = true,
    };
}

/// <summary>
/// Finds names that are held by themselves because each alone costs more than a tenth of the letter height. What every name costs, for
/// a strip has only so much room, is nobody's fault: a name is measured against one of the usual length in its place.
/// </summary>
internal static class OddLongNames
{
    /// <summary>Part of the letter height that one name may cost.</summary>
    private const double MostPart = 0.1;

    /// <summary>With fewer names none is unlike the others.</summary>
    private const int LeastNames = 5;

    /// <param name="names">In their order.</param>
    /// <param name="heightOf">The letters that names come in; null where they do not fit at all.</param>
    public static ImmutableArray<OddLongName> Of(IReadOnlyList<LetteredName> names, Func<IReadOnlyList<LetteredName>, double?> heightOf)
    {
        var odd = ImmutableArray.CreateBuilder<OddLongName>();
        var left = names.ToList();
        while (left.Count >= LeastNames && Longest(left) is { } longest)
        {
            double usual = Usual(left);
            if (longest.Ink.WidthMm <= usual * (1 + MostPart) || heightOf(left) is not { } with
                || heightOf([.. left.Select(n => ReferenceEquals(n, longest) ? OfWidth(n, usual) : n)]) is not { } without
                || with >= (without * (1 - MostPart)) - Tolerance.RoundingMm)
            {
                break;
            }

            odd.Add(new OddLongName(longest, with, without));
            left.Remove(longest);
        }

        return odd.ToImmutable();
    }

    /// <summary>Of those that nobody has decided to keep; a heading stands in the job's own file.</summary>
    private static LetteredName? Longest(List<LetteredName> names) =>
        names.Where(n => !n.Name.IsKept && !GroupOrder.IsHeading(n.Name) && !n.IsInOneRun).MaxBy(n => n.Ink.WidthMm);

    private static double Usual(List<LetteredName> names) =>
        names.Select(n => n.Ink.WidthMm).Order().ElementAt(names.Count / 2);

    private static LetteredName OfWidth(LetteredName name, double width) =>
        name with { Ink = name.Ink with { RightMm = name.Ink.LeftMm + width } };
}
