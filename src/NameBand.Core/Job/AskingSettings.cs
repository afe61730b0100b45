namespace NameBand.Job;

/// <summary>How owners are asked.</summary>
/// <param name="AnswerBy">The day until which they can answer; null when the job does not say.</param>
/// <param name="SilenceLeavesOut">What is not answered by then is left out; else it is sewn as it stands in the list.</param>
public sealed record AskingSettings(DateOnly? AnswerBy = null, bool SilenceLeavesOut = false);
