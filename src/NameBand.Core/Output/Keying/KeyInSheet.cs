using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.Output.Sheets;

namespace NameBand.Output.Keying;

/// <summary>The key-in sheet to print: for each name what to key, where it starts and how long it must come out.</summary>
public static class KeyInSheet
{
    private const double LeftMm = 14;
    private const double FootMm = 16;
    private const double PartMm = 12;
    private const double NameMm = 5;

    public static void Write(
        Stream stream, Paper paper, string title, StripPlan plan, ImmutableArray<KeyInName> names, SizeStep step, LettersSettings settings)
    {
        using var face = SheetFace.Open();
        string setting = string.Create(CultureInfo.InvariantCulture, $"letters {step.HeightMm:0.##} mm, gap {step.GapMm:0.0} mm");
        using var pages = new SheetPages(stream, paper, $"{title}: key-in sheet", $"{Packet.PaperTitle.WithMark(title, plan)} · {setting}", face);
        var columns = new KeyInColumns(paper.WidthMm - LeftMm);
        pages.Begin();
        double y = Introduction(pages, setting, settings, names);
        int round = 0;
        foreach (var name in names)
        {
            bool shownWhole = IsShownWhole(name);
            double height = (name.Parts.Length * PartMm) + (shownWhole ? 0 : NameMm);
            if (name.Round != round)
            {
                height += 16;
            }

            if (y + height > paper.HeightMm - FootMm)
            {
                pages.Begin();
                y = name.Round == round ? columns.Heading(pages, 16) : 16;
            }

            if (name.Round != round)
            {
                round = name.Round;
                y = Strip(pages, y, plan, round, settings);
                y = columns.Heading(pages, y);
            }

            y = Row(pages, y, name, columns, shownWhole);
        }
    }

    private static double Introduction(SheetPages pages, string setting, LettersSettings settings, ImmutableArray<KeyInName> names)
    {
        double textWidth = pages.Paper.WidthMm - (2 * LeftMm) - FeedDrawing.SizeMm - 6;
        pages.Text(LeftMm, 22, "Key-in sheet", 9);
        double y = pages.Wrapped(LeftMm, 31, textWidth, $"Set the machine to {setting}.", 5);
        foreach (string line in Rules(settings, names))
        {
            y = pages.Wrapped(LeftMm, y + 1, textWidth, line, 3.7);
        }

        FeedDrawing.Draw(pages, pages.Paper.WidthMm - LeftMm - FeedDrawing.SizeMm, 14, settings);
        return Math.Max(y, 14 + FeedDrawing.SizeMm) + 4;
    }

    private static IEnumerable<string> Rules(LettersSettings settings, ImmutableArray<KeyInName> names)
    {
        yield return "Draw all start marks on the flat strip before you sew, measured from its end. ␣ is a blank.";
        yield return "Put the mark under the needle, key in, sew, tick the box. Then measure: if a length falls outside its limits, stop and see why.";
        yield return "If names come to lie off their marks, measure where one ends and let NameBand set the rest out anew (drift.csv).";
        if (names.Any(n => n.Parts.Length > 1))
        {
            yield return settings.KeepsLeadingBlanks
                ? $"The machine holds {settings.Holds} characters: longer names come in parts, each with its own mark."
                : $"The machine holds {settings.Holds} characters and drops a leading blank: longer names come in parts, each with its own mark, and no part begins with a blank.";
        }

        if (settings.ForgetsWhenOff)
        {
            yield return "The machine forgets when it is switched off: finish the name before you stop.";
        }

        if (names.Any(n => n.Parts.Any(p => p.IsEstimated)))
        {
            yield return "~ marks lengths that rest on estimated letters: their limits are wide.";
        }

        yield return ReadMePage.CareInOneLine;
    }

    private static double Strip(SheetPages pages, double y, StripPlan plan, int number, LettersSettings settings)
    {
        var round = plan.Rounds.First(r => r.Number == number);
        bool forward = SewingDirection.FirstLetterFirst(settings);
        string which = plan.Rounds.Length == 1 ? "The strip" : FormattableString.Invariant($"Strip {number} of {plan.Rounds.Length}");
        string text = FormattableString.Invariant(
            $"{which}: {plan.OnClothMm(round.LengthMm):0} mm on flat cloth. Begin at its {(forward ? "left" : "right")} end{Beyond(plan)}.");
        pages.Text(LeftMm, y + 6, text, 5);
        return y + 12;
    }

    /// <summary>What lies beyond the finished end, from which all places on the sheet count.</summary>
    private static string Beyond(StripPlan plan) =>
        plan.Hem.EndTurnInMm > 0 ? FormattableString.Invariant($", where it folds: {plan.Hem.EndTurnInMm:0.0} mm lie beyond, to turn in") : "";

    private static double Row(SheetPages pages, double y, KeyInName name, KeyInColumns columns, bool shownWhole)
    {
        if (!shownWhole)
        {
            pages.Text(LeftMm + 20, y + 4.5, name.Text, 3.7, Ink.Quiet);
            y += NameMm;
        }

        for (int i = 0; i < name.Parts.Length; i++)
        {
            var part = name.Parts[i];
            double baseline = y + 8;
            pages.Box(LeftMm, baseline - 5.5, 6, 6, 0.4);
            if (name.IsSewn)
            {
                pages.Line(LeftMm + 1.2, baseline - 2.5, LeftMm + 2.6, baseline - 0.8, 0.7);
                pages.Line(LeftMm + 2.6, baseline - 0.8, LeftMm + 5, baseline - 4.6, 0.7);
            }

            if (i == 0)
            {
                pages.TextRight(LeftMm + 17, baseline, name.Turn.ToString(CultureInfo.InvariantCulture), 5, Ink.Quiet);
            }

            string keyed = Letters.Shown(part.Keyed);
            pages.Text(LeftMm + 20, baseline, keyed, pages.Fitting(keyed, 7.5, columns.KeyedWidthMm(LeftMm + 20)));
            columns.Fill(pages, baseline, part);
            y += PartMm;
        }

        pages.Line(LeftMm, y, pages.Paper.WidthMm - LeftMm, y, 0.1, Ink.Faint);
        return y;
    }

    /// <summary>A name keyed at one go in its own order needs no second line to say what it is.</summary>
    private static bool IsShownWhole(KeyInName name) => name.Parts.Length == 1 && name.Parts[0].Keyed == name.Text;
}
