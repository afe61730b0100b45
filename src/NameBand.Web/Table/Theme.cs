using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>A part of the sentence with the keys that belong to it: together the themes hold every key of job.json.</summary>
/// <param name="Heading">What is set here, in a maker's words.</param>
/// <param name="Main">Keys shown at once.</param>
/// <param name="More">Beginnings of the other keys, shown on demand.</param>
public sealed record Theme(string Name, Said Heading, ImmutableArray<string> Main, ImmutableArray<string> More)
{
    public static ImmutableArray<Theme> All { get; } =
    [
        new("names", "The names and their lists", ["lettering.order"],
            ["title", "moreToCome", "asking.", "plan.wish", "plan.readWhileWorn", "columns.", "lists", "groups", "names",
            "lettering.collation", "lettering.agreedFirst"]),
        new("rounds", "The rounds and the strip", ["strip.rounds"], ["strip."]),
        new("hem", "The edge the names go round", [], ["hem."]),
        new("face", "The letters", ["lettering.face"],
            ["lettering.motif", "lettering.spread", "lettering.gap", "lettering.mostGap", "sewing."]),
        new("height", "How high the letters are", ["lettering.height", "lettering.least"], ["lettering.gap", "lettering.spread"]),
        new("cloth", "The cloth", ["fabric"], ["stitches.", "strip.shortening"]),
        new("hoop", "The hoop", ["hoop.along", "hoop.across"], ["hoop.", "marks", "letters.hooped"]),
        new("machine", "The time at the machine", ["machine.stitchesPerMinute"],
            ["machine.", "evening", "finishBy", "letters.secondsPerKey", "letters.positioningMinutes"]),
        new("hands", "The time by hand", ["hands.hoopingMinutes"], ["hands."]),
        new("thread", "Thread and what to buy", ["thread", "shop.spool"], ["colours.", "bobbin.", "shop.", "prices."]),
        new("way", "How the names get onto the cloth", ["way"],
            ["ways", "letters.", "traced.", "files.", "program.", "thanks.", "playback.", "format"]),
    ];

    public static Theme Of(string name) => All.First(t => t.Name == name);

    /// <summary>Where a key can be set; what no theme names belongs to the last.</summary>
    public static Theme OfKey(string path) =>
        All.FirstOrDefault(t => t.Main.Contains(path)) ?? All.FirstOrDefault(t => t.Names(path)) ?? All[^1];

    /// <summary>Whether this theme itself says that a key belongs to it.</summary>
    public bool Names(string path) => Main.Contains(path) || More.Any(m => path.StartsWith(m, StringComparison.Ordinal));

    public IEnumerable<JobKeyCard> MainCards => Main.Select(m => JobKeyCard.All.First(c => c.Path == m));

    public IEnumerable<JobKeyCard> MoreCards => JobKeyCard.All.Where(c => !Main.Contains(c.Path) && IsMore(c.Path));

    private bool IsMore(string path) => Names(path) || (this == All[^1] && !All.Any(t => t.Names(path)));
}
