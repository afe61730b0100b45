using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Spelling;

/// <summary>Which letters are pressed for a name: the machine's own, and plain ones in the place of those that get their marks by
/// hand.</summary>
internal sealed class PressedKeys(Func<string, bool> has)
{
    private readonly ConcurrentDictionary<string, MarkedLetter?> _marked = new(StringComparer.Ordinal);

    /// <summary>Null where the letter is pressed as it is, and where it cannot be had at all.</summary>
    public MarkedLetter? MarkedOf(string letter) => _marked.GetOrAdd(letter, l => MarksByHand.Of(l, has));

    /// <summary>Letters in the order in which the name reads.</summary>
    public IReadOnlyList<string> Of(string name) => [.. Letters.Of(name).Select(Pressed)];

    public IReadOnlyList<string> Of(IEnumerable<string> letters) => [.. letters.Select(Pressed)];

    /// <summary>Its letters that get marks by hand, each as often as it comes.</summary>
    public ImmutableArray<MarkedLetter> MarksOf(string name) => [.. Letters.Of(name).Select(MarkedOf).OfType<MarkedLetter>()];

    /// <summary>Whether a name can be sewn as it is written, with marks by hand where there are any.</summary>
    public bool CanSew(string name) => Letters.Of(name).All(l => has(l) || MarkedOf(l) is not null);

    private string Pressed(string letter) => MarkedOf(letter)?.Plain ?? letter;
}
