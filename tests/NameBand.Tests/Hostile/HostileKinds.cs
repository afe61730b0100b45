using System.Collections.Immutable;
using System.Text;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.Lettering;
using NameBand.Lettering.Fonts;
using NameBand.MachineLetters;
using NameBand.Names;

namespace NameBand.Tests.Hostile;

/// <summary>Every kind of file a stranger may hand to the program, each with real files to start from.</summary>
/// <param name="samples">The project's sample jobs.</param>
/// <param name="fonts">The folder of faces.</param>
/// <param name="scratch">A folder to write inputs into; several threads must not share it.</param>
internal sealed class HostileKinds(string samples, string fonts, string scratch)
{
    private const string PlainJob = """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m", "turn": 0.75 }, "strip": { "rounds": 2 } }""";

    private static readonly string[] LetteredNames = ["Ana AVATAR fi", "Łucja Őrsi x\u030C", "ليلى مُحَمَّد", "क्षत्रिय माथुर", "Rafe & Co. 1234567890"];
    private readonly FaceShelf _shelf = new();
    private BandJob? _job;

    public ImmutableArray<HostileKind> All() =>
    [
        new("job.json", SeedsOf("job.json"), JobFile),
        new("list", [.. SeedsOf("names.csv"), .. SeedsOf("crews.csv"), .. OddLists()], List),
        new("corrections", SeedsOf("corrections.csv"), Corrections),
        new("sewing log", [LogOf(3), LogOf(40)], Log),
        new("letters", SeedsOf("letters.csv"), Letters),
        new("measured lines", SeedsOf("measure-9mm.csv"), Lines),
        new("drift", SeedsOf("drift.csv"), Drift),
        new("face", [.. Directory.GetFiles(fonts, "*.*tf", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)], Font, IsText: false),
    ];

    private BandJob Job
    {
        get
        {
            if (_job is null)
            {
                Write("job.json", Encoding.UTF8.GetBytes(PlainJob));
                Write("names.csv", "name\r\nAna\r\n"u8.ToArray());
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

    private Fate Font(byte[] input)
    {
        byte[] pinned = GC.AllocateUninitializedArray<byte>(input.Length, pinned: true);
        input.CopyTo(pinned, 0);
        try
        {
            var face = Face.FromBytes("x", "Spoilt", "spoilt.ttf", pinned);
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
            text.Append(SewingLogLine.Write(new SewingEntry(i, i % 7 == 0 ? SewingDeed.Again : SewingDeed.Sewn, 10 + i, Note: "by the lamp, \"late\""))).Append("\r\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private void Write(string name, byte[] content) => File.WriteAllBytes(Path.Combine(scratch, name), content);
}
