using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>What a row answers in one column to whether its name may be shown.</summary>
/// <param name="Column">The column's header as it may be shown, or <see cref="ShowAnswers.Twin"/>.</param>
/// <param name="Says">Fit to be shown and written down: yes, no, empty, one quoted word, or a fingerprint of anything longer.</param>
/// <param name="Hides">Null: it cannot be told.</param>
/// <param name="YesHides">What a yes means there; null: nobody has said.</param>
internal sealed record ShowAnswer(string Column, string Says, bool? Hides, bool? YesHides)
{
    /// <summary>A remark in which such a wish may stand, and no answer to a question.</summary>
    public bool IsRemark { get; init; }
}

/// <summary>How a row's answers stand to those that were written down with a decision.</summary>
internal enum Since
{
    Same,

    /// <summary>Another answer than the decision was made for, and none that takes the name out.</summary>
    Changed,

    /// <summary>A wish not to be shown that the decision did not know of.</summary>
    AsksNot,
}

/// <summary>All that a row answers to whether its name may be shown; a decision belongs to these answers and to no others.</summary>
internal sealed record ShowAnswers(ImmutableArray<ShowAnswer> All)
{
    /// <summary>Stands for a column where a second row says the same but for its answers, and asks not to be shown.</summary>
    public static readonly string Twin = ((Said)"a second row of it").English;

    public const string Empty = "empty";

    private const string NoQuestion = "none";

    // Characters of a word that is repeated: what is longer may tell of a person, and is written as a fingerprint.
    private const int LongestShownCharacters = 20;

    public static ShowAnswers None { get; } = new([]);

    /// <summary>As it is written down in corrections.csv; never empty, so that it differs from nothing written down.</summary>
    public string Text => All.IsEmpty ? NoQuestion : string.Join("; ", All.Select(a => $"{Bare(a.Column)} = {Bare(a.Says)}"));

    /// <summary>What the row itself asks; what stands in a second row of it is another matter.</summary>
    public Wish Wish => Own.Any(a => a.Hides == true) ? Wish.LeaveOut : Own.Any(a => a.Hides is null) ? Wish.Unclear : Wish.Show;

    /// <summary>Whether all that is unclear is what a whole column means.</summary>
    public bool WaitsForColumns =>
        Own.Any(a => a.Hides is null) && Own.Where(a => a.Hides is null).All(a => a.YesHides is null && !a.IsRemark);

    private IEnumerable<ShowAnswer> Own => All.Where(a => a.Column != Twin);

    /// <summary>Why the wish is unclear, in words that hold nothing private; empty where it is not.</summary>
    public Said Question()
    {
        var unclear = Own.Where(a => a.Hides is null).ToList();
        var first = unclear.Find(a => a.YesHides is not null) ?? unclear.Find(a => a.IsRemark) ?? unclear.FirstOrDefault();
        return first switch
        {
            null => "",
            { IsRemark: true } => (Said)$"asked not to be shown? What stands under “{first.Column}” may say so: read it",
            { YesHides: null } => $"asked not to be shown? What an answer under “{first.Column}” means is not known",
            { Says: Empty } => $"asked not to be shown? The column “{first.Column}” is empty",
            _ when first.Says.StartsWith('“') => $"asked not to be shown? The column “{first.Column}” says {first.Says}",
            _ => $"asked not to be shown? The column “{first.Column}” says neither yes nor no",
        };
    }

    /// <summary>An answer in words that can be shown: longer text may be a private remark and goes by its fingerprint.</summary>
    public static string InWords(string cell, bool? yesHides)
    {
        string text = NameText.Clean(cell).Text;
        if (text.Length == 0)
        {
            return Empty;
        }

        if (YesNo.Read(text) is { } answer)
        {
            return (answer, yesHides) switch
            {
                (Answer.Yes, _) or (Answer.Hide, true) or (Answer.Show, false) => "yes",
                (Answer.No, _) or (Answer.Hide, false) or (Answer.Show, true) => "no",
                (Answer.Hide, null) => "hide",
                _ => "show",
            };
        }

        return text.Length <= LongestShownCharacters && text.All(c => char.IsLetter(c) || c == '?')
            ? $"“{text}”"
            : "other d" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Resemblance.Fold(text)))[..4]);
    }

    /// <param name="recorded">What was written down with a decision; empty: nothing was, as in version 0.1.</param>
    public Since Since(string recorded)
    {
        var then = Read(recorded);
        bool isChanged = !ChangedSince(recorded).IsEmpty;
        bool Knew(ShowAnswer now) => then is not null && then.TryGetValue(KeyOf(now.Column), out string? said) && IsSame(said, now);
        return Own.Any(a => a.Hides == true && (isChanged || !Knew(a))) ? Names.Since.AsksNot
            : isChanged ? Names.Since.Changed
            : Names.Since.Same;
    }

    /// <summary>What reads otherwise than when the decision was made, each with both readings.</summary>
    public ImmutableArray<Said> ChangedSince(string recorded)
    {
        var then = Read(recorded);
        var changed = ImmutableArray.CreateBuilder<Said>();
        foreach (var now in All)
        {
            string? said = then?.GetValueOrDefault(KeyOf(now.Column));
            if (now.Column == Twin)
            {
                if (said is null || !IsSame(said, now))
                {
                    changed.Add("another row says the same and asks not to be shown");
                }
            }
            else if (said is not null && !IsSame(said, now))
            {
                changed.Add($"“{now.Column}” said {Shown(said)} when you decided, and now says {now.Says}");
            }
            else if (said is null && then is not null && now.Hides != false)
            {
                changed.Add($"“{now.Column}” was not there when you decided, and now says {now.Says}");
            }
        }

        return changed.ToImmutable();
    }

    private static bool IsSame(string said, ShowAnswer now)
    {
        string then = said.Trim();
        bool isWord = then == Empty || then.StartsWith('“') || then.StartsWith("other ", StringComparison.Ordinal);
        string reading = isWord ? then : InWords(then, now.YesHides);
        return string.Equals(Resemblance.Fold(reading), Resemblance.Fold(Bare(now.Says)), StringComparison.Ordinal);
    }

    private static string Shown(string said) => Common.PlainText.Short(said, 2 * LongestShownCharacters);

    private static Dictionary<string, string>? Read(string recorded)
    {
        if (recorded.Length == 0)
        {
            return null;
        }

        var read = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string part in recorded.Split(';'))
        {
            int at = part.IndexOf('=', StringComparison.Ordinal);
            if (at > 0)
            {
                read.TryAdd(KeyOf(part[..at]), part[(at + 1)..].Trim() is { Length: > 0 } said ? said : Empty);
            }
        }

        return read;
    }

    private static string KeyOf(string column) => HeaderWords.Key(Bare(column)) is { Length: > 0 } key ? key : Bare(column);

    private static string Bare(string text) => text.Replace(';', ' ').Replace('=', ' ').Trim();
}
