using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.Output.Sheets;

namespace NameBand.Output.Keying;

/// <summary>The key-in sheet to print: for each name what to key, where it starts and how long it must come out.</summary>
internal static class KeyInSheet
{
    /// <summary>The margin at both sides: wider than the rim that printers leave blank (common practice, no source).</summary>
    public const double LeftMm = 14;

    private const double FootMm = 16; // The foot's line and the rim that printers leave blank.
    // Rows of the sheet: a keyed part with its figures, the whole name above it, what is done by hand below, and the column of numbers.
    private const double PartMm = 14;
    private const double NameMm = 5;
    private const double ByHandMm = 5;
    private const double NumberMm = 22;

    /// <summary>What is keyed is set as large as this, and where it is long in two lines rather than smaller than
    /// <see cref="LeastKeyedMm"/>.</summary>
    private const double KeyedMm = 9;
    private const double LeastKeyedMm = KeyInColumns.FigureMm; // As large as the figures beside it, to be read from 1 m.

    /// <summary>A hooping higher than this part of a page may go over to the next one.</summary>
    private const double KeptTogetherPart = 0.35;
    // Headings of a strip, of a run, the page's upper edge, and the line that says when to set the machine.
    private const double StripMm = 16;
    private const double RunMm = 8.5;
    private const double TopMm = 16;
    private const double SetMm = 8;

