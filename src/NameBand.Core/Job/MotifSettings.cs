using NameBand.Common;

namespace NameBand.Job;

/// <summary>What is sewn in the middle of the gaps between names.</summary>
public enum MotifKind
{
    None,
    Dot,
    Diamond,
    SmallStar,

    /// <summary>A character of a face.</summary>
    Letter,
}

/// <param name="Letter">The character, for <see cref="MotifKind.Letter"/>; of a motif that a machine has, what is keyed for it.</param>
/// <param name="Face">Null: the job's face.</param>
public sealed record MotifSettings(MotifKind Kind, string? Letter = null, string? Face = null)
{
    /// <summary>How wide a motif of the machine's own comes out; null: it is one of its letters, or is drawn.</summary>
    public Length? Width { get; init; }

    public static MotifSettings None { get; } = new(MotifKind.None);
}
