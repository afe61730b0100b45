namespace NameBand.Tests.House;

/// <summary>
/// Lines that two files beside each other have room for. What stands in quotes is not counted: a sentence for the maker is read
/// whole, and searched for whole.
/// </summary>
internal static class LineWidth
{
    private const int MostColumns = 140;

    public static IEnumerable<string> Violations(SourceFile file)
    {
        string[] lines = file.Text.Split('\n');
        string[] code = CodeText.Of(file.Text, withHoles: false).Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            bool isComment = lines[i].TrimStart().StartsWith("//", StringComparison.Ordinal);
            int columns = isComment ? lines[i].Length : Math.Min(lines[i].Length, code[i].Length);
            if (columns > MostColumns)
            {
                yield return $"{file.Path}, line {i + 1}: {columns} columns beside what is quoted";
            }
        }
    }
}
