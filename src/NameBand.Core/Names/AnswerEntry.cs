using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Names;

/// <summary>A name whose line of approvals.csv is written anew.</summary>
/// <param name="State">As it stands there now.</param>
internal sealed record EnteredAnswer(ListedRow Row, ApprovalState State, WebAnswer Web);

/// <summary>Answers that came back, as they go into approvals.csv.</summary>
/// <param name="Content">The whole file anew, to be saved.</param>
/// <param name="Entered">Names of which something new was heard.</param>
internal sealed record EnteredAnswers(KeptFile Content, ImmutableArray<EnteredAnswer> Entered);

/// <summary>
/// Enters answers into approvals.csv. A no is always entered and never taken back; what contradicts another answer, or what stood
/// there, and
/// what cannot be read, is entered as not clear and asked about. Answers that were heard already change nothing: what the maker
/// has written since, stands.
/// </summary>
internal sealed class AnswerEntry
{
    private readonly ApprovalsEditing _file;
    private readonly Dictionary<RowRef, ApprovalLine> _lineOf;
    private readonly List<Problem> _problems = [];
    private readonly List<EnteredAnswer> _entered = [];

    private AnswerEntry(ApprovalsEditing file, Dictionary<RowRef, ApprovalLine> lineOf) => (_file, _lineOf) = (file, lineOf);

    /// <param name="by">The day until which owners could answer; null: none was set.</param>
    public static Result<EnteredAnswers> Of(string jobFolder, NameList list, AddressBook book, OwnerAnswers answers, DateOnly? by)
    {
        var file = ApprovalsEditing.Open(jobFolder);
        if (file.Value is not { } open)
        {
            return Result.Fail<EnteredAnswers>([.. file.Problems]);
        }

        var passedOver = ImmutableArray.CreateBuilder<Problem>();
        var entry = new AnswerEntry(open, Approvals.Match(ApprovalsFile.Read(jobFolder).Lines, list.Rows, passedOver));
        var owners = new AnswerOwners(list, book);
        var heard = new Dictionary<RowRef, (ListedRow Row, List<OwnerAnswer> Answers)>();
        foreach (var answer in answers.All)
        {
            var owner = owners.Of(answer);
            foreach (var (row, said) in entry.Told(answer, owner))
            {
                heard.TryAdd(row.Row, (row, []));
                heard[row.Row].Answers.Add(said);
            }
        }

        foreach (var (row, said) in heard.Values.OrderBy(h => h.Row.Row.List, StringComparer.Ordinal).ThenBy(h => h.Row.Row.Line))
        {
            entry.Enter(row, said, by);
        }

        return Result.Of(new EnteredAnswers(open.Content(), [.. entry._entered]), entry._problems);
    }

    /// <summary>What an answer says of which rows: of several that it may be about, a no may be meant by each.</summary>
    private IEnumerable<(ListedRow Row, OwnerAnswer Answer)> Told(OwnerAnswer answer, AnswerOwner owner)
    {
        if (owner.Rows.Length == 1)
        {
            bool isOther = owner.IsOtherName && answer.State == ApprovalState.Agreed;
            if (owner.IsFromElsewhere)
            {
                _problems.Add(new Problem(
                    answer.Web == WebAnswer.Yes ? Severity.NeedsPerson : Severity.Note,
                    answer.Where with { Name = PlainText.Short(owner.Rows[0].Text, 80) },
                    $"This comes from another address than the list has for this name."
                        + $"{(answer.Web == WebAnswer.Yes ? (Said)" Its yes to the web waits for you." : "")}",
                    answer.Web == WebAnswer.Yes
                    ? $"Ask, and write yes or no under “{ApprovalsFile.WebColumn}” in {ApprovalsFile.FileName}." : ""));
            }

            return [(owner.Rows[0], answer with
            {
                State = isOther ? ApprovalState.Unclear : answer.State,
                Text = isOther ? answer.Name : answer.Text,
                Web = owner.IsFromElsewhere && answer.Web == WebAnswer.Yes ? WebAnswer.Unclear : answer.Web,
            })];
        }

        Said says = answer.State == ApprovalState.No ? " It says no." : "";
        if (owner.Rows.IsEmpty)
        {
            _problems.Add(Problem.NeedsPerson(
                answer.Where,
                (answer.Name.Length > 0
                ? (Said)$"“{PlainText.Short(answer.Name, 80)}” is in no list." : "The address in this line is in no list.") + says,
                "See whose answer it is, and mend the line or take it out."));
            return [];
        }

        Said names = Wording.List([.. owner.Rows.Take(4).Select(r => $"“{PlainText.Short(r.Text, 80)}” ({r.Row})")]);
        _problems.Add(Problem.NeedsPerson(
            answer.Where, $"This answer may be of {names}; it is not clear whose it is.{says}",
                "Write name and address as the list has them, or take the line out."));
        bool mayBeNo = answer.State is ApprovalState.No or ApprovalState.Unclear || answer.Web is WebAnswer.No or WebAnswer.Unclear;
        return mayBeNo
            ? owner.Rows.Select(r => (r, answer with
            {
                State = answer.State is ApprovalState.No or ApprovalState.Unclear ? ApprovalState.Unclear : ApprovalState.NotAsked,
                Text = "",
                Web = answer.Web is WebAnswer.No or WebAnswer.Unclear ? WebAnswer.Unclear : WebAnswer.None,
            }))
            : [];
    }

