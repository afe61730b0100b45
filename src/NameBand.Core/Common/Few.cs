namespace NameBand.Common;

/// <summary>How many of many are named before the rest is only counted.</summary>
internal static class Few
{
    /// <summary>Eight names of twenty letters fill two lines of a terminal; the proofs and plan.json show all of them.</summary>
    public const int InNote = 8;

    /// <summary>Three tell what kind of thing it is and where to look, in a message of one line.</summary>
    public const int Examples = 3;
}
