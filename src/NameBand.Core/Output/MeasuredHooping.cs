using System.Buffers;
using System.Text.Json;
using NameBand.Estimating;

namespace NameBand.Output;

/// <summary>
/// What was measured on a needle path, as a row of numbers in plan.json that give it back to the last bit: a later run
/// that takes the path over need not measure it again.
/// </summary>
internal static class MeasuredHooping
{
    private const int PathNumbers = 9;
    private const int NameNumbers = 3;

    public static void Write(Utf8JsonWriter json, HoopingFigures figures)
    {
        var row = new ArrayBufferWriter<byte>(256);
        using (var numbers = new Utf8JsonWriter(row))
        {
            numbers.WriteStartArray();
            numbers.WriteNumberValue(figures.Stitches);
            numbers.WriteNumberValue(figures.Jumps);
            numbers.WriteNumberValue(figures.Trims);
            numbers.WriteNumberValue(figures.Stops);
            numbers.WriteNumberValue(figures.NeedleThreadM);
            numbers.WriteNumberValue(figures.BobbinThreadM);
            numbers.WriteNumberValue(figures.MachineMinutes);
            numbers.WriteNumberValue(figures.StitchingMinutes);
            numbers.WriteNumberValue(figures.Snips);
            foreach (var name in figures.Names)
            {
                numbers.WriteNumberValue(name.Order);
                numbers.WriteNumberValue(name.NeedleM);
                numbers.WriteNumberValue(name.BobbinM);
            }

            numbers.WriteEndArray();
        }

        // Raw, so that it stays one line in a file that is indented for people.
        json.WritePropertyName("measured");
        json.WriteRawValue(row.WrittenSpan, skipInputValidation: true);
    }

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
