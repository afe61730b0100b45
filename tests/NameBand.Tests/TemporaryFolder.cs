namespace NameBand.Tests;

/// <summary>A folder of a test's own, taken away afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string FullPath { get; } = Directory.CreateTempSubdirectory("nameband-test-").FullName;

    public string this[string name] => Path.Combine(FullPath, name);

    public TemporaryFolder With(string name, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(this[name])!);
        File.WriteAllText(this[name], text);
        return this;
    }

    public TemporaryFolder With(string name, byte[] bytes)
    {
        File.WriteAllBytes(this[name], bytes);
        return this;
    }

    public void Dispose() => Directory.Delete(FullPath, recursive: true);
}
