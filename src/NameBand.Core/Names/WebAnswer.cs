namespace NameBand.Names;

/// <summary>What is answered to “may we show your name on the web?”; of several answers the last of these counts.</summary>
public enum WebAnswer
{
    /// <summary>Nothing: that is as good as a no.</summary>
    None,

    Yes,

    /// <summary>Neither yes nor no: shown only when a person has read it.</summary>
    Unclear,

    No,
}

internal static class WebAnswers
{
    public static WebAnswer Read(string cell, bool yesHides = false) => YesNo.Hides(cell, yesHides) switch
    {
        true => WebAnswer.No,
        false => WebAnswer.Yes,
        null => NameText.Clean(cell).IsEmpty ? WebAnswer.None : WebAnswer.Unclear,
    };
}
