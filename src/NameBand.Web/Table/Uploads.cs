using Microsoft.AspNetCore.Components.Forms;
using NameBand.Common;

namespace NameBand.Web.Table;

/// <summary>Takes lists into the job's folder, never over a file that is there and never outside it.</summary>
internal static class Uploads
{
    public const int MostFiles = 20;

    private const long MostBytes = 10_000_000;
    private const int LongestName = 80;
    private static readonly string[] Endings = [".csv", ".tsv", ".txt"];

    /// <returns>The file's name in the folder, or what is wrong with it.</returns>
    public static async Task<(string? Name, string Wrong)> TakeInAsync(string folder, IBrowserFile file)
    {
        string shown = PlainText.Short(file.Name, LongestName);
        if (!Endings.Contains(Path.GetExtension(file.Name), StringComparer.OrdinalIgnoreCase))
        {
            return (null, $"“{shown}” is not a CSV file. In your spreadsheet choose “save as”, and then CSV.");
        }

        if (file.Size > MostBytes)
        {
            return (null, $"“{shown}” is bigger than 10 MB, which no list of names is.");
        }

        using var content = new MemoryStream();
        await using (var stream = file.OpenReadStream(MostBytes))
        {
            await stream.CopyToAsync(content).ConfigureAwait(false);
        }

        try
        {
            return (await KeepAsync(folder, SafeName(file.Name), content.ToArray()).ConfigureAwait(false), "");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, $"“{shown}” could not be written into the job's folder: {e.Message}");
        }
    }

    /// <summary>The last part of the name alone, of letters, digits and blanks, so that it can only lie in the folder.</summary>
    internal static string SafeName(string given)
    {
        string last = given.Split('/', '\\')[^1];
        string stem = string.Concat(Path.GetFileNameWithoutExtension(last).Where(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '_')).Trim();
        stem = stem.Length == 0 ? "list" : stem[..Math.Min(stem.Length, LongestName)];
        // What the job itself writes keeps its name.
        return (stem is "corrections" or "sewing-log" ? "list " + stem : stem) + Path.GetExtension(last).ToLowerInvariant();
    }

    /// <summary>The same file again is the same file; another one of the same name gets a number.</summary>
    private static async Task<string> KeepAsync(string folder, string name, byte[] content)
    {
        for (int i = 1; ; i++)
        {
            string tried = i == 1 ? name : FormattableString.Invariant($"{Path.GetFileNameWithoutExtension(name)} {i}{Path.GetExtension(name)}");
            string path = Path.Combine(folder, tried);
            if (!Path.Exists(path))
            {
                await using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
                await stream.WriteAsync(content).ConfigureAwait(false);
                return tried;
            }

            if (File.Exists(path) && (await File.ReadAllBytesAsync(path).ConfigureAwait(false)).AsSpan().SequenceEqual(content))
            {
                return tried;
            }
        }
    }
}
