using System.Collections.Concurrent;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using NameBand.Lettering;

namespace NameBand.Web.Strip;

/// <summary>
/// Numbers for the shapes of names and their pieces that stay the same from layout to layout: a shape is free of height,
/// so a browser that has drawn a name once needs nothing more to draw it larger. Safe to use from several threads.
/// </summary>
internal sealed class ShapeShelf
{
    private readonly ConditionalWeakTable<LetteredName, object> _known = [];
    private readonly ConcurrentDictionary<string, int> _names = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, int> _pieces = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<int, LetterPiece> _byNumber = [];
    private int _last;

    /// <summary>Equal for names of equal pieces at equal places.</summary>
    public int NumberOf(LetteredName name) =>
        (int)_known.GetValue(name, n => _names.GetOrAdd(Key(n), _ => Interlocked.Increment(ref _last)));

    public int NumberOf(LetterPiece piece)
    {
        int number = _pieces.GetOrAdd(piece.Key, _ => Interlocked.Increment(ref _last));
        _byNumber.TryAdd(number, piece);
        return number;
    }

    public LetterPiece? Piece(int number) => _byNumber.GetValueOrDefault(number);

    private static string Key(LetteredName name)
    {
        var key = new StringBuilder();
        foreach (var placed in name.Pieces)
        {
            key.Append(placed.Piece.Key).Append('@').Append(CultureInfo.InvariantCulture, $"{placed.At.XMm:R},{placed.At.YMm:R}")
                .Append('\n');
        }

        return key.ToString();
    }
}
