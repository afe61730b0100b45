using NameBand.Tests.WholeLine;

namespace NameBand.Tests.OutputRoom;

/// <summary>The sample, printed once for all tests that look at its sheets.</summary>
public sealed class PrintedSample : IDisposable
{
    private readonly TemporaryFolder _folder = MadeFolder.CopySample();

    public PrintedSample() => Report = Bander.Print(_folder.FullPath);

    public MakeReport Report { get; }

    public byte[] File(string relative) => System.IO.File.ReadAllBytes(FullPath(relative));

    public string FullPath(string relative) => Path.Combine(Report.OutFolder!, relative);

    public void Dispose() => _folder.Dispose();
}
