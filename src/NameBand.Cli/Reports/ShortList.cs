namespace NameBand.Cli.Reports;

/// <summary>How much of a long list a command prints before it counts the rest; what is asked with --json has all of it.</summary>
internal static class ShortList
{
    /// <summary>
    /// Names in a sentence, or things to decide one under another: a dozen of them, three or four lines each, leave what was made and what
    /// to do next in sight in a window of fifty lines. Our assumption.
    /// </summary>
    public const int Most = 12;

    /// <summary>Where several such lists follow each other, or the list only says why the command ended with status 1.</summary>
    public const int MostOfSeveral = 10;

    /// <summary>What changed comes in up to a dozen kinds, each with its names: two lines a kind. Our assumption.</summary>
    public const int MostOfKind = 8;
}
