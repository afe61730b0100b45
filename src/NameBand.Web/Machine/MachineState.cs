using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Load;
using NameBand.Output;
using NameBand.Pipeline;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Web.Table;

namespace NameBand.Web.Machine;

/// <summary>Everything the view at the machine shows, hooping by hooping, in words and figures; no row of a list.</summary>
internal static class MachineState
{
    /// <summary>Changes when what is shown does; making the files anew changes it too.</summary>
    public static string Stamp(TableSnapshot now, string jobFolder)
    {
        var plan = new FileInfo(Path.Combine(jobFolder, "out", OutPaths.Plan));
        long made = plan.Exists ? plan.LastWriteTimeUtc.Ticks : 0;
        return string.Create(
            CultureInfo.InvariantCulture, $"{now.LayoutNumber}/{now.IsLaying}/{now.Figures is not null}/{now.Laid is not null}/{made:x}");
    }

    /// <param name="stamp">Taken before the rest was looked at, so that what changes meanwhile is asked for again.</param>
    /// <param name="report">How the sewing stands, or why that cannot be told.</param>
    public static void Write(Utf8JsonWriter json, string stamp, TableSnapshot now, SewingReport report)
    {
        json.WriteStartObject();
        json.WriteString("stamp", stamp);
        json.WriteNumber("layout", now.LayoutNumber);
        json.WriteBoolean("laying", now.IsLaying);
        json.WriteBoolean("inches", now.IsInInches);
        json.WriteString("title", now.Job?.Title ?? "");
        json.WriteBoolean("hasPaths", now.Plan?.HasNeedlePaths ?? false);
        json.WriteBoolean("hooped", now.Laid?.IsHooped ?? true);
        json.WriteBoolean("made", !report.Hoopings.IsEmpty);

        // Before the files are made there is nothing to log of; where nothing is laid out, it is said what stands in the way.
        Problems(
            json, report.Hoopings.IsEmpty && report.Names.IsEmpty ? [] : report.Problems,
            now is { Laid: null, IsLaying: false } ? now : null);
        if (now.Laid is { } laid)
        {
            json.WriteString("plan", SheetMarks.Of(laid.Plan));
            Cloth(json, laid);
            Left(json, now);
            Hoopings(json, now, laid, report);
            NamesState.Write(json, laid, report);
            FinishState.Write(json, report);
        }

        json.WriteEndObject();
    }

    /// <param name="stopped">How things stand where nothing can be laid out; null: it can.</param>
    public static void Problems(Utf8JsonWriter json, ImmutableArray<Problem> problems, TableSnapshot? stopped = null)
    {
        json.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            json.WriteStringValue($"{problem.Found} {InPageWords(problem.Mend)}".Trim());
        }

        if (stopped is not null)
        {
            foreach (string found in stopped.Problems.Where(p => p.Severity == Severity.CannotUse).Select(p => PageWords.Of(p).ToString())
                .Prepend(stopped.Fault?.ToString() ?? "")
                .Where(f => f.Length > 0))
            {
                json.WriteStringValue(found);
            }
        }

