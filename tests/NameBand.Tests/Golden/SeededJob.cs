using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using NameBand.Job;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Tests.Golden;

/// <summary>
/// A small job drawn from a number. The kind of each follows from its number, so that every way, shape and state comes up
/// among the first fifty; lengths, names and settings are drawn by a generator of our own, which no library can change.
/// </summary>
internal sealed class SeededJob
{
    public const int Count = 50;

    private static readonly string[] First =
        ["Ada", "Bo", "Cato", "Dilys", "Edda", "Fenn", "Gwil", "Hesper", "Ilse", "Jory", "Kit", "Lowen", "Merryn", "Nia", "Orla", "Piran"];

    private static readonly string[] Last =
    [
        "Alder", "Brack", "Colm", "Dray", "Eames", "Farrow", "Glim", "Holt",
        "Ivory", "Jago", "Keel", "Lind", "Marsh", "Nye", "Oates", "Penhale",
    ];

    private readonly List<string> _rows = [];
    private ulong _state;

    public SeededJob(int seed)
    {
        Name = string.Create(CultureInfo.InvariantCulture, $"seed-{seed:00}");
        _state = (ulong)seed + 1;
        Way = (seed % 5) switch { 3 => Way.MachineLetters, 4 => Way.Traced, _ => Way.NeedlePath };
        int kind = seed / 5;
        IsCurved = Way == Way.NeedlePath && kind % 4 == 3;
        Lanes = Way != Way.NeedlePath || IsCurved ? "1" : (kind % 4) switch { 1 => "2", 2 => "asManyAsFit", _ => "1" };
        Rounds = Lanes == "1" ? 1 + Draw(IsCurved ? 2 : 3) : 2;
        HasGroups = Draw(5) < 2 && Way != Way.MachineLetters;
        HasMotif = Draw(3) == 0 && Way != Way.MachineLetters;
        IsClosed = Draw(2) == 0;
        HasCorrections = Draw(5) < 2;
        IsSewnOn = Draw(2) == 0 && Way != Way.Traced;
        IsLargest = Draw(2) == 0;
        for (int i = 0, names = 5 + Draw(4); i < names; i++)
        {
            _rows.Add($"{First[(seed + (3 * i)) % First.Length]} {Last[Draw(Last.Length)]}");
        }
    }

    public string Name { get; }

    public Way Way { get; }

    public int Rounds { get; }

    public string Lanes { get; }

    public bool IsCurved { get; }

    public bool HasGroups { get; }

    public bool HasMotif { get; }

    public bool IsClosed { get; }

    public bool HasCorrections { get; }

    public bool IsSewnOn { get; }

    private bool IsLargest { get; }

    /// <summary>What kind of job it is, for people.</summary>
    public string InWords => string.Join(
        ", ",
        new[]
        {
            JsonNamingPolicy.CamelCase.ConvertName(Way.ToString()), $"rounds {Rounds}", Lanes == "1" ? "" : $"lanes {Lanes}",
            IsCurved ? "curved" : "", HasGroups ? "groups" : "", HasMotif ? "motif" : "", IsClosed ? "closed" : "open",
            HasCorrections ? "corrections" : "", IsSewnOn ? "gone on from" : "",
        }.Where(word => word.Length > 0));

    /// <summary>
    /// Writes the job's files and makes its plan; one that is gone on from is made, sewn from, given a latecomer and made again.
    /// </summary>
    /// <returns>What was made last.</returns>
    public MakeReport Make(TemporaryFolder folder)
    {
        if (HasCorrections)
        {
            _rows.Add(_rows[1]);
            _rows.Add(_rows[2].ToLowerInvariant());
            folder.With("corrections.csv", string.Create(
                CultureInfo.InvariantCulture,
                $"list,line,was,decision,text,why\nnames.csv,{_rows.Count},{_rows[^2]},keep,,two people\n" +
                $"names.csv,{_rows.Count + 1},{_rows[^1]},leave out,,twice\nnames.csv,2,{_rows[0]},change,{_rows[0]} Vane,asked\n"));
        }

        if (Way == Way.MachineLetters)
        {
            folder.With("letters.csv", Alphabet());
        }

        folder.With("job.json", Settings().ToJsonString()).With("names.csv", List());
        var first = Require(Bander.Make(folder.FullPath));
        if (!IsSewnOn)
        {
            return first;
        }

        if (Way == Way.NeedlePath)
        {
            Sew(folder);
        }
        else
        {
            WriteDrift(folder);
        }

        _rows.Add("Zed Late");
        folder.With("names.csv", List());
        return Require(Bander.Make(folder.FullPath));
    }

