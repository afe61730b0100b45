using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Stitching;

/// <summary>What the machine does at a step; the words in the files are these names in small letters.</summary>
public enum NeedleAction : byte
{
    /// <summary>The needle goes down here.</summary>
    Stitch,

    /// <summary>Needle up, the cloth moves here.</summary>
    Jump,

    /// <summary>The thread is cut.</summary>
    Trim,

    /// <summary>The machine waits for the person.</summary>
    Stop,

    /// <summary>Last step.</summary>
    End,
}

/// <summary>What a stitch is for.</summary>
public enum StitchKind : byte
{
    /// <summary>Not a stitch: jump, trim, stop, end.</summary>
    None,

    /// <summary>An alignment mark in the cloth's colour, taken out before pressing.</summary>
    Mark,
    Lock,
    Underlay,
    Travel,
    Satin,
    Running,
}

/// <summary>One step of a needle path. Points are those of the cloth under the needle: a stitch runs from the step before to this
/// one.</summary>
public readonly record struct NeedleStep(NeedleAction Action, StitchKind Kind, Point At);

/// <summary>
/// The ordered needle points of one hooping (or of one name, or of one letter piece). Origin of a hooping's
/// path: left end of its first segment, on its strip's centre line; x to the right along the strip, y up.
/// </summary>
public sealed record NeedlePath(ImmutableArray<NeedleStep> Steps)
{
    public int Stitches => Steps.Count(s => s.Action == NeedleAction.Stitch);

    public int Trims => Steps.Count(s => s.Action == NeedleAction.Trim);

    /// <summary>Runs of jumps after the first one, which only brings the needle to its start.</summary>
    public int Jumps
    {
        get
        {
            int runs = 0;
            for (int i = 0; i < Steps.Length; i++)
            {
                if (Steps[i].Action == NeedleAction.Jump && (i == 0 || Steps[i - 1].Action != NeedleAction.Jump))
                {
                    runs++;
                }
            }

            return Math.Max(0, runs - 1);
        }
    }
}
