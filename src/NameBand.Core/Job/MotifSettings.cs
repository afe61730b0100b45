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

/// <param name="Letter">The character, for <see cref="MotifKind.Letter"/>.</param>
/// <param name="Face">Null: the job's face.</param>
public sealed record MotifSettings(MotifKind Kind, string? Letter = null, string? Face = null)
{
    public static MotifSettings None { get; } = new(MotifKind.None);
}
