using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout.Drift;

namespace NameBand.Layout.Resuming;

/// <summary>
/// Moves sewn hoopings to where they were measured to lie: a hooping that was set a little off, or cloth that came out
/// longer or shorter, is seen at the end of a sewn name, on the strip as it lies now.
/// </summary>
internal static class SewnDrift
{
    /// <summary>Less than a tape can tell.</summary>
    private const double SlightMm = 0.25;

    /// <summary>The blocks where they lie, whether any was moved, and what of drift.csv cannot be.</summary>
    public static (ImmutableArray<KeptBlock> Blocks, bool HasMoved, ImmutableArray<Problem> Problems) Apply(
        ImmutableArray<KeptBlock> blocks, ImmutableArray<MeasuredEnd> ends, ImmutableArray<StripCloth> cloths, FlatCloth flat)
    {
        var problems = ImmutableArray.CreateBuilder<Problem>();
        var knots = new List<(KeptBlock Block, double AtMm, double OffMm)>();
        foreach (var end in ends)
        {
            var block = blocks.FirstOrDefault(b => b.Names.Any(n => n.Order == end.Number));
            if (block is not null && Check(end, block) is { } problem)
            {
                problems.Add(problem);
            }
            else if (block is not null)
            {
                double planned = block.Names.Single(n => n.Order == end.Number).EndMm;
                knots.RemoveAll(k => k.Block == block && k.AtMm <= planned);
                knots.Add((block, planned, end.EndMm - planned));
            }
            else
            {
                problems.Add(Problem.CannotUse(
                    new Where(DriftFile.FileName, end.FileLine),
                    $"There is no name {end.Number} in the plan that is sewn from.",
                    "Write the number that stands under the name on the proof."));
            }
        }

        if (problems.Count > 0 || knots.TrueForAll(k => Math.Abs(k.OffMm) < SlightMm))
        {
            return (blocks, false, problems.ToImmutable());
        }

        return ([.. blocks.Select(b => b.IsSewn ? Moved(b, OffMm(b, knots, [.. cloths.SelectMany(c => c.Pieces)]), flat) : b)], true, []);
    }

    private static Problem? Check(MeasuredEnd end, KeptBlock block)
    {
        var name = block.Names.Single(n => n.Order == end.Number);
        string text = PlainText.Short(name.Lettered.Name.Text);
        var where = new Where(DriftFile.FileName, end.FileLine);
        if (end.Name.Length > 0 && !string.Equals(end.Name, name.Lettered.Name.Text, StringComparison.Ordinal))
        {
            return Problem.CannotUse(
                where, $"Number {end.Number} is “{text}” and not “{PlainText.Short(end.Name)}”.",
                "Write the number that stands under the name on its proof.");
        }

        if (!block.IsSewn)
        {
            return Problem.CannotUse(
                where, $"The end of number {end.Number}, “{text}”, was measured, and its hooping {block.Hooping} is not said to be sewn.",
                $"Say so first, with “sewn … {block.Hooping}”, or take the line out.");
        }

        return Math.Abs(end.EndMm - name.EndMm) > DriftCorrection.MostOffMm(name.EndMm)
            ? Problem.CannotUse(
                where, $"“{text}” was to end at {name.EndMm:0} mm, and {end.EndMm:0} mm is too far from that to be drift.",
                "Measure from the strip’s starting end to where the name ends, along the strip, in millimetres.")
            : null;
    }

    /// <summary>
    /// A hooping lies as far off as it was measured, in the middle between two measured ones in proportion, and after
    /// the last one as far off as that: what is sewn in one hooping moves together. What lies on another piece of cloth
    /// does not move with it.
    /// </summary>
    private static double OffMm(
        KeptBlock block, List<(KeptBlock Block, double AtMm, double OffMm)> knots, ImmutableArray<StripPiece> pieces)
    {
        var own = knots.Where(k => k.Block == block).OrderBy(k => k.AtMm).ToList();
        if (own.Count > 0)
        {
            return own[^1].OffMm;
        }

        double at = block.LastMm;
        var piece = StripPiece.At(pieces, block.Round, block.FirstMm);
        var round = knots.Where(k => k.Block.Round == block.Round && StripPiece.At(pieces, block.Round, k.Block.FirstMm) == piece).ToList();
        var before = round.Where(k => k.AtMm <= at).OrderBy(k => k.AtMm).Select(k => (k.AtMm, k.OffMm))
            .LastOrDefault((piece?.StartMm ?? 0, 0));
        var after = round.Where(k => k.AtMm > at).OrderBy(k => k.AtMm).ToList();
        return after.Count == 0
            ? before.OffMm : before.OffMm + ((after[0].OffMm - before.OffMm) * (at - before.AtMm) / (after[0].AtMm - before.AtMm));
    }

    private static KeptBlock Moved(KeptBlock block, double offMm, FlatCloth flat) => block with
    {
        StartMm = block.StartMm + offMm,
        ClothStartMm = flat.OnClothMm(block.StartMm + offMm),
        Names = [.. block.Names.Select(n => n with { StartMm = n.StartMm + offMm })],
        Motifs = [.. block.Motifs.Select(m => m with { StartMm = m.StartMm + offMm })],
    };
}
