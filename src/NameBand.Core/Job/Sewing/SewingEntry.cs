using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>What a line of the sewing log says; the words in the file are these in small letters.</summary>
public enum SewingDeed
{
    /// <summary>The hooping has been sewn.</summary>
    Sewn,

    /// <summary>It was spoiled and is to be sewn again where it was.</summary>
    Again,

    /// <summary>It was spoiled and is to be sewn again on a piece of its own, to be let into the strip.</summary>
    Patch,

    /// <summary>It had been marked by mistake and is still to be sewn.</summary>
    Mistake,

    /// <summary>Its piece has been measured after sewing and pressing.</summary>
    Measured,

    /// <summary>A step of finishing has been done.</summary>
    Done,

    /// <summary>A step of finishing is still to be done after all.</summary>
    Undone,

    /// <summary>So much of a round lies bare on the garment behind what is sewn.</summary>
    Left,
}

/// <summary>What a line of the sewing log speaks of.</summary>
public enum SewingSubject
{
    /// <summary>A hooping, by its number.</summary>
    Hooping,

    /// <summary>A name that is keyed in or traced, by its number.</summary>
    Name,

    /// <summary>A round that is being finished, by its number; 0 for all of them.</summary>
    Round,
}

/// <summary>One line of the sewing log.</summary>
/// <param name="Hooping">Its number, or that of what <see cref="Of"/> says.</param>
/// <param name="Minutes">Minutes at the machine, from start to last stitch; null when not said.</param>
/// <param name="HandMinutes">Minutes of hooping, setting straight, tearing away and clipping; null when not said.</param>
/// <param name="MeasuredMm">Finished length from the first name's left edge to the last one's right edge; only when measured.</param>
/// <param name="When">Date and time as the person's clock had it, ISO 8601; for people, never computed with.</param>
/// <param name="Path">What else the line belongs to: of a sewn hooping the fingerprint of its needle path, of a measured one its
/// strip where it
/// holds several, of a spoiled one the measured ends that it takes with it, of finishing the step. Often empty.</param>
public sealed record SewingEntry(
    int Hooping, SewingDeed Deed, double? Minutes = null, double? HandMinutes = null, string Machine = "", double? MeasuredMm = null,
    string When = "", string Path = "", string Note = "")
{
    private const string StripMark = "strip ";

    public SewingSubject Of { get; init; }

    private const string ByMark = "by ";

    /// <summary>Who sewed it, where it was said; else empty. It stands before the remark, so that earlier versions read the line
    /// too.</summary>
    public string By => Note.StartsWith(ByMark, StringComparison.Ordinal) && Note.IndexOf(';', StringComparison.Ordinal) is > 0 and var end
        ? Note[ByMark.Length..end] : "";

    /// <summary>The remark of somebody who is named.</summary>
    public static string NoteBy(string person, string note) => $"{ByMark}{person.Replace(';', ',')}; {note}".TrimEnd();

    /// <summary>Which strip of its hooping was measured, from the top; null where it was not said.</summary>
    public int? Strip => Deed == SewingDeed.Measured && Path.StartsWith(StripMark, StringComparison.Ordinal)
        && int.TryParse(Path.AsSpan(StripMark.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int strip) ? strip : null;

    /// <summary>The line's <see cref="Path"/> for a strip of several.</summary>
    public static string OfStrip(int strip) => StripMark + strip.ToString(CultureInfo.InvariantCulture);
}

/// <summary>How much of a round's edge lay bare on the garment.</summary>
/// <param name="Sewn">Numbers of the typed names that were sewn then.</param>
public sealed record BareLength(int Round, double LeftMm, ImmutableArray<int> Sewn);

/// <summary>The good lines of a sewing log in their order, and what was found wrong with the others.</summary>
public sealed record SewingLog(ImmutableArray<SewingEntry> Entries, ImmutableArray<Problem> Problems)
{
    public static SewingLog Empty { get; } = new([], []);

    /// <summary>What was said of names that are keyed in or traced: the same log with their numbers in the place of hoopings.</summary>
    public SewingLog OfNames => _names ?? Empty;

    /// <summary>Which steps of finishing are done.</summary>
    public FinishedSteps Finishing { get; private init; } = FinishedSteps.None;

    /// <summary>What was measured to lie bare, the oldest first; without what was measured up to a name that is not sewn after
    /// all.</summary>
    public ImmutableArray<BareLength> Bare { get; private init; } = [];

    private readonly SewingLog? _names;

    /// <summary>The log of all its lines, whatever they speak of.</summary>
    public static SewingLog Of(IReadOnlyCollection<SewingEntry> lines, ImmutableArray<Problem> problems) =>
        new([.. lines.Where(e => e.Of == SewingSubject.Hooping)], problems, [.. lines.Where(e => e.Of == SewingSubject.Name)])
        {
            Finishing = FinishedSteps.After(lines.Where(e => e.Of == SewingSubject.Round && e.Deed != SewingDeed.Left)),
            Bare = BareLengths(lines),
        };

    private static ImmutableArray<BareLength> BareLengths(IReadOnlyCollection<SewingEntry> lines)
    {
        var names = new List<SewingEntry>();
        var found = ImmutableArray.CreateBuilder<BareLength>();
        foreach (var line in lines)
        {
            if (line.Of == SewingSubject.Name)
            {
                names.Add(line);
            }
            else if (line is { Deed: SewingDeed.Left, MeasuredMm: { } mm })
            {
                found.Add(new BareLength(line.Hooping, mm, [.. new SewingLog(names.ToImmutableArray(), []).Sewn]));
            }
        }

        // A name that is unpicked since is no longer what the measure begins at.
        var sewn = new SewingLog(names.ToImmutableArray(), []).Sewn.ToHashSet();
        return [.. found.Where(b => b.Sewn.All(sewn.Contains))];
    }

    private SewingLog(ImmutableArray<SewingEntry> entries, ImmutableArray<Problem> problems, ImmutableArray<SewingEntry> names)
        : this(entries, problems) => _names = names.IsEmpty ? null : new SewingLog(names, []);

    /// <summary>The last line that says whether the hooping is sewn; null when it never was spoken of.</summary>
    public SewingEntry? Last(int hooping) =>
        Entries.LastOrDefault(e => e.Hooping == hooping && e.Deed != SewingDeed.Measured);

    public bool IsSewn(int hooping) => Last(hooping)?.Deed == SewingDeed.Sewn;

    /// <summary>Numbers of the hoopings that are sewn, ascending.</summary>
    public ImmutableArray<int> Sewn =>
        [.. Entries.Select(e => e.Hooping).Distinct().Where(IsSewn).Order()];

    /// <summary>Numbers of the hoopings that were spoiled and not yet sewn again, ascending.</summary>
    public ImmutableArray<int> Spoiled =>
        [.. Entries.Select(e => e.Hooping).Distinct().Where(h => Last(h)?.Deed is SewingDeed.Again or SewingDeed.Patch).Order()];

    /// <summary>
    /// What was measured, of each hooping the newest first. What was measured before a hooping was spoiled, or was said to be a
    /// mistake, does not count for what is sewn in its place.
    /// </summary>
    public ImmutableArray<SewingEntry> Measured =>
    [
        .. Entries.GroupBy(e => e.Hooping).SelectMany(h => h.Reverse()
            .TakeWhile(e => e.Deed is SewingDeed.Sewn or SewingDeed.Measured).Where(e => e.Deed == SewingDeed.Measured)),
    ];

    /// <summary>
    /// Numbers of the hoopings in the order in which they were sewn: one that was spoiled stands there for each time it
    /// was sewn, one that was said twice without that only once.
    /// </summary>
    public ImmutableArray<int> Sewings
    {
        get
        {
            var sewings = new List<int>();
            var lying = new HashSet<int>();
            foreach (var entry in Entries.Where(e => e.Deed != SewingDeed.Measured))
            {
                if (entry.Deed == SewingDeed.Sewn && lying.Add(entry.Hooping))
                {
                    sewings.Add(entry.Hooping);
                }
                else if (entry.Deed != SewingDeed.Sewn && lying.Remove(entry.Hooping) && entry.Deed == SewingDeed.Mistake)
                {
                    sewings.RemoveAt(sewings.LastIndexOf(entry.Hooping));
                }
            }

            return [.. sewings];
        }
    }

    /// <summary>Numbers of the hoopings that are let into the strip as a piece of their own, sewn or still to be.</summary>
    public ImmutableArray<int> Patched =>
    [
        .. Entries.GroupBy(e => e.Hooping)
            .Where(h => h.Reverse().TakeWhile(e => e.Deed != SewingDeed.Mistake).Any(e => e.Deed == SewingDeed.Patch))
            .Select(h => h.Key).Order(),
    ];

    /// <summary>True when anything was ever sewn: from then on face, height and cloth are settled.</summary>
    public bool HasBegun =>
        (Entries.Any(e => e.Deed == SewingDeed.Sewn) && (Sewn.Length > 0 || Spoiled.Length > 0)) || (_names?.HasBegun ?? false);
}
