using NameBand.Lettering.Faces;
using HbScript = HarfBuzzSharp.Script;

namespace NameBand.Lettering.Shaping;

/// <summary>A stretch of a name that is shaped in one go: one direction, one script, one face.</summary>
/// <param name="Start">In UTF-16 units, as is <paramref name="Length"/>.</param>
/// <param name="Level">Bidi embedding level; odd runs right to left.</param>
internal readonly record struct TextRun(int Start, int Length, byte Level, HbScript Script, Face Face);

/// <summary>The runs of a name in logical order, or the characters for which there is no face.</summary>
internal sealed record Itemised(IReadOnlyList<TextRun> Runs, IReadOnlyList<UnshownSign> Unshown);

/// <summary>A character that keeps a name from being lettered.</summary>
/// <param name="Start">Where it stands in the name, in UTF-16 units.</param>
internal readonly record struct UnshownSign(int Start, string Text, bool IsPicture);
