using System.Text.Json;
using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>The texts that scripts say: a page in another language than English brings them, by their English.</summary>
internal static class ScriptTexts
{
    // The holes that a script fills.
    private static readonly string N0 = "{0}", N1 = "{1}", N2 = "{2}", N3 = "{3}";

    /// <summary>Numbers of which a language may speak in different ways.</summary>
    private static readonly long[] Counts = [.. Enumerable.Range(0, 121), 1_000, 1_000_000];

    internal static IReadOnlyList<Said> All { get; } =
    [
        "A needle can break: wear glasses, and count the pieces before you go on. Stay with a machine that runs.",
        $"All hoopings are sewn; {N0} is still ahead, from pressing to sewing down.",
        $"All names are sewn; {N0} is still ahead, from pressing to sewing down.", "All of it",
        $"Along the flat cloth from its cut left end, on its lower edge; on the line {N0} above the middle of the strip.",
        $"Along the flat cloth from its cut left end, on its lower edge; on the line {N0} below the middle of the strip.",
        $"Along the flat cloth from its cut left end; on the line {N0} above the middle of the strip.",
        $"Along the flat cloth from its cut left end; on the line {N0} below the middle of the strip.", "At the machine",
        "Before each start see that the hoop can travel its whole field without hitting anything. Start slowly.", "Close",
        "Done, next", "Give the length that it came out at.", "Go on with the clock", "Go to",
        "Guide the cloth beside the foot, never before the needle.", $"Hooping {N0}", $"Hooping {N0} as it lies in the hoop: {N1}",
        $"Hooping {N0} of {N1}", $"Hooping {N0}, {N1},", "How it is sewn", "It is not sewn after all", "It is on a scrap",
        $"It was not logged ({N0}).", "It was not logged: the worktable does not answer. Try again.",
        "Keep fingers, hair, sleeves and cords away from the needle and everything that moves.", "Laying it out", "Log its length",
        $"Make them under {N0}; then what is sewn can be marked here.", $"Mark {N0}, plan {N1}.", "Marks", "Next part",
        "Nothing unusual.", "One after the other", "One moment: the marks are being set out again.", "Pause", "Play",
        $"Play hooping {N0}", $"Round {N0}", $"Run {N0} of {N1}", "Spoiled, and the strip is cut", "Spoiled: sew it again",
        "Start slowly.", "Start the clock", "Stop the clock",
        "Switch the machine off to change a needle, to thread it, or to clear a jam.", "Take care", "That was the last one.",
        "The files to sew from are not made yet.", $"The garment. {N0}", "The hoop moves by itself, and farther than the needle.",
        "The marks are set out again: look at them, and press once more.",
        "The needle path in the out folder is not the one shown here: the plan has changed since. Make the files again before you sew.",
        "The worktable does not answer. Is its computer awake? What you said before is logged.",
        "The worktable was started again under a new address: open the one shown in its window.",
        "There is no needle path of this hooping in the out folder: the plan has changed since. Make the files again before you sew.",
        "There is nothing to sew yet", "They are made at the worktable, under “print”.", "This is the last one.",
        "This view was taken back. Ask for a new code at the worktable.", "Thread and cloth", "Watch for", "What to key in",
        "When all is sewn", "Your machine’s manual, local rules and people trained for it come before anything here.", "a note",
        "a remark", $"about {N0} at the machine ({N1})", $"about {N0} by hand", "again", "alignment mark", "all rounds",
        $"and {N0} more", $"and {N0} more: come closer to see them", $"and {N0} more: find them above the strip", "apart", "cloth",
        $"cloth {N0}", "cm", "counting", "done", "end", "from where the last one ended", $"from {N0} to {N1} on the flat cloth",
        "hooping", $"hooping {N0}", "inches", "inside", "is long", "it came out at", "it could not be fetched: choose it again",
        "it took at the machine", "it took by hand", "its first word ended at", "its second began at", "join", "jump", "keep clear",
        "key in", "large i", "large o", "left mark", "letters", "lock stitch", "logging it", "mark on the sheet you sewed from",
        "marks", "min", "minutes at the machine", "minutes by hand", "mm", "more to say of it", "must come out at", "names",
        "needle", "next ›", "no less, no more", "no such name on the strips", "note", "number", "on", "one", "one moment",
        "other side", "place", "print", "right mark", $"round {N0}", "row", "run", $"run {N0}", "running stitch", "satin",
        "save the needle path of this hooping", "sewn", "sewn, and no longer asked for", "small L",
        $"start mark, from the cut left end of cloth {N0}", "start mark, from the cut left end of the cloth",
        "stop, change the thread", "strip", "takes", "the heading of a group", "the work by hand", $"then {N0} {N1}",
        $"then {N0} {N1}, on round {N2}", "this hooping", "this run", "thread", "thread in the cloth’s colour", "travel", "trim",
        "underlay", "undo", "what it is", "width", "zero", $"{N0} and {N1}",
        $"{N0} came out at {N1} mm on a scrap: that is logged, and it is still to sew.",
        $"{N0} came out at {N1} mm: that is logged.", $"{N0} counts as not sewn.",
        $"{N0} has one length less: that on a scrap counts no longer.", $"{N0} is logged as sewn.",
        $"{N0} is not {N1} after all, and nor is what comes after it.", $"{N0} is to be sewn again where it was.",
        $"{N0} is to be sewn on a piece of its own, {N1} long on the cloth.", $"{N0} is to be sewn on a piece of its own.",
        $"{N0} is {N1}", $"{N0} is {N1}, and what comes before it is done too.", $"{N0} min", $"{N0} mm", $"{N0} of cloth {N1}",
        $"{N0} of {N1}", $"{N0} of {N1}, round {N2}", $"{N0} s",
        $"{N0} still to sew: {N1}, and {N2} up to the last stitch at the hem.", $"{N0} stitches a second", $"{N0} stitches, {N1}",
        $"{N0} to {N1} mm", $"{N0}, from {N1} to {N2} on the flat cloth", $"{N0}, round {N1}", $"{N0}, the machine’s own",
        $"{N0}. {N1}: round {N2}", $"{N0}: sewn ✓", $"{N0}: to be sewn again", $"{N0}\u00a0cm", $"{N0}\u00a0in", $"{N0}\u00a0mm",
        "‹ back", "✓ done", "✓ sewn",
    ];

