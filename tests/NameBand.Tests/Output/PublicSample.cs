namespace NameBand.Tests.OutputRoom;

/// <summary>A job made with its page for supporters: each name answers the web in another way.</summary>
public sealed class PublicSample : IDisposable
{
    public const string Hostile = "</script><b>Ox";
    public const string RightToLeft = "ليلى النهري";

    /// <summary>What stands in the list or in approvals.csv and must not be in a byte of the page's folder.</summary>
    public static readonly string[] Private =
        ["Reed", "Weir", "Pellow", "Alder", "Otter", "Sluice", "Brook", "lantern.example", "envelope", "Ropewalk", "perhaps", "names.csv",
            "approvals"];

    public static readonly string[] Shown = [Hostile, "Ada Marsh", "Cleo Quill", RightToLeft];

    public const string Approvals = """
        list,line,name,state,date,text,details,web
        names.csv,6,Cleo Quill,agreed,,,,yes
        names.csv,9,Fern Alder,agreed,,,,No

        """;

    private const string List = """
        Name,E-mail,Show on the web?,Anonymous,Street
        Ada Marsh,a@lantern.example,yes,,the blue envelope
        </script><b>Ox,b@lantern.example,YES,,Ropewalk 1
        ليلى النهري,c@lantern.example,x,,Ropewalk 2
        Bo Reed,d@lantern.example,no,,Ropewalk 3
        Cleo Quill,e@lantern.example,,,Ropewalk 4
        Dara Weir,f@lantern.example,,,Ropewalk 5
        Ewan Pellow,g@lantern.example,perhaps,,Ropewalk 6
        Fern Alder,h@lantern.example,yes,,Ropewalk 7
        Gil Otter,i@lantern.example,yes,yes,Ropewalk 8
        Ida 🏮 Sluice,j@lantern.example,yes,,Ropewalk 9
        Una Brook,k@lantern.example,yes,,Ropewalk 10
        una brook,l@lantern.example,no,,Ropewalk 11

        """;

    public PublicSample()
    {
        Folder.With("job.json", Job("9 mm")).With("names.csv", List).With("approvals.csv", Approvals);
        Made = Bander.Make(Folder.FullPath);
        Report = Bander.Public(Folder.FullPath);
    }

    public TemporaryFolder Folder { get; } = new();

    public MakeReport Made { get; }

    public PublicReport Report { get; }

    public static string Job(string height) => $$"""
        { "format": 1, "title": "Lantern <walk>", "lists": ["names.csv"], "hem": { "length": "1.3 m", "turn": 0.75 },
          "lettering": { "height": "{{height}}" }, "colours": { "cloth": "#3a2b20", "thread": "gold" } }
        """;

    public string Text(string relative) => File.ReadAllText(Path.Combine(Report.Folder!, relative));

    public void Dispose() => Folder.Dispose();
}
