using NameBand.Common;

namespace NameBand.Names;

/// <summary>
/// The names of rows that ask not to be shown, wherever in the lists they stand: a row of the same or of a like name may be
/// the same person, and is asked about before it is sewn.
/// </summary>
internal sealed class HiddenNames
{
    private readonly Dictionary<string, SourceRow> _byText = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SourceRow> _byFoldedFirst = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SourceRow> _byFoldedLast = new(StringComparer.Ordinal);

    public HiddenNames(IEnumerable<SourceRow> asking)
    {
        foreach (var row in asking.Where(r => !r.Name.IsEmpty))
        {
            var (first, last) = Resemblance.Keys(row.Name.Text);
            _byText.TryAdd(row.Name.Text, row);
            _byFoldedFirst.TryAdd(first, row);
            _byFoldedLast.TryAdd(last, row);
        }
    }

    /// <returns>What to ask about a name that is to be sewn; null: nobody of such a name asks not to be shown.</returns>
    public Said? Question(string text)
    {
        if (_byText.Count == 0)
        {
            return null;
        }

        if (_byText.TryGetValue(text, out var same))
        {
            return $"{same.Ref} has the same name and asks not to be shown: the same person?";
        }

        var (first, last) = Resemblance.Keys(text);
        return _byFoldedFirst.TryGetValue(first, out var like) || _byFoldedLast.TryGetValue(last, out like)
            ? (Said)$"the same person as {like.Ref}, which asks not to be shown? The two names differ only in {Resemblance.DifferOnlyIn(text, like.Name.Text)}"
            : null;
    }
}
