using Microsoft.AspNetCore.Components.Forms;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>Takes lists into the job's folder, never over a file that is there and never outside it.</summary>
internal static class Uploads
{
    public const int MostFiles = 20; // A count: lists of one job; whoever drops more has dropped a whole folder.

    // A hundred thousand rows of a hundred bytes: as the message says, no list of names is bigger.
    private const long MostBytes = 10_000_000;
    private const int LongestNameCharacters = 80; // Characters of a file's name, as it is shown and kept: some systems take few more in a whole path.
    private static readonly string[] Endings = [".csv", ".tsv", ".txt", ".xlsx"];
    private static readonly string[] Others = [".ods", ".fods", ".xls", ".xlsm", ".xlsb", ".numbers"];
    private static readonly string[] Pictures = [".png", ".jpg", ".jpeg", ".gif", ".webp", ".heic", ".tif", ".tiff", ".bmp", ".svg"];

    /// <summary>Source: Microsoft, "Naming Files, Paths, and Namespaces": reserved with any ending.</summary>
    private static readonly string[] Devices =
        ["con", "prn", "aux", "nul",
            .. Enumerable.Range(0, 10)
            .SelectMany(n => new[] { FormattableString.Invariant($"com{n}"), FormattableString.Invariant($"lpt{n}") })];

    /// <returns>The file's name in the folder, or what is wrong with it.</returns>
    public static async Task<(string? Name, Said Wrong)> TakeInAsync(string folder, IBrowserFile file)
    {
        string shown = PlainText.Short(file.Name, LongestNameCharacters);
        if (!Endings.Contains(Path.GetExtension(file.Name), StringComparer.OrdinalIgnoreCase))
        {
            return (null, NotAList(shown));
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
            return Keep(folder, SafeName(file.Name), content.ToArray());
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, $"“{shown}” could not be written into the job's folder: {e.Message}");
        }
    }

    /// <summary>What to do about a file that is no list, such as one of another spreadsheet, or a picture dropped by mistake.</summary>
    private static Said NotAList(string shown) =>
        Others.Contains(Path.GetExtension(shown), StringComparer.OrdinalIgnoreCase)
            ? (Said)$"“{shown}” is a spreadsheet of another kind. Open it, choose “save as”, and save it as .xlsx or .csv."
        : Pictures.Contains(Path.GetExtension(shown), StringComparer.OrdinalIgnoreCase)
            ? (Said)$"“{shown}” is a picture; lists of names are taken in here, as .xlsx or .csv. Nothing was changed."
        : $"“{shown}” is neither a CSV file nor a workbook (.xlsx). In your spreadsheet choose “save as”, and one of these.";

    /// <summary>The last part of the name alone, of letters, digits and blanks, so that it can only lie in the folder.</summary>
    internal static string SafeName(string given)
    {
        string last = given.Split('/', '\\')[^1];
        string stem = string.Concat(Path.GetFileNameWithoutExtension(last).Where(c => char.IsLetterOrDigit(c) || c is ' ' or '-' or '_'))
            .Trim();
        stem = stem.Length == 0 ? "list" : stem[..Math.Min(stem.Length, LongestNameCharacters)].TrimEnd();
        // What the job itself writes keeps its name, and some systems take these few names for machines.
        bool isTaken = OwnFiles.Has(stem + ".csv") || Devices.Contains(stem, StringComparer.OrdinalIgnoreCase);
        return (isTaken ? "list " + stem : stem) + Path.GetExtension(last).ToLowerInvariant();
    }

    /// <summary>In any case: on another computer Names.csv may be the same file as names.csv.</summary>
    private static bool IsTaken(string folder, string name) =>
        Directory.EnumerateFileSystemEntries(folder).Any(e => Path.GetFileName(e).Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The same file again is the same file; another one of the same name gets a number.</summary>
    internal static (string? Name, Said Wrong) Keep(string folder, string name, byte[] content)
    {
        var kept = KeptFile.Of(content);
        for (int i = 1; ; i++)
        {
            string tried = i == 1
                ? name : FormattableString.Invariant($"{Path.GetFileNameWithoutExtension(name)} {i}{Path.GetExtension(name)}");
            string path = Path.Combine(folder, tried);
            if (!IsTaken(folder, tried))
            {
                var saved = JobStore.Save(folder, tried, kept, KeptFile.None);
                return saved.Value is null ? (null, (Said)$"{saved.Problems[0].Found} {saved.Problems[0].Mend}") : (tried, "");
            }

            if (File.Exists(path) && JobStore.Read(folder, tried).Fingerprint == kept.Fingerprint)
            {
                return (tried, "");
            }
        }
    }
}
