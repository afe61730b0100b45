using System.Collections.Immutable;
using NameBand.Estimating;

namespace NameBand.PlanFile;

/// <summary>
/// What was measured on a needle path, as a row of numbers in plan.json that give it back to the last bit: a later run
/// that takes the path over need not measure it again.
/// </summary>
internal static class MeasuredHooping
{
    // How many numbers the row begins with, and how many each name adds: as they are written above all.
    private const int PathNumbers = 9;
    private const int NameNumbers = 3;

    public static ImmutableArray<double> Row(HoopingFigures figures) =>
    [
        figures.Stitches, figures.Jumps, figures.Trims, figures.Stops, figures.NeedleThreadM, figures.BobbinThreadM,
        figures.MachineMinutes, figures.StitchingMinutes, figures.Snips,
        .. figures.Names.SelectMany(name => (double[])[name.Order, name.NeedleM, name.BobbinM]),
    ];

    /// <returns>Null when the numbers are not such a row.</returns>
    public static HoopingFigures? Read(int hooping, ReadOnlySpan<double> row)
    {
        if (row.Length < PathNumbers || (row.Length - PathNumbers) % NameNumbers != 0)
        {
            return null;
        }

        var names = new NameThread[(row.Length - PathNumbers) / NameNumbers];
        for (int i = 0; i < names.Length; i++)
        {
            var at = row[(PathNumbers + (i * NameNumbers))..];
            names[i] = new NameThread((int)at[0], at[1], at[2]);
        }

        return new HoopingFigures(hooping, (int)row[0], (int)row[1], (int)row[2], (int)row[3], row[4], row[5], row[6])
        {
            StitchingMinutes = row[7],
            Snips = (int)row[8],
            Names = [.. names],
        };
    }
}
