using System.Collections.Frozen;

namespace NameBand.Names;

/// <summary>The words in lists of names, from <c>Data/words.txt</c>: they are in many languages at once and are never translated.</summary>
internal static class ListWords
{
    private static readonly FrozenDictionary<string, string[]> Sections = Read();

    /// <summary>All words of a section, comma-separated.</summary>
    public static string Of(string section) => string.Join(',', Lines(section));

    /// <summary>The same, one meaning in each.</summary>
    public static string[] Lines(string section) => Sections[section];

    private static FrozenDictionary<string, string[]> Read()
    {
        using var stream = typeof(ListWords).Assembly.GetManifestResourceStream("NameBand.Names.words.txt")
            ?? throw new InvalidOperationException("The words of lists are missing from the program.");
        using var reader = new StreamReader(stream);
        var sections = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        List<string> lines = [];
        bool goesOn = false;
        while (reader.ReadLine() is { } line)
        {
            if (line.StartsWith('['))
            {
                sections.Add(line.Trim('[', ']'), lines = []);
            }
            else if (line.Length > 0 && line[0] != '#')
            {
                string words = (goesOn ? lines[^1] + "," : "") + line.TrimEnd(',');
                lines.RemoveRange(lines.Count - (goesOn ? 1 : 0), goesOn ? 1 : 0);
                lines.Add(words);
                goesOn = line.EndsWith(',');
            }
        }

        return sections.ToFrozenDictionary(s => s.Key, s => s.Value.ToArray(), StringComparer.Ordinal);
    }
}
