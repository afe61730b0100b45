using System.Globalization;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.House;
using NameBand.Tests.StitchQuality;
using Xunit;
using Xunit.Abstractions;

namespace NameBand.Tests.StitchingRoom;

/// <summary>
/// Names in other scripts, shaped as they are written, held to the floors of Latin letters at 8 and 12 mm. Where a floor is not reached the
/// figure reached is held. Noto Nastaliq Urdu Bold (Debian fonts-noto-core 20201225-1, SIL Open Font License 1.1; its licence lies
/// beside it) is here for these tests only.
/// </summary>
public class ScriptQualityTests(ITestOutputHelper output)
{
    private const string Nastaliq = "NotoNastaliqUrdu-Bold.ttf";

    private static readonly FaceShelf Shelves = new();

    private static readonly Lazy<Face> NastaliqFace =
        new(() => Shelves.Open(Nastaliq, Path.Combine(Repository.Root, "tests", "NameBand.Tests", "Stitching", "Data")).Value!);

    /// <param name="mostNicks">In the mean piece and the worst one; in Arabic script a piece is a whole word.</param>
    [Theory]
    [InlineData(Nastaliq, "فاطمہ یوسف زینب", 1.7, 3, 16)]
    [InlineData("noto-sans-arabic-bold", "فاطمة يوسف", 2.5, 5, 13)]
    [InlineData("noto-sans-thai-bold", "สมชาย มาลี", 0.75, 4, 13)]
    [InlineData("noto-sans-devanagari-bold", "आशा कृष्णा", 0.75, 4, 13)]
    [InlineData("noto-sans-tamil-bold", "கவிதா மீனா", 0.75, 4, 13)]
    [InlineData("droid-sans-fallback", "王小明 李梅芳", 0.75, 4, 13)]
    [InlineData("droid-sans-fallback", "김민수 박지영", 0.75, 4, 13)]
    public void Names_in_other_scripts_are_sewn_as_well_as_Latin_ones(
        string face, string names, double mostNicks, int worstNicks, double mostDegrees)
    {
        foreach (double height in new[] { 8.0, 12 })
        {
            Hold(face, names.Split(' '), height, (mostNicks, worstNicks, mostDegrees));
        }
    }

    private void Hold(string face, string[] texts, double height, (double Nicks, int Worst, double Degrees) most)
    {
        Name[] names = [.. texts.Select((t, i) => new Name(t, new RowRef("names.csv", i + 2)))];
        var chosen = face == Nastaliq ? NastaliqFace.Value : Shelf.Face(face);
        IReadOnlyList<LetteredName> lettered = Letterer.Letter(new NameList([], [.. names]), chosen, Shelves).Value!.Names;
        Assert.Equal(names.Length, lettered.Count);
        var stitcher = new Stitcher(LetterTrial.Cotton, height);
        var pieces = lettered.SelectMany(n => n.Pieces).Select(p => p.Piece).Where(p => p.Face == chosen.Name).Distinct().ToList();
        var trials = pieces.Select(p => LetterTrial.Of(stitcher, p, height)).OfType<LetterTrial>().ToList();
        var all = trials.Select(t => t.Measure).ToList();
        var flows = trials.Select(t => FlowMeasure.Of(t.Outline, t.Path, LetterTrial.Cotton.Thread.DiameterMm)).ToList();
        var whole = lettered.Select(n => NameMeasure.Of(stitcher, n, height)).ToList();
        double Middle(Func<StitchMeasure, double> of) => all.Select(of).Order().ElementAt(all.Count / 2);
        var faults = new List<string>();
        void AtMost(string what, double found, double allowed)
        {
            string line = string.Create(CultureInfo.InvariantCulture, $"{what} {found:0.###}, allowed {allowed:0.###}");
            output.WriteLine($"{face} {height} mm: {line}");
            if (found > allowed)
            {
                faults.Add(line);
            }
        }

        AtMost("letters that could not be read", stitcher.Problems.Length, 0);
        AtMost("letters run", all.Count(m => m.IsRun), 0);
        AtMost("bare part, worst", 1 - all.Min(m => m.Coverage), 0.03);
        AtMost("bare part with thread of 0.28 mm, worst", 1 - all.Min(m => m.ThinCoverage), 0.14);
        AtMost("spill, worst", all.Max(m => m.Spill), 0.02);
        AtMost("largest hole in mm", all.Max(m => m.HoleMm), 0.45);
        AtMost("holes near another, median letter", Middle(m => m.Crowded), 0.12);
        AtMost("holes per mm² in the densest disc", all.Max(m => m.Load), 15.3);
        AtMost("angle to the normal, median letter", Middle(m => m.Square95), most.Degrees);
        AtMost("crossings that cross, in 1000", 1000.0 * all.Sum(m => m.CrossedOver) / Math.Max(1, all.Sum(m => m.Crossings)), 0.2);
        AtMost("travel in sight, worst", all.Max(m => m.TravelInSight), 0.015);
        AtMost("jumps inside one piece", all.Max(m => m.ExtraJumps), 0);
        AtMost("less than 0.3 mm, the shortest stitch", 0.2999 - all.Min(m => m.ShortestMm), 0);
        AtMost("longest stitch in mm", all.Max(m => m.LongestMm), 7.0001);
        AtMost("nicks in the mean letter", flows.Average(f => f.Nicks), most.Nicks);
        AtMost("nicks in the worst letter", flows.Max(f => f.Nicks), most.Worst);
        AtMost("laps in 1000", 1000.0 * flows.Sum(f => f.Lapping) / flows.Sum(f => f.Stitches), 3);
        AtMost("seams in mm", flows.Average(f => f.SeamMm), 12);
        AtMost("loose threads in a name", whole.Max(w => w.LooseThreads), 0);
        AtMost("longest join in mm", whole.Max(w => w.LongestJoinMm), 2.2);
        Assert.True(faults.Count == 0, $"{face} at {height} mm:\n{string.Join("\n", faults)}");
    }
}
