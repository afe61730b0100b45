using NameBand.Job;
using NameBand.Output.Asking;

namespace NameBand.Reports;

/// <summary>The text of the letters to the owners, to be looked at before they are written.</summary>
public static class LetterText
{
    /// <summary>With marks for what is each one's own.</summary>
    public static string Of(BandJob job) => AskingLetter.Text(job, AskingLetter.ToFillIn);
}
