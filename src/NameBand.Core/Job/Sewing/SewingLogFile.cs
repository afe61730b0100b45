using System.Collections.Immutable;
using System.Text;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>
/// The sewing log: <c>sewing-log.csv</c> in the job's folder, one line for each thing said, only ever added to. Every
/// line carries its own check, so that one bad line spoils no other.
/// </summary>
public static class SewingLogFile
{
    public const string FileName = "sewing-log.csv";

    private static readonly Said Until = "Until it can be read, NameBand does not know what is sewn and makes no new plan.";
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Reads all good lines; every other one is named in a problem and stays in the file.</summary>
    public static SewingLog Read(string jobFolder)
    {
        if (!InnerFile.IsThere(jobFolder, FileName))
        {
            return SewingLog.Empty;
        }

        try
        {
            if (InnerFile.Length(jobFolder, FileName) > InnerFile.MostLogBytes)
            {
                return Unreadable("The file is over 20 MB, which no sewing log is.");
            }

            return Parse(InnerFile.Bytes(jobFolder, FileName));
        }
        catch (RefusedEntryException e)
        {
            return new SewingLog([], [e.Problem with { Mend = $"{e.Problem.Mend} {Until}" }]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Unreadable($"It cannot be opened: {e.Message}");
        }

        static SewingLog Unreadable(Said why) => new(
            [], [Problem.CannotUse(new Where(FileName), why, Until)]);
    }

    internal static SewingLog Parse(byte[] bytes)
    {
        var entries = ImmutableArray.CreateBuilder<SewingEntry>();
        var problems = ImmutableArray.CreateBuilder<Problem>();
        string text = Utf8.GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(3) : bytes);
        string[] lines = text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            string line = lines[i].TrimEnd('\r');
            bool isHeader = line.StartsWith("hooping", StringComparison.OrdinalIgnoreCase)
                || line.StartsWith("\"hooping", StringComparison.OrdinalIgnoreCase);
            if (isHeader || line.AsSpan().Trim(", ;\t").IsEmpty)
            {
                continue;
            }

            var where = new Where(FileName, i + 1);
            var (entry, why) = SewingLogLine.Read(line, out bool agrees);
            bool isCutOff = i == lines.Length - 1;
            if (entry is null)
            {
                Said end = isCutOff ? " The line was probably cut off while it was written." : "";
                problems.Add(Problem.NeedsPerson(
                    where, $"This line is ignored, because {why}: “{PlainText.Short(line, 80)}”.{end}",
                    "Say it again with the command sewn, or mend the line; all other lines count."));
                continue;
            }

            entries.Add(entry);
            if (!agrees)
            {
                problems.Add(Problem.Note(
                    where, $"This line was written or changed by hand; it is taken as it now stands: {Spoken(entry)} {SewingLogLine.Word(entry.Deed)}{(entry.Minutes is { } m ? $", {m:0.#} minutes" : (Said)"")}."));
            }
        }

        return SewingLog.Of(entries, problems.ToImmutable());
    }

    private static Said Spoken(SewingEntry entry) => entry.Of switch
    {
        SewingSubject.Name => (Said)$"name {entry.Hooping}",
        SewingSubject.Round => (entry.Hooping == 0 ? "all rounds, " : (Said)$"round {entry.Hooping}, ") + Said.Plain(entry.Path),
        _ => $"hooping {entry.Hooping}",
    };

    /// <summary>
    /// Adds lines and has the disk confirm them before it returns. The caller holds the job's lock. When the disk
    /// refuses, the file is put back as it was.
    /// </summary>
    /// <exception cref="IOException">Nothing was added.</exception>
    /// <exception cref="UnauthorizedAccessException">Nothing was added.</exception>
    public static void Append(string jobFolder, JobLock held, params IEnumerable<SewingEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(held);
        bool isNew = !InnerFile.IsThere(jobFolder, FileName);
        using var file = InnerFile.OpenToAdd(jobFolder, FileName);
        long before = file.Length;
        var text = new StringBuilder();
        if (before == 0)
        {
            text.Append(SewingLogLine.Header).Append("\r\n");
        }
        else
        {
            file.Position = before - 1;
            text.Append(file.ReadByte() == '\n' ? "" : "\r\n");
        }

        foreach (var entry in entries)
        {
            text.Append(SewingLogLine.Write(entry)).Append("\r\n");
        }

        try
        {
            file.Position = before;
            file.Write(Utf8.GetBytes(text.ToString()));
            file.Flush(flushToDisk: true);
        }
        catch (IOException)
        {
            file.SetLength(before);
            throw;
        }

        if (isNew)
        {
            Disk.TryFlushFolder(jobFolder);
        }
    }
}