    private static void Sew(TemporaryFolder folder)
    {
        for (int hooping = 1; hooping <= 2; hooping++)
        {
            var said = Bander.Sewn(
                folder.FullPath, null, new SewingWord(hooping, SewingDeed.Sewn, 8 + hooping, 5, When: "2026-11-25T20:00"),
                () => Thread.Sleep(20));
            Assert(said.Status != ExitStatus.CannotUse, said.Problems);
        }
    }

    /// <summary>The second name ended a millimetre beyond its mark.</summary>
    private static void WriteDrift(TemporaryFolder folder)
    {
        using var plan = JsonDocument.Parse(File.ReadAllBytes(folder["out/plan.json"]));
        var names = from round in plan.RootElement.GetProperty("rounds").EnumerateArray()
                    from segment in round.GetProperty("segments").EnumerateArray()
                    from name in segment.GetProperty("names").EnumerateArray()
                    select name;
        var second = names.Single(n => n.GetProperty("order").GetInt32() == 2);
        double end = second.GetProperty("startMm").GetDouble() + second.GetProperty("widthMm").GetDouble() + 1;
        folder.With(
            "drift.csv", string.Create(CultureInfo.InvariantCulture, $"number,name,end_mm\n2,{second.GetProperty("text")},{end:0.0}\n"));
    }

    private JsonObject Settings()
    {
        double least = (_rows.Count * (HasGroups ? 78.0 : 66.0) / Rounds) + (IsCurved ? 300 : 60) + Draw(80);
        var job = new JsonObject
        {
            ["format"] = 1,
            ["title"] = $"Lantern walk: {Name}",
            ["way"] = JsonNamingPolicy.CamelCase.ConvertName(Way.ToString()),
            ["lists"] = new JsonArray("names.csv"),
            ["hem"] = new JsonObject { ["length"] = Math.Round(least), ["turn"] = IsCurved ? 0.4 : 0, ["closed"] = IsClosed },
            ["strip"] = Strip(),
            ["lettering"] = IsLargest
            ? new JsonObject { ["least"] = "5 mm" } : new JsonObject { ["height"] = Way == Way.MachineLetters ? 5 : 6 },
        };
        if (Lanes == "1")
        {
            job["hoop"] = new JsonObject { ["along"] = 130 + (10 * Draw(4)), ["across"] = 60 };
        }

        if (HasMotif)
        {
            job["lettering"]!["motif"] = new[] { "dot", "diamond", "smallStar" }[Draw(3)];
        }

        if (Draw(4) == 0)
        {
            job["lettering"]!["order"] = "alphabetical";
        }

        if (Way == Way.MachineLetters)
        {
            job["letters"] = new JsonObject
            {
                ["sizes"] = new JsonArray("9 mm", "7 mm", "5 mm"),
                ["spacings"] = new JsonArray("1.5 mm", "1 mm"),
                ["holds"] = 14,
            };
        }

        if (HasGroups)
        {
            job["columns"] = new JsonObject { ["group"] = "Gift" };
            job["groups"] = new JsonArray(
                new JsonObject { ["name"] = "bearers", ["from"] = 25, ["heightFactor"] = 1.2, ["place"] = "first" },
                new JsonObject { ["name"] = "neighbours", ["rest"] = true });
        }

        return job;
    }

    private JsonObject Strip()
    {
        var strip = new JsonObject { ["rounds"] = Rounds };
        if (Lanes != "1")
        {
            strip["lanes"] = Lanes == "2" ? 2 : Lanes;
        }

        if (IsCurved)
        {
            strip["shape"] = "curved";
            strip["piece"] = 500;
        }

        if (IsSewnOn)
        {
            strip["keepFree"] = 70;
        }

        return strip;
    }

    private string List() => "Name,Gift\n" + string.Concat(
        _rows.Select((name, i) => string.Create(CultureInfo.InvariantCulture, $"{name},{(i % 3 == 1 ? 30 : 10)}\n")));

    private static string Alphabet()
    {
        var letters = Enumerable.Range('A', 26).Concat(Enumerable.Range('a', 26)).Select(
            c => string.Create(CultureInfo.InvariantCulture, $"{(char)c},{(c < 'a' ? 6 : 4.5) + (c % 5 * 0.3):0.0},{5 + (c % 3)}\n"));
        return "letter,width_mm,seconds\nblank,4,0\ngap,1,\n" + string.Concat(letters);
    }

    /// <summary>A number from 0 to below a bound, by the generator of Steele, Lea and Flood (SplitMix64, from memory).</summary>
    private int Draw(int below)
    {
        ulong z = _state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return (int)((z ^ (z >> 31)) % (ulong)below);
    }

    private static MakeReport Require(MakeReport made)
    {
        Assert(made.Status != ExitStatus.CannotUse && made.Plan is not null, made.Problems);
        return made;
    }

    private static void Assert(bool holds, IEnumerable<Common.Problem> problems)
    {
        if (!holds)
        {
            throw new InvalidOperationException(string.Join('\n', problems));
        }
    }
}