    private void Enter(ListedRow row, List<OwnerAnswer> answers, DateOnly? by)
    {
        string print = Print(answers);
        var line = _lineOf.GetValueOrDefault(row.Row);
        if (line?.Heard == print)
        {
            return;
        }

        var said = answers.Where(a => a.State != ApprovalState.NotAsked).ToList();
        var (now, last) = Judged(said);
        var before = line?.State ?? ApprovalState.NotAsked;
        var state = Settled(before, line?.Text ?? "", now, last?.Text ?? "");
        var web = answers.Max(a => a.Web);
        Ask(row, said, (before, now, state), by);
        if (line is null)
        {
            _file.Add(row);
        }

        int at = line?.FileLine ?? 0;
        var webBefore = WebAnswers.Read(line is null ? "" : _file.Get(at, ApprovalsFile.WebColumn));
        _file.Set(at, "state", ApprovalsFile.Word(state));
        if (last is not null && state == now)
        {
            _file.Set(at, "text", state is ApprovalState.ChangeWished or ApprovalState.Unclear ? last.Text : "");
            _file.Set(at, "date", last.Date);
        }

        // A no to the web is never taken back by an answer, as none to the garment is.
        if (web != WebAnswer.None && webBefore != WebAnswer.No)
        {
            _file.Set(at, ApprovalsFile.WebColumn, web switch { WebAnswer.Yes => "yes", WebAnswer.No => "no", _ => "unclear" });
        }

        _file.Set(at, ApprovalsFile.HeardColumn, print);
        _entered.Add(new EnteredAnswer(row, state, webBefore == WebAnswer.No ? WebAnswer.No : web));
    }

    /// <summary>A no outweighs all; two that differ leave open what holds.</summary>
    private static (ApprovalState State, OwnerAnswer? Last) Judged(List<OwnerAnswer> said) =>
        said.FindLast(a => a.State == ApprovalState.No) is { } no ? (ApprovalState.No, no)
        : said.Count == 0 ? (ApprovalState.NotAsked, null)
        : said.Select(a => (a.State, a.Text)).Distinct().Count() == 1 ? (said[^1].State, said[^1])
        : (ApprovalState.Unclear, said[^1]);

    private static ApprovalState Settled(ApprovalState before, string textBefore, ApprovalState now, string text) => (before, now) switch
    {
        (_, ApprovalState.NotAsked) => before,
        (ApprovalState.No, _) or (_, ApprovalState.No) => ApprovalState.No,
        (ApprovalState.NotAsked or ApprovalState.Asked or ApprovalState.Unclear, _) => now,
        _ when before == now && (now != ApprovalState.ChangeWished || text == textBefore) => before,
        _ => ApprovalState.Unclear,
    };

    private void Ask(
        ListedRow row, List<OwnerAnswer> said, (ApprovalState Before, ApprovalState Now, ApprovalState Settled) states, DateOnly? by)
    {
        if (said.Count == 0)
        {
            return;
        }

        string name = PlainText.Short(row.Text, 80);
        var last = said.Find(a => a.State == states.Now) ?? said[^1];
        var where = last.Where with { Name = name };
        Said mend = $"Ask its owner, and write what holds under “state” in {ApprovalsFile.FileName}";
        string Word(ApprovalState state) => ApprovalsFile.Word(state);
        bool stoodThere = states.Before is ApprovalState.Agreed or ApprovalState.ChangeWished or ApprovalState.No;
        if (said.Select(a => (a.State, a.Text)).Distinct().Count() > 1)
        {
            Said lines = Wording.List([.. said.Take(4).Select(a => $"“{Word(a.State)}” in {a.Where}")]);
            _problems.Add(Problem.NeedsPerson(
                where, $"Answered more than once, and not alike: {lines}.{(states.Now == ApprovalState.No ? (Said)" The no counts." : "")}",
                states.Now == ApprovalState.No ? "Ask its owner if in doubt." : (Said)($"{mend}; until then the name is held.")));
        }
        else if (states.Now == ApprovalState.Unclear)
        {
            _problems.Add(Problem.NeedsPerson(
                where, last.Text.Length > 0 && last.Text == last.Name
                ? (Said)$"Agreed, and the name is written “{PlainText.Short(last.Text, 80)}”."
                    : "This is none of agreed, change wished and no, or it contradicts itself.",
                $"Read it. {mend}; until then the name is held."));
        }
        else if (stoodThere && (states.Before != states.Now || states.Settled == ApprovalState.Unclear))
        {
            _problems.Add(Problem.NeedsPerson(
                where, $"In {ApprovalsFile.FileName} stood “{Word(states.Before)}”, and this says “{Word(states.Now)}”."
                    + $"{(states.Settled == ApprovalState.No ? (Said)" The no counts." : "")}",
                states.Settled == ApprovalState.No
                ? $"If the no is a mistake, write what holds under “state” in {ApprovalsFile.FileName}."
                : (Said)($"{mend}; until then the name is held.")));
        }

        if (by is { } day && last.Day is { } came && came > day)
        {
            _problems.Add(Problem.Note(
                where, $"It came on {came:yyyy-MM-dd}, after the day that was set; it counts all the same."));
        }
    }

    /// <summary>The same for the same answers in any order; holds nothing from which an address could be read.</summary>
    private static string Print(IEnumerable<OwnerAnswer> answers)
    {
        string all = string.Join('\u0001', answers.Select(a => a.Says).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        return "h" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all))[..4]);
    }
}