    public static void Write(
        Stream stream, Paper paper, BandJob job, StripPlan plan, ImmutableArray<KeyInName> names, bool setsOut = true)
    {
        var (title, settings) = (job.Title, job.Letters);
        using var face = SheetFace.Open();
        SizeStep[] steps = [.. names.Select(n => n.Step).Distinct().OrderByDescending(s => s.HeightMm)];
        Said setting = steps.Length > 1
            ? (Said)$"letters {Wording.List([.. steps.Select(s => (Said)$"{s.HeightMm:0.##}")])} mm"
            : steps.Length == 1 ? Setting(steps[0]) : Setting(new SizeStep(plan.LetterHeightMm, plan.SpacingMm ?? 0));
        using var pages =
            new SheetPages(stream, paper, $"{title}: key-in sheet", $"{Packet.PaperTitle.WithMark(title, plan)} · {setting}", face);
        var columns = new KeyInColumns(paper.WidthMm - LeftMm);
        pages.Begin();
        double y = Introduction(
            pages, steps.Length > 1 ? (Said)$"{setting}, as said before the names" : setting, Rules(settings, names, plan, setsOut), settings);
        var sets = Sets(names, steps.Length > 1);
        var runs = Runs(names).ToList();
        for (int i = 0; i < runs.Count; i++)
        {
            var run = runs[i];
            bool newStrip = i == 0 || runs[i - 1][0].Round != run[0].Round;
            bool newPiece = newStrip || runs[i - 1][0].Ruler != run[0].Ruler || runs[i - 1][0].Line != run[0].Line;
            double head = (newStrip ? StripMm : 0) + RunMm;
            double whole = head + run.Sum(Height);
            double room = paper.HeightMm - FootMm;

            // A short hooping stands whole on a page; a long one, or a run from end to end of a strip, goes on.
            if (y + head + Height(run[0]) > room || (y + whole > room && whole <= KeptTogetherPart * room))
            {
                pages.Begin();
                y = TopMm;
            }

            y = newStrip ? Strip(pages, y, plan, run[0].Round, settings) : y;
            y = columns.Heading(pages, Run(pages, y, plan, run[0], settings, goesOn: false));
            foreach (var name in run)
            {
                if (y + Height(name) > room)
                {
                    pages.Begin();
                    y = columns.Heading(pages, Run(pages, TopMm - RunMm, plan, name, settings, goesOn: true));
                }

                y = sets.Contains(name.Turn) ? Set(pages, y, name.Step) : y;
                y = Row(pages, y, name, columns, newPiece && name == run[0]);
            }
        }

        HandMarks.Draw(pages, ref y, paper.HeightMm - FootMm, names, steps.Select(s => s.HeightMm).DefaultIfEmpty(0).Max());

        double Height(KeyInName name) => (sets.Contains(name.Turn) ? SetMm : 0) + HeightMm(name, pages, columns);
    }

    private static Said Setting(SizeStep step) => $"letters {step.HeightMm:0.##} mm, gap {step.GapMm:0.0} mm";

    /// <summary>The turns before which the machine is set anew.</summary>
    private static HashSet<int> Sets(ImmutableArray<KeyInName> names, bool areSeveral) =>
        [.. names.Where((n, i) => areSeveral && (i == 0 || names[i - 1].Step != n.Step)).Select(n => n.Turn)];

    private static double Set(SheetPages pages, double y, SizeStep step)
    {
        Said set = $"Set the machine to {Setting(step)}.";
        pages.Text(LeftMm, y + 5.5, set, pages.Fitting(set, 5, pages.Paper.WidthMm - (2 * LeftMm)));
        pages.Line(LeftMm, y + SetMm - 0.5, pages.Paper.WidthMm - LeftMm, y + SetMm - 0.5, 0.1, Ink.Faint);
        return y + SetMm;
    }

    /// <summary>The names of each hooping, or of each run, that lie on one strip.</summary>
    private static IEnumerable<ImmutableArray<KeyInName>> Runs(ImmutableArray<KeyInName> names)
    {
        for (int from = 0, to; from < names.Length; from = to)
        {
            to = from + 1;
            while (to < names.Length
                && (names[to].Round, names[to].Hooping, names[to].Line) == (names[from].Round, names[from].Hooping, names[from].Line))
            {
                to++;
            }

            yield return names[from..to];
        }
    }

    private static double HeightMm(KeyInName name, SheetPages pages, KeyInColumns columns) =>
        name.Parts.Sum(p => PartMm + ((Lines(p, pages, columns).Length - 1) * KeyedMm)) + (IsShownWhole(name) ? 0 : NameMm)
        + (!name.ByHand.IsEmpty ? ByHandMm : 0);

    /// <summary>What is keyed, in two lines where one would be too small to be read from afar.</summary>
    private static string[] Lines(KeyInPart part, SheetPages pages, KeyInColumns columns)
    {
        double width = columns.KeyedWidthMm(LeftMm + NumberMm);
        if (new KeyedText(pages, LeastKeyedMm).WidthMm(part.Keyed) <= width)
        {
            return [part.Keyed];
        }

        // Behind a blank or a hyphen, as near the middle as there is one; else in the middle.
        int middle = part.Keyed.Length / 2;
        int cut = Enumerable.Range(1, part.Keyed.Length - 1).Where(i => part.Keyed[i - 1] is ' ' or '-')
            .OrderBy(i => Math.Abs(i - middle)).FirstOrDefault(middle);
        return [part.Keyed[..cut], part.Keyed[cut..]];
    }

    private static double Introduction(SheetPages pages, Said setting, IEnumerable<Said> rules, LettersSettings settings)
    {
        double textWidth = pages.Paper.WidthMm - (2 * LeftMm) - FeedDrawing.SizeMm - 6;
        pages.Text(LeftMm, 22, "Key-in sheet", 9);
        double y = pages.Wrapped(LeftMm, 31, textWidth, $"Set the machine to {setting}.", 5);
        foreach (var line in rules)
        {
            y = pages.Wrapped(LeftMm, y + 1, textWidth, line, 3.7);
        }

        FeedDrawing.Draw(pages, pages.LeftOf(pages.Paper.WidthMm - LeftMm - FeedDrawing.SizeMm, FeedDrawing.SizeMm), 14, settings);
        return Math.Max(y, 14 + FeedDrawing.SizeMm) + 4;
    }

    private static IEnumerable<Said> Rules(LettersSettings settings, ImmutableArray<KeyInName> names, StripPlan plan, bool setsOut)
    {
        yield return $"Draw all start marks on the flat cloth before you sew. They count from the cut left end of its piece, "
            + $"as the tapes of all proofs do. ␣ is a blank. {KeyedText.Legend}";
        yield return "Put the mark under the needle, key in, sew, tick the box. Then measure: if a length falls outside its limits, stop and see why.";
        yield return setsOut
            ? "If names come to lie off their marks, measure where one ends and let NameBand set the rest out again (drift.csv)."
            : plan.PartOf is null ? "If names come to lie off their marks, start the next one at its own mark all the same."
            : "If names come to lie off their marks, start the next one at its own mark all the same, and leave the places of the other names blank.";
        if (plan.Hem.IsCurved)
        {
            yield return "The strip is cut to the curve: its start marks lie on the lower finished edge. Turn it at each mark so that the base line lies straight "
                + "ahead under the needle. A name that would leave its line by more than 0.5 mm is keyed word by word.";
        }

        yield return $"{(settings.Hooped ? (Said)"" : "The strip is sewn without a hoop, on one long backing. ")}"
            + $"Lengths are those of a name whose backing is off, pressed and cold.";

        if (settings.Holds is not null && names.Any(n => n.Parts.Length > 1))
        {
            yield return settings.KeepsLeadingBlanks
                ? (Said)$"The machine holds {settings.Holds} characters: longer names come in parts, each with its own mark."
                : $"The machine holds {settings.Holds} characters and drops a leading blank: longer names come in parts, each with its own mark, and no part begins with a blank.";
        }

        if (names.Any(n => n.HandMarks > 0))
        {
            yield return "Key the plain letters; the marks that the machine lacks are added by hand, as drawn at the end of this sheet.";
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
        Said which = plan.Rounds.Length == 1 ? "The strip" : (Said)$"Strip {number} of {plan.Rounds.Length}";
        Said text = forward ? (Said)$"{which}: {plan.OnClothMm(round.LengthMm):0} mm on flat cloth. Begin at its left end."
            : $"{which}: {plan.OnClothMm(round.LengthMm):0} mm on flat cloth. Begin at its right end.";
        pages.Text(LeftMm, y + 6, text, pages.Fitting(text, 5, pages.Paper.WidthMm - (2 * LeftMm)));
        return y + 9;
    }

    /// <summary>Which hooping or run it is, its mark, and from where to where its strip lies on the cloth.</summary>
    private static double Run(SheetPages pages, double y, StripPlan plan, KeyInName first, LettersSettings settings, bool goesOn)
    {
        var ruler = first.Ruler;
        double end = ruler.OnClothMm + plan.OnClothMm(ruler.EndMm - ruler.StartMm);
        Said cloth = plan.Cloths.Length > 1 ? (Said)$" · cloth {ruler.Cloth}" : "";
        Said run = (settings.Hooped, goesOn) switch
        {
            (true, false) => (Said)$"Hooping {first.Hooping}",
            (true, true) => $"Hooping {first.Hooping}, goes on",
            (false, false) => $"Run {first.Hooping}",
            (false, true) => $"Run {first.Hooping}, goes on",
        };
        Said line = first.Line == 0
            ? "" : (Said)$" · {StripWords.LineOf(first.Line)}, base line {FromCentre(plan, first.Line)}";
        Said text =
            $"{run}{line} · mark {first.Mark}{cloth} · the finished strip lies from {Tenths(ruler.OnClothMm)} to {Tenths(end)} mm{Beyond(ruler)}";
        pages.Text(LeftMm, y + 4, text, pages.Fitting(text, 3.7, pages.Paper.WidthMm - (2 * LeftMm)));
        return y + RunMm;
    }

    /// <summary>Where the base line of one of two lines lies.</summary>
    private static Said FromCentre(StripPlan plan, int line)
    {
        double y = plan.BaselineYMm + (line == 1 ? plan.LineStepMm : 0);
        return y < 0 ? (Said)$"{Tenths(-y)} mm below the strip’s centre line" : $"{Tenths(y)} mm above the strip’s centre line";
    }

    /// <summary>What of the cloth lies beyond the finished ends.</summary>
    private static Said Beyond(ClothRuler ruler) => (ruler.BeforeMm, ruler.AfterMm) switch
    {
        ( > 0, > 0) => (Said)$", {Tenths(ruler.BeforeMm)} and {Tenths(ruler.AfterMm)} mm of cloth beyond",
        ( > 0, _) => $", {Tenths(ruler.BeforeMm)} mm of cloth before it",
        (_, > 0) => $", {Tenths(ruler.AfterMm)} mm of cloth after it",
        _ => "",
    };

    private static Said Tenths(double mm) => $"{Thousandths.Tenths(mm):0.0}";

    /// <param name="isFirst">Nothing on its piece of cloth was sewn before.</param>
    private static double Row(SheetPages pages, double y, KeyInName name, KeyInColumns columns, bool isFirst)
    {
        if (!IsShownWhole(name))
        {
            pages.Text(LeftMm + NumberMm, y + 4.5, name.IsMotif ? "between the names" : Said.Plain(name.Text), 3.7, Ink.Quiet);
            y += NameMm;
        }

        for (int i = 0; i < name.Parts.Length; i++)
        {
            var part = name.Parts[i];
            double baseline = y + 8.5;
            pages.Box(LeftMm, baseline - 5.5, 6, 6, 0.4);
            if (name.IsSewn)
            {
                pages.Line(LeftMm + 1.2, baseline - 2.5, LeftMm + 2.6, baseline - 0.8, 0.7);
                pages.Line(LeftMm + 2.6, baseline - 0.8, LeftMm + 5, baseline - 4.6, 0.7);
            }

            if (i == 0)
            {
                pages.PutRight(LeftMm + NumberMm - 3, baseline, name.Turn.ToString(CultureInfo.InvariantCulture), 5, Ink.Quiet);
                string number = name.IsMotif ? "" : "n" + name.Order.ToString(CultureInfo.InvariantCulture);
                pages.PutRight(LeftMm + NumberMm - 3, baseline + 4, number, 2.9, Ink.Quiet);
            }

            columns.Fill(pages, baseline, part, isFirst && i == 0);
            double line = baseline;
            foreach (string keyed in Lines(part, pages, columns))
            {
                double size = KeyedText.Fitting(pages, keyed, KeyedMm, leastMm: 0, columns.KeyedWidthMm(LeftMm + NumberMm));
                new KeyedText(pages, size).Draw(LeftMm + NumberMm, line, keyed);
                line += KeyedMm;
            }

            y += PartMm + line - KeyedMm - baseline;
        }

        if (!name.ByHand.IsEmpty)
        {
            Said byHand = $"then by hand: {name.ByHand}";
            pages.Text(LeftMm + NumberMm, y + 2, byHand, pages.Fitting(byHand, 3.7, pages.Paper.WidthMm - (2 * LeftMm) - NumberMm));
            y += ByHandMm;
        }

        pages.Line(LeftMm, y, pages.Paper.WidthMm - LeftMm, y, 0.1, Ink.Faint);
        return y;
    }

    /// <summary>A name keyed at one go in its own order needs no second line to say what it is.</summary>
    private static bool IsShownWhole(KeyInName name) => name.Parts.Length == 1 && name.Parts[0].Keyed == name.Text;
}
