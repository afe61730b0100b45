using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>What a person says of how long a typed name came out, written into lengths.csv.</summary>
internal static class LengthMarking
{
    /// <summary>A length farther from the stated range than so many times its half is not of that name.</summary>
    private const double MostHalves = 3;

    /// <summary>A name sewn on a scrap: nothing is logged.</summary>
    public static (SewingEntry[] Lines, Problem? Why) OnScrap(SewingWord word, PlanOverview plan)
    {
        int number = word.Names!.Value.First;
        return ([], plan.Names.Any(n => n.Number == number) ? null : Problem.CannotUse(
            new Where(OutPaths.Plan), $"There is no typed name {Sign(number)} in the plan.",
            "Look at the number beside the name on the sheet."));
    }

    /// <summary>The last length told of a name no longer counts; null where none was told.</summary>
    public static MeasuredName? TakeBack(string jobFolder, SewingWord word, PlanOverview plan)
    {
        int number = word.Names!.Value.First;
        string? told = plan.Names.FirstOrDefault(n => n.Number == number) is { } name
            ? SewnLengthsEdit.TakeBack(jobFolder, number, name.Text, word.IsScrap) : null;
        return told is null ? null : new MeasuredName(number, told, word.IsScrap) { IsTakenBack = true };
    }

    /// <summary>That there was no length of it on a scrap.</summary>
    public static Problem NoScrap(SewingWord word) => Problem.CannotUse(
        new Where(SewnLengths.FileName), $"No length of {Sign(word.Names!.Value.First)} on a scrap is logged.",
            "Look at the number beside the name on the sheet.");

    /// <summary>What was told of its length; null where nothing was.</summary>
    public static MeasuredName? Told(SewingWord word) => word.LengthMm is { } mm
        ? new MeasuredName(word.Names!.Value.First, mm.ToString("0.##", CultureInfo.InvariantCulture), word.IsScrap) : null;

    /// <summary>Why it cannot be written down; null where it was.</summary>
    public static Problem? Write(string jobFolder, string outFolder, SewingWord word, PlanOverview plan)
    {
        int number = word.Names!.Value.First;
        var name = plan.Names.First(n => n.Number == number);
        var where = new Where(OutPaths.KeyInTable, Name: name.Text);
        var sheet = CsvFile.Read(outFolder, OutPaths.KeyInTable);
        var problems = new List<Problem>();
        if (sheet.Value is not { } table
            || SheetColumns.Find(
                table, ["order", "expected_mm", "least_mm", "most_mm", "feed_mm", "size_mm", "gap_mm"], 7, OutPaths.KeyInTable, problems)
                is not { } header)
        {
            return Problem.CannotUse(
                where, "The sheet of this plan cannot be read, so it is not known at which setting the name was keyed.",
                "Run make, and say it again.");
        }

        var rows = table.Rows.Skip(1).Where(r => header.Text(r, "order") == number.ToString(CultureInfo.InvariantCulture)).ToList();
        if (rows.Count != 1)
        {
            return Problem.CannotUse(
                where, rows.Count == 0
                ? (Said)$"{Sign(number)}, “{name.Text}”, is not on the key-in sheet."
                : $"{Sign(number)}, “{name.Text}”, is keyed in {rows.Count} parts, each with a length of its own.",
                $"Copy the lines of its parts from out/{OutPaths.KeyInTable} into {SewnLengths.FileName} and fill in measured_mm.");
        }

        double Mm(string column) => header.Number(rows[0], column, 0, 100_000, problems) ?? 0;
        var (_, isSound) = SewnLengths.Blank(word.Blank, Letters.Of(name.Text), word.LengthMm, new Where(Key: "--blank"), problems);
        if (!isSound)
        {
            return problems[^1];
        }

        double half = Math.Sqrt(Math.Pow((Mm("most_mm") - Mm("least_mm")) / 2, 2) + Math.Pow(Mm("feed_mm"), 2));
        if (Math.Abs(word.LengthMm!.Value - Mm("expected_mm")) > MostHalves * half)
        {
            return Problem.CannotUse(
                where, $"“{PlainText.Short(name.Text)}” was expected to come out {Mm("expected_mm"):0.#} mm long, {half:0.#} mm more or "
                    + $"less, and {word.LengthMm:0.#} mm is too far from that. Nothing was logged.",
                "Check whether it is that name, and measure it from the first letter’s left edge to the last one’s right edge.");
        }

        SewnLengthsEdit.Add(jobFolder, new SewnLength(
            number, name.Text, [.. Letters.Of(name.Text)], word.LengthMm.Value, null, Mm("size_mm"), Mm("gap_mm"), word.IsScrap, 0),
            PlainText.Whole(word.Blank));
        return null;
    }

    private static string Sign(int number) => "n" + number.ToString(CultureInfo.InvariantCulture);
}
