namespace NameBand.Common;

/// <summary>The facts of a plan that are judged, each in the room that knows it.</summary>
public enum Fact
{
    /// <summary>Whether the strip of a round meets its hem.</summary>
    Hem,

    /// <summary>Whether the upper edge of a round's strip can be eased.</summary>
    Easing,

    /// <summary>Whether the stitches overwork the cloth.</summary>
    Load,

    /// <summary>Whether letters are too small for thread and needle.</summary>
    Letters,

    /// <summary>Whether anything else waits for an answer.</summary>
    Waiting,
}

public enum VerdictKind
{
    Good,

    /// <summary>Worth knowing; nothing is stopped.</summary>
    Note,

    /// <summary>It cannot be sewn or attached as planned until a person has decided something (exit status 1).</summary>
    NeedsAPerson,
}

/// <summary>What a room finds of a fact; everything that tells it prints <paramref name="Text"/>.</summary>
/// <param name="Round">Null where it is one for the whole plan.</param>
public sealed record Verdict(Fact About, int? Round, VerdictKind Kind, Said Text)
{
    /// <summary>The same as a problem, told with what to do about it.</summary>
    /// <exception cref="InvalidOperationException">It is good, and nothing is to be done: a bug.</exception>
    public Problem Told(Where where, Said mend) => Kind switch
    {
        VerdictKind.Note => Problem.Note(where, Text, mend) with { Judged = this },
        VerdictKind.NeedsAPerson => Problem.NeedsPerson(where, Text, mend) with { Judged = this },
        _ => throw new InvalidOperationException("What is good is no problem."),
    };
}
