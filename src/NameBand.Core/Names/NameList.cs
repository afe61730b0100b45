using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>What became of a row; the words in the files are <c>placed</c>, <c>merged</c>, <c>held</c>, <c>leftOut</c>.</summary>
public enum RowOutcome
{
    Placed,
    Merged,
    Held,
    LeftOut,
}

/// <summary>A name as its owner writes it, checked: NFC, no outer or doubled blanks, no control characters.</summary>
public sealed record Name
{
    internal Name(string text, RowRef row)
    {
        Text = text;
        Row = row;
    }

    public string Text { get; }

    public RowRef Row { get; }

    /// <summary>Name of its group in job.json; null for none.</summary>
    public string? Group { get; init; }

    /// <summary>Its owner has not agreed to it yet, and the job wants such names last.</summary>
    public bool IsPlannedLast { get; init; }

    /// <summary>A person has decided that it is sewn as it is, whatever it costs.</summary>
    public bool IsKept { get; init; }

    /// <summary>What is wished for it alone; null: nothing.</summary>
    public NameWish? Wish { get; init; }
}

/// <summary>What a held row waits for: not every decision settles each.</summary>
public enum HeldFor
{
    /// <summary>A doubt about the row, which a person can settle by any decision.</summary>
    Doubt,

    /// <summary>Nothing but what the row answers to whether its name may be shown.</summary>
    Wish,

    /// <summary>Nothing but what a column means: it is said once, for all rows, in job.json.</summary>
    Column,

    /// <summary>What its owner answered: it is settled in approvals.csv.</summary>
    Answer,

    /// <summary>Letters that cannot be sewn: only another spelling can be.</summary>
    Letters,

    /// <summary>Letters of which only the marks are lacking: kept, they are added by hand.</summary>
    Marks,

    /// <summary>More room than there is: a shorter form or another face may do.</summary>
    Size,
}

/// <summary>One data row of a list and what became of it.</summary>
/// <param name="Text">The name as it will be sewn, or as it stood in the row when it will not.</param>
/// <param name="Reason">Why, in words for the maker; empty for a plain placed row. Never holds a private column.</param>
/// <param name="Notes">Small changes made on the way, such as invisible characters removed.</param>
public sealed record ListedRow(RowRef Row, RowOutcome Outcome, string Text, Said Reason, ImmutableArray<Said> Notes)
{
    /// <summary>Name of its group in job.json; null for none.</summary>
    public string? Group { get; init; }

    /// <summary>Fingerprint of what stands beside the name; empty when nothing does.</summary>
    public string DetailsPrint { get; init; } = "";

    /// <summary>The name as it stands in the row, whatever will be sewn.</summary>
    public string Was { get; init; } = "";

    /// <summary>The name as it could be sewn instead, where the row is held for its letters and such a form is known; never taken
    /// unasked.</summary>
    public string Offer { get; init; } = "";

    /// <summary>Where it is held for its size: it fits when its own letters are so many times as high as they would be without a wish;
    /// null: none is known.</summary>
    public double? FitsAtFactor { get; init; }

    /// <summary>What kind of thing it waits for, where it is held; a sewn name keeps it where its row would be held.</summary>
    public HeldFor HeldFor { get; init; }

    /// <summary>What the row answers to whether its name may be shown, as it is written down with a decision.</summary>
    public string Show { get; init; } = "";

    /// <summary>What the row answers to whether its name may be shown on the web; a question of its own.</summary>
    public WebAnswer Web { get; init; }

    /// <summary>It is left out because it asks for it itself, and not by a decision.</summary>
    public bool AsksNotToBeShown { get; init; }

    /// <summary>Line in corrections.csv that is about this row; 0: none.</summary>
    public int DecidedIn { get; init; }

    /// <summary>What that line says.</summary>
    public Decision Decided { get; init; }

    /// <summary>That line was decided for another name or another answer than the row has now.</summary>
    public bool IsDecidedForElse { get; init; }

    /// <summary>Where else it is sewn, as that line says; empty: in this job or nowhere.</summary>
    public string SewnIn { get; init; } = "";

    /// <summary>The name as it would be sewn if nothing held it: the decided text, else the row's own.</summary>
    public string WouldBe { get; init; } = "";

    /// <summary>Whether it waits for a line in corrections.csv: what a column means is said elsewhere.</summary>
    public bool WaitsForDecision =>
        (Outcome == RowOutcome.Held && HeldFor is not (HeldFor.Column or HeldFor.Answer))
        || (Outcome == RowOutcome.Placed && HeldFor == HeldFor.Wish);

    public ListedRow HeldBecause(HeldFor what, Said reason, string offer = "") =>
        this with { Outcome = RowOutcome.Held, HeldFor = what, Reason = reason, Offer = offer };
}

/// <summary>Every data row of every list, in order of arrival, and the names to sew, in the same order.</summary>
public sealed record NameList(ImmutableArray<ListedRow> Rows, ImmutableArray<Name> Names);
