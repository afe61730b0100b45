using NameBand.Common;
using Xunit;

namespace NameBand.Tests.CommonRoom;

public class HeldFileTests
{
    /// <summary>A spreadsheet that saves, or a guard against viruses that looks, has a file to itself for a moment only.</summary>
    [Fact]
    public async Task A_file_that_another_program_holds_for_a_moment_is_read_all_the_same()
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", "name\nAnna\n");
        var held = new FileStream(folder["names.csv"], FileMode.Open, FileAccess.Read, FileShare.None);
        var letGo = Task.Run(async () =>
        {
            await Task.Delay(60);
            await held.DisposeAsync();
        });

        Assert.Equal("name\nAnna\n"u8.ToArray(), InnerFile.Read(folder.FullPath, "names.csv").Value);
        await letGo;
    }
}
