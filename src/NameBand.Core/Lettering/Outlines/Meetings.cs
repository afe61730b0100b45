using NameBand.Lettering.Fonts;
using SkiaSharp;

namespace NameBand.Lettering.Outlines;

/// <summary>
/// Counts how often the lines of glyphs lie over one another, before the geometry kernel is let at them: its time grows far
/// faster than that count, so that a glyph made of itself many times over would keep it busy for minutes.
/// </summary>
internal static class Meetings
{
    /// <summary>
    /// Pairs of lines whose boxes meet that are let through whatever they belong to. The most in any of the faces that travel
    /// with the program is 938, in a glyph of 952 points; the kernel took a tenth of a second for 6,000 in a glyph made of
    /// itself, and eight seconds for 88,000.
    /// </summary>
    private const int AlwaysLetThrough = 6000;

    /// <summary>The same for each point: long names in joined scripts and rough outlines have many lines, but each meets few
    /// others.</summary>
    private const int PerPoint = 4;

    /// <exception cref="FontFault">There are too many.</exception>
    public static void Check(IReadOnlyList<SKPath> glyphs)
    {
        long points = glyphs.Sum(g => (long)g.PointCount);
        long most = Math.Max(AlwaysLetThrough, PerPoint * points);
        if (points * points / 2 > most && AreMoreThan(most, Boxes(glyphs)))
        {
            throw new FontFault("its outline lies over itself too many times");
        }
    }

    private static bool AreMoreThan(long most, List<SKRect> boxes)
    {
        boxes.Sort((a, b) => a.Left.CompareTo(b.Left));
        long meetings = 0;
        for (int i = 0; i < boxes.Count; i++)
        {
            for (int j = i + 1; j < boxes.Count && boxes[j].Left <= boxes[i].Right; j++)
            {
                if (boxes[j].Top <= boxes[i].Bottom && boxes[j].Bottom >= boxes[i].Top && ++meetings > most)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static List<SKRect> Boxes(IReadOnlyList<SKPath> glyphs)
    {
        var boxes = new List<SKRect>();
        var p = new SKPoint[4];
        foreach (var glyph in glyphs)
        {
            using var verbs = glyph.CreateRawIterator();
            for (var verb = verbs.Next(p); verb != SKPathVerb.Done; verb = verbs.Next(p))
            {
                int points = verb switch { SKPathVerb.Line => 2, SKPathVerb.Quad => 3, SKPathVerb.Cubic => 4, _ => 0 };
                if (points > 0)
                {
                    var used = p.AsSpan(0, points);
                    var box = new SKRect(used[0].X, used[0].Y, used[0].X, used[0].Y);
                    foreach (var at in used)
                    {
                        box = new SKRect(
                            Math.Min(box.Left, at.X), Math.Min(box.Top, at.Y), Math.Max(box.Right, at.X), Math.Max(box.Bottom, at.Y));
                    }

                    boxes.Add(box);
                }
            }
        }

        return boxes;
    }
}
