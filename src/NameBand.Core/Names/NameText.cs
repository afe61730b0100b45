using System.Collections.Immutable;
using System.Text;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>A name's text as read from a row or from a correction, cleaned, with what was done to it.</summary>
/// <param name="Length">Characters in the raw text.</param>
internal sealed record NameText(string Text, ImmutableArray<Said> Notes, int Length)
{
    /// <summary>Longer text is no name; it is cut before it is worked on, so that nothing can stall on it.</summary>
    public const int Longest = 200;

    // Code units of a text that is too long for a name: enough to know it by, and all that is worked through.
    private const int CutAtUnits = 100;

    public bool IsEmpty => Text.Length == 0;

    public bool IsTooLong => Length > Longest;

    /// <summary>Holds the sign that stands where a character could not be read.</summary>
    public bool IsBroken => Text.Contains('\uFFFD');

    /// <summary>
    /// NFC, every run of blanks one plain blank and none outside, control and invisible characters taken out but for
    /// those a script needs. Letters and their case are never touched.
    /// </summary>
    public static NameText Clean(string raw)
    {
        raw = raw.Trim();
        if (raw.Length > Longest)
        {
            var start = Clean(raw[..(char.IsHighSurrogate(raw[CutAtUnits - 1]) ? CutAtUnits - 1 : CutAtUnits)]);
            return start with { Text = start.Text + "…", Length = raw.Length };
        }

        var removed = new List<int>();
        bool brokenLine = false;
        var codes = new List<int>(raw.Length);
        foreach (var rune in raw.EnumerateRunes())
        {
            if (Invisible.IsBlank(rune.Value))
            {
                brokenLine |= Invisible.IsLineBreak(rune.Value);
                codes.Add(' ');
            }
            else if (rune.Value is >= 0x80 and <= 0x9F)
            {
                // A letter of another encoding that was read wrong; it is asked for and never dropped.
                codes.Add(Rune.ReplacementChar.Value);
            }
            else if (Invisible.IsAlways(rune.Value))
            {
                removed.Add(rune.Value);
            }
            else
            {
                codes.Add(rune.Value);
            }
        }

        var text = new StringBuilder(raw.Length);
        bool blank = false;
        for (int i = 0; i < codes.Count; i++)
        {
            if (codes[i] == ' ')
            {
                blank = text.Length > 0;
            }
            else if (Invisible.IsUseless(codes, i))
            {
                removed.Add(codes[i]);
            }
            else
            {
                text.Append(blank ? " " : "").Append(char.ConvertFromUtf32(codes[i]));
                blank = false;
            }
        }

        return new NameText(text.ToString().Normalize(NormalizationForm.FormC), Told(removed, brokenLine), raw.Length);
    }

    private static ImmutableArray<Said> Told(List<int> removed, bool brokenLine)
    {
        var notes = ImmutableArray.CreateBuilder<Said>();
        if (brokenLine)
        {
            notes.Add("a line break inside the name became a blank");
        }

        if (removed.Count > 0)
        {
            var kinds = removed.Distinct().ToList();
            Said which = Said.Join(", ", [.. kinds.Take(4).Select(Invisible.Describe), .. kinds.Count > 4 ? new[] { Said.Plain("…") } : []]);
            notes.Add(Said.Plural(
                removed.Count, $"{removed.Count} invisible character taken out ({which})",
                $"{removed.Count} invisible characters taken out ({which})"));
        }

        return notes.ToImmutable();
    }
}
