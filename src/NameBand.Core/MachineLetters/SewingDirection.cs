using NameBand.Job;

namespace NameBand.MachineLetters;

/// <summary>
/// Which end of the strip goes under the needle first. The cloth carries what is sewn away, so the next stitch lands
/// on the other side of the last: sewing goes against the feed. Whether that is the way the name reads depends on how
/// the letters lie, and a mirror turns it round.
/// </summary>
public static class SewingDirection
{
    /// <summary>True when the first letter is sewn first, and the strip's left end leads; false when the last letter is.</summary>
    public static bool FirstLetterFirst(LettersSettings letters)
    {
        // As the maker sits: x to her right, y away from her.
        var (feedX, feedY) = letters.Feed switch
        {
            StripFeed.Lengthwise => (0, 1),
            StripFeed.FromRight => (-1, 0),
            StripFeed.FromLeft => (1, 0),
            _ => throw new ArgumentOutOfRangeException(nameof(letters), letters.Feed, "No such feed."),
        };

        // Letters are upright on a strip that lies across; lengthwise their tops point to one side.
        var (topX, topY) = letters.Feed == StripFeed.Lengthwise ? (letters.TopsRight ? 1 : -1, 0) : (0, 1);

        // One reads to the right of where the tops point.
        var (readX, readY) = (topY, -topX);
        bool along = (-feedX * readX) + (-feedY * readY) > 0;
        return along != letters.Mirrored;
    }
}
