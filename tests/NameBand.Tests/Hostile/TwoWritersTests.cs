using System.Globalization;
using System.Text.Json;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.Hostile;

/// <summary>Two writers at once, round after round: nothing that was said is lost, and whoever looks finds a whole file.</summary>
public class TwoWritersTests
{
    private const int Rounds = 200;

    [Fact]
    public void The_sewing_log_keeps_every_line_of_both()
    {
        using var folder = new TemporaryFolder();
        for (int round = 0; round < Rounds; round++)
        {
            Parallel.Invoke(() => Say((2 * round) + 1), () => Say((2 * round) + 2));
        }

        var log = SewingLogFile.Read(folder.FullPath);
        Assert.Empty(log.Problems);
        Assert.Equal(Enumerable.Range(1, 2 * Rounds), log.Entries.Select(e => e.Hooping).Order());

        void Say(int hooping)
        {
            using var held = PatientLock.Take(folder.FullPath, () => Thread.Sleep(1)).Value!;
            SewingLogFile.Append(folder.FullPath, held, new SewingEntry(hooping, SewingDeed.Sewn, hooping));
        }
    }

    [Fact]
    public void The_file_of_the_job_keeps_what_both_set()
    {
        using var folder = new TemporaryFolder();
        folder.With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "400 mm" } }""");
        for (int round = 1; round <= Rounds; round++)
        {
            int number = round;
            Parallel.Invoke(() => Set("strip", "shortening", number), () => Set("hem", "turn", number), Look);
            using var job = JsonDocument.Parse(File.ReadAllBytes(folder["job.json"]));
            Assert.Equal(number, job.RootElement.GetProperty("strip").GetProperty("shortening").GetInt32());
            Assert.Equal(number, job.RootElement.GetProperty("hem").GetProperty("turn").GetInt32());
        }

        Assert.Equal(["job.json"], Directory.EnumerateFiles(folder.FullPath).Select(Path.GetFileName));

        void Set(string group, string key, int number)
        {
            while (JobFileEdit.SetNumber(folder.FullPath, group, key, number.ToString(CultureInfo.InvariantCulture)) is not null)
            {
                Thread.Sleep(1);
            }
        }

        void Look() => JsonDocument.Parse(File.ReadAllBytes(folder["job.json"])).Dispose();
    }
}
