using System.Collections.Immutable;
using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Fonts;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Changes;

namespace NameBand.Tests.Hostile;

/// <summary>Every kind of file a stranger may hand to the program, each with real files to start from.</summary>
/// <param name="samples">The project's sample jobs.</param>
/// <param name="fonts">The folder of faces.</param>
/// <param name="scratch">A folder to write inputs into; several threads must not share it.</param>
internal sealed class HostileKinds(string samples, string fonts, string scratch)
{
    private const string PlainJob =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m", "turn": 0.75 }, "strip": { "rounds": 2 } }""";

    private static readonly byte[] PlainWorkshop = """
        { "format": 1,
          "machines": [
            { "name": "the big one", "takes": ["coordinates"], "stitchesPerMinute": 600, "cutsThread": true, "watched": false,
              "frames": [ { "name": "long", "along": "300 mm", "across": "4 in", "hold": "clamp", "minutes": 3 },
                          { "name": "small", "along": "100 mm", "across": "100 mm" } ] },
            { "name": "old faithful", "takes": ["keys", "hands"], "letters": { "alphabet": "letters.csv", "height": "9 mm" } } ],
          "people": [ { "name": "me", "evenings": { "tuesday": "2h", "sunday": "1 h 30 min" }, "does": ["machine", "hands"] },
            { "name": "Bo", "evenings": "45 min", "does": "hands" } ] }
        """u8.ToArray();

    private static readonly byte[] SmallWorkshop = """{ "machines": [ { "name": "one", "takes": ["hands"] } ] }"""u8.ToArray();

    private static readonly string[] LetteredNames =
        ["Ana AVATAR fi", "Łucja Őrsi x\u030C", "ليلى مُحَمَّد", "क्षत्रिय माथुर", "Rafe & Co. 1234567890"];
    private readonly FaceShelf _shelf = new();
    private BandJob? _job;

    /// <summary>What a stranger may hand over, each with its part of all inputs: the cheaper to read, the more.</summary>
    public static ImmutableArray<(string Kind, int Parts)> Shares { get; } =
    [
        ("job.json", 180), ("list", 180), ("corrections", 60), ("approvals", 60), ("sewing log", 140), ("letters", 110),
        ("measured lines", 100),
        ("drift", 100), ("spreadsheet", 20), ("workshop", 120), ("manifest", 60), ("font guard", 120),
        ("out plan", 40), ("sewn plan", 4), ("face", 25), ("face made", 1),
    ];

    public HostileKind Of(string kind) => kind switch
    {
        "job.json" => new(kind, SeedsOf("job.json"), JobFile),
        "list" => new(kind, [.. SeedsOf("names.csv"), .. SeedsOf("crews.csv"), .. SeedsOf("gifts.csv"), .. OddLists()], List),
        "corrections" => new(kind, SeedsOf("corrections.csv"), Corrections),
        "approvals" => new(kind, [ApprovalsOf(',', "\r\n"), ApprovalsOf(';', "\n")], Approvals) { IsAlwaysUsable = true },
        "sewing log" => new(kind, [LogOf(3), LogOf(40)], Log) { IsAlwaysUsable = true },
        "letters" => new(kind, SeedsOf("letters.csv"), Letters),
        "measured lines" => new(kind, SeedsOf("measure-9mm.csv"), Lines),
        "drift" => new(kind, SeedsOf("drift.csv"), Drift),
        "spreadsheet" => new(kind, [PackedBook.Parts, PackedBook.Of(PackedBook.Parts)], Spreadsheet),
        "workshop" => new(kind, [PlainWorkshop, SmallWorkshop], WorkshopRead),
        "manifest" => new(kind, [ManifestOf()], Manifest) { IsAlwaysUsable = true },
        "font guard" => new(kind, [SmallFace(), .. Faces()], FontGuard) { Spoil = FontMutator.Spoil },
        "out plan" => new(kind, [MadePlan()], OutPlan),
        "sewn plan" => new(kind, [MadePlan()], SewnPlan),
        "face" => new(kind, [SmallFace(), .. Faces()], Font) { Spoil = FontMutator.Spoil },
        "face made" => new(kind, Faces(), FaceMade) { Spoil = FontMutator.Spoil },
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
    };

    private BandJob Job
    {
        get
        {
            if (_job is null)
            {
                Write("job.json", Encoding.UTF8.GetBytes(PlainJob));
                Write("names.csv", "name\r\nAna\r\nBo Lind\r\nCleo\r\nDora \"\"D\"\" Berg\r\n"u8.ToArray());
                _job = JobReader.Read(scratch).Value ?? throw new InvalidOperationException("The plain job cannot be read.");
            }

            return _job;
        }
    }

    private static Fate FateOf<T>(Result<T> result)
        where T : class => new(result.IsUsable, result.Problems);

