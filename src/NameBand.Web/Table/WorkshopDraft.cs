using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>The answers about the workshop while they are being given.</summary>
public sealed class WorkshopDraft
{
    private WorkshopAnswers? _told;

    public MachineSkill Skill { get; set; }

    public string Evening { get; set; } = "";

    /// <summary>Heights of its own letters, parted by a semicolon.</summary>
    public string Heights { get; set; } = "";

    /// <summary>With one empty line to fill in, at least.</summary>
    public List<FrameDraft> Frames { get; } = [];

    /// <summary>People but the first, with one empty line to fill in, at least.</summary>
    public List<HelperDraft> Helpers { get; } = [];

    /// <summary>Nothing was told so far, or it is told otherwise here.</summary>
    public bool IsNew => _told is null || Answers.DiffersFrom(_told);

    public WorkshopAnswers Answers => new(
        Skill, [.. Frames.Select(f => new FrameAnswer(f.Along.Trim(), f.Across.Trim())).Where(f => f.Along.Length + f.Across.Length > 0)],
        Evening.Trim())
    {
        Helpers =
        [
            .. Helpers.Select(h => new HelperAnswer(h.Name.Trim(), h.Evenings.Trim(), h.Does))
                .Where(h => h.Name.Length + h.Evenings.Length > 0),
        ],
        LetterHeights = [.. Heights.Split([';', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)],
    };

    public void TakeUp(WorkshopAnswers? told)
    {
        _told = told;
        var shown = told ?? WorkshopAnswers.None;
        (Skill, Evening, Heights) = (shown.Skill, shown.Evening, string.Join("; ", shown.LetterHeights));
        Frames.Clear();
        Frames.AddRange(shown.Frames.Select(f => new FrameDraft { Along = f.Along, Across = f.Across }));
        if (Frames.Count == 0)
        {
            Frames.Add(new FrameDraft());
        }

        Helpers.Clear();
        Helpers.AddRange(shown.Helpers.Select(h => new HelperDraft { Name = h.Name, Evenings = h.Evenings, Does = h.Does }));
        if (Helpers.Count == 0)
        {
            Helpers.Add(new HelperDraft());
        }
    }

    /// <summary>What is half said, in the words of the questions; what is whole but wrong is for the reader to say.</summary>
    /// <param name="isBegun">The job may tell itself how high the letters are.</param>
    public ImmutableArray<Problem> Doubts(bool isBegun)
    {
        if (!isBegun && Answers is { HasLetters: true, LetterHeights.IsEmpty: true })
        {
            return [Problem.CannotUse(
                new Where(), "It is not said how high the machine’s letters are.",
                "Sew a capital in each of its sizes, measure it on the cloth, and write the heights down, such as 9 mm; 6 mm.")];
        }

        if (Answers.Helpers.Any(h => h.Name.Length == 0))
        {
            return [Problem.CannotUse(
                new Where(), "Evenings are given of somebody without a name.", "Write who it is, such as Jo, or clear the line.")];
        }

        var half = Answers.Frames.FirstOrDefault(f => f.Along.Length == 0 || f.Across.Length == 0);
        return half is null
            ? [] : [Problem.CannotUse(
                new Where(), "Of one frame only one length is given.",
                "Give both lengths of the field that its needle can reach, or clear both.")];
    }
}

/// <summary>The field of a frame while it is typed.</summary>
public sealed class FrameDraft
{
    public string Along { get; set; } = "";

    public string Across { get; set; } = "";
}

/// <summary>Somebody who helps, while it is typed.</summary>
public sealed class HelperDraft
{
    public string Name { get; set; } = "";

    public string Evenings { get; set; } = "";

    public string Does { get; set; } = "";
}
