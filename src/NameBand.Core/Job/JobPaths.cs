using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Sees to it that the files a job names lie inside its folder and are there.</summary>
internal static class JobPaths
{
    public static ImmutableArray<string> CheckLists(string folder, JobValues values)
    {
        var lists = ImmutableArray.CreateBuilder<string>();
        if (!values.Has(JobKeys.Lists) && values.AreSound(JobKeys.Lists))
        {
            values.Refuse(JobKeys.Lists, "The job names no list.", "Add \"lists\": [\"names.csv\"] with the names of your CSV files.");
        }

        foreach (string given in values.Lists(JobKeys.Lists))
        {
            string file = ListFile.FileOf(given);
            if (Inside(folder, file, JobKeys.Lists, values) is not { } path)
            {
                continue;
            }

            string list = path + given[file.Length..];

            if (path.Split('/')[0].Equals("private", StringComparison.OrdinalIgnoreCase))
            {
                values.Refuse(
                    JobKeys.Lists, $"“{PlainText.Short(path)}” lies in the folder private, which nothing but invite may read.",
                    "Name the list itself.");
            }
            else if (lists.Contains(list))
            {
                values.Refuse(JobKeys.Lists, $"“{PlainText.Short(list)}” is named twice.", "Name each list once.");
            }
            else if (Exists(folder, path, JobKeys.Lists, values))
            {
                lists.Add(list);
            }
        }

        return lists.ToImmutable();
    }

    /// <summary>A face is a name, or a file when it ends like one; whether there is such a face is for the Lettering room to say.</summary>
    public static string CheckFace(string folder, JobValues values) => CheckFace(folder, values.Text(JobKeys.Face)!, JobKeys.Face, values);

    /// <param name="key">The key in which the face is named.</param>
    public static string CheckFace(string folder, string face, JobKey key, JobValues values)
    {
        bool isFile = face.EndsWith(".ttf", StringComparison.OrdinalIgnoreCase) || face.EndsWith(".otf", StringComparison.OrdinalIgnoreCase)
            || face.Contains('/') || face.Contains('\\');
        if (!isFile || Inside(folder, face, key, values) is not { } path)
        {
            return face;
        }

        return path;
    }

    /// <summary>The measured alphabet need not be there yet: it is made from a sheet.</summary>
    public static string CheckAlphabet(string folder, JobValues values)
    {
        string alphabet = values.Text(LettersKeys.Alphabet)!;
        return Inside(folder, alphabet, LettersKeys.Alphabet, values) ?? alphabet;
    }

    /// <returns>The path inside the folder with forward slashes, or null when it leads out of it.</returns>
    private static string? Inside(string folder, string given, JobKey key, JobValues values)
    {
        string path = given.Replace('\\', '/');
        bool isRooted = path.StartsWith('/') || path.StartsWith('~') || (path.Length > 1 && path[1] == ':')
            || path.Contains("://", StringComparison.Ordinal);
        string[] steps = path.Split('/', StringSplitOptions.RemoveEmptyEntries).Where(s => s != ".").ToArray();
        if (isRooted || steps.Contains("..") || steps.Length == 0)
        {
            values.Refuse(
                key, $"“{PlainText.Short(given)}” lies outside the job's folder.",
                "Copy the file into the folder and write its name alone.");
            return null;
        }

        string clean = string.Join('/', steps);
        if (InnerFile.Objection(folder, clean) is { } objection)
        {
            values.Refuse(key, objection.Found, objection.Mend);
            return null;
        }

        return clean;
    }

    private static bool Exists(string folder, string path, JobKey key, JobValues values)
    {
        string full = Path.Combine(folder, path);
        if (File.Exists(full))
        {
            return true;
        }

        if (Directory.Exists(full))
        {
            values.Refuse(key, $"“{PlainText.Short(path)}” is a folder.", "Name the file inside it.");
            return false;
        }

        string below = path[..^Path.GetFileName(path).Length];
        string? near = NearestWord.Find(Path.GetFileName(path), Neighbours(full).Order(StringComparer.Ordinal)) is { } name
            ? below + name : null;
        values.Refuse(
            key, $"There is no file “{PlainText.Short(path)}” in the job's folder.",
            near is null ? "Put it there, or write the name of the file that is there."
            : (Said)$"There is “{PlainText.Short(near)}”: is that the one?");
        return false;
    }

    private static IEnumerable<string> Neighbours(string full)
    {
        try
        {
            string? folder = Path.GetDirectoryName(full);
            return Directory.Exists(folder)
                ? [.. InnerFile.In(folder).Where(f => f.Kind == EntryKind.File).Take(1000).Select(f => f.Name)] : [];
        }
        catch (Exception error) when (error is UnauthorizedAccessException or IOException)
        {
            return [];
        }
    }
}
