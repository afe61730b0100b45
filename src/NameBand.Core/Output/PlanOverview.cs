using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.PlanFile;

namespace NameBand.Output;

/// <summary>A hooping of a plan that has been written.</summary>
public sealed record PlannedHooping(int Number, ImmutableArray<string> Names, double Minutes)
{
    /// <summary>Stands on its sheets; empty where they bear none.</summary>
    public string Mark { get; init; } = "";
}

/// <summary>A name of a plan that is keyed in or traced, and so logged by itself.</summary>
/// <param name="Hooping">Number of its hooping or run.</param>
/// <param name="Minutes">At the machine; 0 where the plan does not say.</param>
/// <param name="Mark">Of its hooping or run; empty where its sheets bear none.</param>
public sealed record PlannedName(int Number, string Text, int Hooping, double WidthMm, double Minutes, string Mark);

/// <summary>The plan in an out folder, as far as a person who sews from it needs it.</summary>
/// <param name="Hoopings">Those that are sewn from needle paths.</param>
public sealed record PlanOverview(string Title, ImmutableArray<PlannedHooping> Hoopings, EarlierPlan Plan)
{
    /// <summary>The plan's own mark; empty where it has none.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Marks on the proofs of rounds, by the round's number; an older plan has none.</summary>
    public ImmutableDictionary<int, string> RoundMarks { get; init; } = ImmutableDictionary<int, string>.Empty;

    /// <summary>Names that are keyed in or traced, by their numbers.</summary>
    public ImmutableArray<PlannedName> Names { get; init; } = [];

    /// <summary>Hand work that comes when all is sewn, as the plan estimates it; null where the plan is older and does not say.</summary>
    public ImmutableArray<(FinishingStep? Step, double Minutes)>? FinishingMinutes { get; init; }

    /// <summary>What of it is not done yet.</summary>
    public double? FinishingLeftMinutes(FinishedSteps done)
    {
        (int, double)[] rounds = [.. Plan.Rounds.Select(r => (r.Number, r.LengthMm))];
        return FinishingMinutes?.Sum(f => f.Minutes * (1 - (f.Step is { } step ? done.DonePart(step, rounds) : 0)));
    }

    /// <summary>Cloth that goes into the seam at each end of a patch piece: common practice, no source.</summary>
    public const double PatchSeamMm = 10;

    public static Result<PlanOverview> Read(string outFolder) => EarlierPlanFile.Read(outFolder, OutPaths.Plan, Of);

    private static PlanOverview Of(WrittenPlan written)
    {
        var plan = EarlierPlanFile.Plan(written);
        var minutes = written.Hoopings.ToDictionary(h => h.Number, h => (double)h.Minutes);
        var segments = plan.Rounds.SelectMany(r => r.Segments).ToDictionary(s => s.Number);
        return new PlanOverview(
            written.Title,
            [.. plan.Hoopings.Where(h => h.HasNeedlePath).Select(h => new PlannedHooping(
                h.Number, [.. h.Segments.SelectMany(s => segments[s.Segment].Names).Select(n => n.Text)], minutes[h.Number])
            {
                Mark = h.Mark,
            })],
            plan)
        {
            Mark = written.Made?.Mark ?? "",
            RoundMarks = written.Rounds.Where(r => r.Mark is not null).ToImmutableDictionary(r => r.Number, r => r.Mark!),
            Names = [.. Named(written, plan)],
            FinishingMinutes = written.Work is { } work ? [.. PlanWork.Finishing(work)] : null,
        };
    }

    private static IEnumerable<PlannedName> Named(WrittenPlan written, EarlierPlan plan)
    {
        var minutes = written.Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names)
            .ToLookup(n => n.Order, n => (double)n.Minutes.GetValueOrDefault());
        var segments = plan.Rounds.SelectMany(r => r.Segments).ToDictionary(s => s.Number);
        return plan.Hoopings.Where(h => !h.HasNeedlePath)
            .SelectMany(h => h.Segments.SelectMany(s => segments[s.Segment].Names)
                .Select(n => new PlannedName(n.Order, n.Text, h.Number, n.WidthMm, minutes[n.Order].FirstOrDefault(), h.Mark)))
            .OrderBy(n => n.Number);
    }

    /// <summary>Length on the cloth of a piece that replaces a hooping in a strip already cut: its segment and a seam at each
    /// end.</summary>
    public double PatchOnClothMm(int hooping)
    {
        var segments = Plan.Rounds.SelectMany(r => r.Segments).ToDictionary(s => s.Number);
        double longest = Plan.Hoopings.Single(h => h.Number == hooping).Segments.Max(s => segments[s.Segment].LengthMm);
        return new FlatCloth(Plan.Shortening).OnClothMm(longest) + (2 * PatchSeamMm);
    }
}
