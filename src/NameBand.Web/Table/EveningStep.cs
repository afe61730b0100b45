using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using NameBand.Output;
using NameBand.PlanFile;

namespace NameBand.Web.Table;

/// <summary>One of the steps of a first evening, from a list to the machine.</summary>
/// <param name="Address">Its own, below that of the page.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Says">What it came to so far; empty: nothing yet.</param>
/// <param name="IsDone">As the job's folder has it: no step keeps anything of its own.</param>
internal sealed record EveningStep(string Address, Said Name, Said Says, bool IsDone)
{
    public const string List = "list", Questions = "questions", Edge = "edge", Workshop = "workshop", Plan = "plan", Proofs = "proofs",
    Files = "files";

    private const string WishKey = "plan.wish";

    /// <summary>All of them in their order, as they stand.</summary>
    public static ImmutableArray<EveningStep> Of(Worktable table, Beginning beginning)
    {
        var now = table.Now;
        var rows = now.HasJobFile ? now.Rows : beginning.Heard()?.Names;
        // While it is laid out anew nothing is known, and what was done stays done.
        bool isLaying = now is { HasJobFile: true, IsLaying: true };
        bool isRead = rows is not null || isLaying;
        int waiting = rows is null ? 0 : AlikeRows.Of(rows).Sum(k => k.Rows.Length);
        int asked = Asked(now, beginning);
        bool isPlanned = now is { IsLaying: false, Laid: not null };
        int all = isPlanned ? ReadProofs.OfList(now.Plan!).Count() : 0,
        unread = isPlanned ? ReadProofs.Unread(table.Folder, now.Plan!).Length : 0;
        bool isMade = isPlanned && IsMade(table);
        return
        [
            new(List, "the list", rows is not null ? Words.Count(People(rows), "person", "people") : "", isRead),
            new(Questions, "questions", waiting + asked > 0 ? (Said)$"{waiting + asked} open" : rows is not null ? "none open" : "",
                isRead && waiting + asked == 0),
            new(Edge, "the edge", isPlanned ? (Said)$"{Words.Metres(now.Plan!.Hem.EdgeLengthMm)} m" : "",
                now.HasJobFile && (now.Job is not null || isLaying)),
            new(Workshop, "your machine", "", IsToldOfMachine(table)),
            new(Plan, "the plan", isPlanned && IsChosen(now) ? (Said)$"{Words.Mm(now.Plan!.LetterHeightMm)} mm high" : "",
                (isPlanned || isLaying) && IsChosen(now)),
            new(Proofs, "proofs", all > 0 ? unread == 0 ? "all read" : (Said)$"{all - unread} of {all} read" : "", all > 0 && unread == 0),
            new(Files, "files", "", isMade),
        ];
    }

    /// <summary>The first that is not done; the last where all are.</summary>
    public static EveningStep Next(ImmutableArray<EveningStep> steps) => steps.FirstOrDefault(s => !s.IsDone) ?? steps[^1];

    /// <summary>The wish of the plan that was taken stands in the job.</summary>
    public static JobEdit Chosen(PlanWish wish) => JobEdit.Text(WishKey, wish switch
    {
        PlanWish.FewestHours => "fewestHours",
        PlanWish.Soonest => "soonest",
        PlanWish.BiggestLetters => "biggestLetters",
        _ => "asSet",
    });

    private static bool IsChosen(TableSnapshot now) => JobEditing.ValueOf(now.JobFile.Bytes.AsSpan(), WishKey) is not null;

    private static int People(NameList rows) => rows.Rows.Count(r => r.Outcome is RowOutcome.Placed or RowOutcome.Held);

    /// <summary>Columns of which it is not known what they mean.</summary>
    private static int Asked(TableSnapshot now, Beginning beginning) =>
        (now.HasJobFile ? now.Problems : beginning.Heard()?.Problems ?? []).Count(AskedColumns.IsAsked);

    private static bool IsToldOfMachine(Worktable table) => table.WorkshopTold() is not null
        || JobEditing.ValueOf(table.Now.JobFile.Bytes.AsSpan(), "hoop.along") is not null
        || JobEditing.ValueOf(table.Now.JobFile.Bytes.AsSpan(), "letters.sizes") is not null;

    /// <summary>The files to sew from are those of the plan on the table.</summary>
    public static bool IsMade(Worktable table) => table.Now is { IsLaying: false, Plan: { } plan }
        && PlanOverview.Read(Path.Combine(table.Folder, OutFolder.Name)).Value is { } made && made.Mark == SheetMarks.Of(plan);
}
