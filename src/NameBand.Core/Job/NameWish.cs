using NameBand.Common;

namespace NameBand.Job;

/// <summary>Where along its round a name is pinned: the place of its middle.</summary>
/// <param name="At">From the starting end of the finished round; null: at the middle of the garment's front or back.</param>
/// <param name="IsFront">Where no length is said: the front's middle, else the back's.</param>
public sealed record PinPlace(Length? At, bool IsFront)
{
    public const string FrontWord = "centreFront";
    public const string BackWord = "centreBack";

    /// <summary>For messages.</summary>
    public Said InWords => At is { } at ? at.InMillimetres() : IsFront ? "centre front" : "centre back";
}

/// <summary>What she wishes for a single name: its letters, and where it stands. Everything else gives way to it.</summary>
/// <param name="Name">As it is sewn, or as its row has it.</param>
/// <param name="Line">Row of its list, which tells apart those that are written alike; null: not said.</param>
public sealed record NameWish(string Name, string? List, int? Line)
{
    /// <summary>Its letter height as a multiple of what it would have, 0.3 to 3.</summary>
    public double HeightFactor { get; init; } = 1;

    /// <summary>Null: the face it would have.</summary>
    public string? Face { get; init; }

    /// <summary>The name that it follows; null: not said.</summary>
    public string? After { get; init; }

    /// <summary>The name that it comes before; null: not said.</summary>
    public string? Before { get; init; }

    /// <summary>The round it stands on, 1 being the lowest; null: where its order puts it.</summary>
    public int? Round { get; init; }

    public PinPlace? Pin { get; init; }

    public bool IsOfPlace => After is not null || Before is not null || Round is not null || Pin is not null;

    public bool IsOfLetters => Face is not null || HeightFactor != 1;

    /// <summary>About the same name, wishing nothing.</summary>
    public NameWish Empty => new(Name, List, Line);
}
