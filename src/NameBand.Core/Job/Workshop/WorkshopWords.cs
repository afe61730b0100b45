using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>The words of workshop.json, and of what plan.json keeps of it.</summary>
internal static class WorkshopWords
{
    public static readonly ImmutableArray<(string Word, MachineTakes Value)> Takings =
        [("coordinates", MachineTakes.Coordinates), ("keys", MachineTakes.Keys), ("hands", MachineTakes.Hands)];

    public static readonly ImmutableArray<(string Word, FrameHold Value)> Holds =
    [
        ("screw", FrameHold.Screw), ("clamp", FrameHold.Clamp), ("magnet", FrameHold.Magnet), ("laid", FrameHold.Laid),
        ("none", FrameHold.None),
    ];

    public static string Of(FrameHold hold) => Holds.First(h => h.Value == hold).Word;

    public static string Of(MachineTakes takes) => Takings.First(t => t.Value == takes).Word;
}
