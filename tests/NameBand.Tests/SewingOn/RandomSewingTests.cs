using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>
/// Jobs that chance makes, sewn as chance has it: latecomers, pieces measured, hoopings spoiled, names that drifted. After every
/// plan a reader that knows nothing but the files looks at the cloth.
/// </summary>
public class RandomSewingTests
{
    private static readonly string[] First = ["Bo", "Ilse", "Jo", "Tobiah", "Nia", "Wenna", "Rafe", "Al", "Piran", "Ida"];
    private static readonly string[] Last = ["Li", "Varga", "Ax", "Quill", "Yeo", "Po", "Holm", "Lo", "Kay", "Mo"];

    private const int Sequences = 20;

    public static TheoryData<int> Seeds =>
        [.. Enumerable.Range(
            1, int.TryParse(Environment.GetEnvironmentVariable("NAMEBAND_SEQUENCES"), CultureInfo.InvariantCulture, out int more)
            ? more : Sequences)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Whatever_is_sewn_and_comes_late_no_stitch_lies_over_a_sewn_one(int seed)
    {
        var walk = new Walk(seed);
        using (walk.Job)
        {
            for (int step = 0; step < 5; step++)
            {
                walk.Make();
                walk.Go();
            }

            walk.Make();
        }
    }

    /// <summary>One job and what happened to it, told in a line where it goes wrong.</summary>
    private sealed class Walk
    {
        private readonly Random _chance;
        private readonly List<string> _told = [];
        private readonly HashSet<int> _sewn = [];
        private readonly Dictionary<int, string> _drift = [];
        private readonly double _alongMm;
        private readonly double _spareMm;
        private readonly bool _isDrifting;
        private int _names;

        public Walk(int seed)
        {
            _chance = new Random(seed);
            _alongMm = 80 + (10 * _chance.Next(5));
            _spareMm = _chance.Next(3) * 2.5;
            _isDrifting = seed % 3 == 0;
            int lanes = seed % 4 == 3 ? 1 : 2;
            int rounds = 1 + _chance.Next(2);
            double shortening = _chance.Next(4) * 0.01;
            Job = new SewnJob([.. Enumerable.Range(0, 6 + _chance.Next(4)).Select(_ => NextName())]);
            int lengthMm = (Job.Names.Count * 44 / rounds) + _chance.Next(60);
            string hem = FormattableString.Invariant($"\"hem\": {{ \"length\": \"{lengthMm} mm\", \"turn\": 0 }}");
            Told(hem, $"lanes {lanes}, rounds {rounds}, shortening {shortening}, field {_alongMm} less {_spareMm}");
            File.WriteAllText(Job["job.json"], FormattableString.Invariant($$"""
                { "format": 1, "lists": ["names.csv"], {{hem}}, "strip": { "rounds": {{rounds}}, "lanes": {{lanes}}, "shortening": {{shortening}} },
                  "hoop": { "along": "{{_alongMm}} mm", "across": "100 mm", "spare": "{{_spareMm}} mm" }, "lettering": { "height": "6 mm" } }
                """));
        }

        public SewnJob Job { get; }

        private void Told(params object[] words) => _told.Add(string.Join(' ', words));

        private string NextName() =>
            $"{First[_names % 10]} {Last[(_names++ * 7 / 3) % 10]}{(_names > 10 ? (char)('A' + (_names % 26)) : "")}";

        public void Make()
        {
            var report = Job.Make();
            string story = string.Join("; ", _told);
            Assert.True(report.Status != ExitStatus.CannotUse, story + ": " + string.Join(' ', report.Problems.Select(p => p.Found)));
            var read = new ClothReading(Job["out"]);
            string faults = string.Join('\n', read.Faults(Job.Folder, _sewn, (_alongMm, 100, _spareMm), 17.4));
            Assert.True(faults.Length == 0, story + "\n" + faults + "\n" + string.Join('\n', report.Problems.Select(p => p.Found)));
            Assert.Equal(Job.Names.Count, read.Rows.Count);
            Assert.Equal(
                read.Rows.Where(r => r.Outcome == "placed").Select(r => r.Text).Order(StringComparer.Ordinal),
                read.Placed.Order(StringComparer.Ordinal));
            Assert.All(read.Rows.Where(r => r.Outcome != "placed"), r => Assert.True(r.Outcome == "held" && r.Reason.Length > 10, story));
            Assert.True(
                read.Placed.Count == Job.Names.Count || report.Status == ExitStatus.NeedsPerson,
                story + ": names are held and nobody is told");
            foreach (int sewn in _sewn)
            {
                Assert.True(Job.Path(sewn).AsSpan().SequenceEqual(Job.Path(sewn, "sewn")), $"{story}: hooping {sewn} is sewn and changed");
            }
        }

        public void Go()
        {
            var read = new ClothReading(Job["out"]);
            int[] left = [.. read.Hoopings.Where(h => !_sewn.Contains(h))];
            if (left.Length > 0)
            {
                int hooping = left[_chance.Next(left.Length)];
                Say(hooping, SewingDeed.Sewn, null);
                _sewn.Add(hooping);
            }

            switch (_chance.Next(6))
            {
                case 0 or 1 or 2:
                    for (int late = _chance.Next(1, 4); late > 0; late--)
                    {
                        Job.Names.Add(NextName());
                        Told("late:", Job.Names[^1]);
                    }

                    break;
                case 3 when _sewn.Count > 0:
                    int measured = _sewn.ElementAt(_chance.Next(_sewn.Count));
                    Say(measured, SewingDeed.Measured, Math.Round(read.LengthMm(measured) * (1 - (0.05 * _chance.NextDouble())), 1));
                    break;
                case 4 when _sewn.Count > 1 && _drift.Count == 0:
                    int spoiled = _sewn.ElementAt(_chance.Next(_sewn.Count));
                    Say(spoiled, SewingDeed.Again, null);
                    _sewn.Remove(spoiled);
                    break;
                case 5 when _isDrifting && _drift.Count == 0:
                    var (order, text, end, _) = read.Ends.Where(e => _sewn.Contains(e.Hooping)).MaxBy(e => e.EndMm);
                    _drift[order] = FormattableString.Invariant($"{order},{text},{end + _chance.Next(-4, 5):0.0}");
                    Told("drift:", _drift[order]);
                    File.WriteAllText(Job["drift.csv"], "number,name,end_mm\n" + string.Join('\n', _drift.Values) + "\n");
                    break;
                default:
                    break;
            }
        }

        private void Say(int hooping, SewingDeed deed, double? measuredMm)
        {
            Told(deed, hooping, measuredMm ?? 0);
            var said = Job.Say(hooping, deed, measuredMm: measuredMm, strip: measuredMm is null ? null : 1);
            Assert.True(
                said.Status != ExitStatus.CannotUse,
                string.Join("; ", _told) + ": " + string.Join(' ', said.Problems.Select(p => p.Found)));
        }
    }
}
