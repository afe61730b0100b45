using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Tests.Hostile;

/// <summary>What became of one hostile input: whether it could be used, and all that was said of it.</summary>
internal readonly record struct Fate(bool Usable, ImmutableArray<Problem> Said);

/// <summary>A kind of file that strangers write and the program reads.</summary>
/// <param name="Seeds">Real files of this kind; an input is one of them, spoilt.</param>
/// <param name="Read">Reads the file as the program does; never throws.</param>
internal sealed record HostileKind(string Name, ImmutableArray<byte[]> Seeds, Func<byte[], Fate> Read)
{
    private const int Small = 4096;

    /// <summary>Makes an input of a real file and another one.</summary>
    public Func<byte[], byte[], Random, byte[]> Spoil { get; init; } = Mutator.Text;

    /// <summary>Whether what cannot be understood is left aside and the rest used, whatever it is.</summary>
    public bool IsAlwaysUsable { get; init; }

    /// <summary>Of the real files those that are small enough to be spoilt quickly, where there are any.</summary>
    public ImmutableArray<byte[]> SmallSeeds => Seeds.Any(s => s.Length <= Small) ? [.. Seeds.Where(s => s.Length <= Small)] : Seeds;

    public byte[] Input(int seed)
    {
        var random = new Random(seed);
        byte[] whole = Seeds[random.Next(Seeds.Length)];
        return Spoil(whole, Seeds[random.Next(Seeds.Length)], random);
    }

    /// <summary>Reads one input and says what is wrong with how it was answered; null when nothing is.</summary>
    public string? Fault(int seed, out bool usable) => FaultOf(Input(seed), out usable);

    /// <inheritdoc cref="Fault"/>
    public string? FaultOf(byte[] input, out bool usable)
    {
        usable = false;
        try
        {
            var fate = Read(input);
            usable = fate.Usable;
            if (!fate.Usable && !fate.Said.Any(p => p.Severity == Severity.CannotUse))
            {
                return "refused without a reason";
            }

            return fate.Said.FirstOrDefault(p => p.Found == "" || (p.Severity != Severity.Note && p.Mend == "")) is { } dumb
                ? $"said nothing useful: {dumb}"
                : null;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return e.ToString();
        }
    }
}
