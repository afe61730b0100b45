using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.WebRoom;

public class FolderWatchTests
{
    /// <summary>An exception on a timer's thread would end the program; what could not be read is looked at again.</summary>
    [Fact]
    public async Task A_file_that_cannot_be_read_just_now_is_looked_at_again()
    {
        using var folder = new TemporaryFolder();
        int looks = 0;
        var read = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        using var watch = new FolderWatch(folder.FullPath, () =>
        {
            if (++looks < 3)
            {
                throw new IOException("It is used by another program.");
            }

            read.TrySetResult();
        });
        watch.Begin();
        File.WriteAllText(folder["job.json"], "{}");
        await read.Task.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.Equal(3, looks);
    }
}
