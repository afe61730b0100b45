using System.Globalization;
using System.Text.RegularExpressions;

namespace NameBand.Job;

/// <summary>
/// The size of a sewing thread, from any of the ways in which spools state it. Tex is grams per kilometre: tex = denier / 9
/// = 1000 / metric count (ISO 1144), ticket = 3000 / tex (Coats Bulletin 05, Thread Numbering).
/// </summary>
/// <param name="Name">As it is shown to people, such as <c>60 wt</c>.</param>
/// <param name="Tex">Above 0; a job takes <see cref="FinestTex"/> to <see cref="ThickestTex"/>.</param>
public sealed partial record ThreadSize(string Name, double Tex)
{
    // 45 and 1800 denier: beyond these a number of another system was taken for tex. Our assumption.
    public const double FinestTex = 5;
    public const double ThickestTex = 200;

    /// <summary>Embroidery thread sold as 40 weight: two plies of 120 denier make 240 denier or 26.7 tex.</summary>
    public static ThreadSize FortyWeight { get; } = new("40 wt", 240.0 / 9);

    /// <summary>Reads <c>60 wt</c>, <c>27 tex</c>, <c>ticket 120</c> or <c>240 den</c>; null when it is none of these.</summary>
    public static ThreadSize? Parse(string text)
    {
        var match = Form().Match(text.Trim());
        if (!match.Success)
        {
            return null;
        }

        string number = match.Groups["n"].Value;
        double value = double.Parse(number, CultureInfo.InvariantCulture);
        string unit = match.Groups["u"].Value.ToLowerInvariant();
        if (value <= 0)
        {
            return null;
        }

        // 40 weight is made heavier than its count says, and has a bulletin of its own for it.
        return unit switch
        {
            "tex" => new ThreadSize($"{number} tex", value),
            "ticket" or "tkt" => new ThreadSize($"ticket {number}", 3000 / value),
            "den" or "denier" => new ThreadSize($"{number} den", value / 9),
            "nm" => new ThreadSize($"Nm {number}", 1000 / value),
            _ when value == 40 => FortyWeight,
            _ => new ThreadSize($"{number} wt", 1000 / value),
        };
    }

    [GeneratedRegex(
        @"^(?:(?<n>[0-9]{1,5}(?:\.[0-9]{1,4})?)\s*(?<u>wt|tex|den|denier)|(?<u>tex|ticket|tkt|nm)\.?\s*(?<n>[0-9]{1,5}(?:\.[0-9]{1,4})?))$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Form();
}
