using System.Text;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Output.Asking;

/// <summary>What stands in one letter.</summary>
/// <param name="Name">As it will be sewn, or a mark to be filled in.</param>
internal sealed record AskedName(string Name, string Picture, Said Place);

/// <summary>The text by which an owner is asked: in plain words, to be put into the maker's own mail or form.</summary>
internal static class AskingLetter
{
    /// <summary>What a mail program or a form fills in.</summary>
    public static AskedName ToFillIn { get; } = new("{name}", "{picture}", Said.Plain("{place}"));

    public static string Text(BandJob job, AskedName asked)
    {
        string title = PlainText.OneLine(job.Title);
        bool isLeftOut = job.Asking.SilenceLeavesOut;
        Said answer, silence;
        if (job.Asking.AnswerBy is { } by)
        {
            answer = $"Please answer by {InWords(by)} with one of these:";
            silence = isLeftOut ? (Said)$"If we hear nothing from you by {InWords(by)}, your name is left out."
                : $"If we hear nothing from you by {InWords(by)}, your name is sewn as it stands above.";
        }
        else
        {
            answer = "Please answer as soon as you can with one of these:";
            silence = isLeftOut ? "If we hear nothing from you, your name is left out."
                : "If we hear nothing from you, your name is sewn as it stands above.";
        }

        var text = new StringBuilder();
        foreach (var part in new Said[]
        {
            "Hello,",
            $"thank you for supporting “{title}”. Your name is to be stitched into it. It will read:",
            Said.Plain("    " + asked.Name),
            $"The picture {asked.Picture} shows it as it will be sewn: the same stitches, in the same colours. Its place: {asked.Place}. "
                + $"Everybody who sees the garment can read it there.",
            answer,
            "    agreed: it is right, letter by letter.\n    change wished: and how it should read.\n    no: my name is not to be sewn.",
            "And a question of its own: may your name be found on a web page about it, with this picture and its place? Yes or no; no answer is a no.",
            $"{silence} You can still say no later, as long as it is not sewn. Your address is used for this letter and is given to nobody.",
            "Thank you.",
        })
        {
            text.Append(part.ToString()).Append("\n\n");
        }

        return text.ToString().TrimEnd() + "\n";
    }

    /// <summary>Such as <c>Tuesday 1 December 2026</c>.</summary>
    public static Said InWords(DateOnly day) => $"{day:dddd d MMMM yyyy}";
}
