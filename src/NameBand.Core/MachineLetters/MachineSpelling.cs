using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;
using NameBand.MachineLetters.Spelling;
using NameBand.Names;

namespace NameBand.MachineLetters;

/// <summary>Names the machine can sew as they are, and those that it cannot, each with the spelling to offer its owner.</summary>
/// <param name="Problems">For each held name: what is lacking and the line to add to corrections.csv if its owner agrees.</param>
public sealed record SpelledNames(ImmutableArray<Name> Names, ImmutableArray<HeldRow> Held, ImmutableArray<Problem> Problems);

/// <summary>Sorts names by what the machine can sew. A nearest spelling is offered and never taken.</summary>
public static class MachineSpelling
{
    /// <param name="corrections">As read for the same job: the lines offered are lines of that file.</param>
    public static SpelledNames Check(NameList list, Corrections corrections, Func<string, bool> has)
    {
        var rows = list.Rows.ToDictionary(r => r.Row);
        var sewable = ImmutableArray.CreateBuilder<Name>();
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        var problems = ImmutableArray.CreateBuilder<Problem>();
        foreach (var name in list.Names)
        {
            var lacking = NearestSpelling.Lacking(name.Text, has);
            if (lacking.Count == 0)
            {
                sewable.Add(name);
                continue;
            }

            string? nearest = NearestSpelling.Find(name.Text, has);
            string letters = string.Join(", ", lacking.Select(l => $"“{PlainText.Short(l)}”"));
            string offer = nearest is null ? "no spelling near enough is known" : $"the nearest it can sew is “{nearest}”";
            held.Add(new HeldRow(name.Row, $"the machine has no {letters}; {offer}. Ask its owner") { Offer = nearest ?? "" });
            problems.Add(Problem.NeedsPerson(
                new Where(name.Row.List, name.Row.Line, Name: name.Text),
                $"The machine has no {letters}; {offer}.",
                nearest is null
                    ? "Ask its owner how to write the name in the machine’s letters, and add the answer to corrections.csv as a change."
                    : $"Ask its owner. If it may be written so, {Line(name, nearest, rows.GetValueOrDefault(name.Row), corrections)}"));
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

    /// <summary>What to do with the line that says it; like any decision it is for what the row answers to whether it may be shown.</summary>
    private static string Line(Name name, string nearest, ListedRow? row, Corrections corrections)
    {
        var decision = new RowDecision(name.Row, row?.Was ?? name.Text, Decision.Change, nearest, "agreed with its owner")
        {
            Details = row?.DetailsPrint ?? "",
            Show = row?.Show ?? "",
        };
        string how = row is { DecidedIn: > 0 }
            ? FormattableString.Invariant($"put this line in the place of line {row.DecidedIn} of {Corrections.FileName}")
            : $"add this line to {Corrections.FileName}";
        return $"{how}: {CorrectionLines.Line(decision, corrections)}";
    }
}
