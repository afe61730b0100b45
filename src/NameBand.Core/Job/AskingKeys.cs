using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>The keys of asking the owners of the names; what they mean: docs/asking.md.</summary>
internal static class AskingKeys
{
    public static readonly TextKey AnswerBy = new("asking.answerBy", null, "not said");
    public static readonly WordKey<bool> Silence = new("asking.silence", ("sewn", false), ("leftOut", true));

    public static readonly ImmutableArray<JobKey> All = [AnswerBy, Silence];
}
