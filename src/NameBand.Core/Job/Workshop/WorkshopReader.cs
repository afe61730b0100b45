using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>Reads and checks what a workshop.json holds: machines with their frames, and people with their evenings.</summary>
internal sealed class WorkshopReader
{
    // Counts far beyond any sewing room: a file with more is another one, and every frame of every machine is tried in the layout.
    private const int MostMachines = 20;
    private const int MostFrames = 50;
    private const int MostPeople = 50;

    // A field under this holds no letter that NameBand lays out: the least that hoop.along and hoop.across take.
    private const double LeastAlongMm = 20;
    private const double LeastAcrossMm = 10;
    private const double MostMm = 10_000; // Ten metres: no frame is so long, a unit was mistaken.

    private static readonly Said Example =
        "{ \"format\": 1, \"machines\": [{ \"name\": \"the machine\", \"takes\": [\"coordinates\"], "
        + "\"frames\": [{ \"name\": \"the frame\", \"along\": \"160 mm\", \"across\": \"100 mm\" }] }] }";

    private static readonly ImmutableArray<(string Word, Doing Value)> Doings =
        [("machine", Doing.Machine), ("hands", Doing.Hands), ("both", Doing.Both)];

    private static readonly string[] Weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

    private enum Doing
    {
        Machine,
        Hands,
        Both,
    }

    private readonly JsonForm _form;
    private readonly List<JsonPiece?> _letters = [];

    private WorkshopReader(string file, List<Problem> problems) => _form = new JsonForm(file, problems);

    /// <returns>The workshop with each machine's own letters as they stand in the file; null where there is nothing whole to take
    /// from it.</returns>
    public static WorkshopFound? Read(string file, JsonPiece root, List<Problem> problems)
    {
        var reader = new WorkshopReader(file, problems);
        return reader.Workshop(root) is { } workshop ? new WorkshopFound(workshop, [.. reader._letters]) : null;
    }

    private Workshop? Workshop(JsonPiece root)
    {
        if (_form.Group(root, "", Example, "format", "machines", "people") is not { } given)
        {
            return null;
        }

        if (given.TryGetValue("format", out var format) && _form.Number(format, "format", 1, double.MaxValue) is { } number && number != 1)
        {
            _form.Refuse(
                format, "format", $"{_form.File} is of format {PlainText.Short(format.Text)}, and this NameBand reads format 1.",
                "It was made for a newer NameBand: use that one.");
            return null;
        }

        var machines = given.TryGetValue("machines", out var list) ? _form.List(list, "machines", MostMachines, Example) : [];
        if (machines.IsEmpty && list?.Kind is null or JsonKind.Series)
        {
            _form.Refuse(
                list ?? root, "machines", "The workshop has no machine at all.",
                $"Write at least one, such as {Example}, or remove the file.");
        }

        ImmutableArray<WorkshopMachine> read = [.. machines.Select((m, i) => Machine(m, At("machines", i))).OfType<WorkshopMachine>()];
        CheckNames(machines, read);
        var people = given.TryGetValue("people", out var persons)
            ? _form.List(persons, "people", MostPeople, "[{ \"name\": \"me\", \"evenings\": \"2h\" }]") : [];
        return new Workshop(_form.File, read, [.. people.Select((p, i) => Person(p, At("people", i))).OfType<WorkshopPerson>()]);
    }

    private WorkshopMachine? Machine(JsonPiece piece, string path)
    {
        string[] known = ["name", "takes", "stitchesPerMinute", "cutsThread", "watched", "letters", "frames"];
        if (_form.Group(piece, path, "{ \"name\": \"the machine\", \"takes\": [\"coordinates\"] }", known) is not { } given)
        {
            return null;
        }

        _letters.Add(given.GetValueOrDefault("letters"));
        var frames = Of(
            "frames", p =>
                _form.List(p, Inner("frames"), MostFrames, "[{ \"name\": \"the frame\", \"along\": \"160 mm\", \"across\": \"100 mm\" }]"),
                []);
        return new WorkshopMachine(
            Name(given, piece, path), Taken(given, piece, path),
            Of("stitchesPerMinute", p => _form.Number(p, Inner("stitchesPerMinute"), 10, 5000), null),
            Of("cutsThread", p => _form.Flag(p, Inner("cutsThread")), null), Of("watched", p => _form.Flag(p, Inner("watched")), null),
            [.. frames.Select((f, i) => Frame(f, At(Inner("frames"), i))).OfType<Frame>()]);

        string Inner(string key) => JsonForm.Inner(path, key);

        T Of<T>(string key, Func<JsonPiece, T> read, T otherwise) => given.TryGetValue(key, out var value) ? read(value) : otherwise;
    }

    private ImmutableArray<MachineTakes> Taken(Dictionary<string, JsonPiece> given, JsonPiece piece, string path)
    {
        string inner = JsonForm.Inner(path, "takes");
        Said mend =
            "Write \"takes\": [\"coordinates\"] for a machine that follows a file, [\"keys\"] for one with letters of its own, [\"hands\"] for one that sews only what you guide.";
        if (!given.TryGetValue("takes", out var takes) || (takes.Kind == JsonKind.Series && takes.Items.IsEmpty))
        {
            _form.Refuse(takes ?? piece, inner, "The workshop does not say what this machine takes.", mend);
            return [];
        }

        return [.. _form.List(takes, inner, WorkshopWords.Takings.Length, "[\"coordinates\"]")
            .Select((t, i) => _form.Word(t, At(inner, i), WorkshopWords.Takings)).OfType<MachineTakes>().Distinct()];
    }

