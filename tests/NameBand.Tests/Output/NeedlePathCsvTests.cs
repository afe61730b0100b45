using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using CsCheck;
using CsvHelper;
using NameBand.Common;
using NameBand.Output;
using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class NeedlePathCsvTests
{
    [Fact]
    public void EveryActionAndSignIsWrittenAsTheFormatSays()
    {
        var path = new NeedlePath(
        [
            Step(NeedleAction.Jump, 0, 0), Step(NeedleAction.Stitch, -0.0004, -0.0), Step(NeedleAction.Stitch, 1.5, -16.5),
            Step(NeedleAction.Stop, 148.0005, 10), Step(NeedleAction.Trim, 99.9996, -100), Step(NeedleAction.End, 12345.678, 0.001),
        ]);
        Assert.Equal(
            "step,x_mm,y_mm,action\r\n1,0.000,0.000,jump\r\n2,0.000,0.000,stitch\r\n3,1.500,-16.500,stitch\r\n"
            + "4,148.000,10.000,stop\r\n5,100.000,-100.000,trim\r\n6,12345.678,0.001,end\r\n",
            Text(path));
    }

    [Fact]
    public void AnIndependentReaderFindsTheSamePath()
    {
        var plan = OutSample.Plan();
        var path = OutSample.Path(plan, plan.Hoopings[1]);
        using var reader = CsvReader.FromText(Text(path), CsvReaderOptions.Default with { Separator = ',', HasHeader = false });
        Assert.True(reader.Read());
        Assert.Equal(["step", "x_mm", "y_mm", "action"], reader.Current.ToArray());
        int i = 0;
        for (; reader.Read(); i++)
        {
            string[] fields = reader.Current.ToArray();
            Assert.Equal(i + 1, int.Parse(fields[0], CultureInfo.InvariantCulture));
            Assert.Equal(path.Steps[i].At.XMm, double.Parse(fields[1], CultureInfo.InvariantCulture), 0.00051);
            Assert.Equal(path.Steps[i].At.YMm, double.Parse(fields[2], CultureInfo.InvariantCulture), 0.00051);
            Assert.Equal(path.Steps[i].Action.ToString().ToLowerInvariant(), fields[3]);
        }

        Assert.Equal(path.Steps.Length, i);
        Assert.True(i > 500);
    }

    [Fact]
    public void NumbersArePrintedAsDecimalArithmeticPrintsThem() =>
        Gen.OneOf(
            Gen.Double[-1e11, 1e11], Gen.Double[-20_000, 20_000], Gen.Double[-1, 1], Gen.Int[-2_000_000, 2_000_000].Select(n => n / 2000.0))
            .Sample(
            mm =>
            {
                // The reference: the double's exact binary value, scaled and rounded by decimal arithmetic.
                decimal exact = decimal.Round((decimal)Math.Round(mm * 1000), 0) / 1000;
                string expected = exact.ToString("0.000", CultureInfo.InvariantCulture);
                Span<byte> bytes = stackalloc byte[48];
                ref byte end = ref NeedlePathCsv.WriteFixed(ref bytes[0], Thousandths.Of(mm));
                int length = (int)Unsafe.ByteOffset(ref bytes[0], ref end);
                string printed = Encoding.ASCII.GetString(bytes[..length]);
                Assert.Equal(expected == "-0.000" ? "0.000" : expected, printed);
                Assert.True(Math.Abs(double.Parse(printed, CultureInfo.InvariantCulture) - mm) <= 0.0005000001
                    + Math.BitIncrement(Math.Abs(mm)) - Math.Abs(mm));
            },
            seed: "0000KVlRqD03");

    [Fact]
    public void ALongPathIsWrittenWholeAcrossBuffers()
    {
        const int count = 123_456;
        var path = new NeedlePath([.. Enumerable.Range(0, count).Select(i => Step(NeedleAction.Stitch, i * 0.25, -i * 0.5))]);
        string[] rows = Text(path).Split("\r\n");
        Assert.Equal(count + 2, rows.Length);
        for (int i = 0; i < count; i++)
        {
            Assert.Equal(
                string.Create(CultureInfo.InvariantCulture, $"{i + 1},{i * 0.25:0.000},{-i * 0.5:0.000;-0.000;0.000},stitch"), rows[i + 1]);
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e18)]
    public void ACoordinateThatIsNoLengthIsABug(double xMm) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Text(new NeedlePath([Step(NeedleAction.Stitch, xMm, 0)])));

    internal static string Text(NeedlePath path)
    {
        using var stream = new MemoryStream();
        NeedlePathCsv.Write(stream, path);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static NeedleStep Step(NeedleAction action, double xMm, double yMm) =>
        new(action, action == NeedleAction.Stitch ? StitchKind.Satin : StitchKind.None, new Point(xMm, yMm));
}
