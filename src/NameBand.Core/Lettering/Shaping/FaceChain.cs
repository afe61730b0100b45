using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Lettering.Faces;
using HbScript = HarfBuzzSharp.Script;

namespace NameBand.Lettering.Shaping;

/// <summary>The chosen face and those that help out, opened when they are first needed.</summary>
internal sealed class FaceChain(Face chosen, FaceShelf shelf)
{
    private readonly Dictionary<string, Face?> _opened = new(StringComparer.Ordinal);
    private readonly Dictionary<HbScript, bool> _patchy = [];
    private readonly List<Problem> _problems = [];

    public Face Chosen { get; } = chosen;

    /// <summary>Faces of the shelf that turned out damaged: notes, since the chosen face may do without them.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>
    /// The first face that has every character of a grapheme cluster, or null. A face that has only a few letters of
    /// a script is asked last.
    /// </summary>
    public Face? For(string cluster, HbScript script)
    {
        bool chosenHas = Covers(Chosen, cluster);
        if (chosenHas && !IsPatchy(script))
        {
            return Chosen;
        }

        bool any = script == HbScript.Common || script == HbScript.Inherited || script == HbScript.Unknown;
        string code = any ? "" : script.ToString();
        foreach (var card in shelf.Chain)
        {
            bool asked = any || card.Scripts.IsEmpty || card.Scripts.Contains(code);
            if (asked && Opened(card) is { } face && Covers(face, cluster))
            {
                return face;
            }
        }

        return chosenHas ? Chosen : null;
    }

    /// <summary>Whether any face of the chain has a character by itself.</summary>
    public bool AnyHas(string character, HbScript script) => For(character, script) is not null;

    /// <summary>
    /// Whether a face can show a cluster as it is, composed or decomposed: the shaper turns one into the other.
    /// Blanks need only a space.
    /// </summary>
    public static bool Covers(Face face, string cluster)
    {
        if (HasAll(face, cluster))
        {
            return true;
        }

        if (cluster.Length == 1 && cluster[0] < 0xC0)
        {
            return false;
        }

        return HasAll(face, cluster.Normalize(NormalizationForm.FormC)) || HasAll(face, cluster.Normalize(NormalizationForm.FormD));
    }

    private static bool HasAll(Face face, string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (!SignKinds.IsIgnorable(rune.Value) && !face.Has(rune.Value) && !HasStandIn(face, rune))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The shaper itself shows any blank by a space, and the no-break hyphen by the hyphen.</summary>
    private static bool HasStandIn(Face face, Rune rune) =>
        (Rune.GetUnicodeCategory(rune) == UnicodeCategory.SpaceSeparator && face.Has(' '))
        || (rune.Value == 0x2011 && face.Has(0x2010));

    private bool IsPatchy(HbScript script)
    {
        if (!_patchy.TryGetValue(script, out bool patchy))
        {
            patchy = ScriptSample.IsPatchy(Chosen, script.ToString());
            _patchy.Add(script, patchy);
        }

        return patchy;
    }

    private Face? Opened(FaceCard card)
    {
        if (_opened.TryGetValue(card.Folder, out var face))
        {
            return face;
        }

        var opened = shelf.OpenToHelpOut(card);
        if (opened.Value is null)
        {
            _problems.AddRange(opened.Problems.Select(p => p with { Severity = Severity.Note }));
        }

        return _opened[card.Folder] = opened.Value;
    }
}