    private Frame? Frame(JsonPiece piece, string path)
    {
        if (_form.Group(
            piece, path, "{ \"name\": \"the frame\", \"along\": \"160 mm\", \"across\": \"100 mm\" }", "name", "along", "across", "hold",
            "minutes") is not { } given)
        {
            return null;
        }

        string name = Name(given, piece, path);
        var along = Side("along");
        var across = Side("across");
        if (along is not { } length || across is not { } width)
        {
            return null;
        }

        if (length.Mm < LeastAlongMm || width.Mm < LeastAcrossMm)
        {
            _form.Refuse(
                piece, path, $"The frame “{name}” is {length.InMillimetres()} along and {width.InMillimetres()} across, and no letter fits into it.",
                "Give the lengths of the field that the needle can reach, along the strip and across it; perhaps a unit was forgotten.");
            return null;
        }

        if (length.Mm > MostMm || width.Mm > MostMm)
        {
            _form.Refuse(
                piece, path, $"The frame “{name}” is over 10 m long or wide.",
                "Give the lengths of the field that the needle can reach; perhaps a unit is wrong.");
            return null;
        }

        return new Frame(
            name, length, width,
            given.TryGetValue("hold", out var hold) ? _form.Word(hold, JsonForm.Inner(path, "hold"), WorkshopWords.Holds) : null,
            given.TryGetValue("minutes", out var minutes) ? _form.Number(minutes, JsonForm.Inner(path, "minutes"), 0, 240) : null);

        Length? Side(string key)
        {
            if (given.TryGetValue(key, out var value))
            {
                return _form.Length(value, JsonForm.Inner(path, key));
            }

            _form.Refuse(
                piece, JsonForm.Inner(path, key), $"The frame “{name}” does not say how far its field goes {key} the strip.",
                $"Add \"{key}\": \"160 mm\" with what the needle can reach.");
            return null;
        }
    }

    private WorkshopPerson? Person(JsonPiece piece, string path)
    {
        if (_form.Group(piece, path, "{ \"name\": \"me\", \"evenings\": \"2h\" }", "name", "evenings", "does") is not { } given)
        {
            return null;
        }

        var (machine, hands) = given.TryGetValue("does", out var work) ? Does(work, JsonForm.Inner(path, "does")) : (true, true);
        return new WorkshopPerson(
            Name(given, piece, path),
            given.TryGetValue("evenings", out var evenings) ? Evenings(evenings, JsonForm.Inner(path, "evenings")) : [],
            machine, hands);
    }

    private (bool Machine, bool Hands) Does(JsonPiece piece, string path)
    {
        var said = piece.Kind == JsonKind.Series
            ? _form.List(piece, path, Doings.Length, "[\"machine\"]").Select((p, i) => _form.Word(p, At(path, i), Doings)).OfType<Doing>()
                .ToList()
            : [.. new[] { _form.Word(piece, path, Doings) }.OfType<Doing>()];
        return (said.Exists(d => d != Doing.Hands), said.Exists(d => d != Doing.Machine));
    }

    private ImmutableArray<double> Evenings(JsonPiece piece, string path)
    {
        if (piece.Kind != JsonKind.Group)
        {
            return Minutes(piece, path) is { } each ? [.. Enumerable.Repeat(each, Weekdays.Length)] : [];
        }

        var given = _form.Group(piece, path, "{ \"tuesday\": \"2h\" }", Weekdays) ?? [];
        return [.. Weekdays.Select(day => given.TryGetValue(day, out var value) ? Minutes(value, JsonForm.Inner(path, day)) ?? 0 : 0)];
    }

    private double? Minutes(JsonPiece piece, string path)
    {
        if (_form.Text(piece, path) is not { } text)
        {
            return null;
        }

        if (Duration.TryParseMinutes(text, out double minutes, out Said why))
        {
            return minutes;
        }

        _form.Refuse(piece, path, why, "Write for example \"2h\" or \"1 h 30 min\"; leave out a day without time.");
        return null;
    }

    private string Name(Dictionary<string, JsonPiece> given, JsonPiece piece, string path)
    {
        string inner = JsonForm.Inner(path, "name");
        if (given.TryGetValue("name", out var name))
        {
            return _form.Text(name, inner) ?? "";
        }

        _form.Refuse(piece, inner, $"{path} has no name.", "Add \"name\" with what you call it.");
        return "";
    }

    /// <summary>Machines are told apart by their names, and so are frames wherever they stand: a hooping names its frame alone.</summary>
    private void CheckNames(ImmutableArray<JsonPiece> pieces, ImmutableArray<WorkshopMachine> machines)
    {
        var known = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var frames = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < machines.Length; i++)
        {
            string machine = machines[i].Name;
            if (machine.Length > 0 && !known.TryAdd(machine, machine))
            {
                _form.Refuse(
                    pieces[i], $"{At("machines", i)}.name", $"Two machines are called “{machine}”.",
                    "Give each machine a name of its own.");
            }

            foreach (var frame in machines[i].Frames.Where(f => f.Name.Length > 0 && !frames.TryAdd(f.Name, machine)))
            {
                string other = frames[frame.Name];
                _form.Refuse(
                    pieces[i], $"{At("machines", i)}.frames",
                    other == machine ? (Said)$"The machine “{machine}” has two frames called “{frame.Name}”."
                        : $"The machines “{other}” and “{machine}” both have a frame called “{frame.Name}”.",
                    "Give each frame a name of its own, so that a sheet can say which to take.");
            }
        }
    }

    private static string At(string path, int index) => FormattableString.Invariant($"{path}[{index + 1}]");
}