    internal static IReadOnlyList<Func<long, Said>> Counted { get; } =
    [
        n => Said.Plural(n, "One name", $"{N0} names"),
        n => Said.Plural(n, $"{N0} name", $"{N0} names"),
        n => Said.Plural(n, $"{N0} name on the table, on the flat cloth from {N1} to {N2}", $"{N0} names on the table, on the flat cloth from {N1} to {N2}"),
        n => Said.Plural(n, $"{N0} name on the table, round {N1} on the flat cloth from {N2} to {N3}", $"{N0} names on the table, round {N1} on the flat cloth from {N2} to {N3}"),
        n => Said.Plural(n, $"{N1} of {N0} name sewn", $"{N1} of {N0} names sewn"),
    ];

    /// <summary>For the page; nothing where it is in English.</summary>
    public static string Element => Language.Now is not { } language ? ""
        : $"<script type=\"application/json\" id=\"said\">{Json(language)}</script>";

    internal static string KeyOf(Func<long, Said> counted) => $"{counted(1).English}|{counted(2).English}";

    private static string Json(Language language)
    {
        var texts = All.ToDictionary(t => t.English, object (t) => t.ToString());
        foreach (var counted in Counted)
        {
            var forms = new Dictionary<string, string>();
            foreach (long count in Counts)
            {
                forms.TryAdd(language.PluralOf(count), counted(count).ToString());
            }

            texts[KeyOf(counted)] = forms;
        }

        return JsonSerializer.Serialize(new { texts, decimalSign = language.Culture.NumberFormat.NumberDecimalSeparator });
    }
}
