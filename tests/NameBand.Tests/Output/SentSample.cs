namespace NameBand.Tests.OutputRoom;

/// <summary>A small job with everything that is printed on wish; its names and its title are what files' names cannot bear.</summary>
public sealed class SentSample : IDisposable
{
    public const string Title = "a/b\\c: “x”? <*> | 行列 .";

    public static readonly string[] Names =
        ["Ottilie Marshall", "CON", "ليلى النهري", "Đỗ Thu Lan", "=Pell & <Sons>", "नदी माथुर", "../../up"];

    private readonly TemporaryFolder _folder = new();

    public SentSample()
    {
        _folder.With("job.json", System.Text.Json.JsonSerializer.Serialize(new
        {
            format = 1,
            title = Title,
            lists = new[] { "names.csv" },
            hem = new { length = "900 mm", centreFront = "300 mm", turn = 0 },
            lettering = new { height = "9 mm" },
            thanks = new { width = 640, address = "https://lantern.example/näme#n{number}" },
            playback = new { width = 480, seconds = 3 },
        }));
        _folder.With("names.csv", "name,e-mail\n" + string.Join('\n', Names.Select((n, i) => $"\"{n}\",person{i}@example.org")) + "\n");
        Report = Bander.Print(_folder.FullPath, wishes: new PrintWishes(Thanks: true, Playback: true));
    }

    public MakeReport Report { get; }

    public string FullPath(string relative) => Path.Combine(Report.OutFolder!, relative);

    public byte[] File(string relative) => System.IO.File.ReadAllBytes(FullPath(relative));

    public void Dispose() => _folder.Dispose();
}
