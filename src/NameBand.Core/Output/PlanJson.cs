using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Names;

namespace NameBand.Output;

/// <summary>
/// Writes plan.json. Lengths are rounded to 0.001 mm before they are added up, so that a reader who adds the numbers
/// in the file arrives at the sums in the file.
/// </summary>
public static class PlanJson
{
    /// <summary>The number of the file's form, in its key <c>format</c>.</summary>
    public const int Format = 1;

    private const int MostKept = 1 << 16;

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",

        // Names stay readable in the file. It is a file, never pasted into a web page unescaped.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <exception cref="InvalidOperationException">Plan, estimate and rows do not belong together: a bug.</exception>
    /// <param name="origin">What the plan was made from, so that a later one can go on from it; null leaves it out.</param>
    public static void Write(
        Stream stream, string title, StripPlan plan, Estimate estimate, PlanFound found, PlanOrigin? origin = null)
    {
        Check(plan, estimate, found.Rows);
        using var json = new Utf8JsonWriter(stream, Options);
        json.WriteStartObject();
        json.WriteNumber("format", Format);
        json.WriteString("title", title);
        json.WriteStartObject("made");
        json.WriteString("mark", SheetMarks.Of(plan));
        json.WriteEndObject();
        PlanJsonProblems.Write(json, found.Needs);
        WriteHem(json, plan);
        WriteStrip(json, plan);
        json.WriteNumber("letterHeightMm", Thousandths.Mm(plan.LetterHeightMm));
        json.WriteNumber("baselineYMm", Thousandths.Mm(plan.BaselineYMm));
        json.WriteNumber("markYMm", Thousandths.Mm(plan.MarkYMm));
        if (origin is not null)
        {
            json.WriteString("face", origin.Face);
            json.WriteString("fabric", origin.Fabric);
            json.WriteNumber("letterHeightExactMm", plan.LetterHeightMm);
        }

        var places = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (s.Segment.Number, StripPlan.OnClothMm(h, s)))).ToDictionary(p => p.Number, p => p.Item2);
        json.WriteStartArray("rounds");
        foreach (var round in plan.Rounds)
        {
            WriteRound(json, plan, round, places, origin);
        }

        json.WriteEndArray();
        PlanJsonCloths.Write(json, plan);
        WriteHoopings(json, plan, estimate, origin);
        PlanJsonWork.Write(json, estimate.Work);
        WriteTotals(json, plan, estimate);
        WriteRows(json, found.Rows);
        json.WriteEndObject();
        json.Flush();
        stream.Write("\n"u8);
    }

    /// <summary>The word for a row's outcome in our files.</summary>
    public static string Word(RowOutcome outcome) => outcome switch
    {
        RowOutcome.Placed => "placed",
        RowOutcome.Merged => "merged",
        RowOutcome.Held => "held",
        RowOutcome.LeftOut => "leftOut",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No such outcome."),
    };

    private static void WriteHem(Utf8JsonWriter json, StripPlan plan)
    {
        json.WriteStartObject("hem");
        json.WriteNumber("lengthMm", Thousandths.Mm(plan.Hem.EdgeLengthMm));
        json.WriteBoolean("closed", plan.Hem.Closed);
        json.WriteNumber("overlapMm", Thousandths.Mm(plan.Hem.OverlapMm));
        json.WriteNumber("toleranceMm", Thousandths.Mm(plan.Hem.ToleranceMm));
        json.WriteEndObject();
    }

    private static void WriteStrip(Utf8JsonWriter json, StripPlan plan)
    {
        decimal total = plan.Rounds.Sum(r => Thousandths.Mm(r.LengthMm));
        decimal asked = plan.Rounds.Sum(r => Thousandths.Mm(r.HemMm));
        json.WriteStartObject("strip");
        json.WriteNumber("cutWidthMm", Thousandths.Mm(plan.Hem.Strip.CutWidthMm));
        json.WriteNumber("turnInMm", Thousandths.Mm(plan.Hem.Strip.TurnInMm));
        json.WriteNumber("finishedWidthMm", Thousandths.Mm(plan.Hem.Strip.FinishedWidthMm));
        json.WriteNumber("totalLengthMm", total);
        json.WriteNumber("differenceMm", total - asked);
        json.WriteBoolean("matchesHem", plan.MatchesHem);
        json.WriteNumber("shortening", plan.Shortening);
        if (plan.Hem.IsCurved)
        {
            json.WriteString("shape", "curved");
        }

        json.WriteString("runs", plan.Hem.RunsInWords);
        json.WriteEndObject();
    }

    private static void WriteRound(Utf8JsonWriter json, StripPlan plan, Round round, Dictionary<int, double> places, PlanOrigin? origin)
    {
        json.WriteStartObject();
        json.WriteNumber("number", round.Number);
        json.WriteNumber("lengthMm", Thousandths.Mm(round.LengthMm));
        json.WriteNumber("hemMm", Thousandths.Mm(round.HemMm));
        json.WriteNumber("gapMm", Thousandths.Mm(round.GapMm));
        PlanJsonCloths.WriteEase(json, RoundEasing.Of(plan.Hem, round));
        PlanJsonCurve.WriteRound(json, plan, round);
        origin?.WriteRound(json, round.Number);
        json.WriteStartArray("segments");
        foreach (var segment in round.Segments)
        {
            json.WriteStartObject();
            json.WriteNumber("number", segment.Number);
            json.WriteNumber("startMm", Thousandths.Mm(segment.StartMm));
            json.WriteNumber("lengthMm", Thousandths.Mm(segment.LengthMm));
            json.WriteNumber("clothStartMm", Thousandths.Mm(segment.ClothStartMm));
            json.WriteNumber("onClothMm", Thousandths.Mm(places[segment.Number]));
            json.WriteStartArray("names");
            WriteNames(json, plan, segment.Names.Where(n => n.IsOfList));
            json.WriteEndArray();
            if (segment.Names.Any(n => n.IsHeading && !n.IsGone))
            {
                // Sewn before a group's names; "line" is the group's number in job.json.
                json.WriteStartArray("headings");
                WriteNames(json, plan, segment.Names.Where(n => n.IsHeading && !n.IsGone));
                json.WriteEndArray();
            }

            if (!segment.Motifs.IsEmpty)
            {
                WriteMotifs(json, segment.Motifs);
            }

            if (segment.Names.Any(n => n.IsGone))
            {
                // Sewn, and asked for by no row any longer: on the cloth, but no name of the job.
                json.WriteStartArray("gone");
                WriteNames(json, plan, segment.Names.Where(n => n.IsGone));
                json.WriteEndArray();
            }

            json.WriteEndObject();
            PassOn(json);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteMotifs(Utf8JsonWriter json, ImmutableArray<PlacedName> motifs)
    {
        json.WriteStartArray("motifs");
        foreach (var motif in motifs)
        {
            json.WriteStartObject();
            json.WriteString("text", motif.Lettered.Name.Text);
            json.WriteNumber("startMm", Thousandths.Mm(motif.StartMm));
            json.WriteNumber("widthMm", Thousandths.Mm(motif.WidthMm));
            json.WriteNumber("baselineYMm", Thousandths.Mm(motif.BaselineYMm));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteNames(Utf8JsonWriter json, StripPlan plan, IEnumerable<PlacedName> names)
    {
        foreach (var name in names)
        {
            json.WriteStartObject();
            json.WriteNumber("order", name.Order);
            json.WriteString("text", name.Lettered.Name.Text);
            json.WriteString("list", name.Lettered.Name.Row.List);
            json.WriteNumber("line", name.Lettered.Name.Row.Line);
            json.WriteNumber("startMm", Thousandths.Mm(name.StartMm));
            json.WriteNumber("widthMm", Thousandths.Mm(name.WidthMm));
            PlanJsonCurve.WriteName(json, plan, name);
            json.WriteNumber("baselineYMm", Thousandths.Mm(name.BaselineYMm));
            if (name.Lettered.Standing.Group is { } group)
            {
                json.WriteString("group", group);
            }

            if (name.Lettered.Standing is { Group: not null } or { HeightFactor: not 1 })
            {
                json.WriteNumber("letterHeightMm", Thousandths.Mm(plan.LetterHeightMm * name.Lettered.Standing.HeightFactor));
            }

            json.WriteEndObject();
        }
    }

    private static void WriteHoopings(Utf8JsonWriter json, StripPlan plan, Estimate estimate, PlanOrigin? origin)
    {
        var figures = estimate.Hoopings.ToDictionary(f => f.Number);
        json.WriteStartArray("hoopings");
        foreach (var hooping in plan.Hoopings)
        {
            json.WriteStartObject();
            json.WriteNumber("number", hooping.Number);
            json.WriteString("mark", SheetMarks.Of(plan, hooping));
            json.WriteStartArray("segments");
            foreach (var hooped in hooping.Segments)
            {
                json.WriteStartObject();
                json.WriteNumber("number", hooped.Segment.Number);
                json.WriteNumber("xMm", Thousandths.Mm(hooped.XMm));
                json.WriteNumber("yMm", Thousandths.Mm(hooped.YMm));
                PlanJsonCurve.WriteHooped(json, plan, hooped);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteNumber("cloth", hooping.Cloth);
            json.WriteNumber("onClothMm", Thousandths.Mm(hooping.OnClothMm));
            json.WriteString("needlePath", plan.HasNeedlePaths ? OutPaths.NeedlePath(hooping.Number) : null);
            json.WriteString("proof", OutPaths.HoopingProof(hooping.Number));
            var figure = figures[hooping.Number];
            json.WriteNumber("stitches", figure.Stitches);
            json.WriteNumber("jumps", figure.Jumps);
            json.WriteNumber("trims", figure.Trims);
            json.WriteNumber("minutes", Thousandths.Tenths(estimate.OwnMinutes(figure)));
            origin?.Write(json, hooping.Number);
            json.WriteEndObject();
            PassOn(json);
        }

        json.WriteEndArray();
    }

    private static void WriteTotals(Utf8JsonWriter json, StripPlan plan, Estimate estimate)
    {
        json.WriteStartObject("totals");
        json.WriteNumber("names", plan.NameCount);
        json.WriteNumber("segments", plan.Rounds.Sum(r => r.Segments.Length));
        json.WriteNumber("hoopings", plan.Hoopings.Length);
        json.WriteNumber("stitches", estimate.Hoopings.Sum(h => (long)h.Stitches));
        json.WriteNumber("jumps", estimate.Hoopings.Sum(h => (long)h.Jumps));
        json.WriteNumber("trims", estimate.Hoopings.Sum(h => (long)h.Trims));
        json.WriteNumber("machineMinutes", PlanJsonWork.Minutes(estimate.Work, Doer.Machine));
        json.WriteNumber("handsOnMinutes", PlanJsonWork.Minutes(estimate.Work, Doer.Hands));
        if (estimate.OwnPace is { } own)
        {
            // The minutes above are by the pace that the log shows, and so are those of the hoopings.
            json.WriteNumber("machineMinutesAtSetPace", PlanJsonWork.Minutes(own.AtSetPace.Work, Doer.Machine));
            json.WriteNumber("handsOnMinutesAtSetPace", PlanJsonWork.Minutes(own.AtSetPace.Work, Doer.Hands));
        }

        json.WriteNumber("needleThreadM", Thousandths.Tenths(estimate.NeedleThreadM));
        json.WriteNumber("bobbinThreadM", Thousandths.Tenths(estimate.BobbinThreadM));
        json.WriteEndObject();
    }

    private static void WriteRows(Utf8JsonWriter json, ImmutableArray<ListedRow> rows)
    {
        json.WriteStartArray("rows");
        foreach (var row in rows)
        {
            json.WriteStartObject();
            json.WriteString("list", row.Row.List);
            json.WriteNumber("line", row.Row.Line);
            json.WriteString("outcome", Word(row.Outcome));
            json.WriteString("text", row.Text);
            json.WriteString("reason", row.Reason);
            json.WriteEndObject();
            PassOn(json);
        }

        json.WriteEndArray();
    }

    /// <summary>The writer keeps all that it was not told to pass on.</summary>
    private static void PassOn(Utf8JsonWriter json)
    {
        if (json.BytesPending > MostKept)
        {
            json.Flush();
        }
    }

    private static void Check(StripPlan plan, Estimate estimate, ImmutableArray<ListedRow> rows)
    {
        var placed = rows.Where(r => r.Outcome == RowOutcome.Placed).Select(r => r.Row).ToHashSet();
        var sewn = plan.Rounds.SelectMany(r => r.Names).Where(n => n.IsOfList).Select(n => n.Lettered.Name.Row).ToList();
        Require(placed.Count == sewn.Count && placed.SetEquals(sewn), "The placed rows are not the names of the plan.");
        Require(
            plan.Hoopings.Select(h => h.Number).ToHashSet().SetEquals(estimate.Hoopings.Select(h => h.Number)),
            "The estimate is not of these hoopings.");
    }

    private static void Require(bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new InvalidOperationException(otherwise);
        }
    }
}
