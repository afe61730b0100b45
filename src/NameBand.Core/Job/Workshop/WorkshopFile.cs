using System.Collections.Immutable;
using System.Globalization;
using System.Text.Unicode;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>A workshop as it was read, and of each of its machines the group of its letters.</summary>
internal sealed record WorkshopFound(Workshop Workshop, ImmutableArray<JsonPiece?> Letters);

/// <summary>Finds the workshop.json of a job: in its folder, or the one in the folder above, which several jobs then share.</summary>
internal static class WorkshopFile
{
    public const string Name = "workshop.json";
    public const string Above = "../" + Name;

    /// <summary>Null where there is none, or none that can be used, which then is among the problems.</summary>
    public static WorkshopFound? Read(string jobFolder, List<Problem> problems)
    {
        if (InnerFile.IsThere(jobFolder, Name))
        {
            return ReadIn(jobFolder, Name, problems);
        }

        if (Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(jobFolder)) is not { Length: > 0 } above
            || !InnerFile.IsThere(above, Name))
        {
            return null;
        }

        if (InnerFile.IsPlain(above, Name))
        {
            return ReadIn(above, Above, problems);
        }

        problems.Add(Problem.Note(
            new Where(Above), $"The {Name} in the folder above is not a plain file, so it is skipped.",
                "Put a copy of the file itself there, or into the job's folder."));
        return null;
    }

    private static WorkshopFound? ReadIn(string folder, string shown, List<Problem> problems)
    {
        try
        {
            if (InnerFile.Objection(folder, Name) is { } objection)
            {
                problems.Add(objection);
                return null;
            }

            if (InnerFile.Length(folder, Name) > InnerFile.MostSettingsBytes)
            {
                return Refuse("The file is over 1 MB, which no workshop needs.", "Check that it is the right file.");
            }

            byte[] bytes = InnerFile.Bytes(folder, Name);
            byte[] text = bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes[3..] : bytes;
            if (text.AsSpan().TrimStart(" \t\r\n\0"u8).IsEmpty)
            {
                return Refuse("The file is empty.", "Write your machines into it, or remove it.");
            }

            if (!Utf8.IsValid(text))
            {
                return Refuse("The file is not saved as UTF-8.", "Save the file again as UTF-8.");
            }

            var json = JsonReading.Read(text, shown);
            problems.AddRange(json.Problems);
            return json.Value is { } root ? WorkshopReader.Read(shown, root, problems) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refuse("The file cannot be opened.", "Check who may read it, and whether another program holds it.");
        }

        WorkshopFound? Refuse(Said found, Said mend)
        {
            problems.Add(Problem.CannotUse(new Where(shown), found, mend));
            return null;
        }
    }

    /// <summary>
    /// The keys of job.json that a workshop answers for a job that goes one way, each with its value as it would stand there.
    /// </summary>
    public static IEnumerable<(string Path, JsonMember Key, JsonPiece Value)> Answers(WorkshopFound found, Way way)
    {
        var workshop = found.Workshop;
        if (workshop.MachineFor(way) is not { } machine)
        {
            yield break;
        }

        if (machine.StitchesPerMinute is { } pace)
        {
            yield return Of(JobKeys.StitchesPerMinute.Path, JsonKind.Number, pace.ToString("0.######", CultureInfo.InvariantCulture));
        }

        if (machine.IsWatched is { } watched)
        {
            yield return Of(WorkKeys.Watched.Path, JsonKind.Flag, watched ? "true" : "false");
        }

        if (machine.CutsThread is false)
        {
            yield return Of(
                JobKeys.SecondsPerTrim.Path, JsonKind.Number, StartingValues.SecondsPerHandCut.ToString(CultureInfo.InvariantCulture));
        }

        if (workshop.AtTheMachine?.UsualEveningMinutes is { } evening)
        {
            yield return Of(WorkKeys.Evening.Path, JsonKind.Text, evening.ToString("0", CultureInfo.InvariantCulture) + " min");
        }

        string[] alike = [.. workshop.Machines.Where(m => m.Takes.Order().SequenceEqual(machine.Takes.Order())).Select(m => m.Name)];
        if (alike.Length > 1 && way == Way.NeedlePath)
        {
            var names = alike.Select(n => new JsonPiece(JsonKind.Text, 1, 1, n, [], [])).ToImmutableArray();
            yield return (WorkKeys.MachineNames.Path, new JsonMember("", 1, 1, Empty), new JsonPiece(JsonKind.Series, 1, 1, "", [], names));
        }

        static (string, JsonMember, JsonPiece) Of(string path, JsonKind kind, string text) =>
            (path, new JsonMember("", 1, 1, Empty), new JsonPiece(kind, 1, 1, text, [], []));
    }

    /// <summary>The letters that the machine has, as a root with the one group “letters”; null where the workshop does not tell
    /// them.</summary>
    public static JsonPiece? LettersOf(WorkshopFound found, Way way)
    {
        int at = found.Workshop.MachineFor(way) is { } machine ? found.Workshop.Machines.IndexOf(machine) : -1;
        return at >= 0 && found.Letters[at] is { } letters
            ? new JsonPiece(
                JsonKind.Group, letters.Line, letters.Column, "", [new JsonMember("letters", letters.Line, letters.Column, letters)], [])
            : null;
    }

    private static JsonPiece Empty { get; } = new(JsonKind.Nothing, 1, 1, "", [], []);
}
