using System.Text;
using System.Text.Unicode;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Reads and checks the job.json of a folder, and finds all that is wrong with it in one go.</summary>
public static class JobReader
{
    public const string FileName = "job.json";

    private const string Example = "{ \"lists\": [\"names.csv\"], \"hem\": { \"length\": \"3.66 m\" } }";

    /// <param name="jobFolder">The job's folder, or the path of the job.json in it.</param>
    public static Result<BandJob> Read(string jobFolder)
    {
        string folder = Path.GetFullPath(FolderOf(jobFolder));
        var problems = new List<Problem>();
        return ReadBytes(folder, jobFolder, problems) is { } bytes ? Check(folder, bytes, problems) : Result.Fail<BandJob>(problems);
    }

    /// <summary>The folder of a job that is given by its folder or by the job.json in it.</summary>
    public static string FolderOf(string job) =>
        Path.GetFileName(job) == FileName && File.Exists(job) ? Path.GetDirectoryName(Path.GetFullPath(job))! : job;

    /// <summary>Reads a job.json that is not written yet, as it would be read from its folder.</summary>
    /// <param name="folder">Full path of the job's folder.</param>
    public static Result<BandJob> Check(string folder, byte[] bytes) => Check(folder, bytes, []);

    private static Result<BandJob> Check(string folder, byte[] bytes, List<Problem> problems)
    {
        if (AsUtf8(bytes, problems) is not { } text)
        {
            return Result.Fail<BandJob>(problems);
        }

        var json = JsonReading.Read(text, FileName);
        if (json.Value is not { } root)
        {
            return Result.Fail<BandJob>([.. problems, .. json.Problems]);
        }

        if (root.Kind != JsonKind.Group)
        {
            return Result.Fail<BandJob>(Problem.CannotUse(
                At(root.Line, root.Column, null), $"{FileName} must hold a group of keys in {{ }}, and this is {root.InWords}.",
                    $"Write for example {Example}."));
        }

        // A newer format may mean other things by the same keys: it is refused before anything else is said of it.
        var values = JobValues.From(root, problems);
        if (CheckFormat(values))
        {
            return Result.Fail<BandJob>(values.Problems.Where(p => p.Where.Key == JobKeys.Format.Path));
        }

        var workshop = WorkshopFile.Read(folder, problems);
        if (workshop is not null)
        {
            foreach (var way in JobAssembly.Ways(values))
            {
                values.Answer(workshop, way);
            }
        }

        var job = JobAssembly.Make(folder, values).In(workshop?.Workshop ?? Workshop.Assumed, values);
        // A key that two parts of a job look at is wrong once.
        var sorted = values.Problems.Distinct().OrderBy(p => p.Where.Line ?? 0).ThenBy(p => p.Where.Column ?? 0).ToList();
        return sorted.Any(p => p.Severity == Severity.CannotUse) ? Result.Fail<BandJob>(sorted) : Result.Of(job, sorted);
    }

    internal static Where At(int? line, int? column, string? path) => new(FileName, line, column, path);

    /// <returns>True when the file is of a format this program does not know.</returns>
    private static bool CheckFormat(JobValues values)
    {
        if (!values.Has(JobKeys.Format))
        {
            values.Problems.Add(Problem.Note(
                At(null, null, JobKeys.Format.Path), $"{FileName} does not say its format, so it is read as format 1.",
                "Add \"format\": 1 to it."));
            return false;
        }

        if (values.WholeNumber(JobKeys.Format) is { } format && format > 1)
        {
            values.Refuse(
                JobKeys.Format, $"{FileName} is of format {format:0}, and this NameBand reads format 1.",
                "It was made for a newer NameBand: use that one.");
            return true;
        }

        values.Number(JobKeys.Format);
        return false;
    }

    private static byte[]? ReadBytes(string folder, string asGiven, List<Problem> problems)
    {
        string path = Path.Combine(folder, FileName);
        string shown = PlainText.Short(asGiven, 200);
        if (File.Exists(folder))
        {
            problems.Add(Problem.CannotUse(
                new Where(shown), "This is a file, and a job is a folder.", $"Give the folder that holds {FileName}."));
        }
        else if (!Directory.Exists(folder))
        {
            problems.Add(Problem.CannotUse(
                new Where(shown), "There is no such folder.", $"Give the path of a folder that holds {FileName}."));
        }
        else if (Directory.Exists(path))
        {
            problems.Add(Problem.CannotUse(
                new Where(shown), $"{FileName} is a folder here, and it must be a file.",
                $"Rename that folder and write a file {FileName}."));
        }
        else if (InnerFile.Objection(folder, FileName) is { } objection)
        {
            problems.Add(objection);
        }
        else if (!File.Exists(path))
        {
            problems.Add(Problem.CannotUse(
                new Where(shown), $"There is no {FileName} in this folder.", $"Write one; the least is {Example}."));
        }
        else
        {
            try
            {
                bool isEmpty = InnerFile.IsEmpty(folder, FileName);
                if (!isEmpty && InnerFile.Length(folder, FileName) <= InnerFile.MostSettingsBytes)
                {
                    return InnerFile.Bytes(folder, FileName);
                }

                problems.Add(Problem.CannotUse(
                    At(null, null, null),
                    isEmpty ? "The file is empty." : "The file is over 1 MB, which no job needs.",
                    isEmpty ? $"Write at least {Example}." : "Check that it is the right file."));
            }
            catch (Exception error) when (error is UnauthorizedAccessException or IOException)
            {
                problems.Add(
                    Problem.CannotUse(
                    At(null, null, null), "The file cannot be opened.", "Check who may read it, and whether another program holds it."));
            }
        }

        return null;
    }

    private static byte[]? AsUtf8(byte[] bytes, List<Problem> problems)
    {
        Encoding? wide = bytes switch
        {
            [0xFF, 0xFE, ..] => Encoding.Unicode,
            [0xFE, 0xFF, ..] => Encoding.BigEndianUnicode,
            _ => null,
        };
        if (wide is not null)
        {
            problems.Add(Problem.Note(
                At(null, null, null), "The file is saved as UTF-16; JSON files are UTF-8. It was read all the same.", "Save it as UTF-8."));
            return Encoding.UTF8.GetBytes(wide.GetString(bytes.AsSpan(2)));
        }

        byte[] text = bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes[3..] : bytes;
        if (text.AsSpan().TrimStart(" \t\r\n\0"u8).IsEmpty)
        {
            problems.Add(Problem.CannotUse(At(null, null, null), "The file is empty.", $"Write at least {Example}."));
            return null;
        }

        if (Utf8.IsValid(text))
        {
            return text;
        }

        int good = 0;
        while (Rune.DecodeFromUtf8(text.AsSpan(good), out _, out int length) == System.Buffers.OperationStatus.Done)
        {
            good += length;
        }

        var (line, column) = new LineFinder(text).Of(good);
        problems.Add(
            Problem.CannotUse(
            At(line, column, null), "The file is not saved as UTF-8: there is a character here that cannot be read.",
            "Save the file again as UTF-8."));
        return null;
    }
}
