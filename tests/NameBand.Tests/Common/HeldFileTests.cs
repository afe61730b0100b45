using NameBand.Common;
using Xunit;

namespace NameBand.Tests.CommonRoom;

public class HeldFileTests
{
    /// <summary>A spreadsheet that saves, or a guard against viruses that looks, has a file to itself for a moment only.</summary>
    [Fact]
    public void A_file_that_another_program_holds_for_a_moment_is_read_all_the_same()
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", "name\nAnna\n");
        using var held = new FileStream(folder["names.csv"], FileMode.Open, FileAccess.Read, FileShare.None);
        var other = new OtherProgram(held);
        using (Disk.Under(other))
        {
            Assert.Equal("name\nAnna\n"u8.ToArray(), InnerFile.Read(folder.FullPath, "names.csv").Value);
        }

        Assert.Equal(2, other.Pauses);
    }

    /// <summary>Lets go of its file when it was waited for twice.</summary>
    private sealed class OtherProgram(FileStream held) : IDiskWitness
    {
        public int Pauses { get; private set; }

        public void Before(DiskDeed deed)
        {
        }

        public void After(DiskDeed deed)
        {
        }

        public void Wait(TimeSpan pause)
        {
            if (++Pauses == 2)
            {
                held.Dispose();
            }
        }
    }
}
