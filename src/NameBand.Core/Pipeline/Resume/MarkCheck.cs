using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Output;
using NameBand.PlanFile;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>Holds the mark on the sheet that a hooping was sewn from against the hooping as it is in the plan now.</summary>
internal static class MarkCheck
{
    private static readonly Said Nothing = "Nothing was logged.";

    /// <summary>Other marks that this hooping had: sheets with them are old ones.</summary>
    public static ImmutableArray<string> OldMarks(ImmutableArray<EarlierMark> earlier, PlannedHooping hooping) =>
        [.. earlier.Where(e => e.Hooping == hooping.Number && e.Mark != hooping.Mark).Select(e => e.Mark)];

    /// <summary>Why what was sewn may not be what the plan has now; null where it is, or where nothing speaks against it.</summary>
    public static Problem? Objection(string outFolder, PlanOverview plan, SewingWord word)
    {
        var hooping = plan.Hoopings.First(h => h.Number == word.Hooping);
        var old = OldMarks(EarlierMarks.Read(outFolder), hooping);
        string number = hooping.Number.ToString(CultureInfo.InvariantCulture);
        string said = SheetMarks.AsWritten(word.Mark);
        var where = new Where(OutPaths.Plan);
        if (said.Length == 0)
        {
            return old.IsEmpty ? null : Problem.CannotUse(
                where, $"Hooping {number} has changed since a sheet of it was made with {Marks(old)}, and such a sheet may lie about still. "
                    + $"{Nothing}",
                $"Say the four signs that stand after the word mark on the sheet you sewed from: sewn JOB {number} --mark SIGNS");
        }

        if (said == hooping.Mark)
        {
            return null;
        }

        string shown = PlainText.Short(said, 12);
        string proof = OutPaths.HoopingProof(hooping.Number);
        if (hooping.Mark.Length == 0)
        {
            return Problem.CannotUse(
                where, $"This plan is of an earlier version and its sheets bear no marks, so {shown} is none of them. {Nothing}",
                $"Compare the cloth with {proof}. If they agree, say it without a mark: sewn JOB {number}");
        }

        if (plan.Hoopings.FirstOrDefault(h => h.Mark == said) is { } other)
        {
            string its = other.Number.ToString(CultureInfo.InvariantCulture);
            return Problem.CannotUse(
                where, $"{shown} is the mark of hooping {its}, {Wording.List([.. other.Names.Select(n => $"“{n}”")])}, "
                    + $"and not of hooping {number}. {Nothing}",
                $"If you sewed that one, say so: sewn JOB {its} --mark {said}");
        }

        if (said == plan.Mark)
        {
            return Problem.CannotUse(
                where, $"{shown} is the mark of the whole plan. {Nothing}",
                $"The hooping’s own stands after its number, on its proof and in the packet: sewn JOB {number} --mark SIGNS");
        }

        if (plan.RoundMarks.FirstOrDefault(r => r.Value == said) is { Value: not null, Key: var round })
        {
            return Problem.CannotUse(
                where, $"{shown} is the mark of round {round}, on its proof, and not of hooping {number}. {Nothing}",
                $"The hooping’s own stands after its number, on its proof and in the packet: sewn JOB {number} --mark SIGNS");
        }

        return old.Contains(said)
            ? Problem.CannotUse(
                where, $"The sheet with mark {shown} is an old one: names or places of hooping {number} have changed since; "
                    + $"it has {hooping.Mark} now. {Nothing}",
                $"Compare the cloth with {proof}. If the same names lie in the same places, say: sewn JOB {number} --mark {hooping.Mark}. "
                    + $"If not, put the lists and job.json back as they were and run make, so that the plan has what is on the cloth; "
                    + $"then say it with the old mark.")
            : Problem.CannotUse(
                where, $"No plan that is known of gave hooping {number} the mark {shown}; it has {hooping.Mark} now. {Nothing}",
                $"Read the four signs once more. If they are so, the sheet is an old one, or of another job: "
                    + $"compare the cloth with {proof}. If they agree, say: sewn JOB {number} --mark {hooping.Mark}");
    }

    private static Said Marks(ImmutableArray<string> marks) => marks.Length == 1
        ? (Said)$"the mark {marks[0]}" : $"the marks {Wording.List(marks)}";
}
