using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>What a key is called where it is set. The last words of most keys say it; these need better ones.</summary>
internal static class KeyLabels
{
    private static readonly ImmutableDictionary<string, string> Own = ImmutableDictionary.CreateRange(StringComparer.Ordinal, new Dictionary<string, string>
    {
        ["format"] = "Form of the file",
        ["way"] = "Way onto the cloth",
        ["ways"] = "Ways side by side",
        ["columns.name"] = "Column of names",
        ["columns.leaveOut"] = "Column that asks not to be shown",
        ["columns.hide"] = "Columns in which yes hides the name",
        ["columns.show"] = "Columns in which yes shows the name",
        ["columns.web"] = "Columns in which yes shows the name on the web",
        ["columns.address"] = "Column of addresses",
        ["asking.answerBy"] = "Owners answer by",
        ["asking.silence"] = "A name without an answer is",
        ["columns.ignored"] = "Columns that have nothing to do with it",
        ["hem.closed"] = "The edge goes round and meets itself",
        ["hem.overlap"] = "Cloth for the meeting of the ends",
        ["hem.tolerance"] = "May be off its hem by",
        ["hem.keepClear"] = "Places kept clear",
        ["hem.start"] = "Where the list begins",
        ["hem.centreFront"] = "Centre front lies at",
        ["hem.centreBack"] = "Centre back lies at",
        ["strip.cutWidth"] = "Cut width",
        ["strip.margin"] = "Clear margin inside each edge",
        ["strip.sewn"] = "Names are sewn",
        ["strip.shortening"] = "Part the cloth loses in sewing",
        ["strip.stiffening"] = "Made firm with",
        ["strip.lift"] = "Height above the hem",
        ["moreToCome"] = "More names to come",
        ["strip.keepFree"] = "Kept free for latecomers",
        ["strip.roundStep"] = "From one round to the next",
        ["strip.liesFlat"] = "Part that lies flat of itself",
        ["strip.eased"] = "Part of the whole length that can be eased in",
        ["strip.easeLimit"] = "Part that the gaps may be eased by",
        ["strip.tucks"] = "Tapered tucks take up what easing cannot",
        ["strip.stripsSideBySide"] = "Strips side by side",
        ["strip.lines"] = "Lines of names on a strip",
        ["strip.piece"] = "Longest piece",
        ["strip.join"] = "How pieces are joined",
        ["strip.joinAllowance"] = "Cloth for each join",
        ["strip.joinClear"] = "Clear beside a diagonal join",
        ["strip.closingBlank"] = "Blank where the ends meet",
        ["strip.shape"] = "Cut",
        ["strip.endCloth"] = "Cloth beyond the ends",
        ["strip.side"] = "Side of the garment",
        ["strip.readBy"] = "Upright for",
        ["lettering.least"] = "Least height",
        ["lettering.gap"] = "Least gap between names",
        ["lettering.mostGap"] = "Widest gap between names",
        ["lettering.spread"] = "Spread the names over the round",
        ["lettering.order"] = "Order of the names",
        ["lettering.collation"] = "Language of the alphabetical order",
        ["lettering.agreedFirst"] = "Agreed names first",
        ["sewing.restMayDiffer"] = "What is not sewn yet may differ",
        ["letters.alphabet"] = "File of the measured alphabet",
        ["letters.sizes"] = "Letter heights the machine offers",
        ["letters.spacings"] = "Gaps the machine offers",
        ["letters.gap"] = "The gap it leaves",
        ["letters.has"] = "Letters it has",
        ["letters.holds"] = "Characters it holds at a time",
        ["letters.feed"] = "How the strip runs",
        ["letters.tops"] = "Tops of the letters point to the",
        ["letters.hooped"] = "Hooped, with the machine’s own letters",
        ["letters.mirrored"] = "Sewn as in a mirror",
        ["traced.mirrored"] = "Template as in a mirror",
        ["traced.sewn"] = "Lines are followed",
        ["traced.follow"] = "Which line is followed",
        ["traced.mmPerMinute"] = "Pace, mm of line a minute",
        ["hoop.along"] = "Field along the strip",
        ["hoop.across"] = "Field across the strip",
        ["hoop.spare"] = "Left free at each end of the field",
        ["hoop.hold"] = "How the cloth is held",
        ["marks"] = "Marks of a hooping",
        ["fabric"] = "Cloth",
        ["thread"] = "Needle thread",
        ["stitches.spacing"] = "Distance between stitch lines",
        ["stitches.pullCompensation"] = "Satin reaches past the outline by",
        ["stitches.pullGrowth"] = "Part of that which grows with the stitch",
        ["stitches.pullAcross"] = "Across the strip stitches draw so many times as hard",
        ["stitches.push"] = "Long columns are sewn shorter at each end by",
        ["machine.slowPerMm"] = "Slower for each mm over that",
        ["machine.shortFactor"] = "Time of a short stitch, as a multiple",
        ["machine.names"] = "Machines that sew side by side",
        ["evening"] = "One evening’s sewing",
        ["files.loadMap"] = "Also maps of the load",
        ["files.svg"] = "Also needle paths as drawings (SVG)",
        ["files.program"] = "Also needle paths as programs (ISO 6983-1)",
        ["thanks.width"] = "Width of a thank-you picture",
        ["playback.width"] = "Width of a playback",
        ["playback.seconds"] = "Seconds of a playback",
    });

    public static string Of(JobKeyCard card)
    {
        if (Own.TryGetValue(card.Path, out string? own))
        {
            return own;
        }

        string[] steps = card.Path.Split('.');
        string words = Said(string.Join(' ', steps.Length > 1 ? steps[1..] : steps));
        return char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>A word of job.json as one says it.</summary>
    public static string Said(string word) => word switch
    {
        "true" => "yes",
        "false" => "no",
        "largest" => "as large as fits",
        "asNeeded" => "as many as needed",
        "asManyAsFit" => "as many as fit",
        "needlePath" => "a needle path, for a machine that follows coordinates",
        "machineLetters" => "keyed into the machine’s own letters",
        "traced" => "traced from a template",
        "bestFit" => "as fits best",
        "listed" => "as listed",
        "freeMotion" => "free-motion at the machine",
        "centreline" => "the middle of each stroke",
        "screw" => "in a screwed hoop",
        "clamp" => "in a clamp",
        "magnet" => "by magnets",
        "laid" => "laid on hooped backing",
        "drawn" => "two crosses in pencil",
        "paper" => "a template under the needle",
        _ => string.Concat(word.Select(c => char.IsAsciiLetterUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString())),
    };
}