        json.WriteEndArray();
    }

    /// <summary>What to do, where no command is at hand: a command that is done here by a press is not named.</summary>
    private static Said InPageWords(Said mend) => mend.English.Contains(OwnCommand, StringComparison.Ordinal) ? Said.Nothing
        : mend.Changed((text, _) => Presses.Aggregate(
            text, (t, p) => t.Replace(p.Command.ToString(), p.Press.ToString(), StringComparison.Ordinal)));

    private static readonly string OwnCommand = "sewn " + "JOB";

    private static readonly (Said Command, Said Press)[] Presses =
        [("Run make", "Make the sheets under print"), ("run make", "make the sheets under print")];

    private static void Cloth(Utf8JsonWriter json, LaidOutJob laid)
    {
        Fabric fabric = laid.Fabric;
        json.WriteString("face", laid.Job.Lettering.Face);
        json.WriteString("height", laid.Plan.LetterHeightsInWords.ToString());
        json.WriteString("thread", fabric.Thread.InWords.ToString());
        json.WriteString("needle", fabric.Needle.ToString());
        json.WriteString("fabric", fabric.Name.ToString());
        json.WriteString("backing", fabric.Backing.ToString());
        json.WriteNumber("markY", Math.Round(laid.Plan.MarkYMm, 1));
        json.WriteBoolean("marksSewn", laid.Plan.HasNeedlePaths && laid.Plan.Marks == MarkMethod.Sewn);
        json.WriteBoolean("curved", laid.Plan.Hem.IsCurved);
        json.WriteNumber("cloths", laid.Plan.Cloths.Length);
        json.WriteStartArray("machines");
        foreach (string name in laid.Job.Machine.Names)
        {
            json.WriteStringValue(name);
        }

        json.WriteEndArray();
    }

    /// <summary>What is still to sew, or the whole where nothing is logged.</summary>
    private static void Left(Utf8JsonWriter json, TableSnapshot now)
    {
        if (now.Figures is { } figures)
        {
            var left = figures.Left.MachineMinutes;
            json.WriteString("left", Words.Time(left.Likely).ToString());
            json.WriteString("leftRange", ((Said)$"{Words.Time(left.Low)} to {Words.Time(left.High)}").ToString());
            json.WriteString("leftByHand", Words.Time(figures.Left.HandsOnMinutes.Likely).ToString());
            if (figures.Tonight is { } tonight)
            {
                json.WriteString("tonight", $"{Words.Evening(tonight, figures.Estimate.IsBegun)}: {tonight.InWords}");
            }
        }
    }

    private static void Hoopings(Utf8JsonWriter json, TableSnapshot now, LaidOutJob laid, SewingReport report)
    {
        var sewn = laid.SewnHoopings;
        var figures = now.Estimate?.Hoopings.ToDictionary(h => h.Number);
        var states = report.Hoopings.ToDictionary(h => h.Number);
        json.WriteStartArray("hoopings");
        for (int i = 0; i < laid.Plan.Hoopings.Length; i++)
        {
            var hooping = laid.Plan.Hoopings[i];
            if (laid.Plan.HasNeedlePaths && !hooping.HasNeedlePath)
            {
                // Its names stand among those that are keyed in, or on the template.
                continue;
            }

            json.WriteStartObject();
            json.WriteNumber("number", hooping.Number);
            json.WriteNumber("cloth", hooping.Cloth);
            json.WriteString("mark", SheetMarks.Of(laid.Plan, hooping));
            json.WriteBoolean("sewn", sewn.Contains(hooping.Number));
            json.WriteBoolean("again", states.TryGetValue(hooping.Number, out var state) && state.IsAgain);
            json.WriteBoolean("asksForMark", state is { AsksForMark: true, IsSewn: false });
            if (figures?.GetValueOrDefault(hooping.Number) is { } figure)
            {
                json.WriteNumber("minutes", Math.Round(now.Estimate!.OwnMinutes(figure), 1));
                json.WriteNumber("stitches", figure.Stitches);
            }

            Strips(json, laid.Plan, hooping);
            Watch(json, now, hooping, i);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Strips(Utf8JsonWriter json, StripPlan plan, Hooping hooping)
    {
        json.WriteStartArray("strips");
        var strips = StripWords.FromAbove(hooping);
        for (int i = 0; i < strips.Count; i++)
        {
            var hooped = strips[i];
            double zero = StripPlan.OnClothMm(hooping, hooped);
            json.WriteStartObject();
            json.WriteString("which", StripWords.Of(i, strips.Count).ToString());
            json.WriteNumber("round", hooped.Round.Number);
            var (left, right) = plan.MarksAlongMm(hooped);
            json.WriteNumber("left", Math.Round(zero + left, 1));
            json.WriteNumber("right", Math.Round(zero + right, 1));
            json.WriteNumber("apart", Math.Round(plan.RightMarkMm(hooped) - hooped.Segment.LeftMarkMm, 1));
            json.WriteStartArray("names");
            foreach (var name in hooped.Segment.Names)
            {
                json.WriteStartArray();
                json.WriteNumberValue(name.Order);
                json.WriteStringValue(name.Lettered.Name.Text);
                json.WriteEndArray();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Watch(Utf8JsonWriter json, TableSnapshot now, Hooping hooping, int index)
    {
        json.WriteStartArray("watch");
        foreach (var line in WatchLines(now, hooping, index))
        {
            json.WriteStringValue(line.ToString());
        }

        json.WriteEndArray();
    }

    private static IEnumerable<Said> WatchLines(TableSnapshot now, Hooping hooping, int index)
    {
        var names = hooping.Segments.SelectMany(s => s.Segment.Names).ToDictionary(n => n.Order, n => n.Lettered.Name.Text);
        if (now.Laid is { } laidOut && laidOut.Plan.Hoopings.Any(h => h.Frame is not null))
        {
            yield return $"Hoop it in the frame “{hooping.Frame?.Name ?? laidOut.Job.Frame?.Name}”.";
        }

        if (now.Figures is not { } figures)
        {
            yield break;
        }

        foreach (var change in figures.Estimate.BobbinChanges.Where(b => b.Hooping == hooping.Number))
        {
            yield return names.TryGetValue(change.BeforeOrder, out string? name) && name.Length > 0
                ? $"Put a fresh bobbin in {change.Before} {name}." : (Said)$"Put a fresh bobbin in {change.Before}.";
        }

        bool hasSewnMarks = now.Laid?.Plan.Marks == MarkMethod.Sewn;
        if (now.Laid is { } laid && ThreadWords.Of(laid.Plan, hooping) is { IsEmpty: false } threads)
        {
            yield return hasSewnMarks ? $"{threads} Before them come the marks, in a thread of their own." : threads;
        }
        else if (figures.Estimate.Hoopings.FirstOrDefault(h => h.Number == hooping.Number) is { Stops: > 0 } figure)
        {
            yield return Said.Plural(
                figure.Stops, "The machine stops once, after the marks: change to the thread of the names.",
                $"The machine stops {figure.Stops} times; the first time is after the marks: change to the thread of the names.");
        }

        if (now.Laid?.Plan.AreMarksMet(hooping) ?? false)
        {
            yield return "Bring the needle over the one cross and then over the other before you start.";
        }

        if (index < figures.Loads.Length && figures.Loads[index] is { Verdict: not LoadVerdict.Fine and var verdict })
        {
            yield return verdict == LoadVerdict.Overworked
                ? "The cloth is overworked here: go slowly, and sew the swatch first."
                : "The cloth is worked hard here: look for puckers after the first name.";
        }

        foreach (string name in names.Values.Where(RunsFromTheRight))
        {
            yield return $"{name} reads from the right.";
        }
    }

    // Hebrew, Arabic and their neighbours: UnicodeData's blocks of right-to-left scripts.
    private static bool RunsFromTheRight(string text) =>
        text.Any(c => c is (>= '\u0590' and <= '\u08FF') or (>= '\uFB1D' and <= '\uFDFF') or (>= '\uFE70' and <= '\uFEFC'));
}
