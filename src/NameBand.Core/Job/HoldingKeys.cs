using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>How cloth is held and hoopings are set in place; what the keys mean: docs/layout.md, what it takes: docs/times.md.</summary>
internal static class HoldingKeys
{
    public static readonly WordKey<FrameHold> Hold = new("hoop.hold", [.. WorkshopWords.Holds])
    {
        Otherwise = "free: the frame’s, else screw; none for traced names, and for machineLetters without letters.hooped",
    };

    public static readonly WordKey<MarkMethod> Marks = new(
        "marks", ("drawn", MarkMethod.Drawn), ("paper", MarkMethod.Paper), ("sewn", MarkMethod.Sewn), ("none", MarkMethod.None))
    {
        Otherwise = "free: what costs least work; none for machineLetters and traced names",
    };

    public static readonly NumberKey DrawnMarks = new("hands.drawnMarksMinutes", StartingValues.DrawnMarksMinutes, 0, 240);
    public static readonly NumberKey PaperMarks = new("hands.paperMarksMinutes", StartingValues.PaperMarksMinutes, 0, 240);

    public static readonly ImmutableArray<JobKey> All = [Hold, Marks, DrawnMarks, PaperMarks];

    /// <summary>How job.json and plan.json name a hold.</summary>
    public static string Word(FrameHold hold) => WorkshopWords.Of(hold);

    public static string Word(MarkMethod marks) => Marks.Choices.First(c => c.Value == marks).Word;

    /// <summary>Null where it is no such word.</summary>
    public static FrameHold? HoldOf(string? word) =>
        Hold.Choices.Where(c => c.Word == word).Select(c => (FrameHold?)c.Value).FirstOrDefault();

    public static MarkMethod? MarksOf(string? word) =>
        Marks.Choices.Where(c => c.Word == word).Select(c => (MarkMethod?)c.Value).FirstOrDefault();
}
