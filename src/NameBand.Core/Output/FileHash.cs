using System.Buffers;
using System.Security.Cryptography;
using NameBand.Common;

namespace NameBand.Output;

/// <summary>The SHA-256 of a file in a folder of ours, as letters and figures.</summary>
internal static class FileHash
{
    private const int FilePartBytes = 1 << 18; // A quarter of a megabyte: a file is read in few pieces and never whole in memory.

    public static string Of(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <exception cref="IOException">The file cannot be read, or is no plain file.</exception>
    public static string Of(string folder, string name)
    {
        using var file = InnerFile.Open(folder, name);
        byte[] buffer = ArrayPool<byte>.Shared.Rent((int)Math.Min(file.Length + 1, FilePartBytes));
        try
        {
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            for (int read; (read = file.Read(buffer)) > 0;)
            {
                hash.AppendData(buffer, 0, read);
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset());
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }
}