    private Fate JobFile(byte[] input)
    {
        Write("names.csv", "name\r\nAna\r\n"u8.ToArray());
        Write("crews.csv", "name\r\nAna\r\n"u8.ToArray());
        Write("job.json", input);
        _job = null;
        return FateOf(JobReader.Read(scratch));
    }

    private Fate List(byte[] input)
    {
        var job = Job;
        Write("names.csv", input);
        return FateOf(ListReader.Read(job, NameBand.Job.Corrections.None));
    }

    private Fate Corrections(byte[] input)
    {
        var job = Job;
        Write("names.csv", File.ReadAllBytes(Path.Combine(samples, "lantern-walk", "names.csv")));
        Write("corrections.csv", input);
        var read = CorrectionsReader.Read(scratch);
        return read.Value is { } corrections && read.IsUsable ? FateOf(ListReader.Read(job, corrections)) : FateOf(read);
    }

    private Fate Approvals(byte[] input)
    {
        var list = ListReader.Read(Job, NameBand.Job.Corrections.None).Value
            ?? throw new InvalidOperationException("The plain list cannot be read.");
        Write(ApprovalsFile.FileName, input);
        var report = NameBand.Names.Approvals.Of(scratch, list, NameBand.Job.Corrections.None)
            ?? throw new InvalidOperationException("The file was not seen.");
        return new Fate(true, report.Problems);
    }

    private Fate Log(byte[] input)
    {
        Write(SewingLogFile.FileName, input);
        return new Fate(true, SewingLogFile.Read(scratch).Problems);
    }

    private Fate Letters(byte[] input)
    {
        Write("letters.csv", input);
        return FateOf(AlphabetFile.Read(scratch, "letters.csv", 9, 1, 0.3));
    }

    private Fate Lines(byte[] input)
    {
        Write("measure-9mm.csv", input);
        return FateOf(NameBand.MachineLetters.Measuring.LineSheet.Read(scratch, "measure-9mm.csv"));
    }

    private Fate Drift(byte[] input)
    {
        Write("drift.csv", input);
        return FateOf(DriftFile.Read(scratch));
    }

    private Fate Spreadsheet(byte[] input)
    {
        var job = Job with { Lists = ["names.xlsx"] };
        Write("names.xlsx", PackedBook.Of(input));
        return FateOf(ListReader.Read(job, NameBand.Job.Corrections.None));
    }

    private Fate WorkshopRead(byte[] input)
    {
        _ = Job;
        Write("workshop.json", input);
        return FateOf(JobReader.Read(scratch));
    }

    /// <summary>What <c>check</c>, and every command that renews a folder of ours, reads of its list.</summary>
    private Fate Manifest(byte[] input)
    {
        Write(OutPaths.Manifest, input);
        var manifest = OutManifest.Read(scratch);
        manifest.StateOf(scratch);
        foreach (string file in manifest.Hashes.Select(h => h.Key))
        {
            manifest.IsOurs(scratch, file);
        }

        return new Fate(true, []);
    }

    private static Fate FontGuard(byte[] input)
    {
        try
        {
            var facts = FontFacts.Read(input);
            return facts is { GlyphCount: > 0, UnitsPerEm: > 0 } ? new Fate(true, [])
                : throw new InvalidOperationException("It says what no face has.");
        }
        catch (FontFault fault)
        {
            return new Fate(false, [Problem.CannotUse(new Where("spoilt.ttf"), fault.Message, "Use another face.")]);
        }
    }

    /// <summary>What <c>sewn</c> reads of the out folder, and what <c>make</c> compares with and takes over from it.</summary>
    private Fate OutPlan(byte[] input)
    {
        Write("plan.json", input);
        new PreviousOutput(scratch).Hooping(1);
        OutManifest.Format(scratch, OutKind.Plan);
        return FateOf(PlanOverview.Read(scratch));
    }

    /// <summary>Gone on from, with its first hooping sewn, where neither a list nor another copy tells that it is spoilt.</summary>
    private Fate SewnPlan(byte[] input)
    {
        File.Delete(Path.Combine(scratch, "sewn", OutPaths.Manifest));
        File.Delete(Path.Combine(scratch, "out", OutPaths.Plan));
        Write("sewn/plan.json", input);
        return FateOf(Planning.Run(scratch, _shelf, default));
    }

    private Fate Font(byte[] input)
    {
        byte[] pinned = GC.AllocateUninitializedArray<byte>(input.Length, pinned: true);
        input.CopyTo(pinned, 0);
        try
        {
            var face = Face.FromBytes("x", "Spoilt", "spoilt.ttf", pinned);
            Measure(face);
            var names = new NameList([], [.. LetteredNames.Select((n, i) => new Name(n, new RowRef("names.csv", i + 2)))]);
            var lettered = Letterer.Letter(names, face, _shelf);
            bool whole = lettered.Value is { } list && list.Names.Length + list.Held.Length == LetteredNames.Length
                && list.Names.All(n => double.IsFinite(n.Ink.WidthMm) && n.Ink.WidthMm > 0);
            return whole ? FateOf(lettered) : throw new InvalidOperationException("A name was lost or has no width.");
        }
        catch (FontFault fault)
        {
            return new Fate(false, [Problem.CannotUse(new Where("spoilt.ttf"), fault.Message, "Use another face.")]);
        }
    }

