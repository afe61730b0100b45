using NameBand.Job;

namespace NameBand.Lettering;

/// <summary>How a name stands beside others: what its group says of it, and what is wished for it alone.</summary>
/// <param name="HeightFactor">
/// Its letter height as a multiple of the job's. The lettered name's ink and pieces are drawn at that many mm already.
/// </param>
/// <param name="Face">Name of the face chosen for it; null: the job's.</param>
/// <param name="Block">Names of a lower block come before those of a higher one.</param>
/// <param name="OwnRounds">0: on rounds with the others; else only with names of the same number.</param>
/// <param name="IsHeading">Sewn before its group's names, and no name of the list.</param>
public sealed record Standing(double HeightFactor = 1, string? Face = null, int Block = 0, int OwnRounds = 0, bool IsHeading = false)
{
    public static Standing Usual { get; } = new();

    /// <summary>Name of the group, or null.</summary>
    public string? Group { get; init; }

    /// <summary>As it stands with what is wished for it alone.</summary>
    /// <param name="face">Name of the face it is lettered in.</param>
    public Standing Wished(NameWish? wish, string face) => wish is not { IsOfLetters: true } ? this
        : this with { HeightFactor = HeightFactor * wish.HeightFactor, Face = wish.Face is null ? Face : face };
}
