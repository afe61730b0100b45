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
        string setting = steps.Length > 1
            ? $"letters {Wording.List([.. steps.Select(s => FormattableString.Invariant($"{s.HeightMm:0.##}"))])} mm"
            : steps.Length == 1 ? Setting(steps[0]) : Setting(new SizeStep(plan.LetterHeightMm, plan.SpacingMm ?? 0));
        using var pages =
            new SheetPages(stream, paper, $"{title}: key-in sheet", $"{Packet.PaperTitle.WithMark(title, plan)} · {setting}", face);
        var columns = new KeyInColumns(paper.WidthMm - LeftMm);
        pages.Begin();
        double y = Introduction(
            pages, steps.Length > 1 ? $"{setting}, as said before the names" : setting, Rules(settings, names, plan, setsOut), settings);
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

    private static string Setting(SizeStep step) =>
        string.Create(CultureInfo.InvariantCulture, $"letters {step.HeightMm:0.##} mm, gap {step.GapMm:0.0} mm");

    /// <summary>The turns before which the machine is set anew.</summary>
    private static HashSet<int> Sets(ImmutableArray<KeyInName> names, bool areSeveral) =>
        [.. names.Where((n, i) => areSeveral && (i == 0 || names[i - 1].Step != n.Step)).Select(n => n.Turn)];

    private static double Set(SheetPages pages, double y, SizeStep step)
    {
        pages.Text(LeftMm, y + 5.5, $"Set the machine to {Setting(step)}.", 5);
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
        + (name.ByHand.Length > 0 ? ByHandMm : 0);

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

    private static double Introduction(SheetPages pages, string setting, IEnumerable<string> rules, LettersSettings settings)
    {
        double textWidth = pages.Paper.WidthMm - (2 * LeftMm) - FeedDrawing.SizeMm - 6;
        pages.Text(LeftMm, 22, "Key-in sheet", 9);
        double y = pages.Wrapped(LeftMm, 31, textWidth, $"Set the machine to {setting}.", 5);
        foreach (string line in rules)
        {
            y = pages.Wrapped(LeftMm, y + 1, textWidth, line, 3.7);
        }

        FeedDrawing.Draw(pages, pages.Paper.WidthMm - LeftMm - FeedDrawing.SizeMm, 14, settings);
        return Math.Max(y, 14 + FeedDrawing.SizeMm) + 4;
    }

    private static IEnumerable<string> Rules(LettersSettings settings, ImmutableArray<KeyInName> names, StripPlan plan, bool setsOut)
    {
        yield return "Draw all start marks on the flat cloth before you sew. They count from the cut left end of its piece, "
            + "as the tapes of all proofs do. ␣ is a blank. " + KeyedText.Legend;
        yield return "Put the mark under the needle, key in, sew, tick the box. Then measure: if a length falls outside its limits, stop and see why.";
        yield return setsOut
            ? "If names come to lie off their marks, measure where one ends and let NameBand set the rest out again (drift.csv)."
            : "If names come to lie off their marks, start the next one at its own mark all the same"
                + (plan.PartOf is not null ? ", and leave the places of the other names blank." : ".");
        if (plan.Hem.IsCurved)
        {
            yield return "The strip is cut to the curve: its start marks lie on the lower finished edge. Turn it at each mark so that the base line lies straight "
                + "ahead under the needle. A name that would leave its line by more than 0.5 mm is keyed word by word.";
        }

        yield return (settings.Hooped ? "" : "The strip is sewn without a hoop, on one long backing. ")
            + "Lengths are those of a name whose backing is off, pressed and cold.";

        if (settings.Holds is not null && names.Any(n => n.Parts.Length > 1))
        {
            yield return settings.KeepsLeadingBlanks
                ? $"The machine holds {settings.Holds} characters: longer names come in parts, each with its own mark."
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
        string which = plan.Rounds.Length == 1 ? "The strip" : FormattableString.Invariant($"Strip {number} of {plan.Rounds.Length}");
        string text = FormattableString.Invariant(
            $"{which}: {plan.OnClothMm(round.LengthMm):0} mm on flat cloth. Begin at its {(forward ? "left" : "right")} end.");
        pages.Text(LeftMm, y + 6, text, 5);
        return y + 9;
    }

    /// <summary>Which hooping or run it is, its mark, and from where to where its strip lies on the cloth.</summary>
    private static double Run(SheetPages pages, double y, StripPlan plan, KeyInName first, LettersSettings settings, bool goesOn)
    {
        var ruler = first.Ruler;
        double end = ruler.OnClothMm + plan.OnClothMm(ruler.EndMm - ruler.StartMm);
        string cloth = plan.Cloths.Length > 1 ? FormattableString.Invariant($" · cloth {ruler.Cloth}") : "";
        string run = FormattableString.Invariant($"{(settings.Hooped ? "Hooping" : "Run")} {first.Hooping}{(goesOn ? ", goes on" : "")}");
        string line = first.Line == 0
            ? "" : FormattableString.Invariant($" · {StripWords.LineOf(first.Line)}, base line {FromCentre(plan, first.Line)}");
        string text =
            $"{run}{line} · mark {first.Mark}{cloth} · the finished strip lies from {Tenths(ruler.OnClothMm)} to {Tenths(end)} mm{Beyond(ruler)}";
        pages.Text(LeftMm, y + 4, text, pages.Fitting(text, 3.7, pages.Paper.WidthMm - (2 * LeftMm)));
        return y + RunMm;
    }

    /// <summary>Where the base line of one of two lines lies.</summary>
    private static string FromCentre(StripPlan plan, int line)
    {
        double y = plan.BaselineYMm + (line == 1 ? plan.LineStepMm : 0);
        return $"{Tenths(Math.Abs(y))} mm {(y < 0 ? "below" : "above")} the strip’s centre line";
    }

    /// <summary>What of the cloth lies beyond the finished ends.</summary>
    private static string Beyond(ClothRuler ruler) => (ruler.BeforeMm, ruler.AfterMm) switch
    {
        ( > 0, > 0) => FormattableString.Invariant($", {Tenths(ruler.BeforeMm)} and {Tenths(ruler.AfterMm)} mm of cloth beyond"),
        ( > 0, _) => FormattableString.Invariant($", {Tenths(ruler.BeforeMm)} mm of cloth before it"),
        (_, > 0) => FormattableString.Invariant($", {Tenths(ruler.AfterMm)} mm of cloth after it"),
        _ => "",
    };

    private static string Tenths(double mm) => Thousandths.Tenths(mm).ToString("0.0", CultureInfo.InvariantCulture);

    /// <param name="isFirst">Nothing on its piece of cloth was sewn before.</param>
    private static double Row(SheetPages pages, double y, KeyInName name, KeyInColumns columns, bool isFirst)
    {
        if (!IsShownWhole(name))
        {
            pages.Text(LeftMm + NumberMm, y + 4.5, name.IsMotif ? "between the names" : name.Text, 3.7, Ink.Quiet);
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
                pages.TextRight(LeftMm + NumberMm - 3, baseline, name.Turn.ToString(CultureInfo.InvariantCulture), 5, Ink.Quiet);
                string number = name.IsMotif ? "" : "n" + name.Order.ToString(CultureInfo.InvariantCulture);
                pages.TextRight(LeftMm + NumberMm - 3, baseline + 4, number, 2.9, Ink.Quiet);
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

        if (name.ByHand.Length > 0)
        {
            string byHand = $"then by hand: {name.ByHand}";
            pages.Text(LeftMm + NumberMm, y + 2, byHand, pages.Fitting(byHand, 3.7, pages.Paper.WidthMm - (2 * LeftMm) - NumberMm));
            y += ByHandMm;
        }

        pages.Line(LeftMm, y, pages.Paper.WidthMm - LeftMm, y, 0.1, Ink.Faint);
        return y;
    }

    /// <summary>A name keyed at one go in its own order needs no second line to say what it is.</summary>
    private static bool IsShownWhole(KeyInName name) => name.Parts.Length == 1 && name.Parts[0].Keyed == name.Text;
}
