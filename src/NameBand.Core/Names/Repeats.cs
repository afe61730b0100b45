namespace NameBand.Names;

/// <summary>How far a row repeats an earlier one.</summary>
internal enum Repeat
{
    None,

    /// <summary>Name and everything else agree.</summary>
    Whole,

    /// <summary>The same name with something else beside it.</summary>
    SameName,

    /// <summary>Another name that a reader would take for it.</summary>
    Resembles,
}

/// <summary>A row whose name is known to <see cref="Repeats"/>, and how it ended.</summary>
internal sealed record Earlier(SourceRow Source, string Text, RowOutcome Outcome, bool Decided);

/// <summary>
/// Remembers the rows of all lists that were read so far and finds the one a new row repeats; by keys, so that
/// thousands of rows take no longer each than a few.
/// </summary>
internal sealed class Repeats
{
    private readonly Dictionary<(string Text, string Details), Earlier> _asRead = [];
    private readonly Dictionary<(string Text, string Details), Earlier> _asSewn = [];
    private readonly Dictionary<string, Earlier> _byText = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Earlier> _byFoldedFirst = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Earlier> _byFoldedLast = new(StringComparer.Ordinal);

    private string? _lastText;
    private (string FoldedFirst, string FoldedLast) _lastKeys;

    /// <param name="text">The name as it would be sewn: another than the row's own after a correction.</param>
    public (Repeat Kind, Earlier? Of) Find(SourceRow row, string text)
    {
        string details = row.DetailsKey;
        bool own = text == row.Name.Text;
        if ((own && _asRead.TryGetValue((text, details), out var whole)) || _asSewn.TryGetValue((text, details), out whole))
        {
            return (Repeat.Whole, whole);
        }

        if (_byText.TryGetValue(text, out var same))
        {
            return (Repeat.SameName, same);
        }

        var (first, last) = KeysOf(text);
        return _byFoldedFirst.TryGetValue(first, out var like) || _byFoldedLast.TryGetValue(last, out like)
            ? (Repeat.Resembles, like)
            : (Repeat.None, null);
    }

    public void Remember(Earlier row)
    {
        string details = row.Source.DetailsKey;
        _asRead.TryAdd((row.Source.Name.Text, details), row);
        _asSewn.TryAdd((row.Text, details), row);
        _byText.TryAdd(row.Text, row);
        var (first, last) = KeysOf(row.Text);
        _byFoldedFirst.TryAdd(first, row);
        _byFoldedLast.TryAdd(last, row);
    }

    public Earlier? SameName(string text) => _byText.GetValueOrDefault(text);

    /// <summary>A row is looked for and then remembered; its keys are worked out once.</summary>
    private (string FoldedFirst, string FoldedLast) KeysOf(string text)
    {
        if (_lastText != text)
        {
            (_lastText, _lastKeys) = (text, Resemblance.Keys(text));
        }

        return _lastKeys;
    }
}
