using System.Globalization;
using NameBand.Common;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.WholeLine;

/// <summary>The sample that the README makes, made once and then looked at from all sides.</summary>
public sealed class SampleTests(SampleTests.Made made) : IClassFixture<SampleTests.Made>
{
    public sealed class Made : IDisposable
    {
        public Made() => Report = Bander.Make(Folder.FullPath);

        internal TemporaryFolder Folder { get; } = MadeFolder.CopySample();

        public MakeReport Report { get; }

        public void Dispose() => Folder.Dispose();
    }

    [Fact]
    public void All_sixty_names_are_placed_and_both_strips_meet_their_hems()
    {
        Assert.Equal(ExitStatus.AllPlaced, made.Report.Status);
        Assert.Equal(60, made.Report.Plan!.NameCount);
        Assert.Equal(2, made.Report.Plan.Rounds.Length);
        Assert.True(made.Report.Plan.MatchesHem);
        Assert.DoesNotContain(made.Report.Problems, p => p.Severity != Severity.Note);
    }

    [Fact]
    public void Every_row_of_the_list_is_accounted_for()
    {
        var rows = made.Report.Names!.Rows;
        Assert.Equal(File.ReadAllLines(made.Folder["names.csv"]).Length - 1, rows.Length);
        Assert.Equal(60, rows.Count(r => r.Outcome == RowOutcome.Placed));
        Assert.Equal(2, rows.Count(r => r.Outcome == RowOutcome.Merged));
        Assert.Equal(5, rows.Count(r => r.Outcome == RowOutcome.LeftOut));
        Assert.All(rows.Where(r => r.Outcome != RowOutcome.Placed), r => Assert.NotEmpty(r.Reason.English));
    }

    [Fact]
    public void The_files_hold_what_they_promise() =>
        new MadeFolder(made.Report.OutFolder!).Check(longestOnClothMm: 150, shortening: 0.01, zoneMm: 14.05);

    /// <summary>Some sixty names at a domestic pace take hours, on the order of four at the machine: common practice, no source.</summary>
    [Fact]
    public void Sixty_names_take_between_two_and_eight_hours_at_the_machine() =>
        Assert.InRange(made.Report.Estimate!.MachineMinutes.Likely, 120, 480);

    [Fact]
    public void No_private_column_leaves_the_list()
    {
        string[] secrets = ["lantern.example", "walker", "blue envelope", "paid in two", "the younger"];
        foreach (var (name, bytes) in MadeFolder.Bytes(made.Report.OutFolder!))
        {
            string text = System.Text.Encoding.UTF8.GetString(bytes);
            Assert.All(secrets, s => Assert.False(text.Contains(s, StringComparison.OrdinalIgnoreCase), $"{name} holds “{s}”"));
        }
    }

    [Fact]
    public void The_same_job_gives_the_same_bytes_on_any_culture_and_in_any_folder()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            // Turkish, with its own i, is among the surroundings of SamenessTests.
            foreach (string culture in new[] { "de-DE", "ar-SA" })
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                using var folder = MadeFolder.CopySample();
                var again = Bander.Make(folder.FullPath, folder["elsewhere/strips"]);
                var (one, other) = (MadeFolder.Bytes(made.Report.OutFolder!), MadeFolder.Bytes(again.OutFolder!));
                Assert.Equal(one.Keys, other.Keys);
                Assert.All(
                    one, file => Assert.True(file.Value.AsSpan().SequenceEqual(other[file.Key]), $"{file.Key} differs in {culture}"));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