    /// <summary>The whole of <c>make</c> with a job's own face.</summary>
    private Fate FaceMade(byte[] input)
    {
        Write("face.ttf", input);
        Write("names.csv", "name\r\nAna AVATAR fi\r\nBo\r\n"u8.ToArray());
        Write("job.json",
            """{ "lists": ["names.csv"], "hem": { "length": "400 mm", "closed": false }, "lettering": { "face": "face.ttf" } }"""u8.ToArray());
        var made = Bander.Make(scratch);
        return new Fate(made.OutFolder is not null, made.Problems);
    }

    /// <summary>What <c>fit</c> and <c>make</c> ask of a face before they letter with it.</summary>
    private static void Measure(Face face)
    {
        double[] measures = [face.CapHeightUnits, face.ThinnestStrokePart, face.MainStemPart, face.SmallestCounterPart ?? 1];
        if (!measures.All(double.IsFinite) || face.CapHeightUnits <= 0 || face.Hash.Length != 64)
        {
            throw new InvalidOperationException("A measure of the face is no number.");
        }
    }

    private byte[] ManifestOf()
    {
        _ = Job;
        return OutManifest.Of(scratch, new Dictionary<string, string>(StringComparer.Ordinal));
    }

    private static byte[] SmallFace() => new FaceMaker("Small")
        .With('A', 600, [(0, 0), (250, 700), (350, 700), (600, 0), (480, 0), (300, 520), (120, 0)])
        .With('i', 300, [(100, 0), (200, 0), (200, 500), (100, 500)], [(100, 600), (200, 600), (200, 700), (100, 700)])
        .With('n', 500, [(50, 0), (50, 500), (150, 500), (150, 440), (250, 500), (450, 400), (450, 0), (350, 0), (350, 380),
            (150, 300), (150, 0)])
        .ToBytes();

    private ImmutableArray<byte[]> Faces() =>
        [.. Directory.GetFiles(fonts, "*.*tf", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)];

    /// <summary>Makes the plain job in the scratch folder and sews its first hooping.</summary>
    private byte[] MadePlan()
    {
        Write("job.json", Encoding.UTF8.GetBytes(PlainJob));
        Write("names.csv", "name\r\nAna\r\nBo Lind\r\nCleo\r\nDora Berg\r\nEmil\r\nFay\r\n"u8.ToArray());
        if (Bander.Make(scratch).Plan is null
            || Bander.Sewn(scratch, null, new SewingWord(1, SewingDeed.Sewn), () => { }).Status == ExitStatus.CannotUse)
        {
            throw new InvalidOperationException("The plain job cannot be made.");
        }

        return File.ReadAllBytes(Path.Combine(scratch, "sewn", "plan.json"));
    }

    private static byte[] ApprovalsOf(char separator, string lineEnd) => Encoding.UTF8.GetBytes(string.Join(lineEnd, new[]
    {
        "list,line,name,state,date,text,details", "names.csv,2,Ana,agreed,2026-10-01,,",
        "names.csv,3,Bo Lind,change wished,1 Oct,Bo K. Lind,",
        "names.csv,4,Cleo,asked,,,", "names.csv,5,\"Dora \"\"D\"\" Berg\",,,,", "",
    }).Replace(',', separator));

    private ImmutableArray<byte[]> SeedsOf(string file) =>
        [.. Directory.GetFiles(samples, file, SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}out{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).Select(File.ReadAllBytes)];

    private static ImmutableArray<byte[]> OddLists() =>
    [
        Encoding.UTF8.GetBytes("Vorname;Nachname;Betrag\r\nAna;\"Lind; Holm\";3,50\r\n\"Bo\r\nLine\";Varga;2\r\n"),
        Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("name\tpaid\r\nΝίκος\t3\r\nليلى\t4\r\n")).ToArray(),
        Encoding.Latin1.GetBytes("nom,prénom\nCorbeau,Anaïs\nÅmot,Solveig\n"),
    ];

    private static byte[] LogOf(int lines)
    {
        var text = new StringBuilder(SewingLogLine.Header + "\r\n");
        for (int i = 1; i <= lines; i++)
        {
            text.Append(SewingLogLine.Write(new SewingEntry(
                i, i % 7 == 0 ? SewingDeed.Again : SewingDeed.Sewn, 10 + i, Note: "by the lamp, \"late\""))).Append("\r\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private void Write(string name, byte[] content) => File.WriteAllBytes(Path.Combine(scratch, name), content);
}
