using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Spelling;
using NameBand.Names;

namespace NameBand.MachineLetters;

/// <summary>Names the machine can sew as they are, and those that it cannot, each with the spelling to offer its owner.</summary>
/// <param name="Problems">For each held name: what is lacking and the lines for corrections.csv that would settle it.</param>
internal sealed record SpelledNames(ImmutableArray<Name> Names, ImmutableArray<HeldRow> Held, ImmutableArray<Problem> Problems);

/// <summary>
/// Sorts names by what the machine can sew. A nearest spelling is offered and never taken; marks are added by hand where she says so,
/// for all names or for this one.
/// </summary>
internal static class MachineSpelling
{
    /// <param name="corrections">As read for the same job: the lines offered are lines of that file.</param>
    /// <param name="isByHand">Whether the marks of a row are added by hand; a row that is to be kept as it is needs no such word.</param>
    /// <param name="otherWay">What can sew the rest of the names beside this machine's letters, as job.json has it.</param>
    public static SpelledNames Check(
        NameList list, Corrections corrections, Func<string, bool> has, Func<RowRef, bool>? isByHand = null, string otherWay = "traced")
    {
        Said another =
            $"\"ways\": [\"machineLetters\", \"{otherWay}\"] in job.json, and all that the machine cannot sew is {(otherWay == "traced" ? (Said)"traced" : "sewn from needle paths")} beside it";
        var keys = new PressedKeys(has);
        var rows = list.Rows.ToDictionary(r => r.Row);
        var sewable = ImmutableArray.CreateBuilder<Name>();
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        var problems = ImmutableArray.CreateBuilder<Problem>();
        foreach (var name in list.Names)
        {
            var lacking = NearestSpelling.Lacking(name.Text, has);
            bool isForMarks = lacking.Count > 0 && keys.CanSew(name.Text);
            var row = rows.GetValueOrDefault(name.Row);
            if (lacking.Count == 0 || (isForMarks && (row?.Decided == Decision.Keep || isByHand?.Invoke(name.Row) == true)))
            {
                sewable.Add(name);
                continue;
            }

            string? nearest = NearestSpelling.Find(name.Text, has);
            string letters = string.Join(", ", lacking.Select(l => $"“{PlainText.Short(l)}”"));
            Said offer = nearest is null ? "no spelling near enough is known" : (Said)$"the nearest it can sew is “{nearest}”";
            var where = new Where(name.Row.List, name.Row.Line, Name: name.Text);
            Said? asked = nearest is null
                ? null : Line(name, row, new Answer(Decision.Change, nearest, ((Said)"agreed with its owner").English), corrections);
            if (isForMarks)
            {
                held.Add(new HeldRow(
                    name.Row, $"the machine has no {letters}; kept as it is, its marks are added by hand; {offer}, if its owner agrees")
                {
                    Offer = nearest ?? "",
                    IsForMarks = true,
                });
                problems.Add(Problem.NeedsPerson(
                    where, $"The machine has no {letters}. Its plain letters can be sewn and the marks added by hand: the spelling stays.",
                    $"To sew it so, {Line(name, row, Kept(name, row), corrections)} · Or let it go another way: {another}."
                    + $"{(nearest is null ? "" : (Said)$" · Or ask its owner. If it may be written “{nearest}”, {asked}")}"));
                continue;
            }

            held.Add(new HeldRow(name.Row, $"the machine has no {letters}; {offer}. Ask its owner") { Offer = nearest ?? "" });
            problems.Add(Problem.NeedsPerson(
                where, $"The machine has no {letters}; {offer}.",
                $"Let it go another way: {another}. · Or ask its owner{(nearest is null
                    ? " how to write the name in the machine’s letters, and add the answer to corrections.csv as a change."
                    : (Said)$". If it may be written so, {asked}")}"));
        }

        return new SpelledNames(sewable.ToImmutable(), held.ToImmutable(), problems.ToImmutable());
    }

    /// <summary>What the machine has: the letters job.json gives, those of the alphabet, and a blank; not those found lacking.</summary>
    internal static Func<string, bool> Has(LettersSettings settings, MeasuredAlphabets? alphabets)
    {
        var have = Letters.Of(settings.Has).Append(Letters.Blank)
            .Concat(alphabets?.BySize.SelectMany(a => a.Letters.Keys) ?? [])
            .Except(alphabets?.BySize.SelectMany(a => a.Lacking) ?? [], StringComparer.Ordinal)
            .ToHashSet(StringComparer.Ordinal);
        return have.Contains;
    }

    private readonly record struct Answer(Decision Decision, string Text, string Why);

    /// <summary>One decision that settles all names which lack nothing but marks; null where there are no two of them.</summary>
    /// <param name="held">As <see cref="Check"/> held them.</param>
    public static Problem? AllAtOnce(ImmutableArray<HeldRow> held) => held.Count(h => h.IsForMarks) is var count and > 1
        ? Problem.NeedsPerson(
            new Where(JobReader.FileName, Key: LettersKeys.Lacking.Path),
            $"{count.ToString(CultureInfo.InvariantCulture)} names lack nothing but marks that can be added by hand, one to two minutes each. "
            + $"The spelling stays, so nobody need be asked.",
            "For all of them at once: write \"lacking\": \"byHand\" into “letters” of job.json. Or decide name by name.")
        : null;

    /// <summary>Kept as it is to be sewn now.</summary>
    private static Answer Kept(Name name, ListedRow? row) =>
        new(Decision.Keep, name.Text == (row?.Was ?? name.Text) ? "" : name.Text, ((Said)"marks by hand").English);

    /// <summary>What to do with the line that says it; like any decision it is for what the row answers to whether it may be
    /// shown.</summary>
    private static Said Line(Name name, ListedRow? row, Answer answer, Corrections corrections)
    {
        var decision = new RowDecision(name.Row, row?.Was ?? name.Text, answer.Decision, answer.Text, answer.Why)
        {
            Details = row?.DetailsPrint ?? "",
            Show = row?.Show ?? "",
        };
        string line = CorrectionLines.Line(decision, corrections);
        return row is { DecidedIn: > 0 }
            ? (Said)$"put this line in the place of line {row.DecidedIn} of {Corrections.FileName}: {line}"
            : $"add this line to {Corrections.FileName}: {line}";
    }
}
