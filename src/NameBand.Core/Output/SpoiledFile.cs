using NameBand.Common;

namespace NameBand.Output;

/// <summary>
/// What a power cut leaves of a file that was not yet on the disk: nothing at all, or NULs. (Both were seen on XFS, btrfs
/// and ext4.) No person writes that.
/// </summary>
internal static class SpoiledFile
{
    /// <summary>Whether a file is empty or holds nothing but NULs; a text of ours with any NUL in it counts too.</summary>
    public static bool Is(string folder, string name)
    {
        bool isText = Path.GetExtension(name) is ".json" or ".csv" or ".txt" or ".svg" or ".nc" or ".iso";
        using var file = InnerFile.Open(folder, name);
        byte[] block = new byte[64 * 1024];
        for (int read; (read = file.Read(block)) > 0;)
        {
            var bytes = block.AsSpan(0, read);
            if (isText ? bytes.Contains((byte)0) : bytes.ContainsAnyExcept((byte)0))
            {
                return isText;
            }
        }

        return !isText || file.Length == 0;
    }
}
